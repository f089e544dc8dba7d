/** Where a function is zero. */
import { OutOfRange } from '../evening/problem.ts';

/**
 * A root of a continuous function between two points of opposite sign: regula falsi with the Illinois weighting,
 * which keeps the bracket and converges faster than halving.
 *
 * @param tolerance width of the bracket, in units of x, at which to stop
 * @throws OutOfRange when the signs at both ends agree
 *
 * Source: Dowell and Jarratt, BIT 11 (1971) 168-174 (from memory).
 */
export function findRoot(
  f: (x: number) => number,
  lower: number,
  upper: number,
  tolerance: number,
  atLower: number = f(lower),
  atUpper: number = f(upper),
): number {
  let [a, b, fa, fb] = [lower, upper, atLower, atUpper];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0))
    throw new OutOfRange(
      'bracket',
      `f(${String(a)}) = ${String(fa)}, f(${String(b)}) = ${String(fb)}`,
      'opposite signs',
    );
  let kept = 0;
  for (let i = 0; i < 200 && Math.abs(b - a) > tolerance; i++) {
    const c = (a * fb - b * fa) / (fb - fa);
    const fc = f(c);
    if (fc === 0) return c;
    if (fc * fb < 0) {
      a = b;
      fa = fb;
      kept = 0;
    } else {
      kept += 1;
      // The end that does not move is given less weight, or the bracket would close from one side only.
      fa *= kept > 1 ? 0.25 : 0.5;
    }
    b = c;
    fb = fc;
    // The secant may sit on one end with the root found: that is convergence too.
    if (Math.abs(fc) < Number.EPSILON) return c;
  }
  return b;
}
