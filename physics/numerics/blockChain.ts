/**
 * A block tridiagonal system with 2 x 2 blocks (two unknowns a cell, called T and W) and three right sides: a
 * constant one, one for a node below the first cell and one for a node above the last:
 *
 *     L_i u_(i-1) + D_i u_i + U_i u_(i+1) = r_i + [i = 0] (plate, 0) P + [i = n-1] (surface, 0) S
 *
 * Solved by block elimination, so that u = constant + perPlate P + perSurface S. Diagonally dominant blocks need no
 * exchange of rows.
 *
 * Source: Golub and Van Loan, Matrix Computations, 4.5.1 (block LU of a block tridiagonal matrix).
 */
export class BlockChain {
  /** changes of T and W once plate and surface are known */
  readonly changeT: Float64Array;
  readonly changeW: Float64Array;
  plate = 0;
  surface = 0;
  readonly #n: number;
  readonly #lower: Float64Array;
  readonly #diagonal: Float64Array;
  readonly #upper: Float64Array;
  readonly #right: Float64Array;
  /** per cell: constant T, W; per plate T, W; per surface T, W */
  readonly #solution: Float64Array;
  /** per cell: D'^-1 U */
  readonly #onward: Float64Array;

  constructor(n: number) {
    this.#n = n;
    this.#lower = new Float64Array(4 * n);
    this.#diagonal = new Float64Array(4 * n);
    this.#upper = new Float64Array(4 * n);
    this.#right = new Float64Array(2 * n);
    this.#solution = new Float64Array(6 * n);
    this.#onward = new Float64Array(4 * n);
    this.changeT = new Float64Array(n);
    this.changeW = new Float64Array(n);
  }

  clear(): void {
    this.#lower.fill(0);
    this.#diagonal.fill(0);
    this.#upper.fill(0);
    this.#right.fill(0);
  }

  addLower(cell: number, row: 0 | 1, column: 0 | 1, value: number): void {
    this.#lower[4 * cell + 2 * row + column]! += value;
  }
  addDiagonal(cell: number, row: 0 | 1, column: 0 | 1, value: number): void {
    this.#diagonal[4 * cell + 2 * row + column]! += value;
  }
  addUpper(cell: number, row: 0 | 1, column: 0 | 1, value: number): void {
    this.#upper[4 * cell + 2 * row + column]! += value;
  }
  addRight(cell: number, row: 0 | 1, value: number): void {
    this.#right[2 * cell + row]! += value;
  }

  get firstConstant(): number {
    return this.#solution[0]!;
  }
  get firstPerPlate(): number {
    return this.#solution[2]!;
  }
  get firstPerSurface(): number {
    return this.#solution[4]!;
  }
  get lastConstant(): number {
    return this.#solution[6 * (this.#n - 1)]!;
  }
  get lastPerPlate(): number {
    return this.#solution[6 * (this.#n - 1) + 2]!;
  }
  get lastPerSurface(): number {
    return this.#solution[6 * (this.#n - 1) + 4]!;
  }

  solve(): void {
    const n = this.#n;
    const L = this.#lower;
    const D = this.#diagonal;
    const U = this.#upper;
    const G = this.#onward;
    const x = this.#solution;
    for (let i = 0; i < n; i++) {
      const k = 4 * i;
      let d00 = D[k]!;
      let d01 = D[k + 1]!;
      let d10 = D[k + 2]!;
      let d11 = D[k + 3]!;
      let r0 = this.#right[2 * i]!;
      let r1 = this.#right[2 * i + 1]!;
      let p0 = i === 0 ? this.plate : 0;
      let p1 = 0;
      if (i > 0) {
        const l00 = L[k]!;
        const l01 = L[k + 1]!;
        const l10 = L[k + 2]!;
        const l11 = L[k + 3]!;
        const g = k - 4;
        d00 -= l00 * G[g]! + l01 * G[g + 2]!;
        d01 -= l00 * G[g + 1]! + l01 * G[g + 3]!;
        d10 -= l10 * G[g]! + l11 * G[g + 2]!;
        d11 -= l10 * G[g + 1]! + l11 * G[g + 3]!;
        const b = 6 * (i - 1);
        r0 -= l00 * x[b]! + l01 * x[b + 1]!;
        r1 -= l10 * x[b]! + l11 * x[b + 1]!;
        p0 -= l00 * x[b + 2]! + l01 * x[b + 3]!;
        p1 -= l10 * x[b + 2]! + l11 * x[b + 3]!;
      }
      const inverse = 1 / (d00 * d11 - d01 * d10);
      const s0 = i === n - 1 ? this.surface : 0;
      const o = 6 * i;
      x[o] = (d11 * r0 - d01 * r1) * inverse;
      x[o + 1] = (d00 * r1 - d10 * r0) * inverse;
      x[o + 2] = (d11 * p0 - d01 * p1) * inverse;
      x[o + 3] = (d00 * p1 - d10 * p0) * inverse;
      x[o + 4] = d11 * s0 * inverse;
      x[o + 5] = -d10 * s0 * inverse;
      G[k] = (d11 * U[k]! - d01 * U[k + 2]!) * inverse;
      G[k + 1] = (d11 * U[k + 1]! - d01 * U[k + 3]!) * inverse;
      G[k + 2] = (d00 * U[k + 2]! - d10 * U[k]!) * inverse;
      G[k + 3] = (d00 * U[k + 3]! - d10 * U[k + 1]!) * inverse;
    }
    for (let i = n - 2; i >= 0; i--) {
      const k = 4 * i;
      const o = 6 * i;
      for (let c = 0; c < 6; c += 2) {
        const above0 = x[o + 6 + c]!;
        const above1 = x[o + 7 + c]!;
        x[o + c]! -= G[k]! * above0 + G[k + 1]! * above1;
        x[o + c + 1]! -= G[k + 2]! * above0 + G[k + 3]! * above1;
      }
    }
  }

  follow(plate: number, surface: number): void {
    const x = this.#solution;
    for (let i = 0; i < this.#n; i++) {
      const o = 6 * i;
      this.changeT[i] = x[o]! + x[o + 2]! * plate + x[o + 4]! * surface;
      this.changeW[i] = x[o + 1]! + x[o + 3]! * plate + x[o + 5]! * surface;
    }
  }
}
