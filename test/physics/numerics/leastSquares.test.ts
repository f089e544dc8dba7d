import { describe, expect, it } from 'vitest';
import { inverseFactor, leastSquares, normalMatrix } from '../../../physics/numerics/leastSquares.ts';

/**
 * Misra1a of the NIST Statistical Reference Datasets for nonlinear regression: y = b1 (1 - exp(-b2 x)), 14 observations,
 * certified values (all from memory; that they agree to nine digits is what the test shows).
 */
const misra = {
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760],
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  start: [500, 1e-4],
  certified: [238.94212918, 5.5015643181e-4],
  errors: [2.7070075241, 7.2668688436e-6],
  sum: 0.12455138894,
};

describe('least squares', () => {
  it('meets the certified values of Misra1a, NIST StRD', () => {
    const [s1, s2] = misra.start as [number, number];
    const found = leastSquares(
      // Scaled to the start, so that both unknowns are of the order of 1.
      ([u, v]) => Float64Array.from(misra.x, (x, i) => s1 * u! * (1 - Math.exp(-s2 * v! * x)) - misra.y[i]!),
      Float64Array.of(1, 1),
      { difference: 1e-7, tolerance: 1e-9, mostSteps: 200 },
    )!;
    expect(found.converged).toBe(true);
    expect(Math.abs((s1 * found.x[0]!) / misra.certified[0]! - 1)).toBeLessThan(1e-5);
    expect(Math.abs((s2 * found.x[1]!) / misra.certified[1]! - 1)).toBeLessThan(1e-5);
    expect(Math.abs((2 * found.cost) / misra.sum - 1)).toBeLessThan(1e-8);
    // Standard errors: the certified ones take the scatter of the residuals, 12 degrees of freedom.
    const factor = inverseFactor(normalMatrix(found.jacobian, 2), 2);
    const scatter = Math.sqrt(misra.sum / 12);
    expect(Math.abs((s1 * scatter * Math.hypot(factor[0]!, factor[1]!)) / misra.errors[0]! - 1)).toBeLessThan(
      1e-3,
    );
    expect(Math.abs((s2 * scatter * Math.hypot(factor[2]!, factor[3]!)) / misra.errors[1]! - 1)).toBeLessThan(
      1e-3,
    );
  });

  it('walks the bent valley of Rosenbrock, Computer Journal 3 (1960) 175-184, to (1, 1)', () => {
    const found = leastSquares(
      ([x, y]) => Float64Array.of(10 * (y! - x! * x!), 1 - x!),
      Float64Array.of(-1.2, 1),
      { difference: 1e-7, tolerance: 1e-8, mostSteps: 300 },
    )!;
    expect(found.x[0]).toBeCloseTo(1, 6);
    expect(found.x[1]).toBeCloseTo(1, 6);
  });

  it('keeps its steps short, shortens them where the model has no answer, and says when it did not arrive', () => {
    const seen: number[] = [];
    const found = leastSquares(
      ([x]) => {
        seen.push(x!);
        return x! > 3 ? undefined : Float64Array.of(x! - 10);
      },
      Float64Array.of(0),
      { longestStep: 2, difference: 1e-3, tolerance: 1e-3, mostSteps: 40 },
    )!;
    expect(found.x[0]!).toBeLessThanOrEqual(3);
    expect(found.x[0]!).toBeGreaterThan(2.5);
    expect(Math.max(...seen)).toBeLessThanOrEqual(found.x[0]! + 2.001);
    expect(leastSquares(() => undefined, Float64Array.of(0))).toBeUndefined();
    const short = leastSquares(([x]) => Float64Array.of(x! - 10), Float64Array.of(0), {
      longestStep: 1,
      mostSteps: 3,
    })!;
    expect(short.converged).toBe(false);
  });
});
