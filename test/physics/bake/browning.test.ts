import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { browningLaws, purlis2009, zanoni1995 } from '../../../physics/bake/browning.ts';
import { zeroCelsius } from '../../../physics/materials/constants.ts';

describe('Zanoni, Peri, Bruno 1995: k0 42000 1/s, Ea 64151 J/mol, ceiling 52 (worked out from the abstract)', () => {
  it.each([
    [140, 3.2534e-4, 1.01, 2.96, 9.22],
    [165, 9.4433e-4, 2.86, 8.13, 22.49],
    [185, 2.037e-3, 5.98, 15.96, 36.68],
    [210, 4.8693e-3, 13.17, 30.35, 49.2],
    [235, 1.0683e-2, 24.61, 44.4, 51.91],
    [250, 1.6511e-2, 32.69, 49.34, 52.0],
  ])('%d degC: k %d, dE %d, %d, %d after 60, 180, 600 s', (t, k, at60, at180, at600) => {
    const rate = zanoni1995.rate(zeroCelsius + t, 0.5);
    // Worked out with R 8.314: k 0.1 % lower than with CODATA's, dE at most 0.02.
    expect(Math.abs(rate / k - 1)).toBeLessThan(1.1e-3);
    const difference = (seconds: number) => ((85 - zanoni1995.lightness(rate * seconds)) / 47) * 52;
    expect(Math.abs(difference(60) - at60)).toBeLessThan(0.025);
    expect(Math.abs(difference(180) - at180)).toBeLessThan(0.025);
    expect(Math.abs(difference(600) - at600)).toBeLessThan(0.025);
  });
  it('does not ask for the water activity', () => {
    expect(zanoni1995.rate(480, 0)).toBe(zanoni1995.rate(480, 1));
  });
});

describe('Purlis and Salvadori 2009 (constants from memory: a check of the code, not of the paper)', () => {
  it.each([
    [140, [8.473e-3, 7.809e-3, 7.295e-3, 6.847e-3]],
    [180, [5.733e-2, 5.146e-2, 4.765e-2, 4.446e-2]],
    [200, [0.1321, 0.1172, 0.1081, 0.1006]],
    [220, [0.2845, 0.2498, 0.2296, 0.2132]],
    [250, [0.8053, 0.697, 0.6376, 0.5901]],
  ] as const)('%d degC, per minute, at water activities 0.2, 0.4, 0.6, 0.9', (t, perMinute) => {
    [0.2, 0.4, 0.6, 0.9].forEach((aw, index) => {
      const rate = 60 * purlis2009.rate(zeroCelsius + t, aw);
      expect(Math.abs(rate / perMinute[index]! - 1)).toBeLessThan(5e-4);
    });
  });
  it.each([
    [180, 6.8],
    [200, 3.0],
    [220, 1.4],
    [250, 0.5],
  ])('from L* 85 to 60 at %d degC and water activity 0.4: %d min', (t, minutes) => {
    const found = purlis2009.integralFor(60) / purlis2009.rate(zeroCelsius + t, 0.4) / 60;
    expect(Math.abs(found - minutes)).toBeLessThan(0.051);
  });
  it('goes on browning a dry crust', () => {
    expect(purlis2009.rate(480, 0.01)).toBe(purlis2009.rate(480, 0.15));
    expect(purlis2009.rate(480, 0)).toBeGreaterThan(purlis2009.rate(480, 0.4));
  });
});

describe('the two laws against each other', () => {
  // Two laboratories, two products: the check that the second one's unit is the minute (per second it would be
  // sixty times as fast). A loss of 25 at 200 degC: within 10 % of the colour difference of 25.
  it('agree at 200 degC within 10 %', () => {
    const T = zeroCelsius + 200;
    const first = -Math.log(1 - 25 / 52) / zanoni1995.rate(T, 0.4);
    const second = purlis2009.integralFor(60) / purlis2009.rate(T, 0.4);
    expect(Math.abs(first - 189)).toBeLessThan(1);
    expect(Math.abs(second / first - 1)).toBeLessThan(0.1);
  });
});

describe.each(browningLaws)('$id', (law) => {
  it('starts at 85, darkens all the way and comes back', () => {
    expect(law.lightness(0)).toBe(85);
    let before = 85;
    for (const integral of [0.01, 0.1, 0.5, 1, 2, 4]) {
      const lightness = law.lightness(integral);
      expect(lightness).toBeLessThan(before);
      expect(lightness).toBeGreaterThan(law.darkest);
      expect(law.integralFor(lightness)).toBeCloseTo(integral, 9);
      before = lightness;
    }
  });
  it('is quicker in a hotter crust', () => {
    expect(law.rate(520, 0.3)).toBeGreaterThan(1.5 * law.rate(500, 0.3));
  });
  it('refuses what lies outside', () => {
    expect(() => law.rate(1000, 0.5)).toThrow(
      'crust temperature: found 1000 K; allowed 273.15 K to 873.15 K',
    );
    expect(() => law.rate(400, 1.1)).toThrow('water activity: found 1.1; allowed 0 to 1');
    expect(() => law.rate(Number.NaN, 0.5)).toThrow(OutOfRange);
    expect(() => law.lightness(-0.1)).toThrow(/^browning integral: found -0.1/);
    expect(() => law.integralFor(86)).toThrow(/^lightness: found L\* 86; allowed L\* above/);
    expect(() => law.integralFor(law.darkest)).toThrow(OutOfRange);
  });
});
