/** The most probable numbers given readings and what was believed before, whatever simulates the readings. */
import { leastSquares, type LeastSquares } from '../numerics/leastSquares.ts';
import type { SeenPlace } from './forecast.ts';

export interface OvenReading {
  /** s since the oven was switched on */
  readonly seconds: number;
  readonly place: SeenPlace;
  /** K */
  readonly temperature: number;
  /** the pizza it was read under */
  readonly pizza?: number | undefined;
  /** K, one standard deviation, where it is not that of the others */
  readonly spread?: number | undefined;
}

/** What the readings would be in an oven with other numbers, and by how much each may be off. */
export interface Simulated {
  /** K, one a reading; undefined where the model has no answer */
  at(z: Float64Array): Float64Array | undefined;
  /** K, one standard deviation each */
  spreads(z: Float64Array): number[];
}

function bestNumbers(
  simulated: Simulated,
  readings: readonly OvenReading[],
  spreads: readonly number[],
  start: Float64Array,
  tolerance: number,
): LeastSquares {
  const found = leastSquares(
    (z) => {
      const there = simulated.at(z);
      if (there === undefined) return undefined;
      const misfits = readings.map(({ temperature }, i) => (there[i]! - temperature) / spreads[i]!);
      return Float64Array.from([...misfits, ...z]);
    },
    start,
    { ...search, tolerance },
  );
  if (found === undefined) throw new Error('the oven that the fit starts from has no forecast');
  return found;
}

/** Length of the differences behind derivatives, and of the longest step, in standard deviations of the priors. */
export const search = { difference: 0.04, longestStep: 1, mostSteps: 25 } as const;
const tolerance = { rough: 0.3, fine: 0.03 } as const;

/**
 * Upper 5 % point of the sum of squares with `n` degrees of freedom. Source: Wilson and Hilferty, Proc Natl Acad Sci 17
 * (1931) 684-688 (cube root of chi squared is nearly normal; from memory).
 */
export function unlikelySum(n: number): number {
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
  simulated: Simulated,
  readings: readonly OvenReading[],
  spreads: readonly number[],
  first: LeastSquares,
): number[] {
  let x = first.x;
  let doubted = [...spreads];
  for (let round = 0; round < 6; round++) {
    const there = simulated.at(x)!;
    doubted = readings.map(({ temperature }, i) => {
      const off = (temperature - there[i]!) / spreads[i]!;
      return spreads[i]! * Math.sqrt((heavyTail + off * off) / (heavyTail + 1));
    });
    x = bestNumbers(simulated, readings, doubted, x, tolerance.rough).x;
  }
  return doubted;
}

export interface Found {
  readonly best: LeastSquares;
  /** K, what the oven so found shows, and one standard deviation that was expected of each reading */
  readonly temperatures: Float64Array;
  readonly spreads: readonly number[];
  /** false when the readings scatter about it by more than chance allows */
  readonly likely: boolean;
}

/** @param start where the simulation has an answer */
export function mostProbable(
  simulated: Simulated,
  readings: readonly OvenReading[],
  start: Float64Array,
): Found {
  // The ripple a reading sees depends on whether the oven had signalled by then: found anew from what was fitted.
  const rough = bestNumbers(simulated, readings, simulated.spreads(start), start, tolerance.rough);
  const spreads = simulated.spreads(rough.x);
  const firm = bestNumbers(simulated, readings, spreads, rough.x, tolerance.fine);
  const likely = misfitOf(firm, readings.length) <= unlikelySum(readings.length);
  const doubted = likely ? spreads : doubting(simulated, readings, spreads, firm);
  const loose = likely ? firm : bestNumbers(simulated, readings, doubted, firm.x, tolerance.fine);
  // What still scatters more than chance allows counts for less, in proportion (Birge, Phys Rev 40 (1932) 207-227).
  const misfit = misfitOf(loose, readings.length);
  const found = (best: LeastSquares): Found => ({
    best,
    temperatures: simulated.at(best.x)!,
    spreads,
    likely,
  });
  if (misfit <= unlikelySum(readings.length)) return found(loose);
  const widened = doubted.map((spread) => spread * Math.sqrt(misfit / readings.length));
  return found(bestNumbers(simulated, readings, widened, loose.x, tolerance.fine));
}
