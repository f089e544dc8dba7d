/**
 * The shape of a plate. The enclosure knows rectangles only, so a round plate is taken as the square of the same area,
 * concentric and parallel to the walls: its mass, faces and time constant are exact; its edge is 13 % longer than the
 * circle's (the edge is a twentieth of both faces); what it sees of the walls differs by less than the gap between the
 * circle and the square, 11 % of the radius at most, and the view factor of two coaxial faces by a few thousandths.
 */
export interface PlateShape {
  readonly shape: 'rectangular' | 'round';
  /** m; both the diameter of a round plate */
  readonly width: number;
  readonly depth: number;
}

/** Side of the square that has the area of a circle of diameter 1. */
const equalSide = Math.sqrt(Math.PI) / 2;

/** Area of one face, m2. */
export function plateArea({ shape, width, depth }: PlateShape): number {
  return shape === 'round' ? (Math.PI / 4) * width * width : width * depth;
}

/** Sides of the rectangle that stands for the plate in the enclosure, m. */
export function enclosureSides({ shape, width, depth }: PlateShape): {
  readonly width: number;
  readonly depth: number;
} {
  return shape === 'round' ? { width: equalSide * width, depth: equalSide * width } : { width, depth };
}

/** Perimeter of the plate itself, m. */
export function platePerimeter({ shape, width, depth }: PlateShape): number {
  return shape === 'round' ? Math.PI * width : 2 * (width + depth);
}
