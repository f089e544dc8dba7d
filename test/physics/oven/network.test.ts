import { describe, expect, it } from 'vitest';
import { stefanBoltzmann } from '../../../physics/materials/constants.ts';
import { airNode, doorNode } from '../../../physics/oven/networkParts.ts';
import { WallStack } from '../../../physics/oven/wallStack.ts';
import { lumped, radiatingTime } from '../../support/closedForms.ts';
import { integrate } from '../../support/odex.ts';
import { drive, march, room, smallNetwork } from '../../support/smallNetworks.ts';

/** Ratio of the errors of `steps` and twice as many. */
function orderOf(error: (steps: number) => number, steps: number): number {
  return error(steps) / error(2 * steps);
}

describe('two nodes and a conductance (closed form: the difference decays with C1 C2/(C1 + C2)/K)', () => {
  const [first, second, K] = [500, 1200, 3];
  const error = (steps: number): number => {
    const network = smallNetwork([first, second], { conductors: [{ a: 0, b: 1, conductance: K }] });
    network.temperature.set([400, 300]);
    march(network, 120, steps);
    const mean = (first * 400 + second * 300) / (first + second);
    const tau = (first * second) / ((first + second) * K);
    return Math.abs(network.temperature[0]! - lumped(400, mean, tau, 120));
  };
  it('is met, and half the step halves the error (implicit Euler)', () => {
    expect(error(480)).toBeLessThan(0.05);
    expect(orderOf(error, 60)).toBeGreaterThan(1.9);
    expect(orderOf(error, 60)).toBeLessThan(2.1);
  });
  it('conserves heat to rounding', () => {
    const network = smallNetwork([first, second], { conductors: [{ a: 0, b: 1, conductance: K }] });
    network.temperature.set([400, 300]);
    const before = network.heat(2);
    march(network, 120, 7);
    expect(Math.abs(network.heat(2) - before)).toBeLessThan(1e-9);
  });
});

describe('a body that only radiates', () => {
  // rho 7850, c 500, V/A 4.75 mm, eps 0.8, 573.15 to 373.15 K in 293.15 K: 2463.54 s (worked out from the closed form).
  const areal = 7850 * 500 * 4.75e-3;
  const time = radiatingTime(areal, 0.8 * stefanBoltzmann, 573.15, 373.15, 293.15);
  const error = (steps: number): number => {
    // The surroundings: a node so large that it keeps its temperature.
    const network = smallNetwork([areal, 1e15], { radiation: { a: [0], b: [1], area: [0.8] } });
    network.temperature.set([573.15, 293.15]);
    march(network, time, steps);
    return Math.abs(network.temperature[0]! - 373.15);
  };
  it('cools as the closed form says, and half the step halves the error', () => {
    expect(time).toBeCloseTo(2463.54, 1);
    expect(error(1000)).toBeLessThan(0.1);
    expect(orderOf(error, 250)).toBeGreaterThan(1.9);
    expect(orderOf(error, 250)).toBeLessThan(2.1);
  });
});

describe('a small oven of air, two radiating walls and a heated rod', () => {
  const capacities = [80, 2000, 3500, 330];
  const exchange = { a: [1, 1, 2], b: [2, 3, 3], area: [0.08, 0.03, 0.02] };
  const conductors = [
    { a: 0, b: 1, conductance: 1.2 },
    { a: 0, b: 2, conductance: 2.5 },
    { a: 3, b: 0, conductance: 0.8 },
  ];
  const lost = { node: 2, conductance: 0.9 };

  function reference(seconds: number): readonly number[] {
    const rate = (_t: number, T: readonly number[]): number[] => {
      const heat = [0, 0, -lost.conductance * (T[2]! - room), 1500];
      exchange.area.forEach((area, k) => {
        const [i, j] = [exchange.a[k]!, exchange.b[k]!];
        const flow = area * stefanBoltzmann * (T[j]! ** 4 - T[i]! ** 4);
        heat[i]! += flow;
        heat[j]! -= flow;
      });
      for (const { a, b, conductance } of conductors) {
        const flow = conductance * (T[b]! - T[a]!);
        heat[a]! += flow;
        heat[b]! -= flow;
      }
      return heat.map((q, i) => q / capacities[i]!);
    };
    return integrate(rate, [room, room, room, room], seconds);
  }

  function difference(seconds: number, dt: number): number {
    const network = smallNetwork(capacities, { radiation: exchange, conductors, toRoom: [lost] });
    march(network, seconds, Math.round(seconds / dt), drive([{ node: 3, watt: 1500 }]));
    return Math.max(...reference(seconds).map((T, i) => Math.abs(T - network.temperature[i]!)));
  }

  it.each([60, 600, 3600])(
    'agrees with odex (tolerance 1e-10) after %d s, to first order in the step',
    (s) => {
      const [coarse, fine, finer] = [difference(s, 2), difference(s, 0.5), difference(s, 0.25)];
      expect(finer).toBeLessThan(0.5);
      expect(coarse).toBeGreaterThan(fine);
      expect(fine / finer).toBeGreaterThan(1.85);
      expect(fine / finer).toBeLessThan(2.15);
    },
  );
});

describe('the account', () => {
  function oven() {
    const stack = new WallStack(
      {
        capacities: [900, 900],
        conductances: (_l, _t, out) => {
          out.set([2, 1, 3]);
        },
      },
      0.5,
      room,
    );
    const network = smallNetwork([80, 2000, 3000, 2500, 4000, 330], {
      radiation: { a: [1, 1, 4, 2], b: [4, 5, 5, 4], area: [0.1, 0.02, 0.03, 0.05] },
      faces: [
        { node: 1, area: 0.2, facing: 'up', length: 0.1 },
        { node: 2, area: 0.2, facing: 'down', length: 0.1 },
        { node: 4, area: 0.2, facing: 'vertical', length: 0.4 },
      ],
      conductors: [{ a: 2, b: 3, conductance: 4 }],
      toRoom: [{ node: 3, conductance: 0.4 }],
      stacks: [{ node: 2, stack }],
    });
    return network;
  }
  it.each([0.5, 20])('closes to rounding in steps of %d s, vent running, door open and shut', (dt) => {
    const network = oven();
    const heat = network.heat(6);
    for (let i = 0; i < 200; i++) {
      network.updateCoefficients();
      const doorOpen = i % 50 > 45;
      const driven = { ...drive([{ node: 5, watt: 900 }]), ventFlow: 4e-4, doorOpen };
      expect(network.step(dt, driven)).toBe(true);
    }
    const { supplied, lostToRoom, lostByVentAndDoor, lostBySteam } = network.ledger;
    expect(supplied).toBeCloseTo(900 * 200 * dt, 3);
    expect(lostToRoom).toBeGreaterThan(0);
    expect(lostByVentAndDoor).toBeGreaterThan(0);
    expect(lostBySteam).toBe(0);
    const missing = supplied - (network.heat(6) - heat) - lostToRoom - lostByVentAndDoor;
    expect(Math.abs(missing)).toBeLessThan(1e-11 * supplied);
  });

  it('an open door loses what a black opening to the kitchen takes (Stefan-Boltzmann)', () => {
    // A wall so large that it stays at 553.15 K, an exchange area of 0.1 m2 with the door: 0.1 sigma (T^4 - T_room^4).
    const network = smallNetwork([1e12, 1e12, 1, 1, 1e12], {
      radiation: { a: [1], b: [doorNode], area: [0.1] },
      toRoom: [
        { node: 2, conductance: 1 },
        { node: 3, conductance: 1 },
      ],
    });
    network.temperature.set([room, 553.15, room, room, 480]);
    expect(network.temperature[airNode]).toBe(room);
    network.step(1, { ...drive(), doorOpen: true });
    const expected = 0.1 * stefanBoltzmann * (553.15 ** 4 - room ** 4);
    expect(Math.abs(network.ledger.lostByVentAndDoor / expected - 1)).toBeLessThan(1e-6);
    // The door itself hangs outside: nothing comes to it.
    expect(Math.abs(network.temperature[doorNode]! - 480)).toBeLessThan(1e-6);
  });

  it('a face that is not in use, without heat, link or capacity, keeps its temperature', () => {
    const network = smallNetwork([10, 0], { conductors: [] });
    network.temperature.set([300, 321]);
    march(network, 10, 1);
    expect(Array.from(network.temperature)).toEqual([300, 321]);
  });
});

describe('steam in the cavity', () => {
  it('tends to what is made over what is made and drawn: x = (n_made + n_drawn x_room)/(n_made + n_drawn)', () => {
    const network = smallNetwork([1e9], { conductors: [] });
    network.temperature.set([473.15]);
    const ventFlow = 5e-4;
    for (let i = 0; i < 500; i++) network.step(60, { ...drive(), ventFlow, burnerSteam: 5e-5 });
    // Ideal gas: kitchen air at 293.15 K and 101325 Pa holds p/(R T) = 41.57 mol/m3; 5e-5 kg/s are 2.775e-3 mol/s.
    const drawn = (ventFlow * 101325) / (8.314462618 * room);
    const made = 5e-5 / 0.018015268;
    expect(Math.abs(network.steamFraction - (made + 0.01 * drawn) / (made + drawn))).toBeLessThan(1e-3);
  });
});
