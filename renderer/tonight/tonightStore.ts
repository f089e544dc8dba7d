/**
 * The evening as it runs, in the window: the log lies in the plan (and so is saved, kept aside and undone with it),
 * everything else is worked out from it and the clock. A rehearsal has a log and a clock of its own and leaves nothing.
 */
import { create } from 'zustand';
import { change, usePlan } from '../state/planStore.ts';
import { useForecast } from '../state/forecastStore.ts';
import { showView } from '../state/viewStore.ts';
import { epochOf, epochOfWall, instantText, localOffset, wallFields } from '../words/clock.ts';
import { alarmsAfterReload, noAlarms, type AlarmState } from '../../physics/tonight/alarms.ts';
import {
  courseOf,
  movedBetween,
  stageOf,
  type Course,
  type CourseStep,
  type Moved,
} from '../../physics/tonight/course.ts';
import {
  readLog,
  sinceBegun,
  takenBack,
  writeEntry,
  type Happened,
  type LogEntry,
} from '../../physics/tonight/log.ts';
import { rehearsalSpeed, type Rehearsal } from '../../physics/tonight/rehearsal.ts';
import type { Task } from '../../physics/evening/answer.ts';
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
  /** ms of the page's own clock when that was said */
  readonly saidAt: number;
}

export const useTonight = create<TonightState>()(() => ({
  now: Date.now(),
  alarms: noAlarms,
  preheat: undefined,
  rehearsal: undefined,
  moved: [],
  note: '',
  saidAt: 0,
}));

const noEntries: readonly LogEntryFile[] = [];
let readFor: readonly LogEntryFile[] = noEntries;
let readEntries: readonly LogEntry[] = [];

/** The log of the rehearsal that runs, else the plan's. The same one while it says the same. */
export function logOf(
  rehearsal: RunningRehearsal | undefined,
  log: readonly LogEntryFile[] = noEntries,
): readonly LogEntry[] {
  if (rehearsal !== undefined) return rehearsal.log;
  if (log !== readFor) {
    readFor = log;
    readEntries = readLog(log);
  }
  return readEntries;
}

export function wholeLog(): readonly LogEntry[] {
  return logOf(useTonight.getState().rehearsal, usePlan.getState().file.tonight?.log);
}

export function presentMoment(): number {
  const { rehearsal } = useTonight.getState();
  if (rehearsal === undefined) return Date.now();
  return rehearsal.from + rehearsalSpeed * (performance.now() - rehearsal.counted);
}

/** The course of the evening that was last begun. */
export function courseFrom(
  tasks: readonly Task[],
  log: readonly LogEntry[],
  now: number,
  preheat: PreheatForecast | undefined,
): Course {
  return courseOf({ tasks, log: sinceBegun(log), now, preheatSeconds: preheat?.ready.value });
}

/** The evening's course; undefined before there is a plan. */
export function courseNow(now = presentMoment()): Course | undefined {
  const answer = useForecast.getState().forecast?.answer;
  return answer && courseFrom(answer.tasks, wholeLog(), now, useTonight.getState().preheat);
}

export function isRunning(course = courseNow()): boolean {
  return course !== undefined && stageOf(course, sinceBegun(wholeLog()), presentMoment()) === 'running';
}

/** An evening, and no rehearsal of one. */
export function eveningRuns(): boolean {
  return useTonight.getState().rehearsal === undefined && isRunning();
}

/** @param along fields of the plan that change with it, as one step of the history */
function add(entries: readonly LogEntry[], along: Readonly<Record<string, unknown>> = {}): void {
  const { rehearsal } = useTonight.getState();
  if (rehearsal !== undefined) {
    useTonight.setState({ rehearsal: { ...rehearsal, log: [...rehearsal.log, ...entries] } });
    return;
  }
  const log = usePlan.getState().file.tonight?.log ?? [];
  const offset = localOffset(Date.now());
  change({ ...along, 'tonight.log': [...log, ...entries.map((entry) => writeEntry(entry, offset))] });
}

/** Runs a change of the log and says what it moved. */
function telling(changeLog: (now: number) => void, note = ''): void {
  const now = presentMoment();
  const before = courseNow(now);
  changeLog(now);
  const after = courseNow(now);
  useTonight.setState({ now, ...said(before && after ? movedBetween(before, after) : [], note) });
}

/** What is told of the last entry, until it is old. */
export function said(moved: readonly Moved[], note: string): Pick<TonightState, 'moved' | 'note' | 'saidAt'> {
  return { moved, note, saidAt: performance.now() };
}

/** Notes what happened at this moment, and what it moves. */
export function record(...happened: readonly Happened[]): void {
  telling((now) => {
    add(happened.map((one) => ({ at: now, ...one })));
  });
}

/** Takes back the last thing that was said, even after a restart. */
export function takeBack(): void {
  telling(() => {
    const gone = takenBack(wholeLog());
    const stays = <Entry>(log: readonly Entry[]): readonly Entry[] => log.filter((_, i) => !gone.has(i));
    const { rehearsal } = useTonight.getState();
    if (rehearsal === undefined)
      change({ 'tonight.log': stays(usePlan.getState().file.tonight?.log ?? noEntries) });
    else useTonight.setState({ rehearsal: { ...rehearsal, log: stays(rehearsal.log) } });
  }, 'Taken back.');
}

/** A step, or with its load a whole pizza, is left out. */
export function leaveOut({ id }: CourseStep): void {
  const [, pizza] = /^load-(\d+)$/u.exec(id) ?? [];
  const steps = pizza === undefined ? [id] : [id, `bake-${pizza}`, `cut-${pizza}`];
  record(...steps.map((step) => ({ what: 'skipped', step }) as const));
}

/** Nothing more tonight: what is still open is left out. */
export function endEvening(): void {
  const open = courseNow()?.steps.filter(({ status }) => status !== 'done' && status !== 'skipped') ?? [];
  record(...open.map(({ id }) => ({ what: 'skipped', step: id }) as const));
}

/** The same evening a week on, or as many as it takes for it to lie ahead; the view Plan shows it. */
export function planNext(): void {
  const answer = useForecast.getState().forecast?.answer;
  if (answer === undefined) return;
  const { kind, at } = answer.anchor;
  const then = epochOf(at);
  const { day, time } = wallFields(then, localOffset(then));
  const now = Date.now();
  let next = then;
  for (let weeks = 1; next <= now; weeks += 1) {
    const moved = new Date(Date.parse(day) + weeks * 7 * 86_400_000).toISOString().slice(0, 10);
    const noon = Date.parse(`${moved}T12:00:00Z`);
    next = epochOfWall(moved, time, localOffset(noon)) ?? noon;
  }
  change({ anchor: { kind, time: instantText(next, localOffset(next)) } });
  showView('plan');
}

/**
 * Begins the evening anew: what lies before now is taken to have gone as planned. What was said of pizzas before stays
 * with the plan.
 */
export function begin(): void {
  useTonight.setState({ alarms: noAlarms, preheat: undefined, ...said([], '') });
  const now = presentMoment();
  const answer = useForecast.getState().forecast?.answer;
  if (answer === undefined) return;
  const { tasks, anchor } = answer;
  // A plan that names no hour takes the next one that comes round: from now on it is this one.
  const named = usePlan.getState().file.anchor?.time !== undefined;
  const over = courseOf({ tasks, log: [], now }).steps.filter(
    ({ confirmed, planned }) => confirmed && planned.to <= now,
  );
  add(
    [
      { at: now, what: 'begun' },
      ...over.map(({ id, planned }): LogEntry => ({
        at: id === 'preheat' ? planned.from : planned.to,
        what: 'done',
        step: id,
      })),
    ],
    named ? {} : { anchor: { kind: anchor.kind, time: anchor.at } },
  );
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
