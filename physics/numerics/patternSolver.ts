/**
 * Solves A x = b again and again for matrices with the same places of zeros: the unknowns are ordered once so that few
 * zeros fill up (each time the one with the fewest links left is eliminated: minimum degree), and only what is not zero
 * is touched afterwards. The pattern is taken as symmetric, the values need not be. There is no exchange of rows: the
 * matrix has to be diagonally dominant by rows or by columns, as that of any thermal network in an implicit step is.
 *
 * Sources: Golub and Van Loan, Matrix Computations, 3.4.10 (dominant matrices need no pivoting); George and Liu,
 * SIAM Review 31 (1989) 1-19 (minimum degree).
 */
export class PatternSolver {
  readonly size: number;
  /** row of each unknown in the matrix and the right side that `solve` takes */
  readonly place: Int32Array;
  /** for each row k, the later rows that it is linked to once those before it are eliminated */
  readonly #later: readonly Int32Array[];

  /** @param links pairs of unknowns whose entries may differ from zero */
  constructor(size: number, links: readonly (readonly [number, number])[]) {
    this.size = size;
    const near = Array.from({ length: size }, () => new Set<number>());
    for (const [a, b] of links) {
      if (a === b) continue;
      near[a]!.add(b);
      near[b]!.add(a);
    }
    this.place = new Int32Array(size);
    const left = new Set(near.keys());
    const order: { readonly links: readonly number[] }[] = [];
    while (left.size > 0) {
      let next = -1;
      for (const i of left) if (next < 0 || near[i]!.size < near[next]!.size) next = i;
      const linked = [...near[next]!];
      for (const i of linked) {
        near[i]!.delete(next);
        for (const j of linked) if (j !== i) near[i]!.add(j);
      }
      left.delete(next);
      this.place[next] = order.length;
      order.push({ links: linked });
    }
    this.#later = order.map(({ links: linked }) => Int32Array.from(linked, (i) => this.place[i]!).sort());
  }

  /**
   * @param a row-major, rows and columns by `place`, overwritten; @param b by `place`, overwritten by x
   * @returns false when a pivot vanishes or is no number (b is then meaningless)
   */
  solve(a: Float64Array, b: Float64Array): boolean {
    const n = this.size;
    for (let k = 0; k < n; k++) {
      const later = this.#later[k]!;
      const rowK = k * n;
      const pivot = a[rowK + k]!;
      // Written so that NaN fails too.
      if (!(Math.abs(pivot) > 0)) return false;
      const inverse = 1 / pivot;
      const right = b[k]!;
      const count = later.length;
      for (let l = 0; l < count; l++) {
        const i = later[l]!;
        const rowI = i * n;
        const factor = a[rowI + k]! * inverse;
        if (factor === 0) continue;
        for (let m = 0; m < count; m++) {
          const j = later[m]!;
          a[rowI + j]! -= factor * a[rowK + j]!;
        }
        b[i]! -= factor * right;
      }
    }
    for (let k = n - 1; k >= 0; k--) {
      const later = this.#later[k]!;
      const rowK = k * n;
      let sum = b[k]!;
      for (const j of later) sum -= a[rowK + j]! * b[j]!;
      b[k] = sum / a[rowK + k]!;
    }
    return true;
  }
}
