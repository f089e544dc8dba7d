import { describe, expect, it } from 'vitest';
import {
  activitySlopes,
  conductivity,
  saturation,
  steamEnthalpy,
  vapourMobility,
  vapourPotential,
  vapourPotentialSlope,
  tabulatedActivity,
  waterActivity,
  waterHeat,
} from '../../../physics/bake/moistCell.ts';
import type { LayerMaterial } from '../../../physics/bake/moistCell.ts';
import { gasConstant, molarMassWater } from '../../../physics/materials/constants.ts';
import { mixtureProperties } from '../../../physics/materials/food.ts';
import { drySolid } from '../../support/columnLayers.ts';

const zero = 273.15;

describe('sorption, Oswin form', () => {
  // W = A/100 (a/(1-a))^0.38, A = exp(5.5 - 0.0056 T): Lind and Rask 1991 as used by others (from memory), worked
  // out. Their level is not ours; with theirs put in, the form, exponent and slope must give their table.
  const published = Math.exp(5.5 - 0.0056 * 373.15) / 100;
  it.each([
    [25, [0.0029, 0.0176, 0.1, 0.244, 0.408, 0.667, 0.75]],
    [60, [0.0048, 0.0292, 0.157, 0.351, 0.536, 0.77, 0.834]],
    [100, [0.0087, 0.0514, 0.251, 0.494, 0.676, 0.858, 0.901]],
  ])('at %d degC, W 0.05 to 0.7', (celsius, activities) => {
    [0.05, 0.1, 0.2, 0.3, 0.4, 0.6, 0.7].forEach((moisture, i) => {
      const found = waterActivity(moisture, zero + celsius, published);
      expect(Math.abs(found - activities[i]!)).toBeLessThan(6e-4);
    });
  });
  it('of dough: fresh nearly 1 (0.95 to 0.97 from memory), flour of 14 % moisture 0.6 to 0.75 (from memory)', () => {
    const dough = 0.072;
    expect(waterActivity(0.7, zero + 25, dough)).toBeGreaterThan(0.95);
    const flour = waterActivity(0.14 / 0.86, zero + 25, dough);
    expect(flour).toBeGreaterThan(0.6);
    expect(flour).toBeLessThan(0.75);
    expect(waterActivity(0, 400, dough)).toBe(0);
    expect(waterActivity(dough, 373.15, dough)).toBeCloseTo(0.5, 14);
  });
  it('is read from tables to 1e-4', () => {
    for (const half of [0.005, 0.05, 0.072, 0.12])
      for (let W = 0; W < 9; W += 0.0037)
        for (let T = 220; T < 800; T += 23.3)
          expect(Math.abs(tabulatedActivity(W, T, half) - waterActivity(W, T, half))).toBeLessThan(1e-4);
  });
  it('has the slopes that its difference quotients have', () => {
    for (const [W, T] of [
      [0.02, 430],
      [0.08, 375],
      [0.5, 330],
    ] as const) {
      const a = waterActivity(W, T, 0.072);
      const dW = (waterActivity(W + 1e-6, T, 0.072) - waterActivity(W - 1e-6, T, 0.072)) / 2e-6;
      const dT = (waterActivity(W, T + 1e-3, 0.072) - waterActivity(W, T - 1e-3, 0.072)) / 2e-3;
      expect(Math.abs(activitySlopes.perMoisture(a, W) / dW - 1)).toBeLessThan(1e-6);
      expect(Math.abs(activitySlopes.perKelvin(a) / dT - 1)).toBeLessThan(1e-6);
    }
  });
});

describe('the potential of vapour', () => {
  it('is that of Stefan diffusion, -ln(1 - x), with the slope 1/(1 - x)', () => {
    for (const x of [0, 0.02, 0.5, 0.9, 0.99]) {
      expect(vapourPotential(x)).toBeCloseTo(-Math.log(1 - x), 14);
      const quotient = (vapourPotential(x + 1e-7) - vapourPotential(x - 1e-7)) / 2e-7;
      expect(Math.abs(vapourPotentialSlope(x) / quotient - 1)).toBeLessThan(1e-5);
      expect(Math.abs(vapourPotentialSlope(x) * (1 - x) - 1)).toBeLessThan(1e-12);
    }
  });
  it('goes on without a jump or a kink where the pores hold nothing but steam, and never falls', () => {
    let last = -1;
    let lastSlope = 0;
    for (let x = 0.99; x < 1.02; x += 1e-5) {
      const [psi, slope] = [vapourPotential(x), vapourPotentialSlope(x)];
      expect(psi).toBeGreaterThan(last);
      expect(slope).toBeGreaterThanOrEqual(lastSlope);
      // No jump larger than slope times step, no kink: slopes of neighbours agree within 1 %.
      if (last > 0) {
        expect(psi - last).toBeLessThan(slope * 1.01e-5);
        expect(slope / lastSlope).toBeLessThan(1.01);
      }
      [last, lastSlope] = [psi, slope];
    }
  });
});

describe('water and steam', () => {
  // IAPWS-IF97 by a public library.
  it.each([
    [20, 2339.2, 2453.55],
    [40, 7384.4, 2406.0],
    [60, 19946, 2357.69],
    [80, 47415, 2308.07],
    [100, 101418, 2256.47],
    [120, 198665, 2202.15],
  ])('at %d degC: p_s %d Pa within 0.01 %, h_fg %d kJ/kg within 0.6 %', (celsius, pressure, latent) => {
    const out = { pressure: 0, slope: 0 };
    saturation(zero + celsius, out);
    expect(Math.abs(out.pressure / pressure - 1)).toBeLessThan(1e-4);
    const heat = (steamEnthalpy(zero + celsius) - waterHeat * celsius) / 1000;
    expect(Math.abs(heat - latent)).toBeLessThan(celsius <= 100 ? 3.1 : 9);
  });
  it('p_s slope is that of the steam tables: 144.9, 923.1, 3114.2 Pa/K at 20, 60, 95 degC (worked out)', () => {
    for (const [celsius, slope] of [
      [20.25, 144.9],
      [60.25, 923.1],
      [95.25, 3114.2],
    ] as const) {
      const out = { pressure: 0, slope: 0 };
      saturation(zero + celsius - 0.25, out);
      // Linear between rows of half a kelvin.
      expect(Math.abs(out.slope / slope - 1)).toBeLessThan(0.02);
    }
  });
  it('diffusion of vapour in air: 0.242 cm2/s at 20, 0.638 at 200 degC (engineering table), within its 8 %', () => {
    for (const [celsius, square] of [
      [20, 0.242],
      [100, 0.399],
      [200, 0.638],
      [300, 0.873],
    ] as const) {
      const T = zero + celsius;
      const diffusivity = (vapourMobility(T) * gasConstant * T) / (molarMassWater * 101325);
      expect(Math.abs((diffusivity * 1e4) / square - 1)).toBeLessThan(0.085);
    }
  });
});

describe('conductivity', () => {
  const dry = { water: 0, protein: 0.065, fat: 0.02, carbohydrate: 0.45, fibre: 0.015, ash: 0.02 };
  const scaled = Object.fromEntries(
    Object.entries(dry).map(([name, share]) => [name, share / 0.57]),
  ) as typeof dry;
  const [cold, warm] = [mixtureProperties(scaled, zero), mixtureProperties(scaled, zero + 100)];
  const compact: LayerMaterial = {
    ...drySolid(cold.conductivityParallel, mixtureProperties(scaled, zero + 60).density, 1800),
    solidsConductivitySlope: (warm.conductivityParallel - cold.conductivityParallel) / 100,
  };

  it.each([
    [20, 0.4273],
    [60, 0.4715],
    [100, 0.4998],
  ])(
    'of compact dough of 43 %% water at %d degC: %d (Choi and Okos 1986, parallel; worked out)',
    (celsius, k) => {
      // 2 %: the dry matter is taken linear in temperature, water at one density.
      expect(Math.abs(conductivity(compact, 0.43 / 0.57, zero + celsius) / k - 1)).toBeLessThan(0.02);
    },
  );

  it('with pores lies between phases in series and side by side, for every moisture and temperature', () => {
    for (const porosity of [0.1, 0.5, 0.75])
      for (const moisture of [0, 0.05, 0.2, 0.8])
        for (const celsius of [5, 60, 100, 180, 260]) {
          const T = zero + celsius;
          const solid = conductivity(compact, moisture, T);
          // Air, Incropera Table A.4, by a straight line within 3 % between 300 and 550 K.
          const gas = 0.0263 + (0.0439 - 0.0263) * ((T - 300) / 250);
          const found = conductivity({ ...compact, porosity }, moisture, T);
          expect(found).toBeLessThan((1 - porosity) * solid + porosity * gas * 1.05);
          expect(found).toBeGreaterThan(0.9 / ((1 - porosity) / solid + porosity / gas));
        }
  });

  it('falls as the dough dries, into the ranges of reviews: 0.2 to 0.5 moist, 0.05 to 0.1 dry (from memory)', () => {
    const bread = { ...compact, porosity: 0.5, dryConductivityFactor: 0.9 };
    const rows = [0.7, 0.4, 0.2, 0.1, 0.05, 0].map((W) => conductivity(bread, W, zero + 120));
    for (let i = 1; i < rows.length; i++) expect(rows[i]!).toBeLessThan(rows[i - 1]!);
    expect(rows[0]!).toBeGreaterThan(0.2);
    expect(rows[0]!).toBeLessThan(0.5);
    expect(rows.at(-1)!).toBeGreaterThan(0.05);
    expect(rows.at(-1)!).toBeLessThan(0.1);
  });
});
