import { describe, expect, it } from 'vitest';
import { zeroCelsius } from '../../../physics/materials/constants.ts';
import {
  componentProperties,
  foodComponents,
  mixtureProperties,
  type Composition,
} from '../../../physics/materials/food.ts';

// Worked by hand from the coefficients of Choi and Okos 1986 (they check the code, the coefficients are the source).
const dough = { water: 0.43, protein: 0.065, fat: 0.02, carbohydrate: 0.45, fibre: 0.015, ash: 0.02 };
const cheese = { water: 0.48, protein: 0.24, fat: 0.22, carbohydrate: 0.03, fibre: 0, ash: 0.03 };

describe('Choi and Okos 1986', () => {
  it.each([
    ['protein', [0.20164, 0.24077, 0.27121]],
    ['fat', [0.17512, 0.16351, 0.15133]],
    ['carbohydrate', [0.22743, 0.26906, 0.29684]],
    ['fibre', [0.20704, 0.24689, 0.2766]],
    ['ash', [0.35648, 0.40322, 0.44066]],
    ['water', [0.6037, 0.6527, 0.6803]],
  ] as const)('conductivity of %s at 20, 60 and 100 degC', (component, [at20, at60, at100]) => {
    const k = (t: number) => componentProperties(component, zeroCelsius + t).conductivity;
    const within = component === 'water' ? 5e-5 : 6e-6;
    expect(Math.abs(k(20) - at20)).toBeLessThan(within);
    expect(Math.abs(k(60) - at60)).toBeLessThan(within);
    expect(Math.abs(k(100) - at100)).toBeLessThan(within);
  });

  it.each([
    { name: 'dough', X: dough, t: 20, rho: 1242, parallel: 0.4273, series: 0.3348, c: 2732.6 },
    { name: 'dough', X: dough, t: 60, rho: 1228.5, parallel: 0.4715, series: 0.3805, c: 2771.2 },
    { name: 'dough', X: dough, t: 100, rho: 1207, parallel: 0.4998, series: 0.4094, c: 2807.8 },
    { name: 'cheese', X: cheese, t: 10, rho: 1072.2, parallel: 0.3951, series: 0.2883, c: 3009.3 },
    { name: 'cheese', X: cheese, t: 60, rho: 1054.4, parallel: 0.4355, series: 0.3049, c: 3047.0 },
  ])('$name at $t degC', ({ X, t, rho, parallel, series, c }) => {
    const found = mixtureProperties(X, zeroCelsius + t);
    expect(Math.abs(found.density - rho)).toBeLessThan(0.51);
    expect(Math.abs(found.conductivityParallel - parallel)).toBeLessThan(6e-5);
    expect(Math.abs(found.conductivitySeries - series)).toBeLessThan(6e-5);
    expect(Math.abs(found.specificHeat - c)).toBeLessThan(0.06);
  });
});

describe('water of the table against IAPWS-IF97 (python3-iapws 1.5.3)', () => {
  it.each([
    { t: 20, c: 4185.1, k: 0.598, rho: 998.2 },
    { t: 60, c: 4182.9, k: 0.651, rho: 983.2 },
    { t: 100, c: 4216.6, k: 0.6772, rho: 958.4 },
  ])('$t degC: c within 0.25 %, k within 1 %, density within 0.3 %', ({ t, c, k, rho }) => {
    const found = componentProperties('water', zeroCelsius + t);
    expect(Math.abs(found.specificHeat / c - 1)).toBeLessThan(0.0025);
    expect(Math.abs(found.conductivity / k - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.density / rho - 1)).toBeLessThan(0.003);
  });
  it('would be 1 % low with the misprint 4.1289', () => {
    const c = componentProperties('water', zeroCelsius + 60).specificHeat - 4176.2 + 4128.9;
    expect(c / 4182.9 - 1).toBeLessThan(-0.009);
  });
});

describe('food outside its fits', () => {
  it('keeps the value at 150 degC for a hotter crust', () => {
    for (const component of foodComponents) {
      expect(componentProperties(component, 560)).toEqual(componentProperties(component, 423.15));
    }
  });
  it.each([273.1, 873.2, Number.NaN])('refuses %d K', (T) => {
    expect(() => mixtureProperties(dough, T)).toThrow(
      /^food temperature: found .*; allowed 273.15 K to 873.15 K$/,
    );
  });
  it('refuses shares that are none', () => {
    const wrong: Composition = { ...dough, fat: -0.1 };
    expect(() => mixtureProperties(wrong, 300)).toThrow('composition.fat: found -0.1; allowed 0 to 1');
    expect(() => mixtureProperties({ ...dough, ash: Number.NaN }, 300)).toThrow(
      /^composition.ash: found NaN/,
    );
    expect(() => mixtureProperties({ ...dough, water: 0.5 }, 300)).toThrow(
      /adding up to 1.07000; allowed a sum of 1/,
    );
  });
});
