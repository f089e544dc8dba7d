/*
 * How much of a wall a point sees past a box: what the point would see without the box, less the view of the
 * box's visible faces inside the cone that the wall spans at the point. Both are view factors of polygons
 * (Lambert's contour rule), so no ray is cast and the answer is exact for the point.
 */

/** Axis-aligned box, m. */
export interface Box {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/** Corners of a flat convex quadrilateral in order, x y z each. */
export type Quad = readonly number[];

const most = 12;
let vertices = new Float64Array(3 * most);
let clipped = new Float64Array(3 * most);

/**
 * View factor from a point with unit normal n to the polygon in `vertices` (relative to the point), either way
 * round: (1/2 pi) abs sum of angle_i n . (r_i x r_i+1) / |r_i x r_i+1|.
 *
 * Source: Lambert's rule, e.g. Howell, Menguc, Daun, Siegel, Thermal Radiation Heat Transfer, contour integration.
 */
function contour(count: number, nx: number, ny: number, nz: number): number {
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const a = 3 * i;
    const b = i + 1 < count ? a + 3 : 0;
    const ax = vertices[a]!;
    const ay = vertices[a + 1]!;
    const az = vertices[a + 2]!;
    const bx = vertices[b]!;
    const by = vertices[b + 1]!;
    const bz = vertices[b + 2]!;
    const cx = ay * bz - az * by;
    const cy = az * bx - ax * bz;
    const cz = ax * by - ay * bx;
    const size = Math.sqrt(cx * cx + cy * cy + cz * cz);
    // Two neighbours in one direction span no angle.
    if (size === 0) continue;
    const angle = Math.atan2(size, ax * bx + ay * by + az * bz);
    sum += (angle * (nx * cx + ny * cy + nz * cz)) / size;
  }
  return Math.abs(sum) / (2 * Math.PI);
}

/** Keeps of the polygon in `vertices` what lies on the side of a plane through the point; returns the new count. */
function clip(count: number, px: number, py: number, pz: number): number {
  let kept = 0;
  for (let i = 0; i < count; i++) {
    const a = 3 * i;
    const b = i + 1 < count ? a + 3 : 0;
    const here = px * vertices[a]! + py * vertices[a + 1]! + pz * vertices[a + 2]!;
    const next = px * vertices[b]! + py * vertices[b + 1]! + pz * vertices[b + 2]!;
    if (here >= 0) {
      clipped[3 * kept] = vertices[a]!;
      clipped[3 * kept + 1] = vertices[a + 1]!;
      clipped[3 * kept + 2] = vertices[a + 2]!;
      kept++;
    }
    if (here >= 0 !== next >= 0) {
      const share = here / (here - next);
      clipped[3 * kept] = vertices[a]! + share * (vertices[b]! - vertices[a]!);
      clipped[3 * kept + 1] = vertices[a + 1]! + share * (vertices[b + 1]! - vertices[a + 1]!);
      clipped[3 * kept + 2] = vertices[a + 2]! + share * (vertices[b + 2]! - vertices[a + 2]!);
      kept++;
    }
  }
  const swap = vertices;
  vertices = clipped;
  clipped = swap;
  return kept;
}

function place(quad: Quad, x: number, y: number, z: number): void {
  for (let i = 0; i < 4; i++) {
    vertices[3 * i] = quad[3 * i]! - x;
    vertices[3 * i + 1] = quad[3 * i + 1]! - y;
    vertices[3 * i + 2] = quad[3 * i + 2]! - z;
  }
}

/** The six faces of a box in the order low x, high x, low y, high y, low z, high z. */
export function boxFaces({ low: [x0, y0, z0], high: [x1, y1, z1] }: Box): readonly Quad[] {
  return [
    [x0, y0, z0, x0, y1, z0, x0, y1, z1, x0, y0, z1],
    [x1, y0, z0, x1, y1, z0, x1, y1, z1, x1, y0, z1],
    [x0, y0, z0, x1, y0, z0, x1, y0, z1, x0, y0, z1],
    [x0, y1, z0, x1, y1, z0, x1, y1, z1, x0, y1, z1],
    [x0, y0, z0, x1, y0, z0, x1, y1, z0, x0, y1, z0],
    [x0, y0, z1, x1, y0, z1, x1, y1, z1, x0, y1, z1],
  ];
}

const planes = new Float64Array(12);

/** Planes through the point and the edges of a quad, pointing into the cone. */
function setCone(quad: Quad, x: number, y: number, z: number): void {
  place(quad, x, y, z);
  for (let i = 0; i < 4; i++) {
    const a = 3 * i;
    const b = i < 3 ? a + 3 : 0;
    const c = b < 9 ? b + 3 : 0;
    const px = vertices[a + 1]! * vertices[b + 2]! - vertices[a + 2]! * vertices[b + 1]!;
    const py = vertices[a + 2]! * vertices[b]! - vertices[a]! * vertices[b + 2]!;
    const pz = vertices[a]! * vertices[b + 1]! - vertices[a + 1]! * vertices[b]!;
    const inward = px * vertices[c]! + py * vertices[c + 1]! + pz * vertices[c + 2]! >= 0 ? 1 : -1;
    planes[a] = inward * px;
    planes[a + 1] = inward * py;
    planes[a + 2] = inward * pz;
  }
}

export interface Sight {
  /** view factor from the point to the target with nothing in between */
  free: number;
  /** and past the box */
  past: number;
}

/**
 * What a point of a wall sees of another wall, without and past a box between them.
 *
 * @param x @param y @param z the point, m, outside the box; @param normal its unit normal
 * @param target a wall wholly in front of the point; @param faces of the box by {@link boxFaces}
 * @param out receives the result, so that a sum over many points makes no garbage
 */
export function sight(
  x: number,
  y: number,
  z: number,
  normal: readonly [number, number, number],
  target: Quad,
  box: Box,
  faces: readonly Quad[],
  out: Sight,
): void {
  const [nx, ny, nz] = normal;
  setCone(target, x, y, z);
  out.free = contour(4, nx, ny, nz);
  let blocked = 0;
  for (let face = 0; face < 6; face++) {
    const axis = face >> 1;
    const at = axis === 0 ? x : axis === 1 ? y : z;
    const visible = face % 2 === 0 ? at < box.low[axis]! : at > box.high[axis]!;
    if (!visible) continue;
    place(faces[face]!, x, y, z);
    let count = 4;
    for (let i = 0; i < 12 && count > 2; i += 3) {
      count = clip(count, planes[i]!, planes[i + 1]!, planes[i + 2]!);
    }
    if (count > 2) blocked += contour(count, nx, ny, nz);
  }
  // The blocked part lies inside the target's cone: only rounding can carry it past the whole.
  out.past = Math.max(out.free - blocked, 0);
}
