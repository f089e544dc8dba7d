/**
 * Solves the dense system A x = b by Gaussian elimination with partial pivoting, in place.
 *
 * @param a row-major n x n, overwritten
 * @param b right side, overwritten by the solution x
 * @returns false when the matrix is singular to working precision (b is then meaningless)
 *
 * Source: Golub and Van Loan, Matrix Computations, algorithm 3.4.1 (outer product form with row exchanges).
 */
export function solveDense(a: Float64Array, b: Float64Array, n: number): boolean {
  for (let k = 0; k < n; k++) {
    const rowK = k * n;
    let pivotRow = k;
    let largest = Math.abs(a[rowK + k]!);
    for (let i = k + 1; i < n; i++) {
      const size = Math.abs(a[i * n + k]!);
      if (size > largest) {
        largest = size;
        pivotRow = i;
      }
    }
    if (!(largest > 0)) return false;
    if (pivotRow !== k) {
      const rowP = pivotRow * n;
      for (let j = k; j < n; j++) {
        const held = a[rowK + j]!;
        a[rowK + j] = a[rowP + j]!;
        a[rowP + j] = held;
      }
      const held = b[k]!;
      b[k] = b[pivotRow]!;
      b[pivotRow] = held;
    }
    const inverse = 1 / a[rowK + k]!;
    for (let i = k + 1; i < n; i++) {
      const rowI = i * n;
      const factor = a[rowI + k]! * inverse;
      // Most links of a thermal network are absent: skip them.
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) a[rowI + j]! -= factor * a[rowK + j]!;
      b[i]! -= factor * b[k]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    const rowI = i * n;
    let sum = b[i]!;
    for (let j = i + 1; j < n; j++) sum -= a[rowI + j]! * b[j]!;
    b[i] = sum / a[rowI + i]!;
  }
  return true;
}

/** Sum of products, as far as `a` goes. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
