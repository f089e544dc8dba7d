/**
 * Alarms of a running evening: each is an instant, never a count. What came due while nobody looked (sleep, a closed
 * window) is missed, shown with its age; nothing rings twice, nothing is lost.
 */
import type { Course, CourseStep } from './course.ts';
import { titleOf } from './titles.ts';

export interface Alarm {
  /** the step it belongs to */
  readonly step: string;
  /** ms since 1970-01-01T00:00Z */
  readonly at: number;
  /** the action, short */
  readonly title: string;
  readonly body: string;
}

/** s after which an alarm that nothing rang for counts as missed */
const usualMissed = 5;

/** Whether a step calls the cook, and with which words. What only passes (a rise, a recovery) does not. */
function alarmOf({ id, name, step, status, calls }: CourseStep, loaded: boolean): Alarm | undefined {
  const alarm = (title: string, body: string): Alarm => ({ step: id, at: calls, title, body });
  if (id === 'preheat') {
    if (status === 'ahead' || status === 'due') return alarm('Oven on', step ?? '');
    // With the first pizza in, nobody has to be told any more.
    return loaded ? undefined : alarm('Plate ready', 'The plate has come to its temperature.');
  }
  if (status === 'done' || status === 'skipped') return undefined;
  if (id === 'ahead-preheat') return alarm('Oven on for the bases', step ?? '');
  const bake = /^bake-(\d+)$/u.exec(id);
  if (bake) return alarm(`Pizza ${bake[1]!} out`, 'Look at it first: colour counts, not the clock.');
  const calling = /^(turn|look|pull|top|top-before|load|move)-\d+$/u.test(id) || id.startsWith('hands-');
  return calling || id === 'shape-1' ? alarm(titleOf({ id, name, status }), step ?? '') : undefined;
}

/** All alarms of a course that still can ring, the soonest first. */
export function alarmsOf({ steps }: Course): readonly Alarm[] {
  const loaded = steps.some(
    ({ id, status }) => id === 'load-1' && (status === 'done' || status === 'skipped'),
  );
  return steps.flatMap((step) => alarmOf(step, loaded) ?? []).sort((a, b) => a.at - b.at);
}

export interface AlarmState {
  /** ms when alarms were last looked at; undefined before the first look */
  readonly looked: number | undefined;
  /** instant for which each step's alarm rang or was shown as missed */
  readonly told: Readonly<Record<string, number>>;
  /** alarms that ring until they are heard */
  readonly ringing: readonly { readonly alarm: Alarm; readonly missed: boolean }[];
}

/** Nothing told yet, nothing ringing. */
export const noAlarms: AlarmState = { looked: undefined, told: {}, ringing: [] };

export interface AlarmTick {
  readonly state: AlarmState;
  /** what began to ring with this look: one sound for all of them */
  readonly began: readonly { readonly alarm: Alarm; readonly missed: boolean; readonly ageSeconds: number }[];
}

/** Moving an alarm by less than this is no new alarm, ms. */
const same = 10_000;

/** A look at the alarms. One whose step is over, or was given more time, falls silent. */
export function lookAt(
  state: AlarmState,
  alarms: readonly Alarm[],
  now: number,
  missedAfter = usualMissed,
): AlarmTick {
  const standing = new Map(alarms.map((alarm) => [alarm.step, alarm]));
  const due = alarms.filter(({ step, at }) => {
    const told = state.told[step];
    return at <= now && (told === undefined || at - told > same);
  });
  const began = due.map((alarm) => {
    const ageSeconds = (now - alarm.at) / 1000;
    return { alarm, missed: ageSeconds > missedAfter, ageSeconds };
  });
  const told = { ...state.told, ...Object.fromEntries(due.map(({ step, at }) => [step, at])) };
  const still = state.ringing.filter(({ alarm }) => {
    const stands = standing.get(alarm.step);
    // Given one more minute, it rings again when that is over.
    return stands !== undefined && stands.at <= now && !due.some(({ step }) => step === alarm.step);
  });
  return {
    state: {
      looked: now,
      told,
      ringing: [...still, ...began.map(({ alarm, missed }) => ({ alarm, missed }))],
    },
    began,
  };
}

/** The cook has heard it: it falls silent, and does not ring again for the same instant. */
export function heard(state: AlarmState, step: string): AlarmState {
  return { ...state, ringing: state.ringing.filter(({ alarm }) => alarm.step !== step) };
}

/** The wall clock was put forward or back by so many seconds: what was told was told by the old one. */
export function movedClock(state: AlarmState, seconds: number): AlarmState {
  const move = (at: number): number => at + 1000 * seconds;
  return {
    looked: state.looked === undefined ? undefined : move(state.looked),
    told: Object.fromEntries(Object.entries(state.told).map(([step, at]) => [step, move(at)])),
    ringing: state.ringing.map(({ alarm, missed }) => ({ alarm: { ...alarm, at: move(alarm.at) }, missed })),
  };
}

/** Alarms as they were told, from a log: what was heard or confirmed before a reload does not ring again. */
export function alarmsAfterReload(
  alarms: readonly Alarm[],
  heardSteps: ReadonlyMap<string, number>,
): AlarmState {
  const told = Object.fromEntries(
    alarms.flatMap(({ step, at }) => {
      const when = heardSteps.get(step);
      return when !== undefined && when >= at ? [[step, at] as const] : [];
    }),
  );
  return { looked: undefined, told, ringing: [] };
}
