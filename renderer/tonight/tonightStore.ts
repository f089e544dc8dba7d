/**
 * The evening as it runs, in the window: the log lies in the plan (and so is saved, kept aside and undone with it),
 * everything else is worked out from it and the clock. A rehearsal has a log and a clock of its own and leaves nothing.
 */
import { create } from 'zustand';
import { change, usePlan } from '../state/planStore.ts';
import { useForecast } from '../state/forecastStore.ts';
import { localOffset } from '../words/clock.ts';
import { alarmsAfterReload, noAlarms, type AlarmState } from '../../physics/tonight/alarms.ts';
import { courseOf, movedBetween, type Course, type Moved } from '../../physics/tonight/course.ts';
import { readLog, sinceBegun, writeEntry, type Happened, type LogEntry } from '../../physics/tonight/log.ts';
import { rehearsalSpeed, type Rehearsal } from '../../physics/tonight/rehearsal.ts';
import type { LogEntryFile } from '../../physics/evening/planFile.ts';
import type { PreheatForecast } from '../../physics/tonight/preheatForecast.ts';

export interface RunningRehearsal {
  readonly kitchen: Rehearsal;
  /** ms of the page's own clock when it began, and ms since 1970 that it began at */
  readonly counted: number;
  readonly from: number;
  readonly log: readonly LogEntry[];
}

export interface TonightState {
  /** ms since 1970, of the rehearsal while one runs */
  readonly now: number;
  readonly alarms: AlarmState;
  readonly preheat: PreheatForecast | undefined;
  readonly rehearsal: RunningRehearsal | undefined;
  /** what the last entry moved, or what the clock did */
  readonly moved: readonly Moved[];
  readonly note: string;
}

export const useTonight = create<TonightState>()(() => ({
  now: Date.now(),
  alarms: noAlarms,
  preheat: undefined,
  rehearsal: undefined,
  moved: [],
  note: '',
}));

let readFor: readonly LogEntryFile[] | undefined;
let readEntries: readonly LogEntry[] = [];

/** The whole log of the plan, or the rehearsal's. The same one while it says the same. */
export function wholeLog(): readonly LogEntry[] {
  const { rehearsal } = useTonight.getState();
  if (rehearsal !== undefined) return rehearsal.log;
  const log = usePlan.getState().file.tonight?.log;
  if (log !== readFor) {
    readFor = log;
    readEntries = readLog(log ?? []);
  }
  return readEntries;
}

export function presentMoment(): number {
  const { rehearsal } = useTonight.getState();
  if (rehearsal === undefined) return Date.now();
  return rehearsal.from + rehearsalSpeed * (performance.now() - rehearsal.counted);
}

/** The evening's course; undefined before there is a plan. */
export function courseNow(now = presentMoment()): Course | undefined {
  const answer = useForecast.getState().forecast?.answer;
  if (answer === undefined) return undefined;
  const { preheat } = useTonight.getState();
  return courseOf({
    tasks: answer.tasks,
    log: sinceBegun(wholeLog()),
    now,
    preheatSeconds: preheat?.ready.value,
  });
}

export function isRunning(): boolean {
  return sinceBegun(wholeLog()).length > 0;
}

function add(entries: readonly LogEntry[]): void {
  const { rehearsal } = useTonight.getState();
  if (rehearsal !== undefined) {
    useTonight.setState({ rehearsal: { ...rehearsal, log: [...rehearsal.log, ...entries] } });
    return;
  }
  const log = usePlan.getState().file.tonight?.log ?? [];
  const offset = localOffset(Date.now());
  change({ 'tonight.log': [...log, ...entries.map((entry) => writeEntry(entry, offset))] });
}

/** Notes what happened at this moment, and what it moves. */
export function record(...happened: readonly Happened[]): void {
  const now = presentMoment();
  const before = courseNow(now);
  add(happened.map((one) => ({ at: now, ...one })));
  const after = courseNow(now);
  const moved = before && after ? movedBetween(before, after) : [];
  useTonight.setState({ now, moved, note: '' });
}

/**
 * Begins the evening anew: what lies before now is taken to have gone as planned. What was said of pizzas before stays
 * with the plan.
 */
export function begin(): void {
  useTonight.setState({ alarms: noAlarms, preheat: undefined, moved: [], note: '' });
  const now = presentMoment();
  const tasks = useForecast.getState().forecast?.answer.tasks ?? [];
  const over = courseOf({ tasks, log: [], now }).steps.filter(
    ({ confirmed, planned }) => confirmed && planned.to <= now,
  );
  add([
    { at: now, what: 'begun' },
    ...over.map(({ id, planned }): LogEntry => ({
      at: id === 'preheat' ? planned.from : planned.to,
      what: 'done',
      step: id,
    })),
  ]);
  useTonight.setState({ now });
}

/** After a reload: what was heard before does not ring again. */
export function alarmsFrom(course: Course): AlarmState {
  const heardAt = new Map(
    wholeLog().flatMap((entry) => (entry.what === 'heard' ? [[entry.step, entry.at] as const] : [])),
  );
  return alarmsAfterReload(
    course.steps.map(({ id, calls }) => ({ step: id, at: calls, title: '', body: '' })),
    heardAt,
  );
}

export function startRehearsal(kitchen: Rehearsal): void {
  const tasks = useForecast.getState().forecast?.answer.tasks ?? [];
  const preheat = tasks.find(({ id }) => id === 'preheat');
  if (preheat === undefined) return;
  const from = Date.parse(preheat.from) - 2 * 60_000;
  const over = tasks.filter(({ to, lane }) => lane === 'hands' && Date.parse(to) <= from);
  const log: LogEntry[] = [
    { at: from, what: 'begun' },
    ...over.map(({ id, to }): LogEntry => ({ at: Date.parse(to), what: 'done', step: id })),
  ];
  useTonight.setState({
    rehearsal: { kitchen, counted: performance.now(), from, log },
    alarms: noAlarms,
    preheat: undefined,
    moved: [],
    note: '',
    now: from,
  });
}

export function endRehearsal(): void {
  useTonight.setState({
    rehearsal: undefined,
    alarms: noAlarms,
    preheat: undefined,
    moved: [],
    note: '',
    now: Date.now(),
  });
}
