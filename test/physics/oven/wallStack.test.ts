import { describe, expect, it } from 'vitest';
import { WallStack, doorPanes, woolWall } from '../../../physics/oven/wallStack.ts';
import type { WallMaterial } from '../../../physics/oven/wallStack.ts';
import { heldSurface, planeWall } from '../../support/closedForms.ts';

const room = 293.15;

/** Equal layers of a constant conductivity behind a liner, the outer face held or convecting. */
function constantWall(
  thickness: number,
  layers: number,
  conductivity: number,
  volumetricHeat: number,
  outer: number,
): WallMaterial {
  const dx = thickness / layers;
  return {
    capacities: new Array<number>(layers).fill(volumetricHeat * dx),
    conductances: (_liner, _layers, out) => {
      out.fill(conductivity / dx);
      out[0] = (2 * conductivity) / dx;
      out[layers] = 1 / (dx / (2 * conductivity) + 1 / outer);
    },
  };
}

function march(stack: WallStack, liner: number, dt: number, steps: number, each?: () => void): void {
  for (let i = 0; i < steps; i++) {
    stack.updateConductances(liner);
    stack.eliminate(room, dt);
    stack.follow(liner, room);
    each?.();
  }
}

describe('a wall of constant conductivity', () => {
  it('warms as the semi-infinite solid with a held surface (Carslaw and Jaeger 2.4)', () => {
    const [conductivity, volumetric] = [0.06, 60_000];
    const layers = 80;
    const stack = new WallStack(constantWall(0.08, layers, conductivity, volumetric, 9), 1, room);
    march(stack, 523.15, 0.5, 1200);
    const space = { conductivity, diffusivity: conductivity / volumetric, initial: room };
    for (let i = 0; i < layers / 2; i++) {
      const exact = heldSurface(space, 523.15, (i + 0.5) * 1e-3, 600);
      expect(Math.abs(stack.temperature[i]! - exact)).toBeLessThan(0.1);
    }
  });

  it('cools as the plane wall (Incropera Table 5.1 series), error falling with the square of the layers', () => {
    // Convection outside, the liner side insulated: no conductance to the liner.
    const [thickness, conductivity, volumetric] = [0.03, 0.05, 60_000];
    const outer = conductivity / thickness;
    const time = (0.5 * thickness ** 2 * volumetric) / conductivity;
    const exact = room + 200 * planeWall(1, 0.5, 0);
    const errors = [4, 8, 16].map((layers) => {
      const material = constantWall(thickness, layers, conductivity, volumetric, outer);
      const stack = new WallStack(
        {
          ...material,
          conductances: (liner, T, out) => {
            material.conductances(liner, T, out);
            out[0] = 0;
          },
        },
        1,
        room + 200,
      );
      const steps = 20_000;
      march(stack, 0, time / steps, steps);
      // The insulated face, by the parabola that is flat there.
      const T = stack.temperature;
      return Math.abs(T[0]! + (T[0]! - T[1]!) / 8 - exact);
    });
    expect(errors[0]! / errors[1]!).toBeGreaterThan(3.6);
    expect(errors[0]! / errors[1]!).toBeLessThan(4.4);
    expect(errors[2]!).toBeLessThan(0.1);
  });
});

describe('a wall of wool', () => {
  it('settles at the U-value of its layers: 1/U = L/k + 1/h with k the mean over the temperatures', () => {
    const [thickness, h, liner] = [0.03, 9, 553.15];
    const stack = new WallStack(woolWall(thickness, h), 0.5, room);
    march(stack, liner, 1e5, 60);
    // Kirchhoff: q L = integral of k from the outer face to the liner; k = 0.035 (T/293)^1.55.
    const integral = (T: number): number => ((0.035 / 2.55) * T ** 2.55) / 293 ** 1.55;
    let [low, high] = [room, liner];
    while (high - low > 1e-9) {
      const face = (low + high) / 2;
      if (h * (face - room) < (integral(liner) - integral(face)) / thickness) low = face;
      else high = face;
    }
    const flux = h * (low - room);
    // Five layers whose conductivity is taken at their middle: within 0.5 %.
    expect(Math.abs(stack.outward / 0.5 / flux - 1)).toBeLessThan(5e-3);
    expect(Math.abs(stack.seenConductance * liner - stack.seenSource - stack.outward)).toBeLessThan(1e-3);
  });

  it('keeps its account: heat taken from the liner = stored + given to the kitchen', () => {
    const stack = new WallStack(woolWall(0.03, 9), 0.4, room);
    const before = stack.heat;
    let [taken, given] = [0, 0];
    for (let i = 0; i < 400; i++) {
      const liner = room + 250 * (1 - Math.exp(-i / 100));
      march(stack, liner, 7, 1);
      taken += 7 * (stack.seenConductance * liner - stack.seenSource);
      given += 7 * stack.outward;
    }
    expect(given).toBeGreaterThan(0);
    expect(Math.abs(taken - (stack.heat - before) - given)).toBeLessThan(1e-9 * taken);
  });
});

describe('the panes of a door', () => {
  it('warm with the time constant C/(G + h) of one lump (closed form)', () => {
    const stack = new WallStack(doorPanes(3.5, 8000, 9), 1, room);
    const error = (dt: number): number => {
      stack.temperature.fill(room);
      march(stack, 523.15, dt, 900 / dt);
      const settled = (3.5 * 523.15 + 9 * room) / 12.5;
      return Math.abs(stack.temperature[0]! - (settled + (room - settled) * Math.exp((-900 * 12.5) / 8000)));
    };
    const [coarse, fine] = [error(10), error(5)];
    expect(fine).toBeLessThan(0.2);
    // Implicit Euler: half the step, half the error.
    expect(coarse / fine).toBeGreaterThan(1.9);
    expect(coarse / fine).toBeLessThan(2.1);
  });
});
