/**
 * How long a dough takes to be ready.
 *
 * The yeast's relative rate (temperature, dose, salt, sugar, alcohol) is summed over the time while the dough follows
 * its surroundings, from one place to the next. It is **ready** when the sum reaches that of a dough about doubled, in
 * which a floured finger's mark stays and recedes slightly (TM 10-412, US forces; common practice). Self-heating,
 * folding and yeast growth are left out; they are inside the spread.
 */
import { zeroCelsius } from '../materials/constants.ts';
import type { CoverId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import { findRoot } from '../numerics/root.ts';
import { temperatureAfter, timeConstant } from './lump.ts';
import { cardinalRate, doughRate, freshDose, type Leavened } from './yeastActivity.ts';

/**
 * s at 27 degC (80 degF) for 1 % fresh yeast without salt: the one calibrated number. Geometric mean of five published
 * rises to the first doubling, punch or "ready for pizza", each with the model's own dose, salt and temperature:
 * kingsleysullivan.com basic formula 1.9 h, A Treatise on Baking (French bread) 3.0, Manual for Army Bakers (1916) 3.2,
 * AVPN 1.4, communitypizzaevents.com 3.5; all as hours so reduced.
 */
const reducedReadySeconds = 2.47 * 3600;
const reference = 300.15;

/** s at the best temperature that 1 % fresh yeast without salt needs */
export const readyEffort = reducedReadySeconds * cardinalRate(reference);

/**
 * One standard deviation of ln(gas that a ready dough has made / forecast). The published first rises scatter about the
 * model with 0.35; flour, yeast's age, "room temperature" and what a baker calls doubled are in it.
 *
 * Below 1 % fresh yeast it grows by 0.16 for each factor e of the dose. In so long a rise the yeast itself grows, which
 * the model leaves out: counts of one page (88 % more cells in 6 h at 0.5 %, 29 % at 2 %, temperature not told) give no
 * law, and the published rises with little yeast lie on both sides of the model (AVPN 0.17 % in 0.56 of its time, 0.3 %
 * in 1.46, 0.45 % in 1.8). The slope takes these three into the range; it is our estimate.
 */
const riseDeviation = { usual: 0.35, perFold: 0.16 } as const;

/**
 * P10 and P90 of the gas that a ready dough has made, as multiples of the forecast; at one temperature of the time too.
 *
 * @param freshPercent percent of fresh yeast, or its equal
 */
export function riseSpread(freshPercent: number): readonly [p10: number, p90: number] {
  const { usual, perFold } = riseDeviation;
  const deviation = usual + perFold * Math.max(0, -Math.log(freshPercent));
  const factor = Math.exp(1.2816 * deviation);
  return [1 / factor, factor];
}

/**
 * How far past ready a dough still bakes well, as a multiple of the gas of a ready dough. AVPN: ready after 6 to 8 h,
 * usable for 6 more, 13/7; a pizzeria's dough with 1.5 to 2 % yeast, useful life about an hour (PMQ, Sept 2006).
 */
const stillGood = 1.8;

/** s; longer than that the model has nothing to stand on */
export const longestRise = 14 * 86_400;

/** A stretch of time in surroundings of one temperature. */
export interface RiseSegment {
  /** K, of the surroundings */
  readonly temperature: number;
  /** s */
  readonly duration: number;
  readonly cover: CoverId;
  /** kg, of one piece */
  readonly mass: number;
}

/** A stretch that may last as long as the dough needs: `duration` undefined. */
export type OpenSegment = Omit<RiseSegment, 'duration'> & { readonly duration: number | undefined };

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

/** How a rise in one place is kept: in one piece, then as balls for its last part. */
export interface RiseKeeping {
  /** kg, the dough in one piece; 1 kg unless said */
  readonly mass?: number;
  readonly cover?: CoverId;
  /** kg, one ball */
  readonly ballMass?: number;
  /** s that the balls stand before they are shaped; 0 for a rise in one piece */
  readonly balledFor?: number;
}

/** A rise in one place: as long as it needs in one piece, then so long as balls. */
export function roomRise(temperature: number, keeping: RiseKeeping = {}): readonly OpenSegment[] {
  const { mass = 1, cover = 'covered', ballMass = 0.25, balledFor = 0 } = keeping;
  return [
    { temperature, duration: undefined, cover, mass },
    { temperature, duration: balledFor, cover, mass: ballMass },
  ];
}

/** The stretches with the open one of so many seconds. */
function withOpen(segments: readonly OpenSegment[], open: number): readonly RiseSegment[] {
  return segments.map((segment) => ({ ...segment, duration: segment.duration ?? open }));
}

/**
 * The stretches lasting so many seconds in all: the open one takes what the others leave, or else the last one more.
 *
 * @throws OutOfRange when the fixed ones alone last longer
 */
export function lasting(segments: readonly OpenSegment[], seconds: number): readonly RiseSegment[] {
  const fixed = segments.reduce((sum, { duration }) => sum + (duration ?? 0), 0);
  const left = seconds - fixed;
  if (!(left >= -1e-6))
    throw new OutOfRange(
      'riseTime',
      `${(seconds / 60).toFixed(0)} min`,
      `at least the ${(fixed / 60).toFixed(0)} min of its phases`,
    );
  if (segments.some(({ duration }) => duration === undefined)) return withOpen(segments, Math.max(0, left));
  const all = withOpen(segments, 0);
  return all.map((segment, index) =>
    index === all.length - 1 ? { ...segment, duration: segment.duration + Math.max(0, left) } : segment,
  );
}

/** s until `madeIn` reaches an effort; undefined when it is not within the longest time. */
function secondsUntil(effort: number, madeIn: (seconds: number) => number): number | undefined {
  const missing = (seconds: number): number => madeIn(seconds) / effort - 1;
  let upper = 60;
  while (missing(upper) < 0) {
    if (upper >= longestRise) return undefined;
    upper = Math.min(2 * upper, longestRise);
  }
  return findRoot(missing, 0, upper, 1e-3);
}

/** s from the beginning until an effort is reached along the stretches, the last of them without end. */
function whenReached(
  doughTemperature: number,
  segments: readonly RiseSegment[],
  effort: number,
): number | undefined {
  let state: RiseState = { temperature: doughTemperature, effort: 0 };
  let passed = 0;
  for (const [index, segment] of segments.entries()) {
    const before = state;
    const after = riseThrough(before, segment);
    const last = index === segments.length - 1;
    if (last || after.effort >= effort) {
      if (before.effort >= effort) return passed;
      const within = secondsUntil(effort, (duration) => riseThrough(before, { ...segment, duration }).effort);
      return within === undefined ? undefined : passed + within;
    }
    state = after;
    passed += segment.duration;
  }
  return undefined;
}

export interface Rise {
  /** s from the end of mixing until ready */
  readonly seconds: number;
  /** s, P10 to P90 */
  readonly range: readonly [p10: number, p90: number];
  /** s from the end of mixing until past its best, left where it stands last; 14 days after ready at most */
  readonly past: number;
  /** every stretch as it is to last: the open one solved; the last one longer where fixed ones end too soon */
  readonly segments: readonly RiseSegment[];
  /** s that the last stretch was made longer than asked because the dough was not ready; 0 mostly */
  readonly extended: number;
  /** K and gas of the dough when the last stretch ends */
  readonly end: RiseState;
}

/**
 * Time from the end of mixing until the dough is ready (see the head of this file for what ready means), along the
 * places where it stands. An open stretch lasts until the dough is ready at the end of the last one; fixed ones are
 * kept, and where they end before the dough is ready, the last is made longer.
 *
 * @param doughTemperature K, at the end of mixing
 * @throws OutOfRange for no yeast, a temperature that is not finite, or a dough not ready within 14 days
 */
export function riseTime(dough: Leavened, doughTemperature: number, segments: readonly OpenSegment[]): Rise {
  checkTemperatures(doughTemperature, segments);
  const effort = readyEffort / doughRate(dough);
  const never = (): OutOfRange => {
    const { temperature } = segments.find(({ duration }) => duration === undefined) ?? segments.at(-1)!;
    return new OutOfRange(
      'dough.riseTemperature',
      `${(temperature - zeroCelsius).toFixed(1)} degC with ${dough.yeast.percent} % ${dough.yeast.kind} yeast`,
      'warm enough, or yeast enough, for a dough ready within 14 days (the yeast rests below 1.3 and above 46 degC)',
    );
  };
  const total = (open: number): number => riseThroughAll(doughTemperature, withOpen(segments, open)).effort;
  const hasOpen = segments.some(({ duration }) => duration === undefined);
  let open = 0;
  if (hasOpen && total(0) < effort) {
    const solved = secondsUntil(effort, total);
    if (solved === undefined) throw never();
    open = solved;
  }
  const asked = withOpen(segments, open);
  const seconds = whenReached(doughTemperature, asked, effort);
  if (seconds === undefined) throw never();
  const length = asked.reduce((sum, { duration }) => sum + duration, 0);
  // The solved open stretch ends with the dough ready to a thousandth of a second: that is no extension.
  const extended = seconds - length > 1 ? seconds - length : 0;
  const kept = extended > 0 ? lasting(asked, seconds) : asked;
  const reached = (share: number): number =>
    whenReached(doughTemperature, kept, effort * share) ?? seconds + longestRise;
  const [least, most] = riseSpread(freshDose(dough));
  return {
    seconds,
    range: [reached(least), reached(most)],
    past: reached(stillGood),
    segments: kept,
    extended,
    end: riseThroughAll(doughTemperature, kept),
  };
}

/** @throws OutOfRange without a phase, or for a temperature outside 200 K to 400 K, NaN included */
export function checkTemperatures(
  doughTemperature: number,
  segments: readonly Pick<RiseSegment, 'temperature'>[],
): void {
  if (segments.length === 0) throw new OutOfRange('dough.phases', 'no phase', 'at least one');
  for (const [path, value] of [
    ['dough.wantedTemperature', doughTemperature],
    ...segments.map(({ temperature }) => ['dough.riseTemperature', temperature] as const),
  ] as const)
    if (!(value > 200 && value < 400)) throw new OutOfRange(path, `${value} K`, '200 K to 400 K');
}
