import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { handling } from '../../../physics/evening/handling.ts';
import { placeHands } from '../../../physics/evening/handsLane.ts';
import { handworkFor, schedule, type ScheduleInput } from '../../../physics/evening/schedule.ts';

const within = (min: number, max: number) => fc.integer({ min, max });
const inputs: fc.Arbitrary<ScheduleInput> = fc
  .record({
    kind: fc.constantFrom('eatAt' as const, 'startAt' as const),
    mixing: fc.constantFrom('hand' as const, 'mixer' as const, 'food-processor' as const),
    preheat: within(300, 7200),
    bakes: fc.array(fc.record({ bake: within(60, 1500), wait: within(0, 1200) }), {
      minLength: 1,
      maxLength: 20,
    }),
    rest: within(0, 6 * 3600),
    rise: within(600, 30 * 3600),
    later: within(60, 20 * 3600),
  })
  .map(({ kind, mixing, preheat, bakes, rest, rise, later }) => {
    let at = preheat;
    const times = bakes.map(({ bake, wait }) => {
      const inAt = at;
      at += bake + wait;
      return { inAt, outAt: inAt + bake };
    });
    return {
      kind,
      bakes: times,
      stages: [
        { where: 'room' as const, as: 'bulk' as const, duration: Math.max(0, rise - rest) },
        { where: 'room' as const, as: 'balls' as const, duration: rest },
      ],
      ready: rise,
      past: rise + later,
      ...handworkFor(bakes.length, mixing),
    };
  });
const sure = { seed: 20260131, numRuns: 400 };
const rounding = 1e-6;

describe('schedule, whatever the evening', () => {
  it('asks one thing at a time of one pair of hands', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const tasks = [...schedule(input).hands].sort((a, b) => a.from - b.from);
        for (const [i, task] of tasks.entries()) {
          expect(task.to).toBeGreaterThan(task.from);
          if (i > 0) expect(task.from).toBeGreaterThanOrEqual(tasks[i - 1]!.to - rounding);
        }
      }),
      sure,
    );
  });

  it('keeps the order: mixed, risen, balled, rested, shaped in turn, loaded, cut', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const plan = schedule(input);
        expect(plan.mixTo).toBeLessThanOrEqual(plan.ballFrom + rounding);
        const rest = input.stages.at(-1)!.duration;
        expect(plan.shapeable - plan.ballTo).toBeGreaterThanOrEqual(rest - rounding);
        expect(plan.doughReady - plan.mixTo).toBeGreaterThanOrEqual(input.ready - rounding);
        expect(plan.shapeable).toBeGreaterThanOrEqual(plan.doughReady - rounding);
        expect(plan.doughPast).toBeGreaterThanOrEqual(plan.doughReady);
        const find = (kind: string, pizza: number) =>
          plan.hands.find((task) => task.kind === kind && task.pizza === pizza)!;
        const prepared = plan.hands.find((task) => task.kind === 'prepare')!;
        expect(prepared.to).toBeLessThanOrEqual(find('shape', 1).from + rounding);
        expect(prepared.from).toBeGreaterThanOrEqual(plan.mixTo - rounding);
        expect(find('shape', 1).from).toBeGreaterThanOrEqual(plan.shapeable - rounding);
        for (let pizza = 1; pizza <= input.bakes.length; pizza++) {
          const shift = input.bakes[0]!.inAt;
          expect(find('shape', pizza).to).toBeLessThanOrEqual(find('load', pizza).from + rounding);
          expect(find('load', pizza).to).toBeCloseTo(input.bakes[pizza - 1]!.inAt - shift, 6);
          expect(find('cut', pizza).from).toBeGreaterThanOrEqual(
            input.bakes[pizza - 1]!.outAt - shift - rounding,
          );
          if (pizza > 1)
            expect(find('shape', pizza).from).toBeGreaterThanOrEqual(find('shape', pizza - 1).to - rounding);
        }
      }),
      sure,
    );
  });

  it('gives slack 0 to what sets the pace and 0 or more to the rest, and switches on no sooner than needed', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const plan = schedule(input);
        expect(plan.slack[plan.limitedBy]).toBe(0);
        for (const slack of Object.values(plan.slack)) expect(slack).toBeGreaterThanOrEqual(0);
        expect(plan.ovenOn).toBe(-input.bakes[0]!.inAt);
        const begin = Math.min(plan.ovenOn, plan.mixFrom);
        if (input.kind === 'startAt') expect(plan.mixFrom).toBe(begin);
      }),
      sure,
    );
  });
});

const one = { inAt: 3000, outAt: 3400 };
const stages = (bulk: number, balls: number): ScheduleInput['stages'] => [
  { where: 'room', as: 'bulk', duration: bulk },
  { where: 'room', as: 'balls', duration: balls },
];
const quick: ScheduleInput = {
  kind: 'startAt',
  bakes: [one],
  stages: stages(2700, 900),
  ready: 3600,
  past: 7000,
  ...handworkFor(1, 'mixer'),
};

describe('who sets the pace', () => {
  it('is the dough when it takes longer than the plate: the oven goes on later', () => {
    const plan = schedule(quick);
    expect(plan.limitedBy).toBe('dough');
    expect(plan.slack.plate).toBeCloseTo(
      handling.mix.mixer + 3600 + handling.shape + handling.load - 3000,
      6,
    );
    expect(plan.ovenOn - plan.mixFrom).toBeCloseTo(plan.slack.plate, 6);
  });

  it('is the plate when it takes longer than the dough: the dough waits when the cook starts now', () => {
    const slow = { ...quick, bakes: [{ inAt: 6000, outAt: 6400 }] };
    const now = schedule(slow);
    expect(now.limitedBy).toBe('plate');
    expect(now.mixFrom).toBe(now.ovenOn);
    const later = schedule({ ...slow, kind: 'eatAt' });
    expect(later.mixFrom - now.mixFrom).toBeCloseTo(later.slack.dough, 6);
  });

  it('is the hands when no pause is long enough for sauce and cheese', () => {
    const plan = schedule({
      ...quick,
      bakes: [{ inAt: 600, outAt: 900 }],
      stages: stages(240, 60),
      ready: 300,
    });
    expect(plan.limitedBy).toBe('hands');
    expect(plan.slack.dough).toBeGreaterThan(0);
    expect(plan.slack.dough).toBeCloseTo(handling.prepare.once + handling.prepare.each - 60, 6);
  });
});

describe('a rise in several places', () => {
  const day = 24 * 3600;
  const plan = schedule({
    ...quick,
    kind: 'eatAt',
    stages: [
      { where: 'room', as: 'bulk', duration: 3600 },
      { where: 'refrigerator', as: 'balls', duration: day },
      { where: 'room', as: 'balls', duration: 7200 },
    ],
    ready: 3600 + day + 1800,
    past: 3600 + day + 12_000,
  });

  it('keeps every place as long as asked, one after the other, and shapes when the last is over', () => {
    expect(plan.stages.map(({ from, to }) => to - from)).toEqual([3600, day, 7200]);
    for (const [i, { from }] of plan.stages.entries())
      expect(from).toBeCloseTo(i === 0 ? plan.mixTo : plan.stages[i - 1]!.to, 6);
    expect(plan.shapeable).toBeCloseTo(plan.stages[2]!.to, 6);
    expect(plan.doughReady).toBeCloseTo(plan.shapeable - 5400, 6);
    expect(plan.ballTo).toBeCloseTo(plan.stages[1]!.from, 6);
  });

  it('asks for hands where the dough changes its place, and once to ball it', () => {
    const moves = plan.hands.filter(({ kind }) => kind === 'move');
    expect(moves.map(({ to }) => to)).toEqual([plan.stages[2]!.from]);
    expect(plan.hands.filter(({ kind }) => kind === 'ball')).toHaveLength(1);
  });

  it('prepares sauce and cheese in the last pause, not a day before', () => {
    const prepared = plan.hands.find(({ kind }) => kind === 'prepare')!;
    expect(prepared.from).toBeGreaterThan(plan.stages[2]!.from);
  });

  it('begins each chain no later than it is long', () => {
    expect(plan.beginBy.dough).toBeCloseTo(plan.mixFrom, 6);
    expect(plan.beginBy.plate).toBe(plan.ovenOn);
    expect(plan.limitedBy).toBe('dough');
    expect(plan.beginBy.plate - plan.beginBy.dough).toBeCloseTo(plan.slack.plate, 6);
  });
});

describe('hands at the oven', () => {
  it('shape the next pizza while the plate recovers, when there is time', () => {
    const tasks = placeHands([
      { inAt: 0, outAt: 400 },
      { inAt: 880, outAt: 1280 },
    ]);
    const shaped = tasks.find(({ kind, pizza }) => kind === 'shape' && pizza === 2)!;
    expect(shaped.to).toBe(880 - handling.load);
    expect(shaped.from).toBeGreaterThanOrEqual(400 + handling.cut);
  });

  it('shape it while the one before bakes, when the plate needs no recovery', () => {
    const tasks = placeHands([
      { inAt: 0, outAt: 500 },
      { inAt: 500, outAt: 1000 },
    ]);
    const shaped = tasks.find(({ kind, pizza }) => kind === 'shape' && pizza === 2)!;
    expect(shaped.from).toBeGreaterThan(0);
    expect(shaped.to).toBeLessThanOrEqual(500 - handling.load);
  });
});
