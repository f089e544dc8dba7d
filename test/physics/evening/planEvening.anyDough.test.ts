import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import {
  anchorIds,
  coverIds,
  flourIds,
  liquidIds,
  mixingIds,
  risePieceIds,
  risePlaceIds,
  yeastIds,
} from '../../../physics/evening/ids.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import { sampleEngine } from '../../support/sampleRun.ts';

const celsius = (min: number, max: number) =>
  fc.integer({ min: min * 2, max: max * 2 }).map((halves) => `${halves / 2} degC`);
const hours = (max: number) => fc.integer({ min: 0, max: max * 4 }).map((quarters) => `${quarters / 4} h`);
const phase = fc.record(
  {
    where: fc.constantFrom(...risePlaceIds),
    as: fc.constantFrom(...risePieceIds),
    temperature: celsius(-10, 45),
    duration: hours(72),
    cover: fc.constantFrom(...coverIds),
  },
  { requiredKeys: ['where', 'as'] },
);
const file = fc
  .record({
    kind: fc.constantFrom(...anchorIds),
    flour: fc.constantFrom(...flourIds),
    flourMoisture: fc.integer({ min: 0, max: 20 }),
    liquid: fc.array(
      fc.record({
        kind: fc.constantFrom(...liquidIds.filter((id) => id !== 'custom')),
        percent: fc.integer({ min: 0, max: 90 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    yeast: fc.record({
      kind: fc.constantFrom(...yeastIds),
      percent: fc.integer({ min: 1, max: 2000 }).map((n) => n * 0.005),
    }),
    sugar: fc.integer({ min: 0, max: 25 }),
    phases: fc.array(phase, { maxLength: 4 }),
    mixing: fc.constantFrom(...mixingIds),
    rest: hours(48),
    temperatures: fc.tuple(
      celsius(-10, 45),
      celsius(10, 40),
      celsius(-20, 45),
      celsius(0, 40),
      celsius(-10, 45),
    ),
    count: fc.integer({ min: 1, max: 20 }),
    sauce: fc.integer({ min: 0, max: 500 }),
    scaleStep: fc.constantFrom('0.01 g', '0.1 g', '1 g', '10 g'),
  })
  .map((r) => ({
    ...demos.saturday,
    anchor: { ...demos.saturday.anchor, kind: r.kind },
    kitchen: {
      roomTemperature: r.temperatures[0],
      tapTemperature: r.temperatures[3],
      scaleStep: r.scaleStep,
    },
    pizzas: { ...demos.saturday.pizzas, count: r.count },
    dough: {
      ...demos.saturday.dough,
      flour: r.flour,
      flourMoisture: r.flourMoisture,
      liquid: r.liquid,
      yeast: r.yeast,
      sugar: r.sugar,
      phases: r.phases,
      mixing: r.mixing,
      restBeforeShaping: r.rest,
      wantedTemperature: r.temperatures[1],
      flourTemperature: r.temperatures[2],
      riseTemperature: r.temperatures[4],
    },
    toppings: { ...demos.saturday.toppings, sauce: `${r.sauce} g` },
  }));

describe('any dough', () => {
  it('is planned with finite figures that hold together, or refused with the field named', () => {
    const now = Date.parse('2026-01-31T15:00:00+01:00');
    let planned = 0;
    fc.assert(
      fc.property(file, (any) => {
        const result = planFromFile(any, { now }, sampleEngine());
        if (!result.ok) {
          for (const { path, found } of result.problems) {
            expect(path).toMatch(/^(kitchen|oven|pizzas|dough|toppings)\./);
            expect(found).not.toBe('');
          }
          return;
        }
        planned += 1;
        const { answer } = result;
        const { dough, toppings, shopping, suggestions } = answer;
        // JSON writes what is not finite as null.
        expect(JSON.stringify([dough, toppings, shopping, suggestions]).includes('null')).toBe(false);
        expect(dough.liquidC).toBeGreaterThanOrEqual(-1e-9);
        expect(dough.liquidC).toBeLessThanOrEqual(43 + 1e-9);
        const grams = Object.values(dough.ingredientsG).reduce((a, b) => a + b, 0);
        const step = Number.parseFloat(any.kitchen.scaleStep);
        expect(Math.abs(grams - 250 * any.pizzas.count)).toBeLessThanOrEqual(step / 2 + 1e-6);
        expect(Date.parse(dough.readyWindow.to)).toBeGreaterThanOrEqual(Date.parse(dough.readyWindow.from));
        const hands = answer.tasks.filter(({ lane }) => lane === 'hands');
        for (const [i, { from }] of hands.entries())
          if (i > 0) expect(Date.parse(from)).toBeGreaterThanOrEqual(Date.parse(hands[i - 1]!.to));
        expect(Math.min(...Object.values(answer.slackMinutes))).toBe(0);
        for (const { gainsMinutes } of suggestions) expect(gainsMinutes).toBeGreaterThan(0);
      }),
      { seed: 20260131, numRuns: 300 },
    );
    expect(planned).toBeGreaterThan(30);
  });
});
