import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { zeroCelsius } from '../../../physics/materials/constants.ts';
import {
  boilingTemperature,
  latentHeat,
  pressureAtAltitude,
  saturationPressure,
  saturationSlope,
  saturationTemperature,
  waterVapourDiffusivity,
} from '../../../physics/materials/water.ts';

describe('saturation line: check values of IAPWS R7-97, tables 35 and 36', () => {
  // Nine printed digits, so a relative 2e-9. The table values are from memory and were recomputed with
  // the public library python3-iapws 1.5.3, equal in all digits.
  it.each([
    [300, 3.53658941e3],
    [500, 2.63889776e6],
    [600, 12.3443146e6],
  ])('at %d K the pressure is %d Pa', (T, p) => {
    expect(Math.abs(saturationPressure(T) / p - 1)).toBeLessThan(2e-9);
  });
  it.each([
    [0.1e6, 372.755919],
    [1e6, 453.035632],
    [10e6, 584.149488],
  ])('at %d Pa the temperature is %d K', (p, T) => {
    expect(Math.abs(saturationTemperature(p) / T - 1)).toBeLessThan(2e-9);
  });
  it('inverts itself', () => {
    for (let T = 274; T <= 638; T += 4) {
      expect(saturationTemperature(saturationPressure(T))).toBeCloseTo(T, 6);
    }
  });
  it('has the slope of its own curve', () => {
    for (let T = 280; T <= 630; T += 10) {
      const slope = (saturationPressure(T + 0.01) - saturationPressure(T - 0.01)) / 0.02;
      expect(Math.abs(saturationSlope(T) / slope - 1)).toBeLessThan(1e-6);
    }
  });
  it('is not the Magnus curve, which is 2.4 % high at 100 degC', () => {
    const magnus = 611.2 * Math.exp((17.62 * 100) / (243.12 + 100));
    expect(magnus / saturationPressure(zeroCelsius + 100) - 1).toBeCloseTo(0.0239, 4);
  });
});

describe('steam table rows (python3-iapws 1.5.3 after IAPWS-IF97)', () => {
  it.each([
    { t: 0.01, p: 611.66, h: 2500.91, slope: undefined },
    { t: 20, p: 2339.2, h: 2453.55, slope: 144.9 },
    { t: 40, p: 7384.4, h: 2406.0, slope: 393.7 },
    { t: 60, p: 19946, h: 2357.69, slope: 923.1 },
    { t: 80, p: 47415, h: 2308.07, slope: 1919.9 },
    { t: 90, p: 70182, h: 2282.56, slope: 2665.5 },
    { t: 95, p: 84609, h: 2269.6, slope: 3114.2 },
    { t: 100, p: 101418, h: 2256.47, slope: undefined },
    { t: 110, p: 143376, h: 2229.7, slope: undefined },
    { t: 120, p: 198665, h: 2202.15, slope: undefined },
    { t: 150, p: 476101, h: 2113.67, slope: undefined },
  ])('$t degC', ({ t, p, h, slope }) => {
    const T = zeroCelsius + t;
    expect(Math.abs(saturationPressure(T) / p - 1)).toBeLessThan(3e-5);
    // Wagner and Pruss densities against IF97: the two formulations agree within 0.02 %.
    expect(Math.abs(latentHeat(T) / (h * 1e3) - 1)).toBeLessThan(3e-4);
    if (slope !== undefined) expect(Math.abs(saturationSlope(T) / slope - 1)).toBeLessThan(5e-4);
  });
  it('lets the latent heat fall all the way', () => {
    for (let T = 274; T < 640; T += 1) expect(latentHeat(T)).toBeLessThan(latentHeat(T - 0.5));
  });
});

describe('altitude', () => {
  // ISO 2533 (ISA); boiling by IAPWS-IF97, computed with python3-iapws.
  it.each([
    [0, 101325, 99.974],
    [250, 98358, 99.144],
    [500, 95461, 98.312],
    [1000, 89875, 96.649],
    [1500, 84556, 94.983],
    [1609, 83431, 94.62],
    [2000, 79495, 93.315],
    [2500, 74683, 91.645],
    [3000, 70109, 89.972],
  ])('%d m: %d Pa, boiling at %d degC', (h, p, t) => {
    expect(Math.abs(pressureAtAltitude(h) - p)).toBeLessThan(1);
    expect(Math.abs(boilingTemperature(h) - zeroCelsius - t)).toBeLessThan(1e-3);
  });
});

describe('vapour in air', () => {
  // The Engineering ToolBox, gases in large excess of air, cm2/s: the two sources differ by up to 8 %.
  it.each([
    [0, 0.219],
    [20, 0.242],
    [100, 0.399],
    [200, 0.638],
    [300, 0.873],
    [400, 1.135],
  ])('%d degC: %d cm2/s within 8 %', (t, D) => {
    expect(Math.abs(waterVapourDiffusivity(zeroCelsius + t, 101325) / (D * 1e-4) - 1)).toBeLessThan(0.08);
  });
  it('goes with the inverse of the pressure', () => {
    expect(waterVapourDiffusivity(300, 5e4)).toBeCloseTo(2 * waterVapourDiffusivity(300, 1e5), 12);
  });
});

describe('what water refuses', () => {
  it.each([273.1, 640.1, Number.NaN])('%d K', (T) => {
    expect(() => saturationPressure(T)).toThrow(OutOfRange);
    expect(() => latentHeat(T)).toThrow(/allowed 273.15 K to 640 K/);
    expect(() => saturationSlope(T)).toThrow(OutOfRange);
  });
  it('names field, found and allowed', () => {
    expect(() => pressureAtAltitude(5001)).toThrow('altitude: found 5001 m; allowed -500 m to 5000 m');
    expect(() => boilingTemperature(Number.NaN)).toThrow(/^altitude: found NaN m/);
    expect(() => saturationTemperature(500)).toThrow(/^water pressure: found 500 Pa/);
    expect(() => waterVapourDiffusivity(300, 0)).toThrow(/^vapour pressure: found 0 Pa/);
    expect(() => waterVapourDiffusivity(200, 1e5)).toThrow(/^vapour temperature: found 200 K/);
  });
});
