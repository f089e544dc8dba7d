import { describe, expect, it } from 'vitest';
import { solveDense } from '../../../physics/numerics/dense.ts';
import { PatternSolver } from '../../../physics/numerics/patternSolver.ts';
import { SeededRandom } from '../../../physics/numerics/random.ts';

/** A random network of n nodes, dominant by columns as linearised radiation is, with every node linked somewhere. */
function network(n: number, chance: number, seed: number) {
  const random = new SeededRandom(seed);
  const links: [number, number][] = [];
  const a = new Float64Array(n * n);
  for (let i = 0; i < n; i++) a[i * n + i] = 0.1 + Math.abs(random.normal());
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      if (j > i + 1 && random.normal() > chance) continue;
      links.push([i, j]);
      const [up, down] = [Math.abs(random.normal()), Math.abs(random.normal())];
      a[i * n + j]! -= up;
      a[j * n + j]! += up;
      a[j * n + i]! -= down;
      a[i * n + i]! += down;
    }
  return { links, a, b: Float64Array.from({ length: n }, () => random.normal()) };
}

describe('solving by pattern', () => {
  it.each([
    [1, 0, 1],
    [2, 0, 2],
    [9, -1, 3],
    [21, 0, 4],
    [37, -1.5, 5],
  ])('%d unknowns: the same as by elimination of the whole matrix', (n, chance, seed) => {
    const { links, a, b } = network(n, chance, seed);
    const solver = new PatternSolver(n, links);
    expect([...solver.place].sort((p, q) => p - q)).toEqual(Array.from({ length: n }, (_, i) => i));
    const permuted = new Float64Array(n * n);
    const right = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      right[solver.place[i]!] = b[i]!;
      for (let j = 0; j < n; j++) permuted[solver.place[i]! * n + solver.place[j]!] = a[i * n + j]!;
    }
    expect(solver.solve(permuted, right)).toBe(true);
    const exact = b.slice();
    expect(solveDense(a.slice(), exact, n)).toBe(true);
    for (let i = 0; i < n; i++) {
      // Rounding, times a condition number of some hundreds.
      expect(Math.abs(right[solver.place[i]!]! - exact[i]!)).toBeLessThan(1e-11 * (1 + Math.abs(exact[i]!)));
    }
  });

  it('tells of an unknown that nothing determines, and of what is no number', () => {
    const solver = new PatternSolver(2, [[0, 1]]);
    expect(solver.solve(Float64Array.of(0, 0, 0, 1), Float64Array.of(1, 1))).toBe(false);
    expect(solver.solve(Float64Array.of(NaN, 1, 1, 1), Float64Array.of(1, 1))).toBe(false);
  });
});
