/**
 * What is ticked on the shopping list. The shell keeps it with the settings, so that a restart leaves it as it was; an
 * evening is known by its title and day, and takes its ticks along when either is changed.
 */
import { useDocument } from '../state/documentStore.ts';
import { usePlan } from '../state/planStore.ts';
import { changeSettings, useSettings } from '../state/settingsStore.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

interface Evening {
  readonly title: string;
  readonly day: string;
}

/** Evenings whose ticks are kept: those shopped for longer ago are over. */
const keptEvenings = 20;

function eveningOf({ title = '', anchor }: PlanFile): Evening {
  return { title, day: (anchor?.time ?? '').slice(0, 10) };
}
function same(one: Evening, other: Evening): boolean {
  return one.title === other.title && one.day === other.day;
}

function ticksOf(evening: Evening): readonly string[] {
  return useSettings.getState().ticks?.find((one) => same(one, evening))?.there ?? [];
}

/** What is ticked in the plan that is open. */
export function useTicked(): ReadonlySet<string> {
  const title = usePlan(({ file }) => eveningOf(file).title);
  const day = usePlan(({ file }) => eveningOf(file).day);
  const there = useSettings(({ ticks }) => ticks?.find((one) => same(one, { title, day }))?.there);
  return new Set(there);
}

function keep(evening: Evening, there: readonly string[], instead = evening): void {
  const others = (useSettings.getState().ticks ?? []).filter(
    (one) => !same(one, evening) && !same(one, instead),
  );
  const own = there.length === 0 ? [] : [{ ...evening, there: [...there] }];
  changeSettings({ ticks: [...own, ...others].slice(0, keptEvenings) });
}

export function tick(item: string, on: boolean): void {
  const evening = eveningOf(usePlan.getState().file);
  const others = ticksOf(evening).filter((one) => one !== item);
  keep(evening, on ? [...others, item] : others);
}

/** Lets the ticks follow an evening that gets another title or day; another plan that is opened has its own. */
export function followTicks(): void {
  let { opened } = useDocument.getState();
  usePlan.subscribe(({ file }, before) => {
    if (file === before.file) return;
    const now = useDocument.getState().opened;
    const another = now !== opened;
    opened = now;
    const [from, to] = [eveningOf(before.file), eveningOf(file)];
    if (another || same(from, to)) return;
    const there = ticksOf(from);
    if (there.length > 0 && ticksOf(to).length === 0) keep(to, there, from);
  });
}
