/** Heat from surfaces to the air of the cavity, and back: natural convection on its faces. */
import { OutOfRange } from '../evening/problem.ts';
import { airDensity, readFilm } from '../materials/air.ts';
import type { AirFilm } from '../materials/air.ts';
import { gravity } from '../materials/constants.ts';

/*
 * Still air has a Nusselt number too. One face of a disc in resting air passes 4 k a (T - T_air), so with the
 * length A/P = a/2 Nu is 2/pi (Carslaw and Jaeger, Conduction of Heat in Solids, 8.2; place from memory). Joined as a fourth
 * power it changes h by less than 0.1 % at Ra 1e4 and keeps a solver from stalling where surface and air meet.
 */
const stillAir = 2 / Math.PI;
const stillAirFourth = stillAir ** 4;
const upFourth = 0.54 ** 4;
const downFourth = 0.27 ** 4;

/**
 * Nusselt number of a horizontal face that drives the air away from itself: hot face up or cold face down.
 *
 *     Nu = 0.54 Ra^(1/4) for Ra 1e4 to 1e7,   0.15 Ra^(1/3) for 1e7 to 1e11,   length A/P
 *
 * Below 1e4 the first is carried on into the limit of still air. At 1e7 the published pair jumps by 6 %; here
 * the second takes over linearly between 1e7 and 2e7. @param rayleigh 0 or more (not checked: hot loop)
 *
 * Source: McAdams 1954, Heat Transmission, as in Incropera and DeWitt, equations 9.30 and 9.31.
 */
export function nusseltUnstable(rayleigh: number): number {
  const laminar = Math.sqrt(Math.sqrt(upFourth * rayleigh + stillAirFourth));
  if (rayleigh <= 1e7) return laminar;
  const turbulent = 0.15 * Math.cbrt(rayleigh);
  if (rayleigh >= 2e7) return turbulent;
  return laminar + (rayleigh / 1e7 - 1) * (turbulent - laminar);
}

/**
 * Nusselt number of a horizontal face that the air rests against: hot face down or cold face up.
 *
 *     Nu = 0.27 Ra^(1/4) for Ra 1e5 to 1e10,   length A/P
 *
 * Below 1e5 carried on into the limit of still air. @param rayleigh 0 or more (not checked: hot loop)
 *
 * Source: McAdams 1954, as in Incropera and DeWitt, equation 9.32.
 */
export function nusseltStable(rayleigh: number): number {
  return Math.sqrt(Math.sqrt(downFourth * rayleigh + stillAirFourth));
}

/** (0.492/Pr)^(9/16), by square roots: x^(1/2) x^(1/16). */
function prandtlTerm(prandtl: number): number {
  const root = Math.sqrt(0.492 / prandtl);
  return root * Math.sqrt(Math.sqrt(Math.sqrt(root)));
}

/**
 * Nusselt number of a vertical face, all Ra, length = height:
 *
 *     Nu = { 0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27) }^2
 *
 * Source: Churchill and Chu 1975, Int J Heat Mass Transfer 18, 1323-1329, equation 9.
 */
export function nusseltVertical(rayleigh: number, prandtl: number): number {
  const bracket = Math.pow(1 + prandtlTerm(prandtl), 8 / 27);
  const root = 0.825 + (0.387 * Math.sqrt(Math.cbrt(rayleigh))) / bracket;
  return root * root;
}

/**
 * Nusselt number of a vertical face for Ra up to 1e9, length = height; nearer to measurements there:
 *
 *     Nu = 0.68 + 0.670 Ra^(1/4) / [1 + (0.492/Pr)^(9/16)]^(4/9)
 *
 * Source: Churchill and Chu 1975, as in Incropera and DeWitt, equation 9.27.
 */
export function nusseltVerticalLaminar(rayleigh: number, prandtl: number): number {
  const ninth = Math.cbrt(Math.cbrt(1 + prandtlTerm(prandtl)));
  const bracket = ninth * ninth * ninth * ninth;
  return 0.68 + (0.67 * Math.sqrt(Math.sqrt(rayleigh))) / bracket;
}

const film: AirFilm = { conductivity: 0, viscosity: 0, specificHeat: 0 };

/**
 * Rayleigh number, g beta |dT| L3 rho2 cp / (mu k) with beta = 1 / film temperature; reads the film on the way.
 *
 * @param length m
 */
function rayleighOf(surfaceT: number, airT: number, length: number, pressure: number): number {
  const filmT = (surfaceT + airT) / 2;
  readFilm(filmT, film);
  const density = airDensity(filmT, pressure);
  const cube = length * length * length;
  return (
    (gravity * Math.abs(surfaceT - airT) * cube * density * density * film.specificHeat) /
    (filmT * film.viscosity * film.conductivity)
  );
}

function checkLength(length: number): void {
  if (!(length > 0 && length < Infinity)) {
    throw new OutOfRange('characteristic length', `${length} m`, 'above 0 m');
  }
}

/**
 * Heat transfer coefficient of a horizontal face in still surroundings, W/(m2 K), air properties at the film
 * temperature. Continuous in all arguments and never 0.
 *
 * @param facing which way the face looks: hot up and cold down stir the air, hot down and cold up do not
 * @param surfaceT @param airT K, their mean between 250 K and 1000 K
 * @param characteristicLength area over perimeter, m; @param pressure Pa
 * @throws OutOfRange for each of these
 */
export function naturalConvectionHorizontal(
  facing: 'up' | 'down',
  surfaceT: number,
  airT: number,
  characteristicLength: number,
  pressure: number,
): number {
  checkLength(characteristicLength);
  const rayleigh = rayleighOf(surfaceT, airT, characteristicLength, pressure);
  const { conductivity } = film;
  const stirs = surfaceT > airT === (facing === 'up');
  const nusselt = stirs ? nusseltUnstable(rayleigh) : nusseltStable(rayleigh);
  return (nusselt * conductivity) / characteristicLength;
}

/**
 * Heat transfer coefficient of a vertical face in still surroundings, W/(m2 K): the laminar form of Churchill
 * and Chu up to Ra 1e9, the one for all Ra from 2e9, linear in Ra between (they are 25 % apart there).
 *
 * @param height m; other arguments, range and errors as {@link naturalConvectionHorizontal}
 */
export function naturalConvectionVertical(
  surfaceT: number,
  airT: number,
  height: number,
  pressure: number,
): number {
  checkLength(height);
  const rayleigh = rayleighOf(surfaceT, airT, height, pressure);
  const { conductivity } = film;
  const prandtl = (film.viscosity * film.specificHeat) / conductivity;
  if (rayleigh <= 1e9) return (nusseltVerticalLaminar(rayleigh, prandtl) * conductivity) / height;
  const turbulent = (nusseltVertical(rayleigh, prandtl) * conductivity) / height;
  if (rayleigh >= 2e9) return turbulent;
  const laminar = (nusseltVerticalLaminar(rayleigh, prandtl) * conductivity) / height;
  return laminar + (rayleigh / 1e9 - 1) * (turbulent - laminar);
}
