import { describe, expect, it } from 'vitest';
import { crustColour, cssColour, labToSrgb } from '../../../physics/bake/colour.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';

describe('CIE 15 and IEC 61966-2-1 (constants of the standards from memory, values worked out beforehand)', () => {
  it.each([
    [85, 212],
    [75, 185],
    [70, 171],
    [65, 158],
    [60, 145],
    [55, 132],
    [50, 119],
    [45, 106],
    [40, 94],
    [30, 71],
    [0, 0],
    [100, 255],
  ])('neutral grey of L* %d is %d', (lightness, value) => {
    expect(labToSrgb(lightness, 0, 0)).toEqual({ r: value, g: value, b: value });
  });
  it.each([
    [70, 8, 32, 204, 164, 113],
    [60, 13, 35, 184, 135, 83],
    [50, 14, 30, 156, 109, 68],
    [40, 12, 22, 123, 86, 59],
  ])('L*a*b* %d %d %d is %d %d %d', (lightness, a, b, red, green, blue) => {
    expect(labToSrgb(lightness, a, b)).toEqual({ r: red, g: green, b: blue });
  });
});

describe('crust', () => {
  it('darkens in all three channels from raw to burnt', () => {
    for (let lightness = 10; lightness <= 95; lightness += 5) {
      const light = crustColour(lightness + 5);
      const dark = crustColour(lightness);
      expect(dark.r).toBeLessThan(light.r);
      expect(dark.g).toBeLessThan(light.g);
      expect(dark.b).toBeLessThanOrEqual(light.b);
      // Bread is yellow to brown, never green or blue.
      expect(dark.r).toBeGreaterThanOrEqual(dark.g);
      expect(dark.g).toBeGreaterThanOrEqual(dark.b);
    }
  });
  it('is written for CSS', () => {
    expect(cssColour(crustColour(70))).toBe('rgb(204 164 113)');
  });
});

describe('what colour refuses', () => {
  it('lightness outside 0 to 100 and colours that are no numbers', () => {
    expect(() => crustColour(101)).toThrow('lightness: found L* 101; allowed L* 0 to 100');
    expect(() => labToSrgb(Number.NaN, 0, 0)).toThrow(OutOfRange);
    expect(() => labToSrgb(50, Infinity, 0)).toThrow('a*: found Infinity; allowed a finite number');
    expect(() => labToSrgb(50, 0, Number.NaN)).toThrow(/^b\*/);
  });
});
