import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  massesFromFlour,
  massesFromIngredient,
  massesFromTotal,
  percentagesFromMasses,
  percentSum,
  roundedForScale,
} from '../../../physics/dough/formula.ts';
import { percentagesOf } from '../../../physics/dough/ingredients.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

const lb = 16; // oz

// Tolerance: half of the last digit that the source prints.
describe('published formulas, weights to percent and back', () => {
  it("PMQ Pizza Magazine, Jan-Feb 2017, 'How to convert bakers percent to weight measures'", () => {
    const weighed = { flour: 640, salt: 11.2, yeast: 2.4, oil: 6.4, water: 371.2 };
    const percentages = percentagesFromMasses(weighed);
    const printed = { salt: 1.75, yeast: 0.375, oil: 1, water: 58 };
    for (const [name, value] of Object.entries(printed)) expect(percentages[name]).toBeCloseTo(value, 3);
    const bigger = massesFromFlour(printed, 800);
    expect(bigger['salt']).toBeCloseTo(14, 6);
    expect(bigger['yeast']).toBeCloseTo(3, 6);
  });

  it("Pizza Today, 30 Oct 2012, 'Percentage to weights dough formula': 1.75 % of 40 lb is 11.2 oz", () => {
    const masses = massesFromFlour({ salt: 1.75, oil: 2, yeast: 0.375, water: 56 }, 40 * lb);
    expect(masses['salt']).toBeCloseTo(11.2, 6);
    expect(masses['salt']! / lb).toBeCloseTo(0.7, 6);
  });

  it('Pizza Today, baker’s-percent column: 40 lb flour with fresh yeast, sugar and oil', () => {
    const printed = { salt: 11.2, sugar: 12.8, yeast: 9.6, oil: 19.2, water: 371.2 };
    const masses = massesFromFlour({ salt: 1.75, sugar: 2, yeast: 1.5, oil: 3, water: 58 }, 640);
    for (const [name, ounces] of Object.entries(printed)) expect(masses[name]).toBeCloseTo(ounces, 6);
  });

  it('A Treatise on Baking, plain bread: 2 lb yeast and 3 lb salt on 196 lb flour', () => {
    const percentages = percentagesFromMasses({ flour: 196, yeast: 2, salt: 3, sugar: 3, lard: 2 });
    expect(percentages['yeast']).toBeCloseTo(1.02, 2);
    expect(percentages['salt']).toBeCloseTo(1.53, 2);
  });

  it('Manual for Army Bakers, 1916, pp. 82-83, field bread: 105 lb flour, 12 oz yeast, 6 gal 2 qt water', () => {
    // 8.345 lb to the gallon.
    const weighed = { flour: 105, sugar: 3, salt: 2, oil: 0.5, yeast: 0.75, water: 6.5 * 8.345 };
    const percentages = percentagesFromMasses(weighed);
    const printed = { sugar: 2.857, salt: 1.905, oil: 0.476, yeast: 0.714 };
    for (const [name, value] of Object.entries(printed)) expect(percentages[name]).toBeCloseTo(value, 3);
    expect(percentages['water']).toBeCloseTo(51.7, 1);
    const back = massesFromTotal(
      percentages,
      Object.values(weighed).reduce((a, b) => a + b),
    );
    for (const [name, pounds] of Object.entries(weighed)) expect(back[name]).toBeCloseTo(pounds, 9);
  });

  it('current AVPN (newsprima.it): 1 L water, 1.6 to 1.8 kg flour, balls of 200 to 280 g', () => {
    const formula = percentagesFromMasses({ flour: 1700, water: 1000, salt: 50, yeast: 1.5 });
    const total = massesFromIngredient(formula, 'water', 1000);
    const dough = Object.values(total).reduce((a, b) => a + b, 0);
    expect(dough / 250).toBeGreaterThan(11);
    expect(total.flour).toBeCloseTo(1700, 9);
  });

  it("sourdough.co.uk glossary, 'Baker's percentage': 1000 / 600 / 2 / 10", () => {
    const percentages = percentagesFromMasses({ flour: 1000, water: 600, yeast: 2, salt: 10 });
    expect(percentages).toEqual({ water: 60, yeast: 0.2, salt: 1 });
  });

  it('AVPN regulations (older text): 1 L water, 1.7 to 1.8 kg flour, 50 to 55 g salt, 3 g fresh yeast', () => {
    const stiff = percentagesFromMasses({ flour: 1800, water: 1000, salt: 50, yeast: 3 });
    const soft = percentagesFromMasses({ flour: 1700, water: 1000, salt: 55, yeast: 3 });
    expect(stiff['water']).toBeCloseTo(55.6, 1);
    expect(soft['water']).toBeCloseTo(58.8, 1);
    expect(soft['salt']).toBeCloseTo(3.2, 1);
    expect(stiff['yeast']).toBeCloseTo(0.167, 3);
  });

  it('catchplaza.info, poolish: 107 water and 0.27 yeast sum to the printed 207.3', () => {
    expect(percentSum({ water: 107, yeast: 0.27 })).toBeCloseTo(207.3, 1);
  });

  it('catchplaza.info, white bread variation 3: the printed total 184.4 % is a misprint, the lines add to 189.4', () => {
    // sponge 60 flour, dough 40 flour: 100 together
    const sum = percentSum({ yeast: 1.2, milk: 64, salt: 2, sugar: 8, yolk: 3.5, butter: 10.7 });
    expect(sum).toBeCloseTo(189.4, 6);
    expect(Math.abs(sum - 184.4)).toBeCloseTo(5, 6);
  });
});

const recipes = fc.record({
  water: fc.double({ min: 40, max: 100, noNaN: true }),
  salt: fc.double({ min: 0.1, max: 5, noNaN: true }),
  oil: fc.double({ min: 0.1, max: 10, noNaN: true }),
  yeast: fc.double({ min: 0.02, max: 6, noNaN: true }),
});
const sure = { seed: 20260131, numRuns: 200 };

describe('scaling', () => {
  it('goes from dough to weights to percentages and back', () => {
    fc.assert(
      fc.property(recipes, fc.double({ min: 100, max: 20000, noNaN: true }), (recipe, total) => {
        const masses = massesFromTotal(recipe, total);
        const sum = Object.values(masses).reduce((a, b) => a + b, 0);
        expect(Math.abs(sum / total - 1)).toBeLessThan(1e-12);
        const again = massesFromIngredient(percentagesFromMasses(masses), 'yeast', masses['yeast']!);
        expect(Math.abs(again.flour / masses.flour - 1)).toBeLessThan(1e-12);
      }),
      sure,
    );
  });

  it('rounds for the scale without losing a ball, and never to no yeast', () => {
    fc.assert(
      fc.property(
        recipes,
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 120, max: 500 }),
        (recipe, count, ball) => {
          const shown = roundedForScale(massesFromTotal(recipe, count * ball));
          const sum = Object.values(shown).reduce((a, b) => a + b, 0);
          expect(Math.abs(sum - count * ball)).toBeLessThanOrEqual(0.5 + 1e-9);
          expect(Number.isInteger(shown.flour)).toBe(true);
          expect(Number.isInteger(shown['water'])).toBe(true);
          expect(shown['yeast']).toBeGreaterThan(0);
        },
      ),
      sure,
    );
  });

  it('lists a dough by ingredient, liquids of one kind together, nothing that is absent', () => {
    const lines = percentagesOf({
      liquid: [
        { kind: 'water', percent: 40, waterShare: undefined },
        { kind: 'beer', percent: 10, waterShare: undefined },
        { kind: 'water', percent: 12, waterShare: undefined },
      ],
      salt: 2.5,
      sugar: 0,
      oil: 1.5,
      yeast: { kind: 'instant', percent: 0.2 },
    });
    expect(lines).toEqual({ water: 52, beer: 10, salt: 2.5, oil: 1.5, yeast: 0.2 });
  });

  it.each([
    ['no flour', () => massesFromFlour({ water: 60 }, 0)],
    ['flour that is not a number', () => massesFromFlour({ water: 60 }, Number.NaN)],
    ['a negative percentage', () => percentSum({ water: -1 })],
    ['flour among the percentages', () => percentSum({ flour: 100 })],
    ['an ingredient that is not there', () => massesFromIngredient({ water: 60 }, 'honey', 3)],
    ['a negative mass', () => percentagesFromMasses({ flour: 100, water: -3 })],
  ])('refuses %s', (_, attempt) => {
    expect(attempt).toThrow(OutOfRange);
  });
});
