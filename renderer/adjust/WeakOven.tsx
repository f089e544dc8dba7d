/** What gets a weak oven back: each tried on the first pizza, the best first, and opened as a plan with one key. */
import { useMemo } from 'react';
import { firstPizzaOf, helpsFor, inWeakOven, ranked, untilDone, type Help, type Tried } from './weakOven.ts';
import { Progress } from '../compare/Progress.tsx';
import { say } from '../state/documentStore.ts';
import { change } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { useStudied, type Outcome } from '../state/studies.ts';
import { showView } from '../state/viewStore.ts';
import { pathName } from '../words/assumed.ts';
import { halvesText, spanText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import { shadeWord } from '../words/names.ts';
import { unbroken } from '../words/unbroken.ts';
import { wording } from '../../physics/evening/problem.ts';
import type { Compared } from '../../physics/evening/comparison.ts';
import type { StudyJob } from '../state/study.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface WeakOvenProps {
  readonly file: PlanFile;
  /** K, the highest that the reader's oven reaches */
  readonly setting: number;
  readonly units: UnitSystem;
}

function comparedIn(outcome: Outcome | undefined): Compared | undefined {
  return outcome?.ok === true && outcome.study.kind === 'evening' ? outcome.study.compared : undefined;
}

/** s below which nobody tells two bakes apart */
const alike = 10;

function bringsText({ compared, gains }: Tried, now: Compared): string {
  const seconds = Math.round((60 * gains) / 10) * 10;
  const [bake] = compared.bakes;
  const longer = Math.round(compared.preheat.minutes - now.preheat.minutes);
  const finish = bake!.finishMinutes;
  return [
    Math.abs(seconds) < alike
      ? 'done no sooner'
      : `done ${spanText(Math.abs(seconds) / 60)} ${seconds > 0 ? 'sooner' : 'later'}`,
    `bake ${spanText(bake!.minutes)}${finish < 0.25 ? ', rim done too' : `, then ${halvesText(finish)} min top heat`}`,
    `base ${shadeWord(bake!.baseLightness)}`,
    ...(Math.abs(longer) < 2
      ? []
      : [`plate ready ${spanText(Math.abs(longer))} ${longer > 0 ? 'later' : 'sooner'}`]),
  ].join(', ');
}

/** The whole plan, all its pizzas, in that oven with that help. */
function open({ file, what }: Help): void {
  const fields = Object.fromEntries(
    (['oven', 'plate', 'pizzas', 'toppings'] as const).map((block) => [block, file[block]]),
  );
  const problem = change(fields);
  say({
    text:
      problem === undefined
        ? `The plan now: ${what}, in the weaker oven. Undo brings the one before back.`
        : `Not changed: ${wording({ ...problem, path: pathName(problem.path) })}.`,
  });
  if (problem === undefined) showView('plan');
}

const nothing: readonly StudyJob[] = [];

export function WeakOven({ file, setting, units }: WeakOvenProps) {
  const weak = useMemo(() => inWeakOven(file, setting), [file, setting]);
  const base = useMemo((): StudyJob => ({ kind: 'evening', file: firstPizzaOf(weak) }), [weak]);
  const own = useMemo((): StudyJob => ({ kind: 'evening', file: firstPizzaOf(file) }), [file]);
  const both = useMemo(() => [base, own], [base, own]);
  const start = useStudied('reader', both);
  const now = comparedIn(start.outcomes[0]);
  const wanted = comparedIn(start.outcomes[1]);
  const reading = readingOf(weak);
  const helps = useMemo(
    () => (now === undefined || !reading.ok ? [] : helpsFor(weak, reading.evening, now, units)),
    [weak, reading, now, units],
  );
  const jobs = useMemo(
    (): readonly StudyJob[] =>
      helps.length === 0
        ? nothing
        : helps.map(({ id, file: helped }) => ({
            kind: 'evening',
            // Longer warming up is itself a time of loading: it must not be left out again.
            file:
              id === 'soak'
                ? { ...firstPizzaOf(helped), pizzas: { ...helped.pizzas, count: 1 } }
                : firstPizzaOf(helped),
          })),
    [helps],
  );
  const studied = useStudied('advice', jobs);
  if (now === undefined) return <p className="muted">Working out the weaker oven …</p>;
  const tried = ranked(helps, studied.outcomes.map(comparedIn), now);
  const [bake] = now.bakes;
  const done = untilDone(now);
  const apart = wanted === undefined ? undefined : done - untilDone(wanted);
  return (
    <section aria-labelledby="adjust-weak">
      <h2 id="adjust-weak">What gets it back</h2>
      <p>
        {unbroken(
          `In an oven that reaches ${temperatureK(setting, units)} the first pizza bakes ${spanText(bake!.minutes)}${
            bake!.finishMinutes < 0.2 ? '' : ` and needs ${halvesText(bake!.finishMinutes)} min of top heat`
          }${apart === undefined || Math.abs(apart) * 60 < alike ? '' : `, ${spanText(Math.abs(apart))} ${apart > 0 ? 'longer' : 'shorter'} than planned`}.`,
        )}
      </p>
      <Progress group="advice" studied={studied} total={jobs.length} what="things tried" />
      <ol className="helps">
        {tried.map((one) => (
          <li key={one.help.id} className={60 * one.gains < alike ? 'no-help' : undefined}>
            <span>
              <b>{unbroken(one.help.what)}</b>
              <span className="source">{unbroken(bringsText(one, now))}</span>
            </span>
            <button
              type="button"
              className="key framed try-key"
              aria-label={`Open as a plan: ${one.help.what}`}
              onClick={() => {
                open(one.help);
              }}
            >
              Open as a plan
            </button>
          </li>
        ))}
      </ol>
      <p className="small muted">
        Done: base and rim both have the shade that is wanted. Estimates: the instructions of the makers of
        oven and plate come first.
      </p>
    </section>
  );
}
