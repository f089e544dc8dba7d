/** Thermal properties of food from its composition. */
import { OutOfRange } from '../evening/problem.ts';
import { zeroCelsius } from './constants.ts';

export const foodComponents = ['water', 'protein', 'fat', 'carbohydrate', 'fibre', 'ash'] as const;
export type FoodComponent = (typeof foodComponents)[number];

/** Mass fractions of the whole, adding up to 1. */
export type Composition = Readonly<Record<FoodComponent, number>>;

export interface FoodProperties {
  /** kg/m3, without air */
  readonly density: number;
  /** J/(kg K) */
  readonly specificHeat: number;
  /** W/(m K), the most that the components can conduct: side by side */
  readonly conductivityParallel: number;
  /** W/(m K), the least: one behind the other */
  readonly conductivitySeries: number;
}

/** a + b t + c t2 with t in degC */
type Quadratic = readonly [a: number, b: number, c: number];

/*
 * Choi and Okos 1986, Effects of temperature and composition on the thermal properties of foods, in Le Maguer
 * and Jelen (eds), Food Engineering and Process Applications 1, 93-101; read in reprints that agree, with one
 * exception. The specific heat of water: several copies, after the ASHRAE Handbook - Refrigeration 2006, begin
 * with 4.1289, which lies 1.0 to 1.3 % below the steam tables between 20 and 100 degC. 4.1762 lies within
 * 0.25 % of them and stands in the older reprints, so it is used.
 */
const rows: Readonly<
  Record<FoodComponent, Readonly<Record<'density' | 'heat' | 'conductivity', Quadratic>>>
> = {
  water: {
    density: [997.18, 3.1439e-3, -3.7574e-3],
    heat: [4176.2, -9.0864e-2, 5.4731e-3],
    conductivity: [0.57109, 1.7625e-3, -6.7036e-6],
  },
  protein: {
    density: [1329.9, -0.5184, 0],
    heat: [2008.2, 1.2089, -1.3129e-3],
    conductivity: [0.17881, 1.1958e-3, -2.7178e-6],
  },
  fat: {
    density: [925.59, -0.41757, 0],
    heat: [1984.2, 1.4733, -4.8008e-3],
    // Two copies print the slope ten times too steep or with a plus: the conductivity of fat falls slowly.
    conductivity: [0.18071, -2.7604e-4, -1.7749e-7],
  },
  carbohydrate: {
    density: [1599.1, -0.31046, 0],
    heat: [1548.8, 1.9625, -5.9399e-3],
    conductivity: [0.20141, 1.3874e-3, -4.3312e-6],
  },
  fibre: {
    density: [1311.5, -0.36589, 0],
    heat: [1845.9, 1.8306, -4.6509e-3],
    conductivity: [0.18331, 1.2497e-3, -3.1683e-6],
  },
  ash: {
    density: [2423.8, -0.28063, 0],
    heat: [1092.6, 1.8896, -3.6817e-3],
    conductivity: [0.32962, 1.4011e-3, -2.9069e-6],
  },
};

const coldest = zeroCelsius;
const endOfFit = 423.15;
const hottest = 873.15;

function fitTemperature(temperature: number): number {
  if (!(temperature >= coldest && temperature <= hottest)) {
    throw new OutOfRange('food temperature', `${temperature} K`, `${coldest} K to ${hottest} K`);
  }
  return Math.min(temperature, endOfFit) - zeroCelsius;
}

function evaluate([a, b, c]: Quadratic, t: number): number {
  return a + (b + c * t) * t;
}

/**
 * Density (kg/m3), specific heat (J/(kg K)) and conductivity (W/(m K)) of one component.
 *
 * @param temperature K. The fits hold to 423.15 K (150 degC); a dry crust gets hotter, so from there to
 *   873.15 K the value at 423.15 K is kept: the quadratics turn over soon after and would say nothing.
 * @throws OutOfRange below 273.15 K or above 873.15 K, NaN included
 *
 * Source: Choi and Okos 1986.
 */
export function componentProperties(
  component: FoodComponent,
  temperature: number,
): { readonly density: number; readonly specificHeat: number; readonly conductivity: number } {
  const t = fitTemperature(temperature);
  const row = rows[component];
  return {
    density: evaluate(row.density, t),
    specificHeat: evaluate(row.heat, t),
    conductivity: evaluate(row.conductivity, t),
  };
}

/**
 * Properties of a compact mixture (no air) from its composition:
 *
 *     1/rho = sum X/rho_i,  c = sum X c_i,  phi_i = (X_i/rho_i) rho,
 *     k parallel = sum phi_i k_i,  k series = 1 / sum (phi_i/k_i)
 *
 * @param composition mass fractions, each 0 to 1, adding up to 1 within 1e-6
 * @param temperature K, 273.15 K to 873.15 K; above 423.15 K as in {@link componentProperties}
 * @throws OutOfRange for either
 *
 * Source: Choi and Okos 1986. Use k/(rho c) for the diffusivity, not the published alpha polynomials: those
 * are fits of their own and differ by up to 16 %, and energy would not close.
 */
export function mixtureProperties(composition: Composition, temperature: number): FoodProperties {
  const t = fitTemperature(temperature);
  let total = 0;
  let volume = 0;
  let heat = 0;
  let parallel = 0;
  let series = 0;
  for (const component of foodComponents) {
    const share = composition[component];
    if (!(share >= 0 && share <= 1)) {
      throw new OutOfRange(`composition.${component}`, String(share), '0 to 1');
    }
    const row = rows[component];
    const part = share / evaluate(row.density, t);
    const conductivity = evaluate(row.conductivity, t);
    total += share;
    volume += part;
    heat += share * evaluate(row.heat, t);
    parallel += part * conductivity;
    series += part / conductivity;
  }
  if (!(Math.abs(total - 1) <= 1e-6)) {
    throw new OutOfRange('composition', `mass fractions adding up to ${total.toPrecision(6)}`, 'a sum of 1');
  }
  return {
    density: total / volume,
    specificHeat: heat,
    conductivityParallel: parallel / volume,
    conductivitySeries: volume / series,
  };
}
