/**
 * Readings once pizzas went in. What the oven then shows hangs on when the thermostat happened to switch, so that it
 * jumps by some kelvin when a number moves a little: no ground for derivatives. A parabola in each number is laid
 * through the evening simulated with that number moved up and down, and what lies off it counts as spread.
 */
import { normalMatrix } from '../numerics/leastSquares.ts';
import { dot, solveDense } from '../numerics/dense.ts';
import { attempt } from '../evening/attempt.ts';
import { runPreheat } from '../evening/preheat.ts';
import { sampleAt } from '../numerics/samples.ts';
import type { BakeRecord } from './bakeRecords.ts';
import type { Forecaster } from './forecast.ts';
import type { OvenReading, Simulated } from './mostProbable.ts';
import { ovenNumbers } from './ovenNumbers.ts';
import { rerun } from './rerun.ts';

/** Standard deviations by which each number is moved: up to 20 % of the power, 8 % of the mass, 9 K of the dial. */
const moved = [-0.8, -0.4, 0.4, 0.8];

/**
 * One standard deviation of what a pizza takes from the plate, as a share: the model takes less than cooks measure
 * (22 K against 30 to 60 K), and flour, dough and hands differ. Our estimate.
 */
const takenSpread = 0.25;

const n = ovenNumbers.length;

/** K of the readings in the evening as it was run; undefined beyond what the properties are known for. */
function asRun(
  forecaster: Forecaster,
  readings: readonly OvenReading[],
  records: readonly BakeRecord[],
  z: Float64Array,
): Float64Array | undefined {
  const last = Math.max(...readings.map(({ seconds }) => seconds));
  return attempt(() => {
    const model = forecaster.modelAt(z);
    const { trace } = rerun(model, runPreheat(model, 3600), records, last);
    return Float64Array.from(readings, ({ place, seconds }) =>
      sampleAt(trace.seconds, trace[place], seconds),
    );
  });
}

/** 1, the distances from where it is laid, and their squares: T = sum of these times as many coefficients. */
function terms(z: Float64Array, centre: Float64Array): Float64Array {
  const apart = z.map((value, j) => value - centre[j]!);
  return Float64Array.of(1, ...apart, ...apart.map((d) => d * d));
}
const coefficients = 2 * n + 1;

/** Least squares. @param rows terms of the points; @returns the coefficients, or undefined when points are lacking */
function surfaceThrough(
  rows: readonly Float64Array[],
  temperatures: readonly number[],
): Float64Array | undefined {
  const right = Float64Array.from({ length: coefficients }, (_, j) =>
    rows.reduce((sum, row, i) => sum + row[j]! * temperatures[i]!, 0),
  );
  return solveDense(normalMatrix(rows, coefficients), right, coefficients) ? right : undefined;
}

/**
 * The readings before the first pizza simulated as ever, those after it on such surfaces.
 *
 * @param bare readings as if the plate stayed bare; @param start where they are laid
 * @returns undefined when too little can be simulated about `start`
 */
export function withPizzas(
  forecaster: Forecaster,
  bare: Simulated,
  readings: readonly OvenReading[],
  records: readonly BakeRecord[],
  start: Float64Array,
): Simulated | undefined {
  const late = readings.map(({ seconds }) => seconds >= records[0]!.inAt);
  const points = [start];
  for (let j = 0; j < n; j++)
    for (const by of moved) points.push(start.map((value, k) => (k === j ? value + by : value)));
  const runs = points.flatMap((z) => {
    const temperatures = asRun(forecaster, readings, records, z);
    return temperatures ? [{ row: terms(z, start), temperatures }] : [];
  });
  if (runs.length <= coefficients) return undefined;
  const rows = runs.map(({ row }) => row);
  const surfaces: Float64Array[] = [];
  for (let i = 0; i < readings.length; i++) {
    const surface = surfaceThrough(
      rows,
      runs.map(({ temperatures }) => temperatures[i]!),
    );
    if (surface === undefined) return undefined;
    surfaces.push(surface);
  }
  const off = surfaces.map((surface, i) => {
    const sum = runs.reduce((s, { row, temperatures }) => s + (temperatures[i]! - dot(row, surface)) ** 2, 0);
    return Math.sqrt(sum / (runs.length - coefficients));
  });
  const bareStart = bare.at(start)!;
  return {
    at: (z) => {
      const there = bare.at(z);
      const row = terms(z, start);
      return there && Float64Array.from(surfaces, (surface, i) => (late[i] ? dot(row, surface) : there[i]!));
    },
    spreads: (z) =>
      bare
        .spreads(z)
        .map((spread, i) =>
          late[i] ? Math.hypot(spread, off[i]!, takenSpread * (bareStart[i]! - surfaces[i]![0]!)) : spread,
        ),
  };
}
