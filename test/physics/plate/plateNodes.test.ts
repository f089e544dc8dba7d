import { describe, expect, it } from 'vitest';
import { plateMaterial } from '../../../physics/materials/plates.ts';
import { firstPlateNode } from '../../../physics/oven/networkParts.ts';
import type { OvenNetwork } from '../../../physics/oven/network.ts';
import { PlateNodes, lumpedLayout, slabLayout } from '../../../physics/plate/plateNodes.ts';
import type { PlateLayout } from '../../../physics/plate/plateNodes.ts';
import { lumped, planeWall } from '../../support/closedForms.ts';
import { drive, room, smallNetwork } from '../../support/smallNetworks.ts';

const constant = plateMaterial('custom', 'bare', {
  density: 2000,
  specificHeat: 900,
  thermalConductivity: 2,
  emissivity: 0.9,
});
const steel = plateMaterial('carbon-steel', 'seasoned', undefined);

function plateAlone(layout: PlateLayout, plate: PlateNodes, start: number, h: number): OvenNetwork {
  const toRoom = layout.columns.flatMap(({ under, top, area }) => [
    { node: under, conductance: h * area },
    { node: top, conductance: h * area },
  ]);
  const network = smallNetwork(new Array<number>(firstPlateNode + layout.nodes).fill(0), {
    conductors: plate.conductors,
    toRoom,
  });
  network.temperature.fill(start);
  plate.take(network);
  return network;
}

function march(
  network: OvenNetwork,
  plate: PlateNodes,
  seconds: number,
  steps: number,
  driven = drive(),
): void {
  for (let i = 0; i < steps; i++) {
    plate.prepare(network);
    if (!network.step(seconds / steps, driven)) throw new Error(`step ${i} was refused`);
    plate.follow(network);
  }
}

describe('a slab with both faces in a fluid, Bi 1 (series of Incropera 5.5; theta worked out from it)', () => {
  const thickness = 0.02;
  const half = thickness / 2;
  const h = 2 / half;
  const found = (layers: number, fourier: number): readonly [number, number] => {
    const layout = slabLayout([0.1], layers);
    const plate = new PlateNodes(layout, constant, thickness, 0);
    const network = plateAlone(layout, plate, room + 100, h);
    march(network, plate, (fourier * half ** 2 * 2000 * 900) / 2, 4000);
    const T = network.temperature;
    return [(plate.core(0, T) - room) / 100, (T[layout.columns[0]!.top]! - room) / 100];
  };
  it.each([
    [0.2, 0.950642, 0.643391],
    [0.5, 0.772526, 0.504522],
    [1, 0.533859, 0.348177],
  ])('Fo %d: centre %d, surface %d', (fourier, centre, surface) => {
    expect(Math.abs(planeWall(1, fourier, 0) - centre)).toBeLessThan(1e-6);
    const [core, top] = found(32, fourier);
    expect(Math.abs(core - centre)).toBeLessThan(6e-4);
    expect(Math.abs(top - surface)).toBeLessThan(6e-4);
  });
  it('the error falls with the square of the layers, and with four of them is below 2 % of the jump', () => {
    const errors = [4, 8, 16].map((n) => {
      const [core, top] = found(n, 0.5);
      return [Math.abs(core - planeWall(1, 0.5, 0)), Math.abs(top - planeWall(1, 0.5, 1))] as const;
    });
    for (const place of [0, 1] as const) {
      expect(errors[0]![place]).toBeLessThan(0.02);
      for (const i of [0, 1]) {
        const ratio = errors[i]![place] / errors[i + 1]![place];
        expect(ratio).toBeGreaterThan(3.5);
        expect(ratio).toBeLessThan(4.5);
      }
    }
  });
});

describe('a lumped plate', () => {
  it('cools as one lump of rho c V/(h A) (closed form)', () => {
    const layout = lumpedLayout(0.1);
    const plate = new PlateNodes(layout, constant, 0.01, 0);
    const network = plateAlone(layout, plate, room + 200, 12);
    march(network, plate, 600, 6000);
    const tau = (2000 * 900 * 0.01) / (2 * 12);
    expect(plate.mass).toBeCloseTo(2, 12);
    expect(Math.abs(network.temperature[firstPlateNode]! - lumped(room + 200, room, tau, 600))).toBeLessThan(
      0.02,
    );
  });
});

describe('steel keeps its heat as enthalpy', () => {
  // EN 1993-1-2:2005, 3.4.1.2, integrated from 20 degC: 115.122 kJ/kg to 250, 136.169 to 288, 142.920 to 300 degC.
  it.each([
    [250, 115_122],
    [288, 136_169],
    [300, 142_920],
  ])('to %d degC with %d J/kg, in few steps or many', (celsius, perKilogram) => {
    for (const steps of [20, 500]) {
      const layout = lumpedLayout(0.15);
      const plate = new PlateNodes(layout, steel, 0.0095, 0);
      const network = plateAlone(layout, plate, room, 0);
      const before = plate.heat;
      const watt = (perKilogram * plate.mass) / 1000;
      march(network, plate, 1000, steps, drive([{ node: firstPlateNode, watt }]));
      expect(Math.abs(network.temperature[firstPlateNode]! - 273.15 - celsius)).toBeLessThan(0.02);
      expect(Math.abs(plate.heat - before - watt * 1000)).toBeLessThan(1e-6 * watt * 1000);
    }
  });
});

describe('two columns side by side', () => {
  it('even out through their lateral conduction: C1 C2/(C1 + C2)/K (closed form), heat kept', () => {
    const [thickness, lateral] = [0.01, 8];
    const layout = slabLayout([0.07, 0.05], 2);
    const plate = new PlateNodes(layout, constant, thickness, lateral);
    const network = plateAlone(layout, plate, room, 0);
    const T = network.temperature;
    for (const node of [...layout.columns[0]!.layers, layout.columns[0]!.under, layout.columns[0]!.top])
      T[node] = room + 100;
    plate.take(network);
    const before = plate.heat;
    march(network, plate, 1000, 4000);
    const [first, second] = [0.07, 0.05].map((area) => area * thickness * 2000 * 900) as [number, number];
    const tau = (first * second) / ((first + second) * lateral * thickness * 2);
    const mean = room + (100 * first) / (first + second);
    for (const node of layout.columns[0]!.layers)
      expect(Math.abs(T[node]! - lumped(room + 100, mean, tau, 1000))).toBeLessThan(0.05);
    expect(Math.abs(plate.heat - before)).toBeLessThan(1e-6);
  });
});
