import { describe, expect, it } from 'vitest';
import { convertYeast, hydration } from '../../../physics/dough/ingredients.ts';
import type { LiquidPart } from '../../../physics/evening/evening.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

const part = (kind: LiquidPart['kind'], percent: number, waterShare?: number): LiquidPart => ({
  kind,
  percent,
  waterShare,
});

// Report of the Committee on Standardization of the Experimental Baking Test, Cereal Chem., July 1929, p. 249:
// 100 g of flour at 15 % with 58 g of water; flour and water of the same dough from drier flour, 0.01 g.
describe('doughs that are the same, Cereal Chem. 1929, p. 249, are as wet', () => {
  it.each([
    { moisture: 0.12, flour: 96.59, water: 61.41 },
    { moisture: 0.13, flour: 97.7, water: 60.3 },
    { moisture: 0.14, flour: 98.84, water: 59.16 },
  ])('flour at $moisture: $flour g and $water g', ({ moisture, flour, water }) => {
    const printed = hydration([part('water', (100 * water) / flour)], moisture);
    const first = hydration([part('water', 58)], 0.15);
    expect(Math.abs(printed.waterPerDryFlour / first.waterPerDryFlour - 1)).toBeLessThan(2e-4);
  });
});

// Water shares: USDA SR, NDB 14003, 1077. The arithmetic by hand: (percent x share + moisture)/(1 - moisture).
describe('true hydration', () => {
  it.each([
    { liquid: 'water', percent: 62, moisture: 0.14, perDry: 380 / 430, truePercent: 62 },
    { liquid: 'beer', percent: 62, moisture: 0.14, perDry: 355.1 / 430, truePercent: 57.0 },
    { liquid: 'milk', percent: 62, moisture: 0.14, perDry: 343.2 / 430, truePercent: 54.6 },
    { liquid: 'water', percent: 60, moisture: 0.1192, perDry: 0.817, truePercent: 56.2 },
    { liquid: 'water', percent: 60, moisture: 0.155, perDry: 0.893, truePercent: 62.8 },
  ] as const)(
    '$percent % $liquid on flour at $moisture',
    ({ liquid, percent, moisture, perDry, truePercent }) => {
      const found = hydration([part(liquid, percent)], moisture);
      expect(Math.abs(found.waterPerDryFlour - perDry)).toBeLessThan(6e-4);
      expect(Math.abs(found.truePercent - truePercent)).toBeLessThan(0.06);
      expect(found.nominalPercent).toBe(percent);
    },
  );

  it('adds liquids up, with the share of a custom one', () => {
    const mixed = hydration([part('water', 30), part('custom', 40, 0.5)]);
    expect(mixed.truePercent).toBeCloseTo(50, 9);
    expect(mixed.nominalPercent).toBe(70);
  });

  it('refuses a custom liquid that does not say what it holds, and flour like mud', () => {
    expect(() => hydration([part('custom', 60)])).toThrow(OutOfRange);
    expect(() => hydration([part('water', 60)], 0.3)).toThrow(OutOfRange);
  });
});

describe('kinds of yeast', () => {
  it('"Breads" (ckbk): 0.40 active dry, 0.33 instant for 1 fresh', () => {
    expect(convertYeast(1, 'fresh', 'active-dry')).toBeCloseTo(0.4, 12);
    expect(convertYeast(1, 'fresh', 'instant')).toBeCloseTo(0.33, 12);
  });

  it('AVPN: dry to fresh as 1 to 3, within the spread of the sources', () => {
    expect(convertYeast(1, 'instant', 'fresh')).toBeGreaterThan(2.85);
    expect(convertYeast(1, 'instant', 'fresh')).toBeLessThan(3.17);
  });

  it('comes back to where it began', () => {
    expect(convertYeast(convertYeast(1.7, 'active-dry', 'instant'), 'instant', 'active-dry')).toBeCloseTo(
      1.7,
      12,
    );
  });
});
