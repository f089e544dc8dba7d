import { describe, expect, it } from 'vitest';
import {
  alarmsAfterReload,
  alarmsOf,
  heard,
  lookAt,
  movedClock,
  noAlarms,
  type Alarm,
  type AlarmState,
} from '../../../physics/tonight/alarms.ts';
import { compareClocks, longestTimeout, waitFor } from '../../../physics/tonight/clockWatch.ts';
import { courseOf } from '../../../physics/tonight/course.ts';

const minute = 60_000;
const start = Date.UTC(2026, 0, 31, 18);
const alarm = (step: string, minutes: number): Alarm => ({
  step,
  at: start + minutes * minute,
  title: step,
  body: '',
});
const two = [alarm('bake-1', 5), alarm('turn-2', 9)];

/** Looks at every so many ms; gives what rang, in order, as `step` or `step missed`. */
function watch(alarms: readonly Alarm[], moments: readonly number[], from: AlarmState = noAlarms) {
  let state = from;
  const rang: string[] = [];
  for (const now of moments) {
    const tick = lookAt(state, alarms, now);
    state = tick.state;
    rang.push(...tick.began.map(({ alarm: { step }, missed }) => `${step}${missed ? ' missed' : ''}`));
  }
  return { state, rang };
}

const seconds = (from: number, to: number): number[] =>
  Array.from({ length: Math.floor((to - from) / 1000) + 1 }, (_, i) => from + 1000 * i);

describe('alarms', () => {
  it('ring once, at their instant, and go on until they are heard', () => {
    const { state, rang } = watch(two, seconds(start, start + 10 * minute));
    expect(rang).toEqual(['bake-1', 'turn-2']);
    expect(state.ringing.map(({ alarm: { step } }) => step)).toEqual(['bake-1', 'turn-2']);
    const quiet = heard(heard(state, 'bake-1'), 'turn-2');
    expect(quiet.ringing).toEqual([]);
    expect(watch(two, seconds(start + 10 * minute, start + 12 * minute), quiet).rang).toEqual([]);
  });

  it('three hours of sleep: both are missed, in order, told with their age, with one look', () => {
    const asleep = watch(two, [start]).state;
    const tick = lookAt(asleep, two, start + 180 * minute);
    expect(
      tick.began.map(({ alarm: { step }, missed, ageSeconds }) => [step, missed, ageSeconds / 60]),
    ).toEqual([
      ['bake-1', true, 175],
      ['turn-2', true, 171],
    ]);
    expect(lookAt(tick.state, two, start + 181 * minute).began).toEqual([]);
  });

  it('a hidden window that looks once a minute loses nothing and calls nothing twice', () => {
    const every = Array.from({ length: 30 }, (_, i) => start + 20_000 + i * minute);
    expect(watch(two, every).rang.map((text) => text.split(' ')[0])).toEqual(['bake-1', 'turn-2']);
  });

  it('a clock set back an hour after it rang: it does not ring again', () => {
    const first = watch(two, seconds(start, start + 6 * minute));
    expect(first.rang).toEqual(['bake-1']);
    const back = two.map((one) => ({ ...one, at: one.at - 60 * minute }));
    const state = movedClock(first.state, -3600);
    const again = watch(back, seconds(start - 54 * minute, start - 40 * minute), state);
    expect(again.rang).toEqual(['turn-2']);
    // Nor is a minute more lost on it.
    const more = [{ ...back[0]!, at: back[0]!.at + 2 * minute }];
    expect(watch(more, seconds(start - 54 * minute, start - 52 * minute), state).rang).toEqual(['bake-1']);
  });

  it('a clock set back before anything was looked at moves what was heard', () => {
    const before = alarmsAfterReload(two, new Map([['bake-1', start + 5 * minute]]));
    expect(movedClock(before, -3600)).toEqual({
      looked: undefined,
      told: { 'bake-1': start - 55 * minute },
      ringing: [],
    });
  });

  it('one more minute: it falls silent, and rings when that is over', () => {
    const ringing = watch(two, seconds(start, start + 5 * minute)).state;
    const later = [alarm('bake-1', 6.5), two[1]!];
    const after = watch(later, seconds(start + 5 * minute + 1000, start + 6 * minute), ringing);
    expect(after.state.ringing).toEqual([]);
    expect(watch(later, seconds(start + 6 * minute, start + 7 * minute), after.state).rang).toEqual([
      'bake-1',
    ]);
  });

  it('a reload in mid-bake: what was heard before stays silent, what was not is missed', () => {
    const state = alarmsAfterReload(two, new Map([['bake-1', start + 5.5 * minute]]));
    expect(watch(two, [start + 10 * minute], state).rang).toEqual(['turn-2 missed']);
    expect(watch(two, [start + 10 * minute], alarmsAfterReload(two, new Map())).rang).toEqual([
      'bake-1 missed',
      'turn-2 missed',
    ]);
  });

  it('a step that is over falls silent', () => {
    const ringing = watch(two, seconds(start, start + 5 * minute)).state;
    expect(lookAt(ringing, [two[1]!], start + 5 * minute + 500).state.ringing).toEqual([]);
  });

  it('come from a course: the oven, the plate, each pizza; a rise only passes', () => {
    const at = (minutes: number): string => new Date(start + minutes * minute).toISOString();
    const task = (
      id: string,
      lane: 'dough' | 'oven' | 'hands',
      from: number,
      to: number,
      waitsFor: string[] = [],
    ) => ({
      id,
      lane,
      name: id,
      from: at(from),
      to: at(to),
      needs: [],
      waitsFor,
    });
    const tasks = [
      task('rise', 'dough', 0, 60),
      task('preheat', 'oven', 20, 60),
      task('load-1', 'hands', 60, 61, ['rise']),
      task('bake-1', 'oven', 61, 67, ['preheat', 'load-1']),
    ];
    const titles = (log: Parameters<typeof courseOf>[0]['log'], now: number): string[] =>
      alarmsOf(courseOf({ tasks, log, now: start + now * minute })).map(
        ({ title, at: when }) => `${title} ${(when - start) / minute}`,
      );
    const ahead = [task('ahead-preheat', 'oven', 5, 60)];
    expect(alarmsOf(courseOf({ tasks: ahead, log: [], now: start }))).toMatchObject([
      { title: 'Oven on for the bases', body: '' },
    ]);
    expect(titles([], 0)).toEqual(['Oven on 20', 'Pizza 1 in 60', 'Pizza 1 out 67']);
    const on = { at: start + 25 * minute, what: 'done', step: 'preheat' } as const;
    expect(titles([on], 30)).toEqual(['Plate ready 65', 'Pizza 1 in 65', 'Pizza 1 out 72']);
    // With the first pizza in, nobody has to be told that the plate is ready.
    expect(titles([on, { at: start + 66 * minute, what: 'done', step: 'load-1' }], 67)).toEqual([
      'Pizza 1 out 72',
    ]);
  });
});

describe('two clocks', () => {
  const look = (wall: number, counted: number) => ({ wall: start + wall * 1000, counted: counted * 1000 });
  it('tells sleep and a clock put forward from one set back', () => {
    expect(compareClocks(look(0, 0), look(60, 60.5))).toEqual({ kind: 'steady' });
    expect(compareClocks(look(0, 0), look(10_800, 1))).toMatchObject({ kind: 'jumped', seconds: 10_799 });
    expect(compareClocks(look(0, 0), look(-3590, 10))).toEqual({ kind: 'back', seconds: -3600 });
  });
  it('never waits longer than an hour, nor so long that a timer fires at once', () => {
    expect(waitFor(start + 90 * 24 * 60 * minute, start)).toBe(3_600_000);
    expect(waitFor(start - 1, start)).toBe(0);
    expect(waitFor(start + 5000, start)).toBe(5000);
    expect(longestTimeout).toBe(2_147_483_647);
  });
});
