/** What the model does not know of an oven, a plate and a pizza, how far off each may be, and what a plan says of it. */
import type { Range } from './answer.ts';

/**
 * One standard deviation of each input: a share of the value, or kelvin and an absolute number where said. Our
 * estimates, from the spread of published values named with the parameters; the dial after a consumer
 * laboratory and a test kitchen (17 % of ovens more than 20 K too hot would be 21 K, many off by up to 28 K would be 14;
 * a cook who plans with an oven thermometer knows better, so 8 K).
 */
export const usualSpread = {
  topShare: 0.3,
  power: 0.1,
  /** absolute */
  wallEmissivity: 0.1,
  convection: 0.3,
  /** absolute */
  plateEmissivity: 0.1,
  /** K */
  thermostatOffset: 8,
  thickness: 0.05,
  vent: 0.3,
  liner: 0.15,
  contact: 0.3,
  browning: 0.4,
  density: 0.1,
  crust: 0.25,
} as const;

export type UncertainName = keyof typeof usualSpread;
/** All inputs that are varied. */
export const uncertainNames = Object.keys(usualSpread) as UncertainName[];

/** As a sentence names them: "most of it from ...". */
export const uncertainWords: Readonly<Record<UncertainName, string>> = {
  topShare: 'the share of the top element while the oven heats up',
  power: 'the power of the elements',
  wallEmissivity: 'how well the walls radiate',
  convection: 'the movement of air in the oven',
  plateEmissivity: "how well the plate's surface takes up radiation",
  thermostatOffset: 'how far the dial is off',
  thickness: 'the thickness of the plate',
  vent: 'the air that goes through the vent',
  liner: 'the mass of the inner walls',
  contact: 'the contact between dough and plate',
  browning: 'how fast this dough browns',
  density: 'the density of the dough',
  crust: 'how well the crust insulates',
};

/** Standard deviations that a plan gives instead of the usual ones, in the same units, none above the usual. */
export type Known = Readonly<Partial<Record<UncertainName, number | undefined>>>;

/** How much of the variance of ln t comes from one input. */
export interface SpreadPart {
  readonly input: UncertainName;
  readonly words: string;
  readonly share: number;
}

export interface Spread {
  readonly preheatMinutes: Range;
  readonly bakeMinutes: Range;
  /** what makes the ranges wide, the widest first; inputs that make less than a twentieth are left out */
  readonly preheatFrom: readonly SpreadPart[];
  readonly bakeFrom: readonly SpreadPart[];
}

/** `how far the dial is off (44 %) and the power of the elements (31 %)`: the two that make a range widest. */
export function spreadFrom(parts: readonly SpreadPart[]): string {
  return parts
    .slice(0, 2)
    .map(({ words, share }) => `${words} (${(100 * share).toFixed(0)} %)`)
    .join(' and ');
}
