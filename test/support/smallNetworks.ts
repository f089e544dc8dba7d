/** Networks of a few nodes, outside any oven, whose temperatures a closed form or a library knows. */
import { standardPressure } from '../../physics/materials/constants.ts';
import { OvenNetwork } from '../../physics/oven/network.ts';
import type { Drive, NetworkSetting } from '../../physics/oven/networkParts.ts';

export const room = 293.15;

/** A network without air, walls or losses but what is asked for; the caller sets temperatures. @param capacities J/K */
export function smallNetwork(
  capacities: readonly number[],
  parts: Partial<Pick<NetworkSetting, 'radiation' | 'conductors' | 'toRoom' | 'faces' | 'stacks'>>,
): OvenNetwork {
  const network = new OvenNetwork({
    nodes: capacities.length,
    room,
    pressure: standardPressure,
    cavity: { width: 0.5, depth: 0.4, height: 0.4 },
    radiation: { a: [], b: [], area: [] },
    faces: [],
    conductors: [],
    toRoom: [],
    stacks: [],
    start: room,
    forcedCoefficient: undefined,
    convectionFactor: 1,
    circulation: 0,
    roomSteam: 0.01,
    ...parts,
  });
  network.capacity.set(capacities);
  return network;
}

export function drive(sources: Drive['sources'] = []): Drive {
  return { sources, ventFlow: 0, burnerSteam: 0, latent: 0, doorOpen: false };
}

/** Steps of equal length to `seconds`. */
export function march(network: OvenNetwork, seconds: number, steps: number, driven = drive()): void {
  for (let i = 0; i < steps; i++)
    if (!network.step(seconds / steps, driven)) throw new Error(`step ${i} was refused`);
}
