/** How long a plate stays too hot to touch: a bound, never a promise. */
import { stefanBoltzmann, standardPressure } from '../materials/constants.ts';
import type { PlateMaterial } from '../materials/plates.ts';
import { naturalConvectionHorizontal } from '../oven/convection.ts';

/** K: skin may rest on any material this warm for hours (from memory: ISO 13732-1:2006, 43 degC for 8 h and more). */
export const safeToTouch = 316.15;

export interface CoolingPlate {
  readonly material: PlateMaterial;
  /** m */
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
}

/**
 * Seconds for a plate that hangs bare in still room air, both faces free, to cool to a temperature:
 *
 *     rho c(T) L dT/dt = -(h_up + h_down)(T - T_room) - 2 eps sigma (T^4 - T_room^4)
 *
 * lumped, with McAdams' horizontal plates for h; in a shut oven or on a board it takes hours. Midpoint steps of 10 s.
 *
 * @param from K, `to` K, `room` K with from >= to > room
 * @returns s; Infinity when the room is not below `to`
 */
export function coolingTime(plate: CoolingPlate, from: number, to: number, room: number): number {
  if (!(to > room)) return Infinity;
  const { material, width, depth, thickness } = plate;
  const length = (width * depth) / (2 * (width + depth));
  const rate = (temperature: number): number => {
    const h =
      naturalConvectionHorizontal('up', temperature, room, length, standardPressure) +
      naturalConvectionHorizontal('down', temperature, room, length, standardPressure);
    const radiated = 2 * material.emissivity * stefanBoltzmann * (temperature ** 4 - room ** 4);
    return (
      -(h * (temperature - room) + radiated) /
      (material.density * material.specificHeat(temperature) * thickness)
    );
  };
  const step = 10;
  let temperature = from;
  let seconds = 0;
  while (temperature > to) {
    const middle = temperature + (step / 2) * rate(temperature);
    const next = temperature + step * rate(middle);
    if (next <= to) return seconds + (step * (temperature - to)) / (temperature - next);
    temperature = next;
    seconds += step;
  }
  return seconds;
}
