/**
 * The three numbers that readings of a preheat can tell: how strongly the oven heats, how much heat the plate takes up,
 * and by how much the dial lies. They stand for early slope, late slope and end level of the plate's curve; everything
 * else that is not known of an oven moves these three and is not fitted on its own.
 */
import type { Evening } from '../evening/evening.ts';

export type OvenNumberName = 'power' | 'plateMass' | 'thermostatOffset';

export interface OvenNumber {
  readonly name: OvenNumberName;
  /** one standard deviation of what is believed before any reading: of ln for factors, K for the offset */
  readonly spread: number;
}

/**
 * Each spread joins those of the inputs that move the plate's curve in the same way (`usualSpread` of the plan's
 * range), each counted by what it does in units of the number it hides in, computed for the three built-in evenings:
 *
 * - power 0.25: rated power 0.10, share of the top element 0.14, liner 0.05; and as much again as these make together
 *   for mains and worn elements, since a cook who measures has a reason to (208 V on elements for 240 V give 0.75)
 * - plate mass 0.10: thickness 0.05, and emissivity (0.1) and convection (30 %), which slow the plate as 0.08 and 0.03 do
 * - offset 11 K: dial 8 K, and vent and convection, which shift where the plate settles by 6 K and 3 K
 */
export const ovenNumbers: readonly OvenNumber[] = [
  { name: 'power', spread: 0.25 },
  { name: 'plateMass', spread: 0.1 },
  { name: 'thermostatOffset', spread: 11 },
];

/** What the numbers are for `z`, standard deviations from the plan: factors for power and plate, K for the offset. */
export function numbersAt(z: ArrayLike<number>): Readonly<Record<OvenNumberName, number>> {
  return {
    power: Math.exp(ovenNumbers[0]!.spread * z[0]!),
    plateMass: Math.exp(ovenNumbers[1]!.spread * z[1]!),
    thermostatOffset: ovenNumbers[2]!.spread * z[2]!,
  };
}

/** The evening with its oven and plate as `z` says. The plate's mass is carried by its thickness. */
export function eveningAt(evening: Evening, z: ArrayLike<number>): Evening {
  const { power, plateMass, thermostatOffset } = numbersAt(z);
  const { oven, plate } = evening;
  return {
    ...evening,
    oven: {
      ...oven,
      power: { bottom: oven.power.bottom * power, top: oven.power.top * power },
      thermostatOffset: oven.thermostatOffset + thermostatOffset,
    },
    plate: { ...plate, thickness: plate.thickness * plateMass },
  };
}
