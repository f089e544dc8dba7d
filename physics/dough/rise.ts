/**
 * How long a dough takes to be ready, and how much yeast makes it ready in time.
 *
 * The yeast's relative rate (temperature, dose, salt, sugar, alcohol) is summed over the time while the dough follows
 * its surroundings. It is **ready** when the sum reaches that of a dough about doubled, in which a floured finger's mark
 * stays and recedes slightly (TM 10-412, US forces; common practice). Self-heating, folding and yeast growth are left
 * out; they are inside the spread.
 */
import { findRoot } from '../numerics/root.ts';
import { OutOfRange } from '../evening/problem.ts';
import type { YeastId } from '../evening/ids.ts';
import { freshYeastFor } from './ingredients.ts';
import { type Cover, temperatureAfter, timeConstant } from './lump.ts';
import { cardinalRate, doseExponent, doughRate, type Leavened, surroundingsFactor } from './yeastActivity.ts';

/**
 * s at 27 degC (80 degF) for 1 % fresh yeast without salt: the one calibrated number. Geometric mean of five published
 * rises to the first doubling, punch or "ready for pizza", each with the model's own dose, salt and temperature:
 * kingsleysullivan.com basic formula 1.9 h, A Treatise on Baking (French bread) 3.0, Manual for Army Bakers (1916) 3.2,
 * AVPN 1.4, communitypizzaevents.com 3.5; all as hours so reduced.
 */
export const reducedReadySeconds = 2.47 * 3600;
const reference = 300.15;

/**
 * P10 and P90 of the time as multiples of the forecast. The published first rises scatter about the model with a
 * standard deviation of 0.35 in the logarithm, exp(1.28 x 0.35) = 1.56; flour, yeast's age, "room temperature" and
 * what a baker calls doubled are in it.
 */
export const riseSpread: readonly [p10: number, p90: number] = [0.64, 1.56];

/**
 * How far past ready a dough still bakes well, as a multiple of the gas of a ready dough. AVPN: ready after 6 to 8 h,
 * usable for 6 more, 13/7; a pizzeria's dough with 1.5 to 2 % yeast, useful life about an hour (PMQ, Sept 2006).
 */
export const stillGood = 1.8;

/** s; longer than that the model has nothing to stand on */
const longest = 14 * 86_400;

/** A stretch of time in surroundings of one temperature. */
export interface RiseSegment {
  /** K, of the surroundings */
  readonly temperature: number;
  /** s */
  readonly duration: number;
  readonly cover: Cover;
  /** kg, of one piece */
  readonly mass: number;
}

export interface RiseState {
  /** K, of the dough */
  readonly temperature: number;
  /** s at the best temperature that would have made the same gas at this dose */
  readonly effort: number;
}

/** After so many time constants the dough has the temperature of its surroundings to 1e-5 of the difference. */
const settled = 12;

/**
 * Dough temperature and gas after a stretch: integral of the relative rate along the closed-form temperature, by
 * Simpson's rule over the transient and exactly after it.
 */
export function riseThrough(start: RiseState, segment: RiseSegment): RiseState {
  const { temperature, duration } = segment;
  if (!(duration >= 0 && Number.isFinite(duration)))
    throw new OutOfRange('duration', `${duration} s`, 'a finite duration of 0 s or more');
  const tau = timeConstant(segment.mass, segment.cover);
  const transient = Math.min(duration, settled * tau);
  const at = (seconds: number): number =>
    cardinalRate(temperatureAfter(start.temperature, temperature, tau, seconds));
  const intervals = 2 * Math.max(2, Math.ceil((8 * transient) / tau));
  const step = transient / intervals;
  let sum = at(0) + at(transient);
  for (let i = 1; i < intervals; i++) sum += (i % 2 === 0 ? 2 : 4) * at(i * step);
  return {
    temperature: temperatureAfter(start.temperature, temperature, tau, duration),
    effort: start.effort + (sum * step) / 3 + (duration - transient) * cardinalRate(temperature),
  };
}

/** The same over several stretches, one after the other. */
export function riseThroughAll(doughTemperature: number, segments: readonly RiseSegment[]): RiseState {
  return segments.reduce(riseThrough, { temperature: doughTemperature, effort: 0 });
}

/** How the rise is kept: in one piece, then as balls for its last part. */
export interface RiseKeeping {
  /** kg, the dough in one piece; 1 kg unless said */
  readonly mass?: number;
  readonly cover?: Cover;
  /** kg, one ball */
  readonly ballMass?: number;
  /** s that the balls stand before they are shaped; 0 for a rise in one piece */
  readonly balledFor?: number;
}

function segmentsFor(seconds: number, roomTemperature: number, keeping: RiseKeeping): readonly RiseSegment[] {
  const { mass = 1, cover = 'covered', ballMass = 0.25, balledFor = 0 } = keeping;
  const asBalls = Math.min(seconds, balledFor);
  return [
    { temperature: roomTemperature, duration: seconds - asBalls, cover, mass },
    { temperature: roomTemperature, duration: asBalls, cover, mass: ballMass },
  ];
}

function effortIn(
  seconds: number,
  doughTemperature: number,
  roomTemperature: number,
  keeping: RiseKeeping,
): number {
  return riseThroughAll(doughTemperature, segmentsFor(seconds, roomTemperature, keeping)).effort;
}

const readyEffort = reducedReadySeconds * cardinalRate(reference);

/** s until this much effort is made; undefined when it is not within the longest time. */
function secondsUntil(effort: number, madeIn: (seconds: number) => number): number | undefined {
  const missing = (seconds: number): number => madeIn(seconds) / effort - 1;
  let upper = 60;
  while (missing(upper) < 0) {
    if (upper >= longest) return undefined;
    upper = Math.min(2 * upper, longest);
  }
  return findRoot(missing, 0, upper, 1e-3);
}

export interface Rise {
  /** s from the end of mixing until ready */
  readonly seconds: number;
  /** s, P10 to P90 */
  readonly range: readonly [p10: number, p90: number];
  /** s from the end of mixing until it is past its best, left as balls where it rose; 14 days after ready at most */
  readonly past: number;
}

/**
 * Time from the end of mixing until the dough is ready (see the head of this file for what ready means).
 *
 * @param doughTemperature K, at the end of mixing
 * @param roomTemperature K, where it rises
 * @throws OutOfRange for no yeast, a temperature that is not finite, or a dough not ready within 14 days
 */
export function riseTime(
  dough: Leavened,
  doughTemperature: number,
  roomTemperature: number,
  keeping: RiseKeeping = {},
): Rise {
  checkTemperatures(doughTemperature, roomTemperature);
  const effort = readyEffort / doughRate(dough);
  const seconds = secondsUntil(effort, (t) => effortIn(t, doughTemperature, roomTemperature, keeping));
  if (seconds === undefined)
    throw new OutOfRange(
      'dough.riseTemperature',
      `${(roomTemperature - 273.15).toFixed(1)} degC with ${dough.yeast.percent} % ${dough.yeast.kind} yeast`,
      'warm enough, or yeast enough, for a dough ready within 14 days (the yeast rests below 1.3 and above 46 degC)',
    );
  const ready = riseThroughAll(doughTemperature, segmentsFor(seconds, roomTemperature, keeping));
  const { cover = 'covered', ballMass = 0.25 } = keeping;
  const after = secondsUntil(
    effort * stillGood,
    (duration) =>
      riseThrough(ready, { temperature: roomTemperature, duration, cover, mass: ballMass }).effort,
  );
  return {
    seconds,
    range: [seconds * riseSpread[0], seconds * riseSpread[1]],
    past: seconds + (after ?? longest),
  };
}

/**
 * Yeast (percent of flour, of this kind) that makes the dough ready after so many seconds; the inverse of `riseTime`.
 *
 * @throws OutOfRange when no dose does it: the time is not above 0, the dough stays too cold or hot, or it would take
 *   more than the equal of 20 % fresh yeast
 */
export function yeastFor(
  seconds: number,
  kind: YeastId,
  dough: Omit<Leavened, 'yeast'>,
  doughTemperature: number,
  roomTemperature: number,
  keeping: RiseKeeping = {},
): number {
  checkTemperatures(doughTemperature, roomTemperature);
  if (!(seconds > 0 && seconds <= longest))
    throw new OutOfRange('riseTime', `${seconds} s`, 'more than 0 s and at most 14 days');
  const effort = effortIn(seconds, doughTemperature, roomTemperature, keeping);
  const fresh = (readyEffort / (effort * surroundingsFactor(dough))) ** (1 / doseExponent);
  if (!(fresh <= 20))
    throw new OutOfRange(
      'riseTime',
      `${(seconds / 60).toFixed(0)} min at ${(roomTemperature - 273.15).toFixed(1)} degC`,
      'time and warmth enough for at most the equal of 20 % fresh yeast',
    );
  return fresh / freshYeastFor[kind];
}

function checkTemperatures(doughTemperature: number, roomTemperature: number): void {
  for (const [path, value] of [
    ['dough.wantedTemperature', doughTemperature],
    ['dough.riseTemperature', roomTemperature],
  ] as const)
    if (!(value > 200 && value < 400)) throw new OutOfRange(path, `${value} K`, '200 K to 400 K');
}
