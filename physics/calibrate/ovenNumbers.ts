/**
 * The three numbers that readings of a preheat can tell: how strongly the oven heats, how much heat the plate takes up,
 * and by how much the dial lies. They stand for early slope, late slope and end level of the plate's curve; everything
 * else that is not known of an oven moves these three and is not fitted on its own.
 */
import type { Evening } from '../evening/evening.ts';
import { uncertainNames, usualSpread, type Known, type UncertainName } from '../evening/uncertain.ts';

export type OvenNumberName = 'power' | 'plateMass' | 'thermostatOffset';

/** What is believed of a number before any reading, one standard deviation, and of whose inputs that is made. */
export interface Prior {
  /** of ln for factors, K for the offset; as long as nothing is known better than usual */
  readonly spread: number;
  /** what an input of the plan's range, off by its usual spread, does to the number */
  readonly hides: Partial<Readonly<Record<UncertainName, number>>>;
}

export interface OvenNumber extends Prior {
  readonly name: OvenNumberName;
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
  { name: 'power', spread: 0.25, hides: { power: 0.1, topShare: 0.14, liner: 0.05 } },
  { name: 'plateMass', spread: 0.1, hides: { thickness: 0.05, plateEmissivity: 0.08, convection: 0.03 } },
  { name: 'thermostatOffset', spread: 11, hides: { thermostatOffset: 8, vent: 6, convection: 3 } },
];

/**
 * The rest of what is believed when everything is known better: an oven, its mains and a plate differ from one evening
 * to the next. Our estimate.
 */
const eveningToEvening = 0.3;

/** One standard deviation before any reading in a kitchen of which some inputs are known better than usual. */
export function priorSpread({ spread, hides }: Prior, known: Known): number {
  const variance = uncertainNames.reduce((left, name) => {
    const part = hides[name] ?? 0;
    const better = (known[name] ?? usualSpread[name]) / usualSpread[name];
    return left - part ** 2 * (1 - better ** 2);
  }, spread ** 2);
  return Math.max(Math.sqrt(Math.max(variance, 0)), eveningToEvening * spread);
}

/**
 * What the numbers are for `z`, standard deviations of what is believed of this evening from its plan: factors for power
 * and plate, K for the offset.
 */
export function numbersAt(
  { known }: Evening,
  z: ArrayLike<number>,
): Readonly<Record<OvenNumberName, number>> {
  const [power, plateMass, offset] = ovenNumbers.map((number, j) => priorSpread(number, known) * z[j]!);
  return { power: Math.exp(power!), plateMass: Math.exp(plateMass!), thermostatOffset: offset! };
}

/** The evening with its oven and plate as `z` says. The plate's mass is carried by its thickness. */
export function eveningAt(evening: Evening, z: ArrayLike<number>): Evening {
  const { power, plateMass, thermostatOffset } = numbersAt(evening, z);
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
