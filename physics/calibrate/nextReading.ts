/** Where and when one more reading would narrow the ready time most, from what readings and ready time do with the numbers. */
import { dot } from '../numerics/dense.ts';
import { p10To90 } from '../numerics/normal.ts';
import type { Forecast, PreheatPlace } from './forecast.ts';
import { usualReadingSpread, type OvenFit } from './fit.ts';
import { ovenNumbers } from './ovenNumbers.ts';

export interface NextReading {
  /** since the oven was switched on */
  readonly minute: number;
  readonly place: PreheatPlace;
  /** min by which P10 to P90 of the ready time would shrink */
  readonly narrowsMinutes: number;
}

/** A probe in the core of a plate is nothing a kitchen has. */
const places: readonly PreheatPlace[] = ['plateTop', 'ovenAir'];
/** min between the moments that are tried, and how far past ready */
const every = 5;
const beyondReady = 40;
const difference = 0.04;

/**
 * One reading of variance s^2 whose derivative along the posterior's axes is g takes (r g)^2 / (s^2 + g g) off the
 * variance of the ready time, r being that of the ready time: the update of a normal distribution by one measurement.
 *
 * @param after s; only later readings are considered
 * @returns undefined when none would help by a tenth of a minute
 */
export function nextReading(
  fit: Pick<OvenFit, 'z' | 'factor' | 'forecaster' | 'forecast'>,
  after: number,
  readingSpread = usualReadingSpread,
): NextReading | undefined {
  const n = ovenNumbers.length;
  const moved = ovenNumbers.map((_, k) => {
    const there = fit.forecaster.at(fit.z.map((value, j) => (j === k ? value + difference : value)));
    return there ?? fit.forecast;
  });
  /** along the axes of the posterior */
  const along = (what: (forecast: Forecast) => number): number[] => {
    const here = what(fit.forecast);
    const gradient = moved.map((there) => (what(there) - here) / difference);
    return ovenNumbers.map((_, k) => gradient.reduce((sum, g, j) => sum + g * fit.factor[j * n + k]!, 0));
  };
  const ready = along((forecast) => forecast.ready);
  const before = Math.sqrt(dot(ready, ready));
  let best: NextReading | undefined;
  const last = fit.forecast.ready / 60 + beyondReady;
  for (let minute = every; minute <= last; minute += every) {
    if (minute * 60 <= after) continue;
    for (const place of places) {
      const seen = along((forecast) => forecast.at(place, minute * 60));
      const noise = Math.hypot(readingSpread, fit.forecast.ripple(place, minute * 60));
      const gain = dot(ready, seen) ** 2 / (noise ** 2 + dot(seen, seen));
      const left = Math.sqrt(Math.max(dot(ready, ready) - gain, 0));
      const narrowsMinutes = (p10To90 * (before - left)) / 60;
      if (narrowsMinutes > (best?.narrowsMinutes ?? 0.1)) best = { minute, place, narrowsMinutes };
    }
  }
  return best;
}
