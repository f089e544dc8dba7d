/** View factors between rectangles with nothing in between: closed forms. */
import { OutOfRange } from '../evening/problem.ts';

/** A rectangle in its plane with edges along the axes, m. */
export interface Rectangle {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

function checkSpan(path: string, low: number, high: number): void {
  if (!(high > low && high - low < Infinity)) {
    throw new OutOfRange(path, `${low} m to ${high} m`, 'a length above 0 m');
  }
}

function checkRectangle(path: string, { x0, x1, y0, y1 }: Rectangle): void {
  checkSpan(`${path}.x`, x0, x1);
  checkSpan(`${path}.y`, y0, y1);
}

/**
 * The integral that parallel rectangles are made of, for lateral distances a and b and gap z, without the parts
 * that cancel in the alternating sum (a constant times ln z2), so that far apart rectangles keep their digits.
 */
function parallelCorner(a: number, b: number, z: number): number {
  const acrossB = Math.hypot(b, z);
  const acrossA = Math.hypot(a, z);
  return (
    a * acrossB * Math.atan(a / acrossB) +
    b * acrossA * Math.atan(b / acrossA) -
    0.5 * z * z * Math.log1p((a * a + b * b) / (z * z))
  );
}

/**
 * View factor from a rectangle to another in a parallel plane, edges parallel, anywhere:
 *
 *     A1 F12 = sum over the corners of (-1)^(i+j+k+l) G(xi, yj, nk, el)
 *
 * @param gap distance between the planes, m, above 0
 * @returns share of what leaves `from` that arrives at `to` with nothing in between, 0 to 1
 * @throws OutOfRange for a rectangle without area or a gap that is not above 0
 *
 * Source: Howell, A Catalog of Radiation Heat Transfer Configuration Factors, C-13 (C-12 in other editions).
 */
export function parallelRectangles(from: Rectangle, to: Rectangle, gap: number): number {
  checkRectangle('from', from);
  checkRectangle('to', to);
  checkSpan('gap', 0, gap);
  let sum = 0;
  for (let i = 0; i < 2; i++) {
    const x = i === 0 ? from.x0 : from.x1;
    for (let j = 0; j < 2; j++) {
      const y = j === 0 ? from.y0 : from.y1;
      for (let k = 0; k < 2; k++) {
        const a = y - (k === 0 ? to.y0 : to.y1);
        for (let l = 0; l < 2; l++) {
          const b = x - (l === 0 ? to.x0 : to.x1);
          const corner = parallelCorner(a, b, gap);
          sum += (i + j + k + l) % 2 === 0 ? corner : -corner;
        }
      }
    }
  }
  return sum / (2 * Math.PI * (from.x1 - from.x0) * (from.y1 - from.y0));
}

/** A rectangle beside the line in which its plane meets a perpendicular one, m. */
export interface Beside {
  /** along the line */
  readonly along0: number;
  readonly along1: number;
  /** distances of its two edges from the line, 0 or more */
  readonly near: number;
  readonly far: number;
}

function perpendicularCorner(along: number, from: number, to: number): number {
  const squared = from * from + to * to;
  // The line itself, seen from its own end: both terms tend to 0.
  if (squared === 0 && along === 0) return 0;
  const away = Math.sqrt(squared);
  const angle = away === 0 ? 0 : along * away * Math.atan(along / away);
  return angle - 0.25 * (squared - along * along) * Math.log(squared + along * along);
}

/**
 * View factor between rectangles in perpendicular planes, edges along and across the line where the planes meet,
 * anywhere beside it.
 *
 * @returns share of what leaves `from` that arrives at `to` with nothing in between, 0 to 1
 * @throws OutOfRange for a rectangle without area or across the line
 *
 * Source: Howell, A Catalog of Radiation Heat Transfer Configuration Factors, C-15 (number and form from memory;
 * checked against C-14, against closure and against integration).
 */
export function perpendicularAnywhere(from: Beside, to: Beside): number {
  checkBeside('from', from);
  checkBeside('to', to);
  let sum = 0;
  for (let i = 0; i < 2; i++) {
    const away = i === 0 ? from.near : from.far;
    for (let j = 0; j < 2; j++) {
      const y = j === 0 ? from.along0 : from.along1;
      for (let k = 0; k < 2; k++) {
        const n = k === 0 ? to.along0 : to.along1;
        for (let l = 0; l < 2; l++) {
          const corner = perpendicularCorner(y - n, away, l === 0 ? to.near : to.far);
          sum += (i + j + k + l) % 2 === 0 ? corner : -corner;
        }
      }
    }
  }
  return sum / (2 * Math.PI * (from.along1 - from.along0) * (from.far - from.near));
}

function checkBeside(path: string, { along0, along1, near, far }: Beside): void {
  checkSpan(`${path}.along`, along0, along1);
  if (!(near >= 0)) throw new OutOfRange(`${path}.near`, `${near} m`, '0 m or more');
  checkSpan(`${path}.away`, near, far);
}

/**
 * View factor between two rectangles at a right angle that share an edge.
 *
 * @param edge length of the common edge, m
 * @param fromDepth @param toDepth the other sides, m
 * @throws OutOfRange when a length is not above 0
 *
 * Source: Howell, catalogue as above, C-14.
 */
export function perpendicularRectangles(edge: number, fromDepth: number, toDepth: number): number {
  return perpendicularAnywhere(
    { along0: 0, along1: edge, near: 0, far: fromDepth },
    { along0: 0, along1: edge, near: 0, far: toDepth },
  );
}
