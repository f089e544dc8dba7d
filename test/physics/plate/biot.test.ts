import { describe, expect, it } from 'vitest';
import {
  biotNumber,
  lumpedLimit,
  ovenCoefficient,
  plateCharacteristicLength,
} from '../../../physics/plate/biot.ts';

describe('Biot number', () => {
  it('Incropera Ex. 5.1: junction of 0.706 mm, h 400, k 20, D/6: 2.4e-3', () => {
    expect(Math.abs(biotNumber(400, 7.06e-4 / 6, 20) - 2.4e-3)).toBeLessThan(5e-5);
  });
  it('Incropera Ex. 5.4: h 500, wall of 40 mm heated on one side, k 63.9: 0.313', () => {
    expect(Math.abs(biotNumber(500, 0.04, 63.9) - 0.313)).toBeLessThan(5e-4);
  });
  // Worked out from h = 30 and half the thickness.
  it.each([
    ['9.5 mm steel, k 46', 9.5e-3, 46, 0.0031, 'lumped'],
    ['20 mm soapstone, k 6.4', 20e-3, 6.4, 0.047, 'lumped'],
    ['15 mm cordierite, k 2', 15e-3, 2, 0.113, 'slab'],
    ['25 mm fireclay, k 1.05', 25e-3, 1.05, 0.357, 'slab'],
  ] as const)('%s', (_, thickness, conductivity, expected, model) => {
    const found = biotNumber(30, thickness / 2, conductivity);
    expect(Math.abs(found / expected - 1)).toBeLessThan(0.02);
    expect(found < lumpedLimit ? 'lumped' : 'slab').toBe(model);
  });
});

describe('what a plate in an oven is computed with', () => {
  it('V/A of a wide plate is nearly half its thickness, less by its edges', () => {
    const length = plateCharacteristicLength(0.4, 0.35, 0.01);
    expect(length).toBeLessThan(0.005);
    // A cube has V/A = a/6.
    expect(Math.abs(plateCharacteristicLength(0.3, 0.3, 0.3) - 0.05)).toBeLessThan(1e-15);
    expect(length).toBeGreaterThan(0.0047);
  });
  it('h: sigma (T1 + T2)(T1^2 + T2^2) at 250 / 250 degC is 32.48 W/(m2 K) (worked out), and 5 by convection', () => {
    expect(Math.abs(ovenCoefficient(1, 523.15) - 5 - 32.48)).toBeLessThan(0.01);
    expect(Math.abs(ovenCoefficient(0.5, 523.15) - 5 - 16.24)).toBeLessThan(0.01);
  });
});
