/*
 * Reference solutions that tests hold the solvers against. SI and kelvin; none of it is used by the product.
 * Main source: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed.; also in the heat transfer textbooks.
 */

/** erfc(x) exp(x2) for x >= 0, by its series below 2.5 and its continued fraction above. */
export function scaledErfc(x: number): number {
  if (!(x >= 0)) throw new RangeError(`scaledErfc: found ${x}; allowed 0 or more`);
  if (x < 2.5) return Math.exp(x * x) * (1 - erfSeries(x));
  // Abramowitz and Stegun 7.1.14, from the inside out.
  let fraction = x;
  for (let k = 60; k >= 1; k--) fraction = x + k / 2 / fraction;
  return 1 / (Math.sqrt(Math.PI) * fraction);
}

/** Abramowitz and Stegun 7.1.6. */
function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-18 * Math.abs(sum); n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** Complementary error function. */
export function erfc(x: number): number {
  return x < 0 ? 2 - erfc(-x) : scaledErfc(x) * Math.exp(-x * x);
}

/** Root number `index` (from 0) of z tan z = Bi, by halving: it lies between index pi and index pi + pi/2. */
export function planeWallRoot(biot: number, index: number): number {
  let low = index * Math.PI;
  let high = low + Math.PI / 2;
  for (let round = 0; round < 60; round++) {
    const z = (low + high) / 2;
    if (z * Math.sin(z) < biot * Math.cos(z) === (index % 2 === 0)) low = z;
    else high = z;
  }
  return (low + high) / 2;
}

/** First factor of the series for a root z: 4 sin z / (2 z + sin 2z). */
export function planeWallFactor(z: number): number {
  return (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z));
}

/**
 * (T - Tinf)/(Ti - Tinf) in a wall of half thickness L, convection on both faces (or one, the other insulated).
 *
 * @param biot h L / k; @param fourier alpha t / L2, above 0; @param place x/L from the middle, 0 to 1
 */
export function planeWall(biot: number, fourier: number, place: number): number {
  let sum = 0;
  for (let index = 0; index < 200; index++) {
    const z = planeWallRoot(biot, index);
    const decay = Math.exp(-z * z * fourier);
    if (decay < 1e-18) break;
    sum += planeWallFactor(z) * decay * Math.cos(z * place);
  }
  return sum;
}

/** A half-space: conductivity W/(m K), diffusivity m2/s, uniform at first, K. */
export interface HalfSpace {
  readonly conductivity: number;
  readonly diffusivity: number;
  readonly initial: number;
}

/** Temperature at depth and time when the surface is held at a temperature. */
export function heldSurface(space: HalfSpace, surface: number, depth: number, time: number): number {
  return surface + (space.initial - surface) * (1 - erfc(depth / (2 * Math.sqrt(space.diffusivity * time))));
}

/** Temperature at depth and time under a constant flux into the surface, W/m2. */
export function constantFlux(space: HalfSpace, flux: number, depth: number, time: number): number {
  const reach = Math.sqrt(space.diffusivity * time);
  const near =
    2 * reach * (Math.exp(-((depth / (2 * reach)) ** 2)) / Math.sqrt(Math.PI)) -
    depth * erfc(depth / (2 * reach));
  return space.initial + (flux / space.conductivity) * near;
}

/** Temperature at depth and time when a fluid convects to the surface with coefficient h, W/(m2 K). */
export function convectedSurface(
  space: HalfSpace,
  fluid: number,
  h: number,
  depth: number,
  time: number,
): number {
  const u = depth / (2 * Math.sqrt(space.diffusivity * time));
  const b = (h * Math.sqrt(space.diffusivity * time)) / space.conductivity;
  // erfc(u) - exp(h x/k + b2) erfc(u + b), the second as exp(-u2) times a scaled erfc so that nothing overflows.
  const share = erfc(u) - Math.exp(-u * u) * scaledErfc(u + b);
  return space.initial + (fluid - space.initial) * share;
}

/** Effusivity sqrt(k rho c), W s^0.5 / (m2 K). */
export function effusivity(conductivity: number, density: number, specificHeat: number): number {
  return Math.sqrt(conductivity * density * specificHeat);
}

/**
 * Two half-spaces of effusivities e1, e2, at first T1, T2, brought together at time 0 with a conductance H between
 * them. Form derived from Carslaw and Jaeger, 2.7 and 2.10; both limits (H to infinity, time to 0) are theirs.
 */
export function contact(
  e1: number,
  T1: number,
  e2: number,
  T2: number,
  conductance: number,
  time: number,
): { readonly face1: number; readonly face2: number; readonly flux: number } {
  const open = scaledErfc(conductance * (1 / e1 + 1 / e2) * Math.sqrt(time));
  const moved = ((T1 - T2) * (1 - open)) / (e1 + e2);
  return { face1: T1 - e2 * moved, face2: T2 + e1 * moved, flux: conductance * (T1 - T2) * open };
}

/** Temperature of a lump with one time constant. */
export function lumped(initial: number, surroundings: number, timeConstant: number, time: number): number {
  return surroundings + (initial - surroundings) * Math.exp(-time / timeConstant);
}

/** Time in which {@link lumped} reaches a temperature. */
export function lumpedTime(
  initial: number,
  surroundings: number,
  timeConstant: number,
  reached: number,
): number {
  return timeConstant * Math.log((initial - surroundings) / (reached - surroundings));
}

/**
 * Time in which a lump that only radiates reaches a temperature, s.
 *
 * @param areal rho c V/A, J/(m2 K); @param emissive eps sigma, W/(m2 K4); @param around of the surroundings, K
 */
export function radiatingTime(
  areal: number,
  emissive: number,
  initial: number,
  reached: number,
  around: number,
): number {
  const term = (T: number) => Math.log(Math.abs((around + T) / (around - T))) + 2 * Math.atan(T / around);
  return (areal / (4 * emissive * around ** 3)) * (term(reached) - term(initial));
}
