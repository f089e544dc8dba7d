import { describe, expect, it } from 'vitest';
import { PizzaColumn } from '../../../physics/bake/column.ts';
import { conductivity, waterHeat } from '../../../physics/bake/moistCell.ts';
import { latentHeat, saturationPressure } from '../../../physics/materials/water.ts';
import type { OvenNetwork } from '../../../physics/oven/network.ts';
import { contact, effusivity } from '../../support/closedForms.ts';
import { cellsOf, columnSetting, drySolid, growingCells } from '../../support/columnLayers.ts';
import { drive, room, smallNetwork } from '../../support/smallNetworks.ts';

const zero = 273.15;

/** Steps of at most `dt`, halved where the column asks for it. */
function march(network: OvenNetwork, until: number, dt: (time: number) => number, from = 0): void {
  for (let time = from; until - time > 1e-9;) {
    let step = Math.min(dt(time), until - time);
    while (!network.step(step, drive())) step /= 2;
    time += step;
  }
}

describe('two half-spaces in contact, 280 and 20 degC, dough k 0.5, rho 700, c 2250 (Carslaw and Jaeger; worked out)', () => {
  const doughK = 0.5;
  const dough = drySolid(doughK, 700, 2250);
  const doughSizes = growingCells(0.05e-3, 1.06, 74);

  function run(plateK: number, volumetric: number, H: number, times: readonly number[]) {
    // A bar of plate, fine at the contact, as a chain of nodes behind node 1; node 2 is the far face of the dough.
    const sizes = growingCells(0.3e-3, 1.08, 70);
    const node = (i: number): number => (i === 0 ? 1 : i + 2);
    const capacities = new Array<number>(sizes.length + 2).fill(0);
    sizes.forEach((size, i) => (capacities[node(i)] = size * volumetric));
    capacities[0] = 1;
    const conductors = sizes.slice(1).map((size, i) => ({
      a: node(i),
      b: node(i + 1),
      conductance: (2 * plateK) / (size + sizes[i]!),
    }));
    const network = smallNetwork(capacities, {
      conductors,
      faces: [{ node: 2, area: 1, facing: 'up', length: 0.1 }],
    });
    network.temperature.fill(280 + zero);
    network.temperature[2] = 20 + zero;
    const column = new PizzaColumn(
      columnSetting(cellsOf(dough, doughSizes, 20 + zero), {
        contactResistance: 1 / H + sizes[0]! / (2 * plateK),
        evaporation: false,
      }),
    );
    network.columns = [column];
    const heat = (): number => network.heat(capacities.length) + column.heatContent;
    const before = heat();
    const faces: number[] = [];
    let last = 0;
    for (const time of times) {
      march(network, time, (t) => Math.min(0.5, 0.01 + t / 100), last);
      last = time;
      faces.push(column.baseFace - zero);
    }
    // Nothing leaves: the far ends are far away and insulated.
    expect(Math.abs(heat() - before)).toBeLessThan(1e-3);
    return faces;
  }

  it.each([
    ['steel k 45 rho 7850 c 550', 45, 7850 * 550, 13938.7, 200, [74.25, 141.25, 198.05, 223.39]],
    ['steel, better contact', 45, 7850 * 550, 13938.7, 400, [111.33, 186.47, 228.52, 243.25]],
    ['cordierite k 2.5 rho 2000 c 950', 2.5, 2000 * 950, 2179.4, 200, [71.19, 125.91, 165.21, 180.89]],
    ['cordierite, better contact', 2.5, 2000 * 950, 2179.4, 400, [102.62, 157.69, 183.96, 192.6]],
    ['clay k 0.86 rho 2500 c 860', 0.86, 2500 * 860, 1359.8, 200, [69.18, 117.0, 148.15, 159.9]],
    ['clay, better contact', 0.86, 2500 * 860, 1359.8, 400, [97.28, 142.39, 162.16, 168.49]],
  ])('%s, H %#: the face of the dough after 1, 10, 60, 180 s', (_, k, volumetric, e1, H, expected) => {
    const times = [1, 10, 60, 180];
    expect(Math.abs(effusivity(k, 1, volumetric) / e1 - 1)).toBeLessThan(1e-4);
    const found = run(k, volumetric, H, times);
    times.forEach((time, i) => {
      const exact = contact(e1, 280, effusivity(doughK, 700, 2250), 20, H, time).face2;
      expect(Math.abs(exact - expected[i]!)).toBeLessThan(0.01);
      // 0.3 K of a jump of 260: the steps begin at 10 ms.
      expect(Math.abs(found[i]! - expected[i]!)).toBeLessThan(0.5);
    });
  });
});

describe('vapour in open, wet pores carries heat as k_v = D (M/RT) p/(p - p_s) dp_s/dT h_fg', () => {
  // Philip and de Vries 1957 (form from memory), worked out with Massman's D at 101325 Pa. W/(m K) of a free pore.
  it.each([
    [20, 0.067],
    [40, 0.197],
    [60, 0.55],
    [80, 1.77],
    [90, 4.31],
    [95, 9.43],
    [98, 25.0],
    [99, 51.4],
  ])('%d degC: %d W/(m K)', (celsius, published) => {
    const [share, spread, dx, dt] = [0.3, 0.01, 1e-3, 1e-3];
    // So wet that the water activity is 1.
    const material = { ...drySolid(0.3, 1000, 2000), vapourShare: share };
    const cells = [-1, 1].map(
      (side) => cellsOf(material, [dx], celsius + zero + (side * spread) / 2, 50)[0]!,
    );
    const network = smallNetwork([1, 1, 0], { faces: [{ node: 2, area: 1, facing: 'up', length: 0.1 }] });
    network.temperature.fill(celsius + zero);
    const column = new PizzaColumn(columnSetting(cells, { contactResistance: 1e12 }));
    network.columns = [column];
    const heat = column.heat[1]!;
    const water = column.water[1]!;
    const temperature = column.temperature[1]!;
    expect(network.step(dt, drive())).toBe(true);
    // Heat that left the warmer cell beyond that of the liquid that left it.
    const flux =
      (heat - column.heat[1]! - waterHeat * (temperature - zero) * (water - column.water[1]!)) / dt;
    const found = (flux * dx) / spread - conductivity(material, 50, celsius + zero);
    // Two per cent: the cells' latent heat is linear in temperature (3 kJ/kg), the table has three digits.
    expect(Math.abs(found / share / published - 1)).toBeLessThan(0.02);
    // Nothing but the neighbour received it.
    expect(Math.abs(column.heat[0]! - heatOf(cells[0]!) - (heat - column.heat[1]!))).toBeLessThan(1e-7);
  });
});

function heatOf({ solids, material, water, temperature }: ReturnType<typeof cellsOf>[number]): number {
  return (solids * material.solidsHeat + water * waterHeat) * (temperature - zero);
}

describe('a wet surface in a stream of dry air, no radiation', () => {
  // Lewis relation with Le near 1: the wet bulb stays close to adiabatic saturation, where the heat given up by the
  // air, c_p (T_air - T), equals that taken by the vapour it carries off, w h_fg with w = 0.622 p_s/(p - p_s).
  it.each([120, 180, 250])('of %d degC settles within 1.5 K of adiabatic saturation', (air) => {
    let [low, high] = [10, 99];
    while (high - low > 1e-6) {
      const t = (low + high) / 2;
      const ps = saturationPressure(t + zero);
      if (((0.622 * ps) / (101325 - ps)) * latentHeat(t + zero) < 1020 * (air - t)) low = t;
      else high = t;
    }
    const network = smallNetwork([1e12, 1, 0], { faces: [{ node: 2, area: 1, facing: 'up', length: 0.1 }] });
    network.temperature.set([air + zero, 40 + zero, 40 + zero]);
    network.convection[0] = 8;
    // One cell, in which water and vapour move freely: a wick.
    const material = { ...drySolid(0.5, 1000, 2000), vapourShare: 1000 };
    const column = new PizzaColumn(
      columnSetting(cellsOf(material, [1e-3], 40 + zero, 5), { contactResistance: 1e12 }),
    );
    network.columns = [column];
    let time = 0;
    while (time < 2400) {
      network.steamFraction = 0;
      let step = 2;
      while (!network.step(step, drive())) step /= 2;
      time += step;
    }
    expect(column.activity(0)).toBeGreaterThan(0.99);
    expect(Math.abs(column.temperature[0]! - zero - low)).toBeLessThan(1.5);
  });
});

describe('boiling', () => {
  it.each([
    [101325, 99.974],
    [79495, 93.315],
  ])(
    'at %d Pa a wet cell on a hot plate stays at %d degC (IAPWS-IF97) until it is dry',
    (pressure, boiling) => {
      const material = { ...drySolid(0.3, 700, 1800), porosity: 0.5 };
      const cells = cellsOf(material, growingCells(0.15e-3, 1.2, 14), 20 + zero, 2);
      const network = smallNetwork([1e9, 1e9, 0], {
        faces: [{ node: 2, area: 1, facing: 'up', length: 0.1 }],
      });
      network.temperature.set([150 + zero, 280 + zero, 20 + zero]);
      network.convection[0] = 6;
      const column = new PizzaColumn(columnSetting(cells, { pressure }));
      network.columns = [column];
      const before = { water: column.waterMass };
      let [time, wetWhileHot, highest] = [0, 0, 0];
      while (time < 400) {
        let step = 1;
        while (!network.step(step, drive())) step /= 2;
        time += step;
        for (let i = 0; i < column.size; i++) {
          // The water activity lifts the boiling point: p_s(T_b) = p/a.
          if (column.moisture(i) < 0.3) continue;
          highest = Math.max(highest, column.temperature[i]! - zero);
          if (column.temperature[i]! > boiling + zero - 0.5) wetWhileHot += 1;
          const excess = column.activity(i) * saturationPressure(column.temperature[i]! - 0.5);
          expect(excess).toBeLessThan(pressure);
        }
      }
      expect(wetWhileHot).toBeGreaterThan(100);
      // Activity at W 0.3 is 0.977: at most 0.7 K above pure water, and half a kelvin for the step.
      expect(highest).toBeGreaterThan(boiling - 0.5);
      expect(highest).toBeLessThan(boiling + 1.2);
      // The base dried meanwhile and got hotter than any boiling water.
      expect(column.baseFace - zero).toBeGreaterThan(boiling + 40);
      expect(Math.abs(before.water - column.waterMass - column.evaporated)).toBeLessThan(1e-12);
    },
  );
});

describe('the state of a column', () => {
  it('saved and taken up again gives the same steps', () => {
    const cells = cellsOf(drySolid(0.4, 700, 1800), growingCells(0.2e-3, 1.2, 8), 20 + zero, 0.7);
    const network = smallNetwork([1e9, 1e9, 0], { faces: [{ node: 2, area: 1, facing: 'up', length: 0.1 }] });
    network.temperature.set([200 + zero, 250 + zero, room]);
    const column = new PizzaColumn(columnSetting(cells));
    network.columns = [column];
    march(network, 20, () => 0.5);
    const [oven, pizza] = [network.save(), column.save()];
    march(network, 40, () => 0.5, 20);
    const later = column.save();
    network.load(oven);
    column.load(pizza);
    march(network, 40, () => 0.5, 20);
    expect(column.save()).toEqual(later);
  });
});
