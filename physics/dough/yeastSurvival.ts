/** What too much heat costs: the share of the yeast that dies. */
import { OutOfRange } from '../evening/problem.ts';
import { temperatureAfter, timeConstant } from './lump.ts';
import type { RiseSegment } from './rise.ts';

/** K (40 degC): below it no killing was measured, and fermentation still quickens (White and Munns 1951). */
const harmlessTo = 313.15;

/**
 * Seconds in which nine tenths of the yeast die (decimal reduction time),
 *
 *     D = 3.86 min x 10^((47 - t)/4.68),  t in degC
 *
 * Source: Lajci et al., Saccharomyces carlsbergensis in beer (pH 4.5, 4.7 % alcohol), D47 3.86 min to D52 0.32 min, z
 * 4.68 K. Dough is milder, so a loss computed with it is the most to expect. Extrapolated by us down to 40 degC.
 *
 * @param temperature K
 */
export function decimalReductionTime(temperature: number): number {
  if (!Number.isFinite(temperature))
    throw new OutOfRange('temperature', `${temperature} K`, 'a temperature in K');
  return 3.86 * 60 * 10 ** ((320.15 - temperature) / 4.68);
}

/**
 * Share of the yeast, 0 to 1, that dies at most along the stretches: 1 - 10^(-integral of dt/D) over the time spent
 * above 40 degC. Midpoint sum of half minutes; a stretch that has settled is summed in one.
 */
export function shareKilled(doughTemperature: number, segments: readonly RiseSegment[]): number {
  let decades = 0;
  let temperature = doughTemperature;
  const add = (at: number, seconds: number): void => {
    if (at > harmlessTo) decades += seconds / decimalReductionTime(at);
  };
  for (const { temperature: place, duration, cover, mass } of segments) {
    const tau = timeConstant(mass, cover);
    if (temperature > harmlessTo || place > harmlessTo) {
      const transient = Math.min(duration, 12 * tau);
      const count = Math.ceil(transient / 30);
      const step = count > 0 ? transient / count : 0;
      for (let i = 0; i < count; i++) add(temperatureAfter(temperature, place, tau, (i + 0.5) * step), step);
      add(place, duration - transient);
    }
    temperature = temperatureAfter(temperature, place, tau, duration);
  }
  return 1 - 10 ** -decades;
}
