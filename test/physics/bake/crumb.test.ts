import { describe, expect, it } from 'vitest';
import { gelatinisationRate } from '../../../physics/bake/crumb.ts';

describe('starch, k = 2.8e18 exp(-139000/RT) (Zanoni, Schiraldi, Simonetta 1995, from memory; worked out)', () => {
  it.each([
    [65, 4146],
    [70, 2017],
    [75, 1002],
    [80, 508],
    [85, 262],
    [90, 138],
    [95, 74],
  ])('at %d degC 98 % is reached after %d s', (celsius, seconds) => {
    const found = -Math.log(0.02) / gelatinisationRate(273.15 + celsius);
    // Rounded to a second, and worked out with R 8.314 (0.25 % at this activation energy).
    expect(Math.abs(found - seconds)).toBeLessThan(0.5 + 0.004 * seconds);
  });
});
