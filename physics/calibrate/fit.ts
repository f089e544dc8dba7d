/**
 * What readings of a preheat, and of the plate between pizzas, say of the oven: the most probable numbers given the
 * readings and what was believed before (maximum a posteriori), and how sure they now are (normal approximation about
 * that maximum).
 *
 *     minimise  sum_i ((y_i - T_i(z)) / s_i)^2 + sum_j z_j^2
 *
 * z are the numbers in standard deviations of their prior; s_i joins the thermometer's own spread and, once the
 * thermostat switches, the ripple of its cycles: nobody's oven keeps the phase of a simulated one. Once pizzas went in it
 * also holds what the model may be wrong about what a pizza takes from the plate.
 */
import { differences, inverseFactor, normalMatrix } from '../numerics/leastSquares.ts';
import { z90 } from '../numerics/normal.ts';
import { SeededRandom } from '../numerics/random.ts';
import { quantile } from '../evening/spread.ts';
import type { Evening } from '../evening/evening.ts';
import { withPizzas } from './afterPizzas.ts';
import type { BakeRecord } from './bakeRecords.ts';
import { Forecaster, type Forecast } from './forecast.ts';
import { mostProbable, search, type OvenReading, type Simulated } from './mostProbable.ts';
import { numbersAt, ovenNumbers, type OvenNumberName } from './ovenNumbers.ts';

export interface Quantiles {
  readonly value: number;
  readonly p10: number;
  readonly p90: number;
}

export interface Residual {
  readonly reading: OvenReading;
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

/** Readings of a plate that stays bare. */
function bareReadings(forecaster: Forecaster, readings: readonly OvenReading[], own: number): Simulated {
  return {
    at: (z) => {
      const forecast = forecaster.at(z);
      return forecast && Float64Array.from(readings, ({ place, seconds }) => forecast.at(place, seconds));
    },
    spreads: (z) => {
      const forecast = forecaster.at(z)!;
      return readings.map(({ place, seconds, spread = own }) =>
        Math.hypot(spread, forecast.ripple(place, seconds)),
      );
    },
  };
}

/** Standard deviations by which the numbers may have moved before what pizzas do is simulated anew. */
const nearby = 1;
const mostRounds = 3;

/**
 * Fits the numbers of `ovenNumbers`.
 *
 * @param readings at least one; @param readingSpread K, one standard deviation of a reading
 * @param records the pizzas that went in, one after another
 * @returns undefined when the plan's own oven never gets its plate ready; without readings that cannot be simulated
 */
export function fitOven(
  evening: Evening,
  readings: readonly OvenReading[],
  readingSpread = usualReadingSpread,
  seed = 1,
  records: readonly BakeRecord[] = [],
): OvenFit | undefined {
  const last = Math.max(...readings.map(({ seconds }) => seconds));
  const forecaster = new Forecaster(evening, last + 600);
  const origin = new Float64Array(count);
  if (forecaster.at(origin) === undefined) return undefined;
  const bare = bareReadings(forecaster, readings, readingSpread);
  const firstIn = records[0]?.inAt ?? Infinity;
  const early = readings.filter(({ seconds }) => seconds < firstIn);
  let found =
    early.length > 0
      ? mostProbable(bareReadings(forecaster, early, readingSpread), early, origin)
      : undefined;
  let told: readonly OvenReading[] = early;
  if (early.length < readings.length) {
    const before = records.filter(({ inAt }) => inAt <= last);
    let start = found?.best.x ?? origin;
    for (let round = 0; round < mostRounds; round++) {
      const simulated = withPizzas(forecaster, bare, readings, before, start);
      if (simulated === undefined) break;
      found = mostProbable(simulated, readings, start);
      told = readings;
      const moved = Math.max(...found.best.x.map((value, j) => Math.abs(value - start[j]!)));
      start = found.best.x;
      if (moved < nearby) break;
    }
  }
  if (found === undefined) return undefined;
  const { best, spreads, likely, temperatures } = found;
  const forecast = forecaster.at(best.x)!;
  const factor = inverseFactor(normalMatrix(best.jacobian, count), count);
  return {
    z: best.x,
    numbers: numbersOf(evening, best.x, factor),
    ready: readyOf(forecaster, best.x, forecast, factor, seed),
    agrees: likely,
    residuals: told.map((reading, i) => {
      const model = temperatures[i]!;
      return { reading, model, residual: reading.temperature - model, expected: spreads[i]! };
    }),
    converged: best.converged,
    forecaster,
    forecast,
    factor,
  };
}

function numbersOf(
  evening: Evening,
  z: Float64Array,
  factor: Float64Array,
): Readonly<Record<OvenNumberName, Quantiles>> {
  const deviation = ovenNumbers.map((_, j) =>
    Math.hypot(...ovenNumbers.map((__, k) => factor[j * count + k]!)),
  );
  const [low, middle, high] = [-z90, 0, z90].map((u) =>
    numbersAt(
      evening,
      z.map((value, j) => value + u * deviation[j]!),
    ),
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
