/** Dough, sauce and cheese by the area of a pizza. SI: m, kg, kg/m2. */
import { OutOfRange } from '../evening/problem.ts';

/**
 * m of rim left bare all round: half an inch, as pizzerias do (PMQ Think Tank: 12 in leave 95 in2 topped, 10 in 64);
 * Reg. (EU) 97/2010 wants a rim of 1 to 2 cm.
 */
const bareRim = 0.0127;

/** kg/m2 in one oz/in2. */
export const ouncePerSquareInch = 0.45359237 / 16 / 0.0254 ** 2;

function checkDiameter(diameter: number): void {
  if (!(diameter > 0 && Number.isFinite(diameter)))
    throw new OutOfRange('pizzas.diameter', `${diameter} m`, 'a finite diameter above 0 m');
}

/** m2 of a pizza, pi d2/4. @throws OutOfRange for a diameter not above 0 */
export function pizzaArea(diameter: number): number {
  checkDiameter(diameter);
  return (Math.PI / 4) * diameter ** 2;
}

/** m2 that sauce and cheese cover. @throws OutOfRange for a pizza that would be all rim */
export function toppedArea(diameter: number): number {
  const inner = diameter - 2 * bareRim;
  if (!(inner > 0))
    throw new OutOfRange('pizzas.diameter', `${diameter} m`, `more than two rims, ${2 * bareRim} m`);
  return pizzaArea(inner);
}
