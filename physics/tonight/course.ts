/**
 * The evening as it runs: the plan's tasks, moved by what has happened. A state machine without a clock: the same tasks,
 * log and moment give the same course, after a reload, a crash or a night's sleep of the machine.
 *
 * What follows directly on something goes with it, later or sooner; what had room before it keeps its hour and gives way
 * only when it must. A step that nobody confirmed is not over: what waits for it waits, minute by minute.
 */
import type { Task } from '../evening/answer.ts';
import { instantOf } from '../evening/clock.ts';
import { byTodaysClock, type LogEntry } from './log.ts';

export type StepStatus = 'done' | 'skipped' | 'running' | 'due' | 'ahead';

export interface CourseStep {
  readonly id: string;
  readonly lane: Task['lane'];
  readonly name: string;
  /** what the cook does */
  readonly step: string | undefined;
  readonly status: StepStatus;
  /** ms since 1970-01-01T00:00Z */
  readonly from: number;
  readonly to: number;
  /** ms when it calls: a pizza to come out, anything else to begin; does not move while the cook is late */
  readonly calls: number;
  readonly planned: { readonly from: number; readonly to: number };
  /** whether the cook says when it is over; else it ends by itself */
  readonly confirmed: boolean;
}

export interface CourseInput {
  readonly tasks: readonly Task[];
  readonly log: readonly LogEntry[];
  /** ms since 1970-01-01T00:00Z */
  readonly now: number;
  /** s that the preheat takes by the readings so far; undefined: as planned */
  readonly preheatSeconds?: number | undefined;
}

export interface Course {
  /** in the order in which they begin */
  readonly steps: readonly CourseStep[];
  /** the one thing to do or to watch now, and the next after it */
  readonly now: CourseStep | undefined;
  readonly next: CourseStep | undefined;
  /** ms when the last step is over */
  readonly ends: number;
  /** ms by which the dough goes past its time before the first pizza is shaped; undefined when it does not */
  readonly doughPast: number | undefined;
}

/** s of planned room below which a step is taken to follow directly */
const directly = 1;

/** Handwork is over when the cook says so, a pizza is out when it is out; the oven is on when it was switched on. */
function isConfirmed(id: string, lane: Task['lane']): boolean {
  return lane === 'hands' || id === 'preheat' || /^bake-\d+$/u.test(id);
}

interface Place {
  readonly from: number;
  readonly to: number;
  readonly calls: number;
  readonly status: StepStatus;
}

/** The bars that only repeat handwork, and the ready window, are no steps. */
function isStep({ id }: Task): boolean {
  return id !== 'mix' && id !== 'ball' && id !== 'ready';
}

const ms = (text: string): number => instantOf(text).epochMilliseconds;

/** The evening as it stands at `now`: every step with its status and its moment, and what moved it. */
export function courseOf({ tasks, log, now, preheatSeconds }: CourseInput): Course {
  const happened = byTodaysClock(log);
  const planned = new Map(tasks.map((task) => [task.id, { from: ms(task.from), to: ms(task.to) }]));
  const ordered = tasks.filter(isStep).sort((a, b) => ms(a.from) - ms(b.from) || ms(a.to) - ms(b.to));
  const last = (what: 'done' | 'skipped', step: string): LogEntry | undefined =>
    happened.findLast((entry) => entry.what === what && entry.step === step);
  const places = new Map<string, Place>();
  let handsFree = -Infinity;
  for (const task of ordered) {
    const plan = planned.get(task.id)!;
    const done = last('done', task.id);
    const skipped = last('skipped', task.id)?.at ?? (done ? undefined : tooLate(task.id, last));
    const usual = lengthOf(task, plan, happened, preheatSeconds);
    const earliest = Math.max(
      beginOf(task, plan, planned, places, happened),
      task.lane === 'hands' ? handsFree : -Infinity,
    );
    // Bases that were wrapped late are kept less long, and nobody waits for them.
    const length = task.id === 'ahead-keep' ? Math.max(0, plan.to - earliest) : usual;
    const place = placed(task, { earliest, length, done: done?.at, skipped, now });
    places.set(task.id, place);
    if (task.lane === 'hands') handsFree = Math.max(handsFree, place.to);
  }
  const steps = ordered
    .map((task): CourseStep => {
      const { from, to, calls, status } = places.get(task.id)!;
      const { id, lane, name, step } = task;
      return {
        id,
        lane,
        name,
        step,
        status,
        from,
        to,
        calls,
        planned: planned.get(id)!,
        confirmed: isConfirmed(id, lane),
      };
    })
    .sort((a, b) => a.from - b.from);
  return {
    steps,
    ...nowAndNext(steps),
    ends: Math.max(...steps.map(({ to }) => to)),
    doughPast: past(steps, planned),
  };
}

/** ms when a pizza came out, or was left out, before this was done to it; nothing of it is left to do then. */
function tooLate(
  id: string,
  last: (what: 'done' | 'skipped', step: string) => LogEntry | undefined,
): number | undefined {
  const [, pizza] = /^(?:turn|look|pull|top)-(\d+)$/u.exec(id) ?? [];
  if (pizza === undefined) return undefined;
  return (last('done', `bake-${pizza}`) ?? last('skipped', `bake-${pizza}`))?.at;
}

function lengthOf(
  { id }: Task,
  plan: { readonly from: number; readonly to: number },
  happened: readonly LogEntry[],
  preheatSeconds: number | undefined,
): number {
  const longer = happened.reduce(
    (sum, entry) => (entry.what === 'longer' && entry.step === id ? sum + 1000 * entry.seconds : sum),
    0,
  );
  const usual =
    id === 'preheat' && preheatSeconds !== undefined ? 1000 * preheatSeconds : plan.to - plan.from;
  return usual + longer;
}

/** The task of the oven that a load ends, if it is there. */
function ovenBefore(pizza: number, places: ReadonlyMap<string, Place>): string | undefined {
  return [`recover-${pizza}`, ...(pizza === 1 ? ['preheat'] : [`bake-${pizza - 1}`])].find((id) =>
    places.has(id),
  );
}

/** ms when a task can begin, by what it waits for and by its own hour. */
function beginOf(
  task: Task,
  plan: { readonly from: number; readonly to: number },
  planned: ReadonlyMap<string, { readonly from: number; readonly to: number }>,
  places: ReadonlyMap<string, Place>,
  happened: readonly LogEntry[],
): number {
  const [, kind, number] = /^(load|bake|turn|look|pull|top)-(\d+)$/u.exec(task.id) ?? [];
  const ends = task.waitsFor.flatMap((id) => (places.has(id) ? [places.get(id)!.to] : []));
  if (kind === 'bake' && places.has(`load-${number!}`)) return places.get(`load-${number!}`)!.to;
  if (kind === 'load') {
    const oven = ovenBefore(Number(number), places);
    const before =
      oven === undefined ? plan.from : places.get(oven)!.to - (planned.get(oven)!.to - plan.from);
    return Math.max(before, wantedLater(happened, planned.get('load-1')?.from ?? plan.from), ...ends);
  }
  if (kind !== undefined && places.has(`load-${number!}`)) {
    const load = `load-${number!}`;
    return places.get(load)!.to + (plan.from - planned.get(load)!.to);
  }
  const ready = readyFor(task.id, plan, planned, places, happened);
  if (ready !== undefined) return Math.max(ready, ...ends);
  const plannedEnds = task.waitsFor.flatMap((id) => (planned.has(id) ? [planned.get(id)!.to] : []));
  const room = plan.from - Math.max(...plannedEnds, -Infinity);
  const follows = ends.length > 0 && room < 1000 * directly;
  const own = isDough(task) ? plan.from : wantedLater(happened, plan.from);
  return follows ? Math.max(...ends) : Math.max(own, ...ends);
}

/**
 * ms when a pizza is made ready for a plate that is free later or sooner than planned: a base shaped long before it is
 * loaded sticks, and top heat turned up too soon is over too soon. Undefined for everything else.
 */
function readyFor(
  id: string,
  plan: { readonly from: number },
  planned: ReadonlyMap<string, { readonly to: number }>,
  places: ReadonlyMap<string, Place>,
  happened: readonly LogEntry[],
): number | undefined {
  const [, number] = /^(?:shape|top-before)-(\d+)$/u.exec(id) ?? [];
  if (number === undefined) return undefined;
  const moved = (before: string): number | undefined => {
    const place = places.get(before);
    return place && plan.from + place.to - planned.get(before)!.to;
  };
  for (let pizza = Number(number) - 1; pizza > 0; pizza -= 1) {
    const from = moved(`bake-${pizza}`);
    if (from !== undefined) return from;
  }
  // The first pizza is wanted at an hour, and no sooner.
  return Math.max(wantedLater(happened, plan.from), moved('preheat') ?? -Infinity);
}

/** Dough rises at its own pace, whoever is late; so does what is done to it before it is shaped. */
function isDough({ id, lane }: Task): boolean {
  return lane === 'dough' || /^(hands-mix|hands-ball|hands-ahead|ahead-[a-z]+|move-\d+)$/u.test(id);
}

/** An hour of the plan, later by what the guests are. */
function wantedLater(happened: readonly LogEntry[], planned: number): number {
  return happened.reduce(
    (sum, entry) => (entry.what === 'guestsLate' ? sum + 1000 * entry.seconds : sum),
    planned,
  );
}

function placed(
  { id, lane }: Task,
  about: {
    readonly earliest: number;
    readonly length: number;
    readonly done: number | undefined;
    readonly skipped: number | undefined;
    readonly now: number;
  },
): Place {
  const { earliest, length, done, skipped, now } = about;
  const ends = earliest + length;
  const calls = /^bake-\d+$/u.test(id) ? ends : earliest;
  if (skipped !== undefined)
    return { from: Math.min(earliest, skipped), to: skipped, calls, status: 'skipped' };
  if (id === 'preheat') {
    // Confirmed is its begin: the oven was switched on, and calls again when the plate is ready.
    if (done === undefined) {
      const from = Math.max(earliest, now);
      return { from, to: from + length, calls, status: now >= earliest ? 'due' : 'ahead' };
    }
    const to = done + length;
    return { from: done, to, calls: to, status: now >= to ? 'done' : 'running' };
  }
  if (done !== undefined) return { from: Math.min(earliest, done), to: done, calls, status: 'done' };
  if (now < earliest) return { from: earliest, to: ends, calls, status: 'ahead' };
  if (!isConfirmed(id, lane))
    return { from: earliest, to: ends, calls, status: now >= ends ? 'done' : 'running' };
  return { from: earliest, to: Math.max(ends, now), calls, status: now >= ends ? 'due' : 'running' };
}

/** What wants hands first, then what only wants watching; of several the one that is over soonest. */
function nowAndNext(steps: readonly CourseStep[]): Pick<Course, 'now' | 'next'> {
  const open = steps.filter(({ status }) => status === 'due' || status === 'running');
  const rank = ({ status, confirmed, lane }: CourseStep): number =>
    status === 'due' ? 0 : lane === 'hands' ? 1 : confirmed ? 2 : 3;
  const now = [...open].sort((a, b) => rank(a) - rank(b) || a.to - b.to)[0];
  const ahead = steps.filter(({ status, confirmed }) => status === 'ahead' && confirmed);
  const next =
    [...open.filter((step) => step !== now && step.confirmed), ...ahead][0] ??
    steps.find(({ status }) => status === 'ahead');
  return { now, next };
}

function past(
  steps: readonly CourseStep[],
  planned: ReadonlyMap<string, { readonly from: number; readonly to: number }>,
): number | undefined {
  const shaping = steps.find(({ id }) => id === 'hands-ahead') ?? steps.find(({ id }) => id === 'shape-1');
  const window = planned.get('ready');
  if (shaping === undefined || window === undefined || shaping.status === 'done') return undefined;
  return shaping.from > window.to ? window.to : undefined;
}

export type Stage = 'before' | 'running' | 'over';

/**
 * Where an evening stands. One that is over, with a plan that was since put on another day, is before that one.
 *
 * @param log since it was begun; empty: it was not
 */
export function stageOf({ steps }: Course, log: readonly LogEntry[], moment: number): Stage {
  if (log.length === 0) return 'before';
  // What passes by itself keeps no evening open.
  if (steps.some(({ confirmed, status }) => confirmed && status !== 'done' && status !== 'skipped'))
    return 'running';
  const load = steps.find(({ id }) => id === 'load-1');
  return load !== undefined && load.planned.from > moment ? 'before' : 'over';
}

export interface Moved {
  readonly id: string;
  readonly name: string;
  /** s, later; less than 0: sooner */
  readonly seconds: number;
}

/** What an entry has moved: steps ahead whose end is elsewhere by half a minute or more. */
export function movedBetween(before: Course, after: Course): readonly Moved[] {
  const was = new Map(before.steps.map((step) => [step.id, step]));
  return after.steps.flatMap(({ id, name, status, to }) => {
    const old = was.get(id);
    if (old === undefined || status === 'done' || status === 'skipped') return [];
    const seconds = Math.round((to - old.to) / 1000);
    return Math.abs(seconds) >= 30 ? [{ id, name, seconds }] : [];
  });
}
