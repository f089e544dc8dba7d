import { describe, expect, it } from 'vitest';
import { plateMaterialIds } from '../../../physics/evening/ids.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { zeroCelsius } from '../../../physics/materials/constants.ts';
import { carbonSteelConductivity, carbonSteelHeat } from '../../../physics/materials/metals.ts';
import { allowedSurfaces, plateMaterial } from '../../../physics/materials/plates.ts';
import { plateTable, tabledMaterialIds } from '../../../physics/materials/plateTable.ts';

const custom = { density: 2500, specificHeat: 900, thermalConductivity: 1.4, emissivity: 0.8 };
const every = plateMaterialIds.flatMap((id) => allowedSurfaces(id).map((surface) => ({ id, surface })));

describe('carbon steel, EN 1993-1-2:2005, 3.4.1.2 and 3.4.1.3 (worked by hand from the clause)', () => {
  it.each([
    [20, 439.8, 53.334],
    [100, 487.62, 50.67],
    [200, 529.76, 47.34],
    [250, 547.31, 45.675],
    [300, 564.74, 44.01],
    [400, 605.88, 40.68],
    [500, 666.5, 37.35],
    [600, 760.22, 34.02],
  ])('%d degC: c %d, k %d', (t, c, k) => {
    expect(Math.abs(carbonSteelHeat.value(zeroCelsius + t) - c)).toBeLessThan(0.0051);
    expect(Math.abs(carbonSteelConductivity(zeroCelsius + t) - k)).toBeLessThan(5e-4);
  });

  it.each([
    [700, 1008.16],
    [740, 2525.0],
    [800, 803.26],
    [900, 650],
    [1200, 650],
  ])('%d degC: c %d', (t, c) => {
    expect(Math.abs(carbonSteelHeat.value(zeroCelsius + t) - c)).toBeLessThan(0.0051);
  });

  it('peaks at 5000 J/(kg K) from both sides of 735 degC', () => {
    // The misprints 13.002, 17.820 and 1820 would leave 670, 549 and 1000.
    expect(carbonSteelHeat.value(zeroCelsius + 735 - 1e-9)).toBeCloseTo(5000, 4);
    expect(carbonSteelHeat.value(zeroCelsius + 735 + 1e-9)).toBeCloseTo(5000, 4);
  });

  it('conducts 27.3 W/(m K) from 800 degC', () => {
    expect(carbonSteelConductivity(zeroCelsius + 800)).toBe(27.3);
    // The misprint 0.033 would give 45.75 here.
    expect(carbonSteelConductivity(zeroCelsius + 250)).toBeCloseTo(45.675, 9);
  });

  const between = (from: number, to: number) =>
    carbonSteelHeat.integral(zeroCelsius + to) - carbonSteelHeat.integral(zeroCelsius + from);
  it.each([
    [20, 250, 115122],
    [20, 280, 131697],
    [20, 288, 136169],
    [20, 300, 142920],
    [600, 735, 139690],
    [735, 900, 156636],
  ])('takes up from %d to %d degC %d J/kg', (from, to, heat) => {
    expect(Math.abs(between(from, to) - heat)).toBeLessThan(0.6);
  });
});

describe('stainless steel, EN 1993-1-2:2005, Annex C (worked by hand from the annex)', () => {
  it.each([
    [20, 455.48, 14.854],
    [100, 475.22, 15.87],
    [200, 495.43, 17.14],
    [300, 511.43, 18.41],
    [400, 524.02, 19.68],
  ])('%d degC: c %d, k %d', (t, c, k) => {
    const plate = plateMaterial('stainless-steel', 'bare');
    expect(Math.abs(plate.specificHeat(zeroCelsius + t) - c)).toBeLessThan(0.0051);
    expect(Math.abs(plate.thermalConductivity(zeroCelsius + t) - k)).toBeLessThan(5e-4);
  });
});

describe('aluminium, EN 1999-1-2 (the clause is from memory)', () => {
  it.each([
    [20, 911.2, 191.4],
    [200, 985.0, 204.0],
    [300, 1026.0, 211.0],
  ])('%d degC: c %d, k %d', (t, c, k) => {
    const plate = plateMaterial('aluminium', 'bare');
    expect(plate.specificHeat(zeroCelsius + t)).toBeCloseTo(c, 9);
    expect(plate.thermalConductivity(zeroCelsius + t)).toBeCloseTo(k, 9);
  });
});

describe('room temperature against the design values of EN 12524:2000', () => {
  // Only the density of stainless steel was taken from there; clay is its clay tile. The tolerance is what one
  // value for a class of alloys or bricks can promise.
  it.each([
    { id: 'carbon-steel', rho: 7800, c: 450, k: 50, within: 0.08 },
    { id: 'stainless-steel', rho: 7900, c: 460, k: 17, within: 0.15 },
    { id: 'cast-iron', rho: 7500, c: 450, k: 50, within: 0.05 },
    { id: 'aluminium', rho: 2800, c: 880, k: 160, within: 0.2 },
    { id: 'fired-clay', rho: 2000, c: 800, k: 1.0, within: 0.08 },
  ] as const)('$id', ({ id, rho, c, k, within }) => {
    const plate = plateMaterial(id, 'bare');
    expect(Math.abs(plate.density / rho - 1)).toBeLessThan(within);
    expect(Math.abs(plate.specificHeat(293.15) / c - 1)).toBeLessThan(within);
    expect(Math.abs(plate.thermalConductivity(293.15) / k - 1)).toBeLessThan(within);
  });
  it('follows the VDI Heat Atlas for fireclay where that begins', () => {
    const plate = plateMaterial('fired-clay', 'bare');
    expect(plate.specificHeat(zeroCelsius + 400)).toBeCloseTo(956, 9);
    expect(plate.specificHeat(zeroCelsius + 600)).toBeCloseTo(997, 9);
    expect(plate.thermalConductivity(zeroCelsius + 400)).toBeCloseTo(1.05, 9);
  });
});

it.each(tabledMaterialIds)('%s has the surface that it is usually sold or kept with', (id) => {
  expect(allowedSurfaces(id)).toContain(plateTable[id].usualSurface);
});

describe.each(every)('$id, $surface', ({ id, surface }) => {
  const plate = plateMaterial(id, surface, custom);
  it('has numbers of its class, each with a source', () => {
    expect(plate.density).toBeGreaterThan(1500);
    // Copper, the densest metal that a plate is made of, has 8900.
    expect(plate.density).toBeLessThan(9000);
    expect(plate.emissivity).toBeGreaterThan(0);
    expect(plate.emissivity).toBeLessThanOrEqual(1);
    expect(plate.metallic).toBe(plate.thermalConductivity(500) > 10);
    expect(plate.sources.map((row) => row.property)).toEqual([
      'density',
      'specificHeat',
      'thermalConductivity',
      'emissivity',
    ]);
    for (const row of plate.sources) {
      expect(row.source.length).toBeGreaterThan(4);
      expect(row.spread).toBeGreaterThanOrEqual(0);
      expect(row.spread).toBeLessThan(0.5);
      expect(Number.isFinite(row.value)).toBe(true);
    }
  });
  it('holds as enthalpy the exact integral of its specific heat', () => {
    expect(plate.specificEnthalpy(zeroCelsius)).toBe(0);
    for (let from = 255; from < 865; from += 10) {
      // Gauss-Legendre with two points is exact for cubics; the peak of carbon steel lies higher up.
      const half = 5 / Math.sqrt(3);
      const mean = (plate.specificHeat(from + 5 - half) + plate.specificHeat(from + 5 + half)) / 2;
      const step = plate.specificEnthalpy(from + 10) - plate.specificEnthalpy(from);
      expect(Math.abs(step / (10 * mean) - 1)).toBeLessThan(3e-4);
    }
  });
  it('refuses what lies outside', () => {
    expect(() => plate.specificHeat(249)).toThrow(OutOfRange);
    expect(() => plate.specificEnthalpy(Number.NaN)).toThrow(OutOfRange);
    expect(() => plate.thermalConductivity(1500)).toThrow(OutOfRange);
    expect(plate.thermalConductivity(873)).toBeGreaterThan(0);
  });
});

describe('what a plate refuses', () => {
  it('a surface the material does not have', () => {
    expect(() => plateMaterial('soapstone', 'rusted')).toThrow(
      'plate.surface: found rusted on soapstone; allowed seasoned, bare',
    );
  });
  it('a custom plate without numbers, or with impossible ones', () => {
    expect(() => plateMaterial('custom', 'bare')).toThrow(/^plate.custom: found nothing; allowed density/);
    expect(() => plateMaterial('custom', 'bare', { ...custom, density: 0 })).toThrow(
      'plate.custom.density: found 0; allowed a number above 0',
    );
    expect(() => plateMaterial('custom', 'bare', { ...custom, emissivity: 1.2 })).toThrow(
      /^plate.custom.emissivity: found 1.2/,
    );
    expect(() => plateMaterial('custom', 'bare', { ...custom, specificHeat: Number.NaN })).toThrow(
      /found NaN/,
    );
  });
});
