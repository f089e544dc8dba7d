/** How long a plate stays too hot to touch, in open air and in the shut oven: bounds, never a promise. */
import { stefanBoltzmann, standardPressure } from '../materials/constants.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { naturalConvectionHorizontal } from '../oven/convection.ts';
import type { OvenRun } from '../oven/ovenRun.ts';
import { biotNumber, lumpedLimit } from './biot.ts';

/**
 * K of a surface that healthy skin may rest on, by the length of the contact. Source: ISO 13732-1:2006, any material:
 * 43 degC for 8 h and more, 51 degC for 1 min (both from memory), 48 degC for 10 min (quoted in a public test suite).
 * "Cool" here is the first: a plate is lifted with both hands and not for a counted second.
 */
export const skinContact = { eightHours: 316.15, tenMinutes: 321.15, oneMinute: 324.15 } as const;
/** K below which a plate counts as cool here. */
export const safeToTouch = skinContact.eightHours;

export interface CoolingPlate {
  readonly material: PlateMaterial;
  /** m */
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
}

/** layers of a plate that is not at one temperature */
const slabLayers = 8;
/** s */
const longestStep = 10;

/**
 * Seconds for a plate that hangs bare in still room air, both faces free, to cool throughout to a temperature:
 *
 *     rho c(T) dT/dt = d/dx(k dT/dx),   at either face q = h (T - T_room) + eps sigma (T^4 - T_room^4)
 *
 * one layer where the Biot number is below 0.1, eight above; McAdams' horizontal plates for h, above and below. On a
 * board or among other hot things it takes longer. Explicit steps of 10 s or what the layers allow.
 *
 * @param from K, `to` K, `room` K with from >= to > room
 * @returns s; Infinity when the room is not below `to`
 */
export function coolingTime(plate: CoolingPlate, from: number, to: number, room: number): number {
  if (!(to > room)) return Infinity;
  const { material, width, depth, thickness } = plate;
  const length = (width * depth) / (2 * (width + depth));
  const conductivity = material.thermalConductivity(from);
  const lost = (facing: 'up' | 'down', T: number): number =>
    naturalConvectionHorizontal(facing, T, room, length, standardPressure) * (T - room) +
    material.emissivity * stefanBoltzmann * (T ** 4 - room ** 4);
  const coefficient = lost('up', from) / Math.max(from - room, 1);
  const n = biotNumber(coefficient, thickness / 2, conductivity) < lumpedLimit ? 1 : slabLayers;
  const dx = thickness / n;
  const diffusivity = conductivity / (material.density * material.specificHeat(to));
  const step = n === 1 ? longestStep : Math.min(longestStep, (0.4 * dx * dx) / diffusivity);
  const T = new Float64Array(n).fill(from);
  const gain = new Float64Array(n);
  for (let seconds = 0; ; seconds += step) {
    const hottest = Math.max(...T);
    if (hottest <= to) return seconds;
    gain.fill(0);
    gain[0]! -= lost('down', T[0]!);
    gain[n - 1]! -= lost('up', T[n - 1]!);
    for (let i = 0; i + 1 < n; i++) {
      const flux = (conductivity * (T[i + 1]! - T[i]!)) / dx;
      gain[i]! += flux;
      gain[i + 1]! -= flux;
    }
    for (let i = 0; i < n; i++)
      T[i]! += (step * gain[i]!) / (material.density * material.specificHeat(T[i]!) * dx);
    const next = Math.max(...T);
    if (next <= to) return seconds + (step * (hottest - to)) / (hottest - next);
  }
}

/** s between two looks, and after which an oven is taken never to cool that far */
const look = 60;
const longestCooling = 36 * 3600;

/**
 * Seconds for the plate in the oven, switched off with its door shut, to cool throughout to a temperature. The run is
 * driven on from where it stands; walls, door, seams and vent take the heat.
 *
 * @returns s; Infinity when it takes more than 36 h or the kitchen is no colder
 */
export function coolingInShutOven(run: OvenRun, to: number): number {
  const { room } = run.network.setting;
  const nodes = run.plate?.layout.columns.flatMap(({ layers }) => layers) ?? [];
  if (!(to > room) || nodes.length === 0) return Infinity;
  const T = run.network.temperature;
  const hottest = (): number => nodes.reduce((most, node) => Math.max(most, T[node]!), -Infinity);
  let before = hottest();
  for (let seconds = 0; seconds < longestCooling; seconds += look) {
    if (before <= to) return seconds;
    run.holdStep(look, 0, 0);
    const now = hottest();
    if (now <= to) return seconds + (look * (before - to)) / (before - now);
    before = now;
  }
  return Infinity;
}
