/** View factors of the cavity: its walls, and the plate that stands between them and throws its shadow. */
import { OutOfRange } from '../evening/problem.ts';
import { remembering } from '../numerics/remembering.ts';
import { boxFaces, sight, type Box, type Quad, type Sight } from './shadow.ts';
import { parallelRectangles, perpendicularAnywhere, perpendicularRectangles } from './viewFactors.ts';

/** Surfaces of the cavity, in the order of every matrix of view factors; the last three only with a plate. */
export const cavitySurfaces = [
  'floor',
  'ceiling',
  'sides',
  'door',
  'plateUnder',
  'plateTop',
  'plateEdge',
] as const;
export type CavitySurface = (typeof cavitySurfaces)[number];

export interface CavityGeometry {
  /** inner width, depth (front to back) and height, m */
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** lies in the middle, its underside `underside` m above the floor */
  readonly plate:
    | {
        readonly width: number;
        readonly depth: number;
        readonly thickness: number;
        readonly underside: number;
      }
    | undefined;
}

export interface CavityViewFactors {
  /** of {@link cavitySurfaces} all seven, or the first four without a plate */
  readonly names: readonly CavitySurface[];
  /** m2; `sides` is left, right and back together, `door` the whole front */
  readonly areas: Float64Array;
  /** row-major F_ij */
  readonly factors: Float64Array;
}

const FLOOR = 0;
const CEILING = 1;
const SIDES = 2;
const DOOR = 3;
const UNDER = 4;
const TOP = 5;
const EDGE = 6;
const walls = 4;

/** Points across each panel of a wall; with four times as many no factor of the reference oven moves by 2e-4. */
const points = 6;

function check(g: CavityGeometry): void {
  for (const field of ['width', 'depth', 'height'] as const) {
    if (!(g[field] > 0 && g[field] < Infinity)) {
      throw new OutOfRange(`cavity.${field}`, `${g[field]} m`, 'above 0 m');
    }
  }
  if (g.plate === undefined) return;
  const { width, depth, thickness, underside } = g.plate;
  for (const [field, value, limit] of [
    ['width', width, g.width],
    ['depth', depth, g.depth],
    ['underside', underside, g.height],
    ['thickness', thickness, g.height - underside],
  ] as const) {
    if (!(value > 0 && value < limit)) {
      throw new OutOfRange(`plate.${field}`, `${value} m`, `above 0 m and below ${limit} m of the cavity`);
    }
  }
}

/**
 * Areas times view factors between the four walls past the plate. A pair that the plate cannot come between keeps
 * its closed form; every other is the closed form times the share that stays visible, by a Gauss rule over points
 * of one wall and the exact view past the box from each.
 */
function wallExchange(g: CavityGeometry, box: Box | undefined): Float64Array {
  const { width: w, depth: d, height: h } = g;
  const [floor, ceiling, left, right, front, back] = [0, 1, 2, 3, 4, 5] as const;
  const cavity = boxFaces({ low: [0, 0, 0], high: [w, d, h] });
  const quads: readonly Quad[] = [cavity[4]!, cavity[5]!, cavity[0]!, cavity[1]!, cavity[2]!, cavity[3]!];
  const faces = box === undefined ? [] : boxFaces(box);
  const flat = (x1: number, y1: number, gap: number) => {
    const whole = { x0: 0, x1, y0: 0, y1 };
    return x1 * y1 * parallelRectangles(whole, whole, gap);
  };
  const shared = (edge: number, from: number, to: number) =>
    edge * from * perpendicularRectangles(edge, from, to);
  const past = (from: number, to: number, open: number) =>
    box === undefined ? open : open * visibleShare(g, from, to, quads[to]!, box, faces);

  const floorCeiling = past(floor, ceiling, flat(w, d, h));
  const floorLeft = past(floor, left, shared(d, w, h));
  const floorFront = past(floor, front, shared(w, d, h));
  const ceilingLeft = past(ceiling, left, shared(d, w, h));
  const ceilingFront = past(ceiling, front, shared(w, d, h));
  const frontLeft = past(front, left, shared(h, w, d));
  const frontBack = past(front, back, flat(w, h, d));
  const leftRight = past(left, right, flat(d, h, w));

  // The plate lies in the middle: right is as left, back as front.
  const exchange = new Float64Array(walls * walls);
  const set = (i: number, j: number, value: number) => {
    exchange[i * walls + j] = value;
    exchange[j * walls + i] = value;
  };
  set(FLOOR, CEILING, floorCeiling);
  set(FLOOR, SIDES, 2 * floorLeft + floorFront);
  set(FLOOR, DOOR, floorFront);
  set(CEILING, SIDES, 2 * ceilingLeft + ceilingFront);
  set(CEILING, DOOR, ceilingFront);
  set(DOOR, SIDES, 2 * frontLeft + frontBack);
  set(SIDES, SIDES, 2 * leftRight + 4 * frontLeft);
  return exchange;
}

interface Node {
  readonly at: number;
  readonly weight: number;
}

/** Gauss-Legendre rule on 0..1 by Newton steps on the Legendre polynomial (Press et al., Numerical Recipes, 4.5). */
function gaussRule(count: number): readonly Node[] {
  return Array.from({ length: count }, (_, index) => {
    let x = Math.cos((Math.PI * (index + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let round = 0; round < 8; round++) {
      let value = 1;
      let before = 0;
      for (let degree = 1; degree <= count; degree++) {
        [value, before] = [((2 * degree - 1) * x * value - (degree - 1) * before) / degree, value];
      }
      slope = (count * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    return { at: (1 - x) / 2, weight: 1 / ((1 - x * x) * slope * slope) };
  });
}
const rule = gaussRule(points);

/** The rule on each panel between cuts. */
function panels(...cuts: readonly number[]): readonly Node[] {
  return cuts.slice(1).flatMap((end, index) => {
    const start = cuts[index]!;
    return rule.map(({ at, weight }) => ({
      at: start + at * (end - start),
      weight: weight * (end - start),
    }));
  });
}

/**
 * Share of a wall's view of another that the box leaves open. Walls: floor, ceiling, left, right, front, back.
 * Panels end where another face of the box comes into view; where wall and target mirror in the cavity's middle,
 * half the wall stands for all.
 */
function visibleShare(
  g: CavityGeometry,
  from: number,
  to: number,
  target: Quad,
  box: Box,
  faces: readonly Quad[],
): number {
  const size = [g.width, g.depth, g.height] as const;
  const across = axisOf(from);
  const first = across === 0 ? 1 : 0;
  const second = across === 2 ? 1 : 2;
  const cut = (axis: 0 | 1 | 2): readonly Node[] => {
    const low = box.low[axis];
    const high = box.high[axis];
    if (axis === 2) return panels(0, (low + high) / 2, size[2]);
    if (axis !== axisOf(to)) return panels(0, low, size[axis] / 2);
    return panels(0, low, high, size[axis]);
  };
  const normal: [number, number, number] = [0, 0, 0];
  normal[across] = from % 2 === 0 ? 1 : -1;
  const point: [number, number, number] = [0, 0, 0];
  point[across] = from % 2 === 0 ? 0 : size[across];
  const seen: Sight = { free: 0, past: 0 };
  let free = 0;
  let past = 0;
  const inner = cut(second);
  for (const u of cut(first)) {
    point[first] = u.at;
    for (const v of inner) {
      point[second] = v.at;
      sight(point[0], point[1], point[2], normal, target, box, faces, seen);
      free += u.weight * v.weight * seen.free;
      past += u.weight * v.weight * seen.past;
    }
  }
  return past / free;
}

function axisOf(wall: number): 0 | 1 | 2 {
  return wall < 2 ? 2 : wall < 4 ? 0 : 1;
}

/**
 * An exchange area (m2) cut to 0..most. The closed forms are differences of far larger terms: for a
 * plate a hair wide or a hair under the ceiling their rounding can lie outside. More would be a fault of ours.
 */
function bounded(exchange: number, most: number): number {
  const cut = Math.min(Math.max(exchange, 0), most);
  if (!(Math.abs(exchange - cut) < 1e-12)) {
    throw new Error(`view factors: found an exchange area of ${exchange} m2; allowed 0 to ${most} m2`);
  }
  return cut;
}

/**
 * Areas times view factors from the plate: exact, since no face of a convex plate has the plate in its way.
 * Rows UNDER, TOP, EDGE; columns the four walls.
 */
function plateExchange(g: CavityGeometry, plate: NonNullable<CavityGeometry['plate']>): Float64Array {
  const { width: w, depth: d, height: h } = g;
  const low = plate.underside;
  const above = h - low - plate.thickness;
  const besideX = (w - plate.width) / 2;
  const besideY = (d - plate.depth) / 2;
  const area = plate.width * plate.depth;
  const floor = { x0: 0, x1: w, y0: 0, y1: d };
  const face = { x0: besideX, x1: w - besideX, y0: besideY, y1: d - besideY };
  const exchange = new Float64Array(3 * walls);
  const under = bounded(area * parallelRectangles(face, floor, low), area);
  const top = bounded(area * parallelRectangles(face, floor, above), area);
  // Along the door's lower or upper edge: the face lies besideY off it, the wall reaches from it to the plate's plane.
  const across = { along0: besideX, along1: w - besideX, near: besideY, far: d - besideY };
  const toDoor = (far: number) =>
    area * perpendicularAnywhere(across, { along0: 0, along1: w, near: 0, far });
  const underDoor = bounded(toDoor(low), area - under);
  const topDoor = bounded(toDoor(above), area - top);
  exchange.set([under, 0, area - under - underDoor, underDoor], 0);
  exchange.set([0, top, area - top - topDoor, topDoor], walls);

  const edgeX = plate.depth * plate.thickness;
  const edgeY = plate.width * plate.thickness;
  const toFlat = (gap: number): number => {
    const x = { along0: besideY, along1: d - besideY, near: gap, far: gap + plate.thickness };
    const y = { along0: besideX, along1: w - besideX, near: gap, far: gap + plate.thickness };
    return (
      2 * edgeX * perpendicularAnywhere(x, { along0: 0, along1: d, near: 0, far: besideX }) +
      2 * edgeY * perpendicularAnywhere(y, { along0: 0, along1: w, near: 0, far: besideY })
    );
  };
  const edge = 2 * (edgeX + edgeY);
  const edgeFloor = bounded(toFlat(low), edge);
  const edgeCeiling = bounded(toFlat(above), edge - edgeFloor);
  const toFront =
    edgeY *
      parallelRectangles(
        { x0: besideX, x1: w - besideX, y0: low, y1: low + plate.thickness },
        { x0: 0, x1: w, y0: 0, y1: h },
        besideY,
      ) +
    2 *
      edgeX *
      perpendicularAnywhere(
        { along0: low, along1: low + plate.thickness, near: besideY, far: d - besideY },
        { along0: 0, along1: h, near: 0, far: besideX },
      );
  const edgeDoor = bounded(toFront, edge - edgeFloor - edgeCeiling);
  exchange.set([edgeFloor, edgeCeiling, edge - edgeFloor - edgeCeiling - edgeDoor, edgeDoor], 2 * walls);
  return exchange;
}

/**
 * Scales a symmetric matrix of exchange areas to given row sums, x_i x_j E_ij, so that rows close and pairs stay
 * equal and no entry turns negative. The sums differ by the error of the Gauss rule only, so x is near 1.
 *
 * Source: symmetric form of Sinkhorn's iteration (Knight and Ruiz 2013, IMA J Numer Anal 33, 1029-1047).
 */
function closeRows(exchange: Float64Array, sums: readonly number[]): void {
  const n = sums.length;
  for (let round = 0; round < 500; round++) {
    const scale: number[] = [];
    let worst = 0;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += exchange[i * n + j]!;
      scale.push(Math.sqrt(sums[i]! / sum));
      worst = Math.max(worst, Math.abs(sum / sums[i]! - 1));
    }
    if (worst < 1e-13) return;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) exchange[i * n + j]! *= scale[i]! * scale[j]!;
  }
  throw new Error(
    'view factors: found rows that do not close after 500 rounds; allowed rows closing to 1e-13',
  );
}

/**
 * View factors of an oven's cavity with a plate in its middle. The plate shades floor from ceiling and the walls
 * from each other; that is integrated (a share of areas would let through more than twice what does pass).
 *
 * @returns rows adding up to 1 and A_i F_ij = A_j F_ji, both to rounding; no factor is negative. Between plate and
 *   walls exact; between walls within about 3e-3 of the factor (floor to ceiling of the reference oven: 2.8e-3)
 * @throws OutOfRange for a length that is not above 0 or a plate that touches or passes the cavity's walls
 */
export const cavityViewFactors = remembering(integrated, ({ width, depth, height, plate }: CavityGeometry) =>
  [width, depth, height, plate?.width, plate?.depth, plate?.thickness, plate?.underside].join(' '),
);

function integrated(g: CavityGeometry): CavityViewFactors {
  check(g);
  const { width: w, depth: d, height: h, plate } = g;
  const wallAreas = [w * d, w * d, 2 * d * h + w * h, w * h];
  if (plate === undefined) {
    const exchange = wallExchange(g, undefined);
    closeRows(exchange, wallAreas);
    return assemble(cavitySurfaces.slice(0, walls), wallAreas, exchange);
  }
  const x = (w - plate.width) / 2;
  const y = (d - plate.depth) / 2;
  const box: Box = {
    low: [x, y, plate.underside],
    high: [w - x, d - y, plate.underside + plate.thickness],
  };
  const between = wallExchange(g, box);
  const fromPlate = plateExchange(g, plate);
  closeRows(
    between,
    wallAreas.map(
      (area, wall) => area - fromPlate[wall]! - fromPlate[walls + wall]! - fromPlate[2 * walls + wall]!,
    ),
  );
  const n = cavitySurfaces.length;
  const exchange = new Float64Array(n * n);
  for (let i = 0; i < walls; i++) {
    for (let j = 0; j < walls; j++) exchange[i * n + j] = between[i * walls + j]!;
    for (const [row, surface] of [UNDER, TOP, EDGE].entries()) {
      exchange[surface * n + i] = fromPlate[row * walls + i]!;
      exchange[i * n + surface] = fromPlate[row * walls + i]!;
    }
  }
  const face = plate.width * plate.depth;
  const edge = 2 * (plate.width + plate.depth) * plate.thickness;
  return assemble(cavitySurfaces, [...wallAreas, face, face, edge], exchange);
}

function assemble(
  names: readonly CavitySurface[],
  areas: readonly number[],
  exchange: Float64Array,
): CavityViewFactors {
  const n = areas.length;
  return {
    names,
    areas: Float64Array.from(areas),
    factors: exchange.map((value, index) => value / areas[Math.floor(index / n)]!),
  };
}
