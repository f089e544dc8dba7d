/**
 * What readings of a preheat say of the oven: the most probable numbers given the readings and what was believed
 * before (maximum a posteriori), and how sure they now are (normal approximation about that maximum).
 *
 *     minimise  sum_i ((y_i - T_i(z)) / s_i)^2 + sum_j z_j^2
 *
 * z are the numbers in standard deviations of their prior; s_i joins the thermometer's own spread and, once the
 * thermostat switches, the ripple of its cycles: nobody's oven keeps the phase of a simulated one.
 */
import {
  differences,
  inverseFactor,
  leastSquares,
  normalMatrix,
  type LeastSquares,
} from '../numerics/leastSquares.ts';
import { SeededRandom } from '../numerics/random.ts';
import { quantile } from '../evening/spread.ts';
import type { Evening } from '../evening/evening.ts';
import { Forecaster, type Forecast, type PreheatPlace } from './forecast.ts';
import { numbersAt, ovenNumbers, type OvenNumberName } from './ovenNumbers.ts';

export interface PreheatReading {
  /** s since the oven was switched on */
  readonly seconds: number;
  readonly place: PreheatPlace;
  /** K */
  readonly temperature: number;
  /** K, one standard deviation, where it is not that of the others */
  readonly spread?: number | undefined;
}

export interface Quantiles {
  readonly value: number;
  readonly p10: number;
  readonly p90: number;
}

export interface Residual {
  readonly reading: PreheatReading;
  /** K, of the fitted oven: mean over a thermostat cycle */
  readonly model: number;
  /** K, reading less model */
  readonly residual: number;
  /** K, one standard deviation that was expected of it */
  readonly expected: number;
}

export interface OvenFit {
  /** standard deviations from the plan's own oven, by `ovenNumbers` */
  readonly z: Float64Array;
  readonly numbers: Readonly<Record<OvenNumberName, Quantiles>>;
  /** s until the plate is ready */
  readonly ready: Quantiles;
  readonly residuals: readonly Residual[];
  /** false when the readings scatter about the model by more than chance allows; the ranges are wider then */
  readonly agrees: boolean;
  /** false when no set of numbers near the plan's follows the readings */
  readonly converged: boolean;
  readonly forecaster: Forecaster;
  readonly forecast: Forecast;
  /** lower triangle L: z = fitted + L u, u standard normal */
  readonly factor: Float64Array;
}

/** K, one standard deviation of a reading, when the cook does not say */
export const usualReadingSpread = 2;

/** K, of an infrared thermometer whose setting for the surface's emissivity nobody checked; our estimate */
export const infraredSpread = 10;

/** Draws behind P10 and P90. */
const draws = 2000;
const count = ovenNumbers.length;
const search = { difference: 0.04, longestStep: 1, mostSteps: 25 } as const;
const tolerance = { rough: 0.3, fine: 0.03 } as const;

function bestNumbers(
  forecaster: Forecaster,
  readings: readonly PreheatReading[],
  spreads: readonly number[],
  start: Float64Array,
  tolerance: number,
): LeastSquares {
  const found = leastSquares(
    (z) => {
      const forecast = forecaster.at(z);
      if (forecast === undefined) return undefined;
      const misfits = readings.map(
        ({ seconds, place, temperature }, i) => (forecast.at(place, seconds) - temperature) / spreads[i]!,
      );
      return Float64Array.from([...misfits, ...z]);
    },
    start,
    { ...search, tolerance },
  );
  if (found === undefined) throw new Error('the oven that the fit starts from has no forecast');
  return found;
}

function spreadsOf(forecast: Forecast, readings: readonly PreheatReading[], own: number): number[] {
  return readings.map(({ place, seconds, spread = own }) =>
    Math.hypot(spread, forecast.ripple(place, seconds)),
  );
}

/**
 * Upper 5 % point of the sum of squares with `n` degrees of freedom. Source: Wilson and Hilferty, Proc Natl Acad Sci 17
 * (1931) 684-688 (cube root of chi squared is nearly normal; from memory).
 */
function unlikelySum(n: number): number {
  const a = 2 / (9 * n);
  return n * (1 - a + 1.645 * Math.sqrt(a)) ** 3;
}

/** Sum of squares of the readings alone. */
function misfitOf({ residuals }: LeastSquares, readings: number): number {
  return residuals.slice(0, readings).reduce((sum, r) => sum + r * r, 0);
}

/** Degrees of freedom of the heavy-tailed law that readings are taken to follow once they contradict the model. */
const heavyTail = 3;

/**
 * Spreads under which a reading far off the others hardly counts: a mistyped figure must not bend the oven. Weights of
 * Student's t, found anew from the fit they lead to. Source: Lange, Little, Taylor, J Am Stat Assoc 84 (1989) 881-896.
 */
function doubting(
  forecaster: Forecaster,
  readings: readonly PreheatReading[],
  spreads: readonly number[],
  first: LeastSquares,
): number[] {
  let x = first.x;
  let doubted = [...spreads];
  for (let round = 0; round < 6; round++) {
    const forecast = forecaster.at(x)!;
    doubted = readings.map(({ place, seconds, temperature }, i) => {
      const off = (temperature - forecast.at(place, seconds)) / spreads[i]!;
      return spreads[i]! * Math.sqrt((heavyTail + off * off) / (heavyTail + 1));
    });
    x = bestNumbers(forecaster, readings, doubted, x, tolerance.rough).x;
  }
  return doubted;
}

/**
 * Fits the numbers of `ovenNumbers`.
 *
 * @param readings at least one; @param readingSpread K, one standard deviation of a reading
 * @returns undefined when the plan's own oven never gets its plate ready
 */
export function fitOven(
  evening: Evening,
  readings: readonly PreheatReading[],
  readingSpread = usualReadingSpread,
  seed = 1,
): OvenFit | undefined {
  const last = Math.max(...readings.map(({ seconds }) => seconds));
  const forecaster = new Forecaster(evening, last + 600);
  const prior = forecaster.at(new Float64Array(count));
  if (prior === undefined) return undefined;

  // The ripple a reading sees depends on whether the oven had signalled by then: found anew from what was fitted.
  const rough = bestNumbers(
    forecaster,
    readings,
    spreadsOf(prior, readings, readingSpread),
    new Float64Array(count),
    tolerance.rough,
  );
  const spreads = spreadsOf(forecaster.at(rough.x)!, readings, readingSpread);
  const firm = bestNumbers(forecaster, readings, spreads, rough.x, tolerance.fine);
  const likely = misfitOf(firm, readings.length) <= unlikelySum(readings.length);
  const doubted = likely ? spreads : doubting(forecaster, readings, spreads, firm);
  const loose = likely ? firm : bestNumbers(forecaster, readings, doubted, firm.x, tolerance.fine);
  // What still scatters more than chance allows counts for less, in proportion (Birge, Phys Rev 40 (1932) 207-227).
  const misfit = misfitOf(loose, readings.length);
  const widened = misfit > unlikelySum(readings.length) ? Math.sqrt(misfit / readings.length) : 1;
  const found =
    widened > 1
      ? bestNumbers(
          forecaster,
          readings,
          doubted.map((spread) => spread * widened),
          loose.x,
          tolerance.fine,
        )
      : loose;
  const forecast = forecaster.at(found.x)!;
  const factor = inverseFactor(normalMatrix(found.jacobian, count), count);
  return {
    z: found.x,
    numbers: numbersOf(found.x, factor),
    ready: readyOf(forecaster, found.x, forecast, factor, seed),
    agrees: likely,
    residuals: readings.map((reading, i) => {
      const model = forecast.at(reading.place, reading.seconds);
      return { reading, model, residual: reading.temperature - model, expected: spreads[i]! };
    }),
    converged: found.converged,
    forecaster,
    forecast,
    factor,
  };
}

/** 0.9 quantile of the standard normal distribution */
const z90 = 1.2815515655;

function numbersOf(z: Float64Array, factor: Float64Array): Readonly<Record<OvenNumberName, Quantiles>> {
  const deviation = ovenNumbers.map((_, j) =>
    Math.hypot(...ovenNumbers.map((__, k) => factor[j * count + k]!)),
  );
  const [low, middle, high] = [-z90, 0, z90].map((u) =>
    numbersAt(z.map((value, j) => value + u * deviation[j]!)),
  );
  return Object.fromEntries(
    ovenNumbers.map(({ name }) => [name, { value: middle![name], p10: low![name], p90: high![name] }]),
  ) as Record<OvenNumberName, Quantiles>;
}

/**
 * ln t along the axes of the posterior: straight where it is narrow, a parabola through one standard deviation each way
 * where it is wide.
 */
function readyOf(
  forecaster: Forecaster,
  z: Float64Array,
  forecast: Forecast,
  factor: Float64Array,
  seed: number,
): Quantiles {
  const centre = Math.log(forecast.ready);
  const logReady = (k: number, u: number): number | undefined => {
    const there = forecaster.at(z.map((value, j) => value + u * factor[j * count + k]!));
    return there && Math.log(there.ready);
  };
  const gradient = readyGradient(forecaster, z, forecast);
  const straight = ovenNumbers.map((_, k) => ({
    slope: gradient.reduce((sum, g, j) => sum + g * factor[j * count + k]!, 0),
    bend: 0,
  }));
  const narrow = Math.hypot(...straight.map(({ slope }) => slope)) < 0.04;
  const curves = narrow
    ? straight
    : straight.map(({ slope }, k) => {
        const [plus, minus] = [logReady(k, 1), logReady(k, -1)];
        const up = plus ?? 2 * centre - (minus ?? centre - slope);
        const down = minus ?? 2 * centre - up;
        return { slope: (up - down) / 2, bend: (up + down) / 2 - centre };
      });
  const random = new SeededRandom(seed);
  const logs = Float64Array.from({ length: draws }, () =>
    curves.reduce((sum, { slope, bend }) => {
      const u = random.normal();
      return sum + (slope + bend * u) * u;
    }, centre),
  ).sort();
  return {
    value: forecast.ready,
    p10: Math.exp(Math.min(quantile(logs, 0.1), centre)),
    p90: Math.exp(Math.max(quantile(logs, 0.9), centre)),
  };
}

/** d ln t / dz of the ready time, from the same runs as the derivatives of the readings. */
function readyGradient(forecaster: Forecaster, z: Float64Array, here: Forecast): Float64Array {
  const rows = differences(
    (moved) => {
      const there = forecaster.at(moved);
      return there && Float64Array.of(Math.log(there.ready));
    },
    z,
    Float64Array.of(Math.log(here.ready)),
    search.difference,
  );
  return rows[0]!;
}
