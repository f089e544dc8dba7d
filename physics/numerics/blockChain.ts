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
  /**
   * Blocks row by row, four numbers a cell, and the constant right side, two a cell: whoever builds the system writes
   * every one of them before each `solve`, but for the first lower and the last upper block.
   */
  readonly lower: Float64Array;
  readonly diagonal: Float64Array;
  readonly upper: Float64Array;
  readonly right: Float64Array;
  plate = 0;
  surface = 0;
  readonly #n: number;
  /** per cell: constant T, W; per plate T, W; per surface T, W */
  readonly #solution: Float64Array;
  /** per cell: D'^-1 U */
  readonly #onward: Float64Array;

  constructor(n: number) {
    this.#n = n;
    this.lower = new Float64Array(4 * n);
    this.diagonal = new Float64Array(4 * n);
    this.upper = new Float64Array(4 * n);
    this.right = new Float64Array(2 * n);
    this.#solution = new Float64Array(6 * n);
    this.#onward = new Float64Array(4 * n);
    this.changeT = new Float64Array(n);
    this.changeW = new Float64Array(n);
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
    const L = this.lower;
    const D = this.diagonal;
    const U = this.upper;
    const R = this.right;
    const G = this.#onward;
    const x = this.#solution;
    // What the cell below passes on: its D'^-1 U and its right sides, constant and per plate.
    let g00 = 0;
    let g01 = 0;
    let g10 = 0;
    let g11 = 0;
    let c0 = 0;
    let c1 = 0;
    let q0 = 0;
    let q1 = 0;
    for (let i = 0; i < n; i++) {
      const k = 4 * i;
      let d00 = D[k]!;
      let d01 = D[k + 1]!;
      let d10 = D[k + 2]!;
      let d11 = D[k + 3]!;
      let r0 = R[2 * i]!;
      let r1 = R[2 * i + 1]!;
      let p0 = 0;
      let p1 = 0;
      if (i === 0) p0 = this.plate;
      else {
        const l00 = L[k]!;
        const l01 = L[k + 1]!;
        const l10 = L[k + 2]!;
        const l11 = L[k + 3]!;
        d00 -= l00 * g00 + l01 * g10;
        d01 -= l00 * g01 + l01 * g11;
        d10 -= l10 * g00 + l11 * g10;
        d11 -= l10 * g01 + l11 * g11;
        r0 -= l00 * c0 + l01 * c1;
        r1 -= l10 * c0 + l11 * c1;
        p0 -= l00 * q0 + l01 * q1;
        p1 -= l10 * q0 + l11 * q1;
      }
      const inverse = 1 / (d00 * d11 - d01 * d10);
      d00 *= inverse;
      d01 *= inverse;
      d10 *= inverse;
      d11 *= inverse;
      c0 = d11 * r0 - d01 * r1;
      c1 = d00 * r1 - d10 * r0;
      q0 = d11 * p0 - d01 * p1;
      q1 = d00 * p1 - d10 * p0;
      const o = 6 * i;
      x[o] = c0;
      x[o + 1] = c1;
      x[o + 2] = q0;
      x[o + 3] = q1;
      if (i === n - 1) {
        x[o + 4] = d11 * this.surface;
        x[o + 5] = -d10 * this.surface;
        break;
      }
      const u00 = U[k]!;
      const u01 = U[k + 1]!;
      const u10 = U[k + 2]!;
      const u11 = U[k + 3]!;
      g00 = d11 * u00 - d01 * u10;
      g01 = d11 * u01 - d01 * u11;
      g10 = d00 * u10 - d10 * u00;
      g11 = d00 * u11 - d10 * u01;
      G[k] = g00;
      G[k + 1] = g01;
      G[k + 2] = g10;
      G[k + 3] = g11;
    }
    for (let i = n - 2; i >= 0; i--) {
      const k = 4 * i;
      const o = 6 * i;
      const a = G[k]!;
      const b = G[k + 1]!;
      const c = G[k + 2]!;
      const d = G[k + 3]!;
      const up = o + 6;
      const c0Up = x[up]!;
      const c1Up = x[up + 1]!;
      const q0Up = x[up + 2]!;
      const q1Up = x[up + 3]!;
      const s0Up = x[up + 4]!;
      const s1Up = x[up + 5]!;
      x[o]! -= a * c0Up + b * c1Up;
      x[o + 1]! -= c * c0Up + d * c1Up;
      x[o + 2]! -= a * q0Up + b * q1Up;
      x[o + 3]! -= c * q0Up + d * q1Up;
      // Only the last cell touches the surface.
      x[o + 4] = -a * s0Up - b * s1Up;
      x[o + 5] = -c * s0Up - d * s1Up;
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
