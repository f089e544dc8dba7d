import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountsOf, type Edit, type Held, withEdit } from '../../../physics/dough/amounts.ts';
import { ouncePerSquareInch, pizzaArea, toppedArea } from '../../../physics/dough/area.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

const inch = 0.0254;
const ounce = 0.45359237 / 16;

// Tolerance: half of the last digit printed, and 0.05 % for the source's pi of 3.14.
describe('dough by area, Pizza Today, Oct 2019 ("calculating any size of pizza"): 11 oz on 12 in', () => {
  it('is 0.0973106 oz/in2', () => {
    const density = (11 * ounce) / pizzaArea(12 * inch) / ouncePerSquareInch;
    expect(Math.abs(density / 0.0973106 - 1)).toBeLessThan(6e-4);
  });
  it.each([
    [14, 14.972],
    [16, 19.556],
  ])('%i in need %f oz', (diameter, ounces) => {
    const held: Held = {
      percentages: { water: 58 },
      count: 1,
      diameter: diameter * inch,
      scale: { hold: 'massPerArea', value: 0.0973106 * ouncePerSquareInch },
    };
    const { ballMass } = amountsOf(held);
    expect(Math.abs(ballMass / ounce / ounces - 1)).toBeLessThan(6e-4);
    const byArea = (11 * pizzaArea(diameter * inch)) / pizzaArea(12 * inch);
    expect(byArea).toBeCloseTo(ounces, 2);
  });
  it("PMQ Think Tank, 'Pizza thickness': 10 oz on 12 in are 17.688 oz on 16 in, with 0.088 oz/in2", () => {
    expect(Math.abs((0.088 * pizzaArea(16 * inch)) / inch ** 2 / 17.688 - 1)).toBeLessThan(1e-3);
  });
  it('PMQ Think Tank: half an inch of bare rim leaves 95 in2 of a 12 in pizza and 64 in2 of a 10 in one', () => {
    expect(Math.round(toppedArea(12 * inch) / inch ** 2)).toBe(95);
    expect(Math.round(toppedArea(10 * inch) / inch ** 2)).toBe(64);
  });
  it('5 oz sauce on 12 in are 0.0442321 oz/in2 (same column)', () => {
    expect(Math.abs((5 * ounce) / pizzaArea(12 * inch) / ouncePerSquareInch / 0.0442321 - 1)).toBeLessThan(
      6e-4,
    );
  });
});

const percentages = { water: 62, salt: 2.5, oil: 1.5, yeast: 0.2 };
const base: Held = { percentages, count: 4, diameter: 0.3, scale: { hold: 'ballMass', value: 0.25 } };

describe('what is held and what follows', () => {
  it('a ball holds the dough; flour and the rest follow, and the grams shown add up', () => {
    const table = amountsOf(base);
    expect(table.total).toBeCloseTo(1, 12);
    expect(table.lines['flour']!.mass).toBeCloseTo(1 / 1.662, 12);
    expect(table.held).toEqual([
      'count',
      'diameter',
      'ballMass',
      'percent:water',
      'percent:salt',
      'percent:oil',
      'percent:yeast',
    ]);
    expect(table.massPerArea).toBeCloseTo(0.25 / pizzaArea(0.3), 12);
    const shown = Object.values(table.lines).reduce((sum, { grams }) => sum + grams, 0);
    expect(Math.abs(shown - 1000)).toBeLessThanOrEqual(0.5);
  });

  it('whichever scale is typed over with its own figure leaves the table as it is', () => {
    const table = amountsOf(base);
    const edits: readonly Edit[] = [
      { cell: 'massPerArea', value: table.massPerArea },
      { cell: 'total', value: table.total },
      { cell: 'ballMass', value: table.ballMass },
      { cell: 'mass', name: 'flour', value: table.lines['flour']!.mass, means: 'have' },
      { cell: 'mass', name: 'yeast', value: table.lines['yeast']!.mass, means: 'have' },
      { cell: 'mass', name: 'water', value: table.lines['water']!.mass, means: 'recipe' },
      { cell: 'percent', name: 'salt', value: 2.5 },
    ];
    for (const edit of edits) {
      const again = amountsOf(withEdit(base, edit));
      expect(again.ballMass).toBeCloseTo(table.ballMass, 12);
      for (const [name, { mass, percent }] of Object.entries(table.lines)) {
        expect(again.lines[name]!.mass).toBeCloseTo(mass, 12);
        expect(again.lines[name]!.percent).toBeCloseTo(percent, 9);
      }
    }
  });

  it('a larger pizza at the same mass per area gets a heavier ball, by the square', () => {
    const byArea = withEdit(base, { cell: 'massPerArea', value: 3.5 });
    const wider = amountsOf(withEdit(byArea, { cell: 'diameter', value: 0.36 }));
    expect(wider.ballMass / amountsOf(byArea).ballMass).toBeCloseTo(1.44, 12);
    expect(amountsOf(withEdit(base, { cell: 'diameter', value: 0.36 })).ballMass).toBeCloseTo(0.25, 12);
  });

  it('a percentage changes the formula at the same dough', () => {
    const wetter = amountsOf(withEdit(base, { cell: 'percent', name: 'water', value: 70 }));
    expect(wetter.total).toBeCloseTo(1, 12);
    expect(wetter.lines['water']!.mass / wetter.lines['flour']!.mass).toBeCloseTo(0.7, 12);
  });

  it('grams of the recipe change its percentage and leave the other weights', () => {
    const before = amountsOf(base);
    const after = amountsOf(withEdit(base, { cell: 'mass', name: 'salt', value: 0.018, means: 'recipe' }));
    expect(after.lines['salt']!.percent).toBeCloseTo((100 * 0.018) / before.lines['flour']!.mass, 9);
    expect(after.lines['water']!.mass).toBeCloseTo(before.lines['water']!.mass, 12);
  });

  it('flour at hand: all of it becomes balls, or balls of a given mass as many as it makes', () => {
    const all = amountsOf(withEdit(base, { cell: 'mass', name: 'flour', value: 0.7, means: 'have' }));
    expect(all.ballMass).toBeCloseTo((0.7 * 1.662) / 4, 12);
    expect(all.leftOver).toBeCloseTo(0, 12);
    const whole = amountsOf({
      ...base,
      scale: { hold: 'ingredient', name: 'flour', value: 0.7, spend: { on: 'count', ballMass: 0.25 } },
    });
    expect([whole.count, whole.ballMass]).toEqual([4, 0.25]);
    expect(whole.leftOver).toBeCloseTo(0.7 * 1.662 - 1, 12);
    expect(whole.held).not.toContain('count');
    expect(whole.held).toContain('mass:flour');
  });

  it('keeps the sum within half a step of any scale, whatever is held', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        fc.constantFrom(0.0001, 0.001, 0.002, 0.005),
        fc.double({ min: 50, max: 90, noNaN: true }),
        (count, ball, step, water) => {
          const held: Held = {
            ...base,
            count,
            percentages: { ...percentages, water },
            scale: { hold: 'ballMass', value: ball },
          };
          const { lines, total } = amountsOf(held, step);
          const shown = Object.values(lines).reduce((sum, { grams }) => sum + grams, 0);
          expect(Math.abs(shown - 1000 * total)).toBeLessThanOrEqual(500 * step + 1e-6);
          expect(lines['flour']!.grams / (1000 * step)).toBeCloseTo(
            Math.round(lines['flour']!.grams / (1000 * step)),
            6,
          );
        },
      ),
      { seed: 20260131, numRuns: 200 },
    );
  });

  it.each<[string, () => unknown]>([
    ['half a pizza', () => amountsOf({ ...base, count: 1.5 })],
    ['no ball', () => amountsOf(withEdit(base, { cell: 'ballMass', value: 0 }))],
    ['no width', () => amountsOf(withEdit(base, { cell: 'diameter', value: Number.NaN }))],
    ['an ingredient that is not there', () => withEdit(base, { cell: 'percent', name: 'honey', value: 3 })],
    ['flour in percent', () => withEdit(base, { cell: 'percent', name: 'flour', value: 90 })],
    [
      'balls larger than the dough',
      () =>
        amountsOf({
          ...base,
          scale: { hold: 'ingredient', name: 'flour', value: 0.1, spend: { on: 'count', ballMass: 0.25 } },
        }),
    ],
    ['a pizza that is all rim', () => toppedArea(0.02)],
  ])('refuses %s', (_, attempt) => {
    expect(attempt).toThrow(OutOfRange);
  });
});
