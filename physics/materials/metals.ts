/** Steels as the Eurocode for structural fire design gives them. */
import { zeroCelsius } from './constants.ts';
import { checkRange, type Curve } from './curves.ts';

/** Coldest plate of any material, K: one that comes in from a frosty shed. */
export const coldestPlate = 250;
/** Hottest plate of the materials other than steel, K. */
export const hottestPlate = 900;
const hottestSteel = 1473.15;

/** a + b t + c t2 + d t3 with t in degC */
function cubic(a: number, b: number, c: number, d: number, t: number): number {
  return a + (b + (c + d * t) * t) * t;
}
/** integral of {@link cubic} from 0 degC */
function cubicIntegral(a: number, b: number, c: number, d: number, t: number): number {
  return (a + (b / 2 + (c / 3 + (d / 4) * t) * t) * t) * t;
}

const cubicTo600 = (t: number) => cubicIntegral(425, 0.773, -1.69e-3, 2.22e-6, t);
const risingBranch = (t: number) => 666 * (t - 600) + 13002 * Math.log(138 / (738 - t));
const fallingBranch = (t: number) => 545 * (t - 735) + 17820 * Math.log((t - 731) / 4);
const to600 = cubicTo600(600);
const to735 = to600 + risingBranch(735);
const to900 = to735 + fallingBranch(900);

/**
 * Specific heat of carbon steel, J/(kg K), t in degC:
 *
 *     20 <= t < 600    425 + 0.773 t - 1.69e-3 t2 + 2.22e-6 t3
 *     600 <= t < 735   666 + 13002 / (738 - t)
 *     735 <= t < 900   545 + 17820 / (t - 731)
 *     900 <= t <= 1200 650
 *
 * Valid from 250 K (the cubic is carried on below 20 degC by us) to 1473.15 K; else OutOfRange.
 *
 * Source: EN 1993-1-2:2005, 3.4.1.2 (as quoted in programs that cite the clause).
 * Misprints in circulation: 13.002 for 13002 and 17.820 for 17820 (a thousands point read as a decimal one),
 * and 1820 for 17820; each flattens the peak of 5000 J/(kg K) at 735 degC.
 */
export const carbonSteelHeat: Curve = {
  value(temperature) {
    checkRange('carbon steel temperature', temperature, coldestPlate, hottestSteel);
    const t = temperature - zeroCelsius;
    if (t < 600) return cubic(425, 0.773, -1.69e-3, 2.22e-6, t);
    if (t < 735) return 666 + 13002 / (738 - t);
    if (t < 900) return 545 + 17820 / (t - 731);
    return 650;
  },
  integral(temperature) {
    checkRange('carbon steel temperature', temperature, coldestPlate, hottestSteel);
    const t = temperature - zeroCelsius;
    if (t < 600) return cubicTo600(t);
    if (t < 735) return to600 + risingBranch(t);
    if (t < 900) return to735 + fallingBranch(t);
    return to900 + 650 * (t - 900);
  },
};

/**
 * Thermal conductivity of carbon steel, W/(m K): 54 - 0.0333 t below 800 degC, 27.3 from there.
 * Range and extension as {@link carbonSteelHeat}.
 *
 * Source: EN 1993-1-2:2005, 3.4.1.3. Misprint in circulation: 0.033 for 0.0333 (0.08 W/(m K) high at 250 degC).
 */
export function carbonSteelConductivity(temperature: number): number {
  checkRange('carbon steel temperature', temperature, coldestPlate, hottestSteel);
  const t = temperature - zeroCelsius;
  return t < 800 ? 54 - 0.0333 * t : 27.3;
}

/**
 * Specific heat of stainless steel, J/(kg K): 450 + 0.280 t - 2.91e-4 t2 + 1.34e-7 t3, t in degC.
 * Valid 250 K to 1473.15 K (20 degC to 1200 degC in the source, carried on below by us); else OutOfRange.
 *
 * Source: EN 1993-1-2:2005, Annex C.
 */
export const stainlessHeat: Curve = {
  value(temperature) {
    checkRange('stainless steel temperature', temperature, coldestPlate, hottestSteel);
    return cubic(450, 0.28, -2.91e-4, 1.34e-7, temperature - zeroCelsius);
  },
  integral(temperature) {
    checkRange('stainless steel temperature', temperature, coldestPlate, hottestSteel);
    return cubicIntegral(450, 0.28, -2.91e-4, 1.34e-7, temperature - zeroCelsius);
  },
};

/** Thermal conductivity of stainless steel, W/(m K): 14.6 + 0.0127 t. Range and source as {@link stainlessHeat}. */
export function stainlessConductivity(temperature: number): number {
  checkRange('stainless steel temperature', temperature, coldestPlate, hottestSteel);
  return 14.6 + 0.0127 * (temperature - zeroCelsius);
}
