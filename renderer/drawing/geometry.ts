/** The front section of the oven in pixels: one scale for width and height, from the cavity's own measures. */
import type { Evening } from '../../physics/evening/evening.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface OvenGeometry {
  /** px per metre */
  readonly scale: number;
  readonly wall: number;
  readonly cavity: Box;
  readonly plate: Box;
  readonly pizza: Box;
  readonly width: number;
  readonly height: number;
  /** the height (0 floor, 1 ceiling) that a pixel row stands for */
  readonly heightAt: (y: number) => number;
  /** the pixel row of a height */
  readonly rowOf: (height: number) => number;
}

const rackNumbers = 14;

/** `pizzaThickness` in metres, as it lies at the moment shown. */
export function ovenGeometry(
  { oven, plate, pizzas }: Evening,
  room: { readonly width: number; readonly height: number; readonly labels: number },
  pizzaThickness: number,
): OvenGeometry {
  const wall = 8;
  const scale = Math.min(
    (room.width - room.labels - rackNumbers - 2 * wall) / oven.cavity.width,
    (room.height - 2 * wall) / oven.cavity.height,
  );
  const width = oven.cavity.width * scale;
  const height = oven.cavity.height * scale;
  const cavity = { x: rackNumbers + wall, y: wall, width, height };
  const rowOf = (share: number): number => cavity.y + height * (1 - share);
  const thickness = Math.max(2, plate.thickness * scale);
  const plateWidth = plate.width * scale;
  const underside = rowOf(plate.rackHeight);
  const pizzaHeight = Math.max(3, pizzaThickness * scale);
  const pizzaWidth = pizzas.diameter * scale;
  const middle = cavity.x + width / 2;
  return {
    scale,
    wall,
    cavity,
    plate: { x: middle - plateWidth / 2, y: underside - thickness, width: plateWidth, height: thickness },
    pizza: {
      x: middle - pizzaWidth / 2,
      y: underside - thickness - pizzaHeight,
      width: pizzaWidth,
      height: pizzaHeight,
    },
    width: cavity.x + width + wall,
    height: height + 2 * wall,
    heightAt: (y) => (cavity.y + height - y) / height,
    rowOf,
  };
}
