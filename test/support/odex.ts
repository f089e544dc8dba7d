/** A second opinion on differential equations: odex 2.0.4 (Gragg, Bulirsch and Stoer), which brings no types of its own. */
import { createRequire } from 'node:module';

type Rate = (t: number, y: readonly number[]) => number[];

interface Solver {
  relativeTolerance: number;
  absoluteTolerance: number;
  maxSteps: number;
  solve(rate: Rate, from: number, start: readonly number[], to: number): { y: number[]; outcome: number };
}

// Its package holds its TypeScript source, which an import would type-check by our rules: a plain require does not.
const { Solver } = createRequire(import.meta.url)('odex') as { Solver: new (size: number) => Solver };

/** y at `to` of y' = rate(t, y) from y = start at 0, to a relative tolerance of 1e-10. */
export function integrate(rate: Rate, start: readonly number[], to: number): readonly number[] {
  const solver = new Solver(start.length);
  solver.relativeTolerance = 1e-10;
  solver.absoluteTolerance = 1e-8;
  solver.maxSteps = 1_000_000;
  const { y, outcome } = solver.solve(rate, 0, start, to);
  // 0 is "converged"
  if (outcome !== 0) throw new Error(`odex: outcome ${outcome}`);
  return y;
}
