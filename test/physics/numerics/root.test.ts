import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { findRoot } from '../../../physics/numerics/root.ts';

describe('findRoot', () => {
  it.each([
    ['x^2 - 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2, 1e-11],
    ['cos x - x (the Dottie number)', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607, 1e-11],
    ['10 - exp x, upper end first', (x: number) => 10 - Math.exp(x), 5, 0, Math.LN10, 1e-11],
    ['1/x - 1e6, very unlike ends', (x: number) => 1 / x - 1e6, 1e-8, 1, 1e-6, 1e-11],
    // So flat that rounding hides the root itself: x^9 is below the resolution of 1 within 0.018.
    ['(x - 1)^9', (x: number) => (x - 1) ** 9, 0, 3, 1, 0.02],
  ])('%s', (_, f, low, high, root, within) => {
    expect(Math.abs(findRoot(f, low, high, 1e-12) - root)).toBeLessThan(within);
  });
  it('takes an end that is a root', () => {
    expect(findRoot((x) => x - 3, 3, 5, 1e-9)).toBe(3);
    expect(findRoot((x) => x - 5, 3, 5, 1e-9)).toBe(5);
  });
  it('needs fewer evaluations than halving, and no more of the ends when their values are given', () => {
    let calls = 0;
    const f = (x: number): number => {
      calls += 1;
      return x ** 3 - 20;
    };
    findRoot(f, 0, 10, 1e-10, -20, 980);
    // Halving ten to 1e-10 takes 37.
    expect(calls).toBeLessThan(20);
  });
  it.each([
    ['no sign change', (x: number) => x * x + 1],
    ['NaN', () => NaN],
  ])('refuses %s', (_, f) => {
    expect(() => findRoot(f, -1, 1, 1e-6)).toThrow(OutOfRange);
  });
});
