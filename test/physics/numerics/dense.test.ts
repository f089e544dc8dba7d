import { lusolve } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { solveDense } from '../../../physics/numerics/dense.ts';
import { SeededRandom } from '../../../physics/numerics/random.ts';

function solved(rows: readonly (readonly number[])[], right: readonly number[]): number[] {
  const b = Float64Array.from(right);
  expect(solveDense(Float64Array.from(rows.flat()), b, right.length)).toBe(true);
  return Array.from(b);
}

describe('solveDense', () => {
  it.each([1, 2, 3, 7, 12, 20])('agrees with the lusolve of mathjs on random systems of %d', (n) => {
    const random = new SeededRandom(n);
    for (let round = 0; round < 5; round++) {
      const rows = Array.from({ length: n }, () => Array.from({ length: n }, () => random.normal()));
      const right = Array.from({ length: n }, () => random.normal());
      const reference = (lusolve(rows, right) as number[][]).map(([x]) => x!);
      const largest = Math.max(...reference.map(Math.abs));
      solved(rows, right).forEach((x, i) => {
        expect(Math.abs(x - reference[i]!)).toBeLessThan(1e-10 * largest);
      });
    }
  });
  it('solves the tridiagonal (-1, 2, -1), n = 5, right side 1: i (6 - i)/2 (exact)', () => {
    const rows = Array.from({ length: 5 }, (_, i) =>
      Array.from({ length: 5 }, (__, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
    );
    solved(rows, [1, 1, 1, 1, 1]).forEach((x, i) => {
      expect(Math.abs(x - [2.5, 4, 4.5, 4, 2.5][i]!)).toBeLessThan(1e-14);
    });
  });
  it('exchanges rows where a pivot is nothing', () => {
    expect(
      solved(
        [
          [0, 1],
          [2, 0],
        ],
        [3, 8],
      ),
    ).toEqual([4, 3]);
  });
  it('says when there is no answer, with NaN in the matrix too', () => {
    expect(solveDense(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1), 2)).toBe(false);
    expect(solveDense(Float64Array.of(NaN, 1, 1, 1), Float64Array.of(1, 1), 2)).toBe(false);
  });
});
