/**
 * Properties of one cell of dough, sauce or cheese as functions of its temperature and water: sorption, the state of
 * the vapour in its pores, and conductivity.
 */
import { gasConstant, molarMassWater, standardPressure } from '../materials/constants.ts';
import { saturationPressure, waterVapourDiffusivity } from '../materials/water.ts';

/** What a layer is made of, besides its water. */
export interface LayerMaterial {
  readonly name: 'dough' | 'sauce' | 'cheese';
  /** J/(kg K) of the dry matter */
  readonly solidsHeat: number;
  /** kg/m3 of the dry matter without pores */
  readonly solidsDensity: number;
  /** volume share of gas */
  readonly porosity: number;
  /** W/(m K) of the compact dry matter at 0 degC, and its slope per K (Choi and Okos 1986, linear over 0..150 degC) */
  readonly solidsConductivity: number;
  readonly solidsConductivitySlope: number;
  /** kg/kg dry matter at which the water activity is one half at 100 degC */
  readonly halfMoisture: number;
  /** share of free diffusion left to vapour in the layer */
  readonly vapourShare: number;
  /** factor on the conductivity of the dried, gas-filled structure */
  readonly dryConductivityFactor: number;
  /** stays a continuous phase with bubbles however dry it gets: a switched-off effect */
  readonly neverSponge?: boolean;
}

/** J/(kg K) of water and of steam such that latentHeat = 2501 - 2.42 t kJ/kg, within 3 kJ/kg of IAPWS-IF97, 20..100. */
export const waterHeat = 4186;
export const steamHeat = waterHeat - 2420;
const steamEnthalpyAtZero = 2.501e6;

/** J/kg of steam above water at 0 degC, at `temperature` K. */
export function steamEnthalpy(temperature: number): number {
  return steamEnthalpyAtZero + steamHeat * (temperature - 273.15);
}

/** kg/m3, near 80 degC */
const waterDensity = 970;

/* Sorption: Oswin's form, W = W_half (a/(1 - a))^n. */
const oswinExponent = 0.38;
const oswinSlope = 0.0056;

/**
 * Water activity of dry matter holding W kg/kg at T kelvin (Oswin):
 *
 *     a = 1/(1 + (W/W_half)^(-1/n)),   W_half(T) = W_half(373.15) exp(-0.0056 (T - 373.15)),   n = 0.38
 *
 * Form, exponent and slope as in Lind and Rask, J. Food Eng. 14 (1991) 303-315 (from memory). Their level as it
 * circulates, W_half = exp(5.5 - 0.0056 T)/100, would put fresh dough (W 0.7) at activity 0.75 and flour of 14 %
 * moisture at 0.06; flour at 14 % moisture is near 0.65 to 0.7 (from memory). So the level is ours: W_half =
 * 0.072 at 100 degC (0.11 at 25 degC) for dough.
 */
export function waterActivity(moisture: number, temperature: number, halfMoisture: number): number {
  if (moisture <= 0) return 0;
  const logarithm = Math.log(moisture / halfMoisture) + oswinSlope * (temperature - 373.15);
  return 1 / (1 + Math.exp(-logarithm / oswinExponent));
}

/** da/dW and da/dT of `waterActivity`, given the activity. */
export const activitySlopes = {
  perMoisture: (activity: number, moisture: number): number =>
    moisture > 0 ? (activity * (1 - activity)) / (oswinExponent * moisture) : 0,
  perKelvin: (activity: number): number => (activity * (1 - activity) * oswinSlope) / oswinExponent,
};

const tableStart = 230;
const tableEnd = 640;
const tableStep = 0.25;
const perTableStep = 1 / tableStep;
const tableSize = (tableEnd - tableStart) / tableStep + 1;
const saturationTable = Float64Array.from({ length: tableSize }, (_, i) =>
  // Below freezing the pressure over supercooled water is continued by Clausius and Clapeyron.
  saturationPressureOrBelow(tableStart + i * tableStep),
);
/** (W_half(T)/W_half(373.15))^(1/n) of Oswin's form */
const oswinShift = Float64Array.from({ length: tableSize }, (_, i) =>
  Math.exp((-oswinSlope * (tableStart + i * tableStep - 373.15)) / oswinExponent),
);
const freeDiffusion = Float64Array.from(saturationTable, (_, i) => {
  const temperature = tableStart + i * tableStep;
  const diffusivity = waterVapourDiffusivity(Math.max(temperature, 273.15), standardPressure);
  return (diffusivity * molarMassWater * standardPressure) / (gasConstant * temperature);
});

const rootsPerOne = 512;
const highestRoot = 12;
/** r^(2/n) of the square root r of W/W_half: a root costs less than a power, and in it the table is smooth down to 0. */
const oswinPowers = Float64Array.from({ length: rootsPerOne * highestRoot + 1 }, (_, k) =>
  Math.pow(k / rootsPerOne, 2 / oswinExponent),
);

const lowestRoot = 0.1;

/**
 * u^(1/n), within 1e-3 of it. What is nearly dry takes the power itself: the first straight pieces of the table would
 * let it dry out in a finite time, and no step is short enough for that.
 */
function oswinPower(u: number): number {
  const root = Math.sqrt(u);
  const place = root * rootsPerOne;
  const k = Math.floor(place);
  if (root < lowestRoot || k >= oswinPowers.length - 1) return Math.pow(u, 1 / oswinExponent);
  const low = oswinPowers[k]!;
  return low + (oswinPowers[k + 1]! - low) * (place - k);
}

/** `waterActivity` from tables, within 1e-4 of it: a bake asks for it some million times. */
export function tabulatedActivity(moisture: number, temperature: number, halfMoisture: number): number {
  if (moisture <= 0) return 0;
  const place = (temperature - tableStart) * perTableStep;
  const i = Math.floor(place);
  // A burnt rim leaves the table, and its last piece carried on would come down to nothing at 708 K.
  if (i < 0 || i > tableSize - 2) return waterActivity(moisture, temperature, halfMoisture);
  const power = oswinPower(moisture / halfMoisture);
  const low = oswinShift[i]!;
  return power / (power + low + (oswinShift[i + 1]! - low) * (place - i));
}

/**
 * kappa = D M p/(R T) of free air, kg/(m s). D falls as 1/p, so kappa depends on temperature alone. From the same
 * steps of 0.25 K.
 */
export function vapourMobility(temperature: number): number {
  const place = (temperature - tableStart) * perTableStep;
  const i = Math.min(Math.max(Math.floor(place), 0), tableSize - 2);
  const low = freeDiffusion[i]!;
  return low + (freeDiffusion[i + 1]! - low) * (place - i);
}

function saturationPressureOrBelow(temperature: number): number {
  if (temperature >= 273.15) return saturationPressure(temperature);
  return saturationPressure(273.15) * Math.exp((2.501e6 / 461.5) * (1 / 273.15 - 1 / temperature));
}

/**
 * Saturation pressure and its slope, Pa and Pa/K, from a table of 0.25 K (within 3e-5 of the equation). Above the
 * table's end at 640 K the last line goes on.
 */
export function saturation(temperature: number, out: { pressure: number; slope: number }): void {
  const place = (temperature - tableStart) * perTableStep;
  const i = Math.min(Math.max(Math.floor(place), 0), tableSize - 2);
  const low = saturationTable[i]!;
  const rise = saturationTable[i + 1]! - low;
  out.pressure = low + rise * (place - i);
  out.slope = rise * perTableStep;
}

/**
 * Potential of vapour in air at total pressure p: the flux j = -kappa d(psi)/dx with kappa = f D M p/(R T) is Stefan
 * diffusion, j = -f D M/(R T) p/(p - p_v) dp_v/dx, integrated:
 *
 *     psi(x) = -ln(1 - x),   x = p_v/p
 *
 * Beyond x = 1 - 1/500 the pores hold steam only and it is pressure that moves it: psi goes on as a straight line.
 * Its slope of 500 makes kappa psi' = 5e-8 s at f = 0.25, Darcy flow at a permeability near 1e-12 m2, so that a
 * boiling cell stays within about 0.1 K of the boiling point that its water activity allows. Boiling is thereby held
 * inside the implicit solve, not clipped after it.
 */
const steepest = 500;
const xSteam = 1 - 1 / steepest;
const psiSteam = Math.log(steepest);

/** psi of the mole fraction x of vapour, 0 to 1. */
export function vapourPotential(x: number): number {
  return x < xSteam ? -Math.log(1 - x) : psiSteam + (x - xSteam) * steepest;
}

/** d(psi)/dx at x. */
export function vapourPotentialSlope(x: number): number {
  return x < xSteam ? 1 / (1 - x) : steepest;
}

const drynessSteps = 1500;
const perDrynessStep = 1000;
/** exp(-W/0.1) by thousandths of the moisture W, down to nothing at 1.5 */
const drynessTable = Float64Array.from({ length: drynessSteps + 1 }, (_, i) =>
  i === drynessSteps ? 0 : Math.exp(-i / perDrynessStep / 0.1),
);

/** Within 2e-5 of exp(-W/0.1). */
function drynessOf(moisture: number): number {
  const place = Math.max(moisture, 0) * perDrynessStep;
  if (place >= drynessSteps) return 0;
  const i = Math.floor(place);
  return drynessTable[i]! + (drynessTable[i + 1]! - drynessTable[i]!) * (place - i);
}

/**
 * Thermal conductivity, W/(m K). The compact matter (dry matter and water by volume, parallel rule; Choi and Okos
 * 1986) and the gas are joined by the two Maxwell-Eucken bounds: moist dough is a continuous wet phase with bubbles,
 * dried crust an open sponge in which gas is continuous. Between them by s = exp(-W/0.1) of dryness (our choice).
 * Gives 0.2 to 0.3 for moist, 0.08 to 0.09 for dry dough: the ranges that reviews report (from memory).
 *
 * @param moisture kg/kg dry matter
 */
export function conductivity(material: LayerMaterial, moisture: number, temperature: number): number {
  const t = temperature - 273.15;
  const tWater = Math.min(t, 150);
  const water = 0.57109 + (1.7625e-3 - 6.7036e-6 * tWater) * tWater;
  const solids = material.solidsConductivity + material.solidsConductivitySlope * Math.min(t, 150);
  // Volumes of dry matter and water, both times both densities.
  const waterVolume = moisture * material.solidsDensity;
  const compact = (waterDensity * solids + waterVolume * water) / (waterDensity + waterVolume);
  const gas = 0.0243 + 6.5e-5 * t;
  const e = material.porosity;
  if (e === 0) return compact;
  const dryness = material.neverSponge === true ? 0 : drynessOf(moisture);
  const bubbles =
    (compact * (2 * compact + gas - 2 * e * (compact - gas))) / (2 * compact + gas + e * (compact - gas));
  if (dryness === 0) return bubbles;
  const f = 1 - e;
  const sponge =
    (gas * (2 * gas + compact - 2 * f * (gas - compact))) / (2 * gas + compact + f * (gas - compact));
  return bubbles + dryness * (sponge * material.dryConductivityFactor - bubbles);
}
