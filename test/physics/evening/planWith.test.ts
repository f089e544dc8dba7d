import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readInstant } from '../../../physics/evening/clock.ts';
import { demoIds, demos } from '../../../physics/evening/demos.ts';
import type { PlanAnswer } from '../../../physics/evening/answer.ts';
import type { Anchor, Evening } from '../../../physics/evening/evening.ts';
import { anchorIds } from '../../../physics/evening/ids.ts';
import { type PlanExtras, planWith } from '../../../physics/evening/planWith.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { sampleEngine, type SampleRunShape } from '../../support/sampleRun.ts';

function demo(id: keyof typeof demos = 'saturday'): Evening {
  const read = readPlanObject(demos[id], { now: 0 });
  if (!read.ok) throw new Error(`the demo evening ${id} does not read`);
  return read.evening;
}
const saturday = demo();
const plain: PlanExtras = { assumed: [], warnings: [] };

function answer(
  evening: Evening,
  shape: Partial<SampleRunShape> = {},
  extras: PlanExtras = plain,
): PlanAnswer {
  const planned = planWith(evening, extras, sampleEngine(shape));
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  return planned.answer;
}
function ms(text: string): number {
  const read = readInstant(text);
  if (!read.ok) throw new Error(`${text} is no instant`);
  return read.instant.epochMilliseconds;
}
const anchored = (evening: Evening, kind: Anchor['kind'], time?: string): Evening => ({
  ...evening,
  anchor: {
    kind,
    time: time === undefined ? evening.anchor.time : { epochMilliseconds: ms(time), offsetMinutes: 60 },
  },
});
const minutesBetween = (from: string, to: string): number => (ms(to) - ms(from)) / 60_000;
const task = (plan: PlanAnswer, id: string) => plan.tasks.find((candidate) => candidate.id === id)!;
const codes = (plan: PlanAnswer): readonly string[] => plan.warnings.map(({ code }) => code);

describe('anchors', () => {
  it('eatAt: the first pizza is out one minute before, the oven on a preheat and a bake earlier', () => {
    const plan = answer(saturday, { plateReady: 2880, bakeSeconds: 380 });
    expect(plan.eatAt).toBe('2026-01-31T19:30:00+01:00');
    expect(plan.bakes[0]!.outAt).toBe('2026-01-31T19:29:00+01:00');
    expect(plan.ovenOnAt).toBe('2026-01-31T18:34:40+01:00');
    expect(plan.plateReadyAt).toBe(plan.bakes[0]!.inAt);
    // four bakes of 380 s with three waits of 480 s
    expect(plan.lastEatAt).toBe('2026-01-31T20:13:00+01:00');
  });

  it('startAt: the cook mixes then, and the first pizza waits for dough and plate', () => {
    const plan = answer(anchored(saturday, 'startAt', '2026-01-31T12:00:00+01:00'));
    expect(task(plan, 'hands-mix').from).toBe('2026-01-31T12:00:00+01:00');
    expect(plan.limitedBy).toBe('dough');
    expect(ms(task(plan, 'shape-1').from)).toBe(ms(plan.dough.readyWindow.from));
    expect(minutesBetween(task(plan, 'mix').from, plan.ovenOnAt)).toBeCloseTo(plan.slackMinutes.plate, 1);
  });

  it('ovenOnAt: the oven goes on then, and the dough is begun so that it is ready when the plate is', () => {
    const point = { ...plain, band: false };
    const shape = { plateReady: 2880 };
    const plan = answer(anchored(saturday, 'ovenOnAt', '2026-01-31T18:00:00+01:00'), shape, point);
    expect(plan.ovenOnAt).toBe('2026-01-31T18:00:00+01:00');
    expect(plan.anchor).toEqual({ kind: 'ovenOnAt', at: plan.ovenOnAt });
    expect(plan.bakes[0]!.inAt).toBe('2026-01-31T18:48:00+01:00');
    // The same evening as one that is to be eaten then.
    const same = answer(anchored(saturday, 'eatAt', plan.eatAt), shape, point);
    expect({ ...same, anchor: plan.anchor }).toEqual(plan);
  });

  // Central European Time, Directive 2000/84/EC: put forward on the last Sunday of March, back on that of October, 01:00Z.
  const europe = (epoch: number): number =>
    epoch >= Date.UTC(2026, 2, 29, 1) && epoch < Date.UTC(2026, 9, 25, 1) ? 120 : 60;
  const lunch = (day: string, offset: number, readersClock?: typeof europe): PlanAnswer =>
    answer(
      {
        ...saturday,
        anchor: {
          kind: 'eatAt',
          time: { epochMilliseconds: ms(`${day}T12:00:00+0${offset / 60}:00`), offsetMinutes: offset },
        },
        dough: { ...saturday.dough, yeast: { kind: 'instant', percent: 0.05 } },
      },
      {},
      { ...plain, band: false, ...(readersClock && { readersClock }) },
    );

  it.each([
    ['forward', '2026-03-29', 120, 60],
    ['back', '2026-10-25', 60, 120],
  ])(
    'a clock that is put %s in the night: every moment as the clock on the wall shows it',
    (_, day, at, before) => {
      const told = lunch(day, at, europe);
      const plainly = lunch(day, at);
      const mixed = task(told, 'hands-mix');
      // The same moments, over midnight and as long apart as ever, under the offset of their own time.
      expect(ms(mixed.from)).toBe(ms(task(plainly, 'hands-mix').from));
      expect(mixed.from).toMatch(new RegExp(`\\+0${before / 60}:00$`, 'u'));
      expect(mixed.from.slice(0, 10)).not.toBe(day);
      expect(told.eatAt).toBe(plainly.eatAt);
      expect(told.eatAt.slice(0, 16)).toBe(`${day}T12:00`);
      expect(told.ovenOnAt).toBe(plainly.ovenOnAt);
    },
  );

  it('an evening elsewhere keeps the offset it was written with', () => {
    const there = lunch('2026-03-29', 180, europe);
    expect(there.tasks.every(({ from }) => from.endsWith('+03:00'))).toBe(true);
  });

  it('startAt with a plate slower than the dough: oven on at once, plate sets the pace', () => {
    const plan = answer(anchored(saturday, 'startAt'), { plateReady: 12 * 3600 });
    expect(plan.limitedBy).toBe('plate');
    expect(plan.ovenOnAt).toBe(task(plan, 'mix').from);
    expect(plan.slackMinutes.dough).toBeCloseTo(
      minutesBetween(plan.dough.readyWindow.from, task(plan, 'shape-1').from),
      1,
    );
  });

  it('crosses midnight and the turn of the year without losing the offset', () => {
    const plan = answer(anchored(saturday, 'eatAt', '2026-01-01T00:20:00+01:00'));
    expect(plan.eatAt).toBe('2026-01-01T00:20:00+01:00');
    expect(plan.ovenOnAt.startsWith('2025-12-31T23:')).toBe(true);
    expect(plan.lastEatAt.startsWith('2026-01-01T01:')).toBe(true);
    for (const { from, to } of plan.tasks) {
      expect(from.endsWith('+01:00')).toBe(true);
      expect(ms(to)).toBeGreaterThan(ms(from));
    }
  });
});

const shapes: fc.Arbitrary<Required<Omit<SampleRunShape, 'count'>>> = fc.record({
  plateReady: fc.integer({ min: 600, max: 7200 }),
  bakeSeconds: fc.integer({ min: 70, max: 1200 }),
  waitSeconds: fc.integer({ min: 0, max: 1200 }),
});

describe('every plan', () => {
  it('keeps its anchor, its order, one pair of hands, and its slack', () => {
    fc.assert(
      fc.property(
        shapes,
        fc.constantFrom(...anchorIds),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 0, max: 240 }),
        fc.integer({ min: 0, max: 1440 }),
        (shape, kind, count, rest, minute) => {
          const evening: Evening = {
            ...saturday,
            pizzas: { ...saturday.pizzas, count },
            dough: { ...saturday.dough, restBeforeShaping: rest * 60 },
            anchor: {
              kind,
              time: {
                epochMilliseconds: ms('2026-01-31T00:00:00+01:00') + minute * 60_000,
                offsetMinutes: 60,
              },
            },
          };
          const plan = answer(evening, shape);
          const anchor = evening.anchor.time.epochMilliseconds;
          const tied = { eatAt: plan.eatAt, startAt: task(plan, 'hands-mix').from, ovenOnAt: plan.ovenOnAt };
          expect(ms(tied[kind])).toBe(anchor);
          const hands = plan.tasks.filter(({ lane }) => lane === 'hands');
          for (const [i, { from }] of hands.entries())
            if (i > 0) expect(ms(from)).toBeGreaterThanOrEqual(ms(hands[i - 1]!.to));
          expect(new Set(plan.tasks.map(({ id }) => id)).size).toBe(plan.tasks.length);
          expect(plan.slackMinutes[plan.limitedBy]).toBe(0);
          expect(Math.min(...Object.values(plan.slackMinutes))).toBe(0);
          expect(ms(task(plan, 'shape-1').from)).toBeGreaterThanOrEqual(ms(plan.dough.readyWindow.from));
          expect(ms(plan.plateReadyAt)).toBeLessThanOrEqual(ms(plan.bakes[0]!.inAt));
          const sum = Object.values(plan.dough.ingredientsG).reduce((a, b) => a + b, 0);
          expect(Math.abs(sum - count * 250)).toBeLessThanOrEqual(0.5 + 1e-9);
        },
      ),
      { seed: 20260131, numRuns: 100 },
    );
  });
});

describe('the answer', () => {
  const plan = answer(saturday);

  it('lists every bake, with the wait before it and minutes to each lightness', () => {
    expect(plan.bakes.map(({ pizza }) => pizza)).toEqual([1, 2, 3, 4]);
    expect(plan.bakes.map(({ waitBeforeMinutes }) => waitBeforeMinutes)).toEqual([0, 8, 8, 8]);
    expect(plan.bakes[0]!.minutesToLightness['50']).toBeNull();
    expect(plan.bakes[0]!.minutesToLightness['60']).toBeCloseTo(plan.bakes[0]!.minutes, 9);
  });

  it('has curves in degrees Celsius, four points a minute, the preheat for two hours at least', () => {
    for (const curve of [plan.curves, plan.preheatCurve]) {
      expect(curve.minutes.slice(0, 3)).toEqual([0, 0.25, 0.5]);
      expect(curve.plateTopC).toHaveLength(curve.minutes.length);
      expect(curve.ovenAirC[0]).toBeCloseTo(294 - 273.15, 1);
    }
    expect(plan.preheatCurve.minutes.at(-1)).toBeGreaterThanOrEqual(120);
    expect(plan.curves.minutes.at(-1)! * 60).toBeGreaterThan(48 * 60 + 4 * 380 + 3 * 480);
  });

  it('rises as long as riseMinutes says, from the end of mixing to ready', () => {
    expect(minutesBetween(task(plan, 'mix').to, plan.dough.readyWindow.from)).toBeCloseTo(
      plan.dough.riseMinutes,
      1,
    );
    expect(plan.dough.riseRangeMinutes[0]).toBeLessThan(plan.dough.riseMinutes);
    expect(plan.dough.riseRangeMinutes[1]).toBeGreaterThan(plan.dough.riseMinutes);
  });

  it('gives the demo dough about six hours (common practice, no source), within the stated spread', () => {
    expect(plan.dough.riseMinutes).toBeGreaterThan(0.64 * 360);
    expect(plan.dough.riseMinutes).toBeLessThan(1.56 * 360);
    expect(plan.dough.trueHydrationPercent).toBeCloseTo(62, 9);
  });

  it('says what to do in each handwork bar, with its figures', () => {
    for (const bar of plan.tasks) if (bar.lane === 'hands') expect(bar.step).toMatch(/^[A-Z]/);
    const grams = plan.dough.ingredientsG;
    const mix = task(plan, 'hands-mix').step!;
    expect(mix).toContain(`${grams['flour']!} g flour`);
    expect(mix).toContain(`${grams['water']!} g water at ${plan.dough.liquidC.toFixed(0)} °C`);
    expect(mix).toContain('instant yeast');
    expect(task(plan, 'hands-ball').step).toContain('4 balls of 250 g');
    expect(task(plan, 'preheat').step).toContain('250 °C');
    expect(task(plan, 'rise').step).toBeUndefined();
    expect(task(plan, 'recover-2').lane).toBe('oven');
  });

  it('weighs the plate: density x volume, EN 1993-1-2:2005 for the density of steel', () => {
    expect(plan.preheat.plateMassKg).toBeCloseTo(7850 * 0.4 * 0.35 * 0.008, 9);
  });

  it('leaves the range out only when no band is asked for', () => {
    expect(plan.range).not.toBeNull();
    expect(answer(saturday, {}, { ...plain, band: false }).range).toBeNull();
  });

  it.each(demoIds)('plans the built-in evening %s', (id) => {
    expect(answer(demo(id)).tasks.length).toBeGreaterThan(10);
  });

  it('holds only what JSON can carry', () => {
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });
});

describe('warnings of a plan', () => {
  it('pass on what the reading said, first, and end with the makers and the estimates', () => {
    const given = { code: 'setpoint-above-highest', message: 'As read.' };
    const plan = answer(saturday, {}, { ...plain, warnings: [given] });
    expect(plan.warnings[0]).toEqual(given);
    expect(codes(plan).slice(-2)).toEqual(['maker-instructions-first', 'figures-are-estimates']);
  });

  it('say when the evening should have begun already, and what would still do is suggested', () => {
    const before = answer(saturday, {}, { ...plain, now: ms('2026-01-31T08:00:00+01:00') });
    expect(codes(before)).not.toContain('starts-in-the-past');
    expect(codes(answer(saturday))).not.toContain('starts-in-the-past');
    const late = answer(saturday, {}, { ...plain, now: ms('2026-01-31T15:30:00+01:00') });
    const said = late.warnings.find(({ code }) => code === 'starts-in-the-past')!.message;
    expect(said).toMatch(/^Mixing should have begun at \d\d:\d\d, [^.]* ago\.$/);
    expect(late.suggestions.find(({ meets }) => meets)!.id).toBe('yeast');
  });

  it('tell when the dough will not last until the last pizza', () => {
    const quick = {
      ...saturday,
      dough: { ...saturday.dough, yeast: { kind: 'instant' as const, percent: 3 } },
    };
    expect(codes(answer(quick, { waitSeconds: 1200 }))).toContain('dough-past-its-best');
    expect(codes(answer(saturday))).not.toContain('dough-past-its-best');
  });

  it('tell when the liquid cannot be warm or cold enough', () => {
    const cold = { ...saturday, dough: { ...saturday.dough, flourTemperature: 265, wantedTemperature: 303 } };
    const plan = answer(cold);
    expect(codes(plan)).toContain('liquid-limited-by-yeast');
    expect(plan.dough.liquidC).toBeCloseTo(43, 9);
    expect(plan.dough.doughC).toBeLessThan(29.85);
  });

  it('tell when a dough is too wet for the processor, and when it comes cold out of its place', () => {
    const wet: Evening = {
      ...saturday,
      dough: {
        ...saturday.dough,
        mixing: 'food-processor',
        liquid: [{ kind: 'water', percent: 70, waterShare: undefined }],
        riseTemperature: 279.15,
      },
    };
    expect(codes(answer(wet))).toEqual(expect.arrayContaining(['too-wet-for-processor', 'cold-dough']));
  });
});

describe('what cannot be planned', () => {
  const problemsOf = (evening: Evening) => {
    const planned = planWith(evening, plain, sampleEngine());
    return planned.ok ? [] : planned.problems;
  };

  it('is a problem with the path of the field', () => {
    const frozen = {
      ...saturday.dough,
      riseTemperature: 274,
      yeast: { kind: 'fresh' as const, percent: 0.1 },
    };
    expect(problemsOf({ ...saturday, dough: frozen })[0]).toMatchObject({ path: 'dough.riseTemperature' });
    const dry = {
      ...saturday.dough,
      liquid: [{ kind: 'water' as const, percent: 0, waterShare: undefined }],
    };
    expect(problemsOf({ ...saturday, dough: dry })[0]).toMatchObject({ path: 'dough.liquid' });
  });

  it('is a problem too when the oven names a field, and is our own fault when it does not', () => {
    const failing = (path: string) => ({
      ...sampleEngine(),
      simulateEvening: () => {
        throw new OutOfRange(path, '250 °C', 'less');
      },
    });
    expect(planWith(saturday, plain, failing('oven.setpoint'))).toMatchObject({
      ok: false,
      problems: [{ path: 'oven.setpoint' }],
    });
    expect(() => planWith(saturday, plain, failing('temperature'))).toThrow(OutOfRange);
  });
});
