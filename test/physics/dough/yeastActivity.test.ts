import { describe, expect, it } from 'vitest';
import {
  alcoholFactor,
  alcoholOf,
  cardinalRate,
  doseExponent,
  gasTemperatures,
  saltFactor,
  sugarFactor,
  sugarOf,
} from '../../../physics/dough/yeastActivity.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

const gas = (celsius: number): number => cardinalRate(celsius + 273.15);

// Values printed on the manual page of an algae-growth R package (T_lim) for the model of Rosso et al. 1995, Appl.
// Environ. Microbiol. 61:610, seven digits.
describe('cardinal temperature model', () => {
  it.each([
    [6, 0.02],
    [8, 0.1466667],
    [10, 0.3333333],
    [14, 0.72],
    [15, 0.8],
    [18, 0.9657143],
    [22, 0.9633333],
    [26, 0.6533333],
    [29, 0.1969231],
  ])('5, 20, 30 degC at %i degC: %f', (t, printed) => {
    expect(Math.abs(cardinalRate(t, { lowest: 5, best: 20, highest: 30 }) - printed)).toBeLessThan(5e-8);
  });

  it('is 1 at the best temperature and 0 at and beyond the ends', () => {
    expect(cardinalRate(gasTemperatures.best)).toBeCloseTo(1, 12);
    for (const t of [0, gasTemperatures.lowest, gasTemperatures.highest, 400])
      expect(cardinalRate(t)).toBe(0);
  });

  it('refuses a best temperature below the middle, where the form has a pole', () => {
    expect(() => cardinalRate(10, { lowest: 0, best: 10, highest: 30 })).toThrow(OutOfRange);
    expect(() => cardinalRate(Number.NaN)).toThrow(OutOfRange);
  });
});

describe('temperature response of gas', () => {
  it('doubles in 9.4 K (fornobravo.com) to grows 10 % a kelvin (bake magazine), 20 to 30 degC: 2.08 to 2.59', () => {
    const response = gas(30) / gas(20);
    expect(response).toBeGreaterThan(2.08);
    expect(response).toBeLessThan(2.59);
  });

  it('rises steadily to near 40 degC, then falls steeply (White and Munns 1951, abstract)', () => {
    for (let t = 5; t < 38; t++) expect(gas(t + 1)).toBeGreaterThan(gas(t));
    expect(gas(40)).toBeGreaterThan(0.95);
    expect(gas(45)).toBeLessThan(0.5 * gas(40));
  });

  it('is essentially none at 36 to 38 degF (Pizza Today, "Cooler effect on dough")', () => {
    expect(gas((38 - 32) / 1.8) / gas(21)).toBeLessThan(0.02);
  });
});

describe('dose, salt, sugar, alcohol', () => {
  it('AEM table of dough strains: 1200 to 1800 for 2.8 to 5 % yeast', () => {
    expect(Math.log(1800 / 1200) / Math.log(5 / 2.8)).toBeCloseTo(doseExponent, 2);
  });

  it('same table: 10 % sucrose leaves 0.29 per unit of yeast', () => {
    expect(sugarFactor(10)).toBeCloseTo(580 / 5.6 / (1800 / 5), 2);
    expect(sugarFactor(5)).toBe(1);
  });

  it('honey is sugar but for its water, USDA SR 19296: 17.1 %', () => {
    const honey = { kind: 'honey', percent: 10, waterShare: undefined } as const;
    expect(sugarOf({ sugar: 1, liquid: [honey] })).toBeCloseTo(9.29, 9);
    expect(alcoholOf([honey, { ...honey, kind: 'beer' }])).toBeCloseTo(39.5, 9);
  });

  it('Warren et al. 1990: 0.99 at 10, 0.96 at 20, 0.84 at 39.5 g/L of ethanol', () => {
    expect(alcoholFactor(10)).toBeCloseTo(0.99, 2);
    expect(alcoholFactor(20)).toBeCloseTo(0.96, 2);
    expect(alcoholFactor(39.5)).toBeCloseTo(0.84, 2);
    expect(alcoholFactor(150)).toBe(0);
  });

  it('salt slows from 1 % (Cereal Chem. 44:300, 1967, for the direction; no published slope)', () => {
    expect(saltFactor(1)).toBe(1);
    expect(saltFactor(2.5)).toBeLessThan(saltFactor(2));
    expect(saltFactor(3)).toBeGreaterThan(0.5);
  });
});
