/**
 * Nonlinear least squares for a handful of unknowns: Gauss-Newton steps, damped as Levenberg and Marquardt do when one
 * does not lead downhill. Residuals and unknowns are taken to be scaled: an unknown of 1 and a residual of 1 both mean
 * one standard deviation, so that one damping suits all and steps can be limited in those units.
 *
 * Source: Nocedal and Wright, Numerical Optimization, 2nd ed., 10.3 (trust-region view of Levenberg-Marquardt).
 */
import { solveDense } from './dense.ts';

/** Residuals at x; undefined where the model has no answer: such a step is refused and shortened. */
export type Residuals = (x: Float64Array) => Float64Array | undefined;

export interface LeastSquares {
  readonly x: Float64Array;
  readonly residuals: Float64Array;
  /** rows: residuals; columns: unknowns */
  readonly jacobian: readonly Float64Array[];
  /** half the sum of squares */
  readonly cost: number;
  readonly evaluations: number;
  readonly converged: boolean;
}

export interface LeastSquaresOptions {
  /** length of the difference behind each derivative */
  readonly difference?: number;
  /** longest change of an unknown in one step */
  readonly longestStep?: number;
  /** change below which the search ends */
  readonly tolerance?: number;
  readonly mostSteps?: number;
}

const costOf = (residuals: Float64Array): number => residuals.reduce((sum, r) => sum + (r * r) / 2, 0);

/** dr/dx by one-sided differences, to the other side where the first has no answer. */
export function differences(
  residualsAt: Residuals,
  x: Float64Array,
  here: Float64Array,
  length: number,
): Float64Array[] {
  const rows = Array.from(here, () => new Float64Array(x.length));
  for (let j = 0; j < x.length; j++)
    for (const h of [length, -length]) {
      const moved = x.slice();
      moved[j]! += h;
      const there = residualsAt(moved);
      if (there === undefined) continue;
      for (let i = 0; i < here.length; i++) rows[i]![j] = (there[i]! - here[i]!) / h;
      break;
    }
  return rows;
}

/** J^T J, row-major */
export function normalMatrix(jacobian: readonly Float64Array[], n: number): Float64Array {
  const matrix = new Float64Array(n * n);
  for (const row of jacobian)
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) matrix[i * n + j]! += row[i]! * row[j]!;
  return matrix;
}

/**
 * The step that minimises |r + J s|^2 + damping |s|^2.
 * @returns undefined when the equations are singular
 */
function dampedStep(
  jacobian: readonly Float64Array[],
  residuals: Float64Array,
  damping: number,
  n: number,
): Float64Array | undefined {
  const matrix = normalMatrix(jacobian, n);
  const right = new Float64Array(n);
  for (const [i, row] of jacobian.entries()) for (let j = 0; j < n; j++) right[j]! -= row[j]! * residuals[i]!;
  for (let j = 0; j < n; j++) matrix[j * n + j]! += damping;
  return solveDense(matrix, right, n) ? right : undefined;
}

/** Broyden's update: the least change of J that makes it agree with what a step did (Math Comp 19 (1965) 577-593). */
function learn(jacobian: readonly Float64Array[], step: Float64Array, change: Float64Array): void {
  const length = step.reduce((sum, s) => sum + s * s, 0);
  for (const [i, row] of jacobian.entries()) {
    const expected = row.reduce((sum, value, j) => sum + value * step[j]!, 0);
    const share = (change[i]! - expected) / length;
    for (let j = 0; j < row.length; j++) row[j]! += share * step[j]!;
  }
}

/**
 * A minimum of the sum of squares near `start`. Derivatives are taken at the start and at the end, and anew where a
 * step failed; between, they learn from the steps, as each costs a run of the model.
 *
 * @returns undefined when there are no residuals at `start`
 */
export function leastSquares(
  residualsAt: Residuals,
  start: Float64Array,
  options: LeastSquaresOptions = {},
): LeastSquares | undefined {
  const { difference = 1e-3, longestStep = Infinity, tolerance = 1e-6, mostSteps = 30 } = options;
  const n = start.length;
  let evaluations = 0;
  const counted: Residuals = (x) => {
    evaluations += 1;
    return residualsAt(x);
  };
  let x = start;
  const first = counted(x);
  if (first === undefined) return undefined;
  let residuals = first;
  let cost = costOf(residuals);
  let jacobian = differences(counted, x, residuals, difference);
  let fresh = true;
  let damping = 0;
  const refresh = (): void => {
    jacobian = differences(counted, x, residuals, difference);
    fresh = true;
  };
  for (let k = 0; k < mostSteps; k++) {
    const step = dampedStep(jacobian, residuals, damping, n);
    const length = step ? Math.max(...step.map(Math.abs)) : Infinity;
    if (length < tolerance || damping > 1e6) {
      if (fresh) return { x, residuals, jacobian, cost, evaluations, converged: length < tolerance };
      refresh();
      damping = 0;
      continue;
    }
    const taken = step?.map((s) => s * Math.min(1, longestStep / length));
    const tried = taken && Float64Array.from(x, (value, j) => value + taken[j]!);
    const there = tried && counted(tried);
    const below = there ? costOf(there) : Infinity;
    if (tried && there && below < cost) {
      learn(
        jacobian,
        taken,
        there.map((value, i) => value - residuals[i]!),
      );
      fresh = false;
      [x, residuals, cost] = [tried, there, below];
      damping = damping > 1e-2 ? damping / 10 : 0;
    } else if (!fresh) refresh();
    else damping = damping === 0 ? 0.1 : damping * 10;
  }
  if (!fresh) refresh();
  return { x, residuals, jacobian, cost, evaluations, converged: false };
}

/** Lower triangle L with L L^T = A^-1 for a positive definite A (row-major): draws x = L u have the covariance A^-1. */
export function inverseFactor(matrix: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = new Float64Array(n);
    column[j] = 1;
    if (!solveDense(matrix.slice(), column, n)) throw new Error('normal equations are singular');
    for (let i = 0; i < n; i++) inverse[i * n + j] = column[i]!;
  }
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = inverse[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= lower[i * n + k]! * lower[j * n + k]!;
      lower[i * n + j] = i === j ? Math.sqrt(sum) : sum / lower[j * n + j]!;
    }
  return lower;
}
