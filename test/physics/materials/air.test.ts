import { describe, expect, it } from 'vitest';
import { airDensity, airSpecificHeat, readFilm, type AirFilm } from '../../../physics/materials/air.ts';
import { standardPressure } from '../../../physics/materials/constants.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

function film(temperature: number): AirFilm {
  const out = { conductivity: 0, viscosity: 0, specificHeat: 0 };
  readFilm(temperature, out);
  return out;
}

// Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table A.4 (rows as transcribed in several texts).
const tableA4 = [
  { T: 300, rho: 1.1614, cp: 1007, mu: 184.6e-7, k: 26.3e-3, pr: 0.707 },
  { T: 350, rho: 0.995, cp: 1009, mu: 208.2e-7, k: 30.0e-3, pr: 0.7 },
  { T: 400, rho: 0.8711, cp: 1014, mu: 230.1e-7, k: 33.8e-3, pr: 0.69 },
  { T: 450, rho: 0.774, cp: 1021, mu: 250.7e-7, k: 37.3e-3, pr: 0.686 },
  { T: 500, rho: 0.6964, cp: 1030, mu: 270.1e-7, k: 40.7e-3, pr: 0.684 },
  { T: 550, rho: 0.6329, cp: 1040, mu: 288.4e-7, k: 43.9e-3, pr: 0.683 },
  { T: 600, rho: 0.5804, cp: 1051, mu: 305.8e-7, k: 46.9e-3, pr: 0.685 },
] as const;

describe('air against Incropera table A.4', () => {
  it.each(tableA4)('$T K: cp, mu, k as printed, Pr within the rounding of k', ({ T, cp, mu, k, pr }) => {
    const { conductivity, viscosity, specificHeat } = film(T);
    expect(specificHeat).toBeCloseTo(cp, 9);
    expect(airSpecificHeat(T)).toBeCloseTo(cp, 9);
    expect(viscosity).toBeCloseTo(mu, 12);
    expect(conductivity).toBeCloseTo(k, 9);
    // Pr is printed from unrounded values; half a digit of k and cp is 0.3 %.
    expect(Math.abs((viscosity * specificHeat) / conductivity / pr - 1)).toBeLessThan(0.004);
  });

  it.each(tableA4)('$T K: the printed density is that of 1 bar', ({ T, rho }) => {
    expect(Math.abs(airDensity(T, 1e5) / rho - 1)).toBeLessThan(1e-3);
    expect(Math.abs(airDensity(T, standardPressure) / rho - 1)).toBeLessThan(0.015);
  });

  it('is straight between the rows', () => {
    expect(film(425).conductivity).toBeCloseTo((33.8e-3 + 37.3e-3) / 2, 12);
    expect(airSpecificHeat(425)).toBeCloseTo(film(425).specificHeat, 9);
  });

  // A cross-check of the rows that are from memory too: a slip of a digit would show as more.
  it('lies within 2.5 % of the Sutherland forms of the US Standard Atmosphere 1976 (from memory)', () => {
    for (let T = 250; T <= 1000; T += 10) {
      const mu = (1.458e-6 * T ** 1.5) / (T + 110.4);
      const k = (2.64638e-3 * T ** 1.5) / (T + 245.4 * 10 ** (-12 / T));
      expect(Math.abs(film(T).viscosity / mu - 1)).toBeLessThan(0.025);
      expect(Math.abs(film(T).conductivity / k - 1)).toBeLessThan(0.025);
    }
  });
});

describe('what air refuses', () => {
  it.each([249.9, 1000.1, Number.NaN, Infinity])('%d K', (T) => {
    expect(() => film(T)).toThrow(OutOfRange);
    expect(() => airSpecificHeat(T)).toThrow(/allowed 250 K to 1000 K/);
  });
  it('names the pressure', () => {
    expect(() => airDensity(300, -1)).toThrow('air pressure: found -1 Pa; allowed above 0 Pa');
    expect(() => airDensity(Number.NaN, 1e5)).toThrow(/^air temperature: found NaN K/);
  });
});
