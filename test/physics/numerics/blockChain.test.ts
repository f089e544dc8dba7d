import { lusolve } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { BlockChain } from '../../../physics/numerics/blockChain.ts';
import { SeededRandom } from '../../../physics/numerics/random.ts';

const kinds = ['lower', 'diagonal', 'upper'] as const;

/** A random chain, diagonally dominant, and the same system written out. */
function randomChain(n: number, seed: number) {
  const random = new SeededRandom(seed);
  const chain = new BlockChain(n);
  const rows = Array.from({ length: 2 * n }, () => new Array<number>(2 * n).fill(0));
  const right = new Array<number>(2 * n).fill(0);
  for (let cell = 0; cell < n; cell++)
    for (const row of [0, 1] as const) {
      kinds.forEach((kind, k) => {
        const other = cell + k - 1;
        if (other < 0 || other >= n) return;
        for (const column of [0, 1] as const) {
          const value = random.normal() + (kind === 'diagonal' && row === column ? 12 : 0);
          rows[2 * cell + row]![2 * other + column] = value;
          chain[kind][4 * cell + 2 * row + column] = value;
        }
      });
      const value = random.normal();
      right[2 * cell + row] = value;
      chain.right[2 * cell + row] = value;
    }
  chain.plate = 3.5;
  chain.surface = -2.25;
  return { chain, rows, right };
}

describe.each([1, 2, 3, 9, 27])('a block chain of %d cells', (n) => {
  const { chain, rows, right } = randomChain(n, 40 + n);
  chain.solve();
  const reference = (plate: number, surface: number): number[] => {
    const b = right.slice();
    b[0]! += chain.plate * plate;
    b[2 * (n - 1)]! += chain.surface * surface;
    return (lusolve(rows, b) as number[][]).map(([x]) => x!);
  };

  it.each([
    [0, 0],
    [1, 0],
    [0, 1],
    [-3, 7],
  ])('agrees with the lusolve of mathjs, plate %d, surface %d', (plate, surface) => {
    chain.follow(plate, surface);
    reference(plate, surface).forEach((x, i) => {
      const found = i % 2 === 0 ? chain.changeT[i / 2]! : chain.changeW[(i - 1) / 2]!;
      expect(Math.abs(found - x)).toBeLessThan(1e-12);
    });
  });
  it('tells how its two ends depend on plate and surface', () => {
    const [none, plate, surface] = [reference(0, 0), reference(1, 0), reference(0, 1)];
    const last = 2 * (n - 1);
    for (const [found, wanted] of [
      [chain.firstConstant, none[0]!],
      [chain.firstPerPlate, plate[0]! - none[0]!],
      [chain.firstPerSurface, surface[0]! - none[0]!],
      [chain.lastConstant, none[last]!],
      [chain.lastPerPlate, plate[last]! - none[last]!],
      [chain.lastPerSurface, surface[last]! - none[last]!],
    ] as const)
      expect(Math.abs(found - wanted)).toBeLessThan(1e-12);
  });
});
