/**
 * What an infrared thermometer shows. Its detector sees a band of wavelengths, for hand-held ones 8 to 14 um, and what
 * comes from a grey, diffuse surface is what the surface gives off and what it reflects:
 *
 *     L = eps L(T) + (1 - eps) L(T_around)
 *
 * The instrument turns L into a temperature as if the surface had the emissivity it is set to and reflected something at
 * its own temperature: L = eps_set L(T_shown) + (1 - eps_set) L(T_own). L(T) is Planck's law over the band. The
 * derivation is ours from these two lines; the air between (half a metre) absorbs nothing in this band.
 */
import { OutOfRange } from '../evening/problem.ts';
import { findRoot } from '../numerics/root.ts';

/** m K, second radiation constant h c / k. Source: CODATA 2018. */
const secondConstant = 1.438776877e-2;
/** m, the usual band of hand-held instruments (makers' data sheets) */
const handHeldBand = [8e-6, 14e-6] as const;

/**
 * Share of a black body's radiation at wavelengths shorter than `lambda`, z = c2/(lambda T):
 *
 *     F = 15/pi^4 sum_n e^(-n z)/n (z^3 + 3 z^2/n + 6 z/n^2 + 6/n^3)
 *
 * Thirty terms hold to 1e-9 for z above 0.5. @param lambda m; @param temperature K
 *
 * Source: Chang and Rhee 1984, Int Comm Heat Mass Transfer 11, 451-455 (place from memory).
 */
export function blackBodyShare(lambda: number, temperature: number): number {
  const z = secondConstant / (lambda * temperature);
  let sum = 0;
  for (let n = 1; n <= 30; n++)
    sum += (Math.exp(-n * z) / n) * (z ** 3 + (3 * z ** 2) / n + (6 * z) / n ** 2 + 6 / n ** 3);
  return (15 / Math.PI ** 4) * sum;
}

/** Radiation of a black body within the band, up to a constant factor. */
function inBand(temperature: number): number {
  const [short, long] = handHeldBand;
  return (blackBodyShare(long, temperature) - blackBodyShare(short, temperature)) * temperature ** 4;
}

/** what hand-held ones are sold set to, many of them for good; common practice, no source */
export const usualSetting = 0.95;

export interface InfraredReading {
  /** K, the surface */
  readonly surface: number;
  /** of the surface */
  readonly emissivity: number;
  /** what the instrument is set to; many are fixed at 0.95 */
  readonly setTo: number;
  /** K, what the surface reflects: the oven's walls through the open door */
  readonly around: number;
  /** K, of the instrument, which it takes for what is reflected */
  readonly instrument: number;
}

/** K that an instrument can show */
const scale = [150, 2000] as const;

/**
 * The temperature that the instrument shows, K.
 *
 * @throws OutOfRange for temperatures outside 200 K to 1300 K, emissivities outside 0.02 to 1, or a surface that sends
 *   less than the instrument takes off for reflection
 */
export function shownByInfrared(reading: InfraredReading): number {
  for (const name of ['surface', 'around', 'instrument'] as const)
    if (!(reading[name] >= 200 && reading[name] <= 1300))
      throw new OutOfRange(`infrared ${name}`, `${String(reading[name])} K`, '200 K to 1300 K');
  for (const name of ['emissivity', 'setTo'] as const)
    if (!(reading[name] >= 0.02 && reading[name] <= 1))
      throw new OutOfRange(`infrared ${name}`, String(reading[name]), 'a number from 0.02 to 1');
  const { surface, emissivity, setTo, around, instrument } = reading;
  const seen = emissivity * inBand(surface) + (1 - emissivity) * inBand(around);
  const taken = (seen - (1 - setTo) * inBand(instrument)) / setTo;
  if (!(taken > inBand(scale[0])))
    throw new OutOfRange('infrared surface', `${String(surface)} K`, 'one that sends more than is taken off');
  // No gun of a kitchen shows more; a surface that seems hotter is at the end of its scale.
  if (taken >= inBand(scale[1])) return scale[1];
  return findRoot((T) => inBand(T) - taken, scale[0], scale[1], 1e-4);
}
