/** The rise the other way round: how much yeast, which place, which dough makes it ready after a given time. */
import type { YeastId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import { findRoot } from '../numerics/root.ts';
import { freshYeastFor } from './ingredients.ts';
import {
  checkTemperatures,
  lasting,
  longestRise,
  type OpenSegment,
  readyEffort,
  riseThroughAll,
} from './rise.ts';
import {
  doseExponent,
  doughRate,
  gasTemperatures,
  type Leavened,
  surroundingsFactor,
} from './yeastActivity.ts';

function checkTime(seconds: number): void {
  if (!(seconds > 0 && seconds <= longestRise))
    throw new OutOfRange('riseTime', `${seconds} s`, 'more than 0 s and at most 14 days');
}

const inMinutes = (seconds: number): string => `${(seconds / 60).toFixed(0)} min`;

/**
 * Yeast (percent of flour, of this kind) that makes the dough ready after so many seconds; the inverse of `riseTime`.
 *
 * @param seconds from the end of mixing; the open stretch, or else the last one, takes what the others leave
 * @throws OutOfRange when no dose does it: the time is not above 0 or shorter than the fixed phases, the dough stays
 *   too cold or hot, or it would take more than the equal of 20 % fresh yeast
 */
export function yeastFor(
  seconds: number,
  kind: YeastId,
  dough: Omit<Leavened, 'yeast'>,
  doughTemperature: number,
  segments: readonly OpenSegment[],
): number {
  checkTemperatures(doughTemperature, segments);
  checkTime(seconds);
  const { effort } = riseThroughAll(doughTemperature, lasting(segments, seconds));
  const fresh = (readyEffort / (effort * surroundingsFactor(dough))) ** (1 / doseExponent);
  if (!(fresh <= 20))
    throw new OutOfRange(
      'riseTime',
      inMinutes(seconds),
      'time and warmth enough for at most the equal of 20 % fresh yeast',
    );
  return fresh / freshYeastFor[kind];
}

/** K at which `made` reaches the effort wanted; it must grow from `low` to `high`. */
function temperatureThatMakes(
  effort: number,
  low: number,
  high: number,
  made: (temperature: number) => number,
  refuse: () => OutOfRange,
): number {
  const missing = (temperature: number): number => made(temperature) / effort - 1;
  const [atLow, atHigh] = [missing(low), missing(high)];
  if (!(atLow <= 0 && atHigh >= 0)) throw refuse();
  return findRoot(missing, low, high, 1e-6, atLow, atHigh);
}

/**
 * Temperature of the place (K, between 5 degC and the yeast's best 39 degC) that makes the dough ready after so many
 * seconds at its dose.
 *
 * @param segmentsAt the stretches when that place has this temperature
 * @throws OutOfRange when no temperature between does
 */
export function placeTemperatureFor(
  seconds: number,
  dough: Leavened,
  doughTemperature: number,
  segmentsAt: (temperature: number) => readonly OpenSegment[],
): number {
  checkTime(seconds);
  const low = 278.15;
  checkTemperatures(doughTemperature, segmentsAt(low));
  return temperatureThatMakes(
    readyEffort / doughRate(dough),
    low,
    gasTemperatures.best,
    (temperature) => riseThroughAll(doughTemperature, lasting(segmentsAt(temperature), seconds)).effort,
    () => new OutOfRange('riseTime', inMinutes(seconds), 'a time that 5 to 39 degC can make at this dose'),
  );
}

/**
 * Temperature of the dough at the end of mixing (K, 10 to 39 degC) that makes it ready after so many seconds at its dose
 * in its places.
 *
 * @throws OutOfRange when no temperature between does
 */
export function doughTemperatureFor(
  seconds: number,
  dough: Leavened,
  segments: readonly OpenSegment[],
): number {
  checkTime(seconds);
  const low = 283.15;
  checkTemperatures(low, segments);
  const stretches = lasting(segments, seconds);
  return temperatureThatMakes(
    readyEffort / doughRate(dough),
    low,
    gasTemperatures.best,
    (temperature) => riseThroughAll(temperature, stretches).effort,
    () =>
      new OutOfRange(
        'riseTime',
        inMinutes(seconds),
        'a time that a dough of 10 to 39 degC can make at this dose',
      ),
  );
}
