/** How a crust browns: two published laws in one form. */
import { OutOfRange } from '../evening/problem.ts';
import { gasConstant } from '../materials/constants.ts';

/** the laws a plan can name */
export const browningLawIds = ['zanoni-1995', 'purlis-2009'] as const;
export type BrowningLawId = (typeof browningLawIds)[number];

/**
 * A published law of crust browning in one form: a rate, whose integral over the bake says how light the crust
 * still is.
 */
export interface BrowningLaw {
  readonly id: BrowningLawId;
  readonly source: string;
  /** L* that the law tends to and never reaches */
  readonly darkest: number;
  /**
   * 1/s at a temperature (K) and a water activity.
   * @throws OutOfRange outside 273.15 K to 873.15 K or 0 to 1, NaN included
   */
  readonly rate: (temperature: number, waterActivity: number) => number;
  /** L* (CIE 1976) after an integral of the rate, 0 or more; else OutOfRange */
  readonly lightness: (integral: number) => number;
  /** inverse of lightness; OutOfRange unless darkest < L* <= 85 */
  readonly integralFor: (lightness: number) => number;
}

/** L* of the raw surface that both laws start from. */
export const rawLightness = 85;

function check(temperature: number, waterActivity: number): void {
  if (!(temperature >= 273.15 && temperature <= 873.15)) {
    throw new OutOfRange('crust temperature', `${temperature} K`, '273.15 K to 873.15 K');
  }
  if (!(waterActivity >= 0 && waterActivity <= 1)) {
    throw new OutOfRange('water activity', String(waterActivity), '0 to 1');
  }
}

function checkIntegral(integral: number): void {
  if (!(integral >= 0)) throw new OutOfRange('browning integral', String(integral), '0 or more');
}

function checkLightness(lightness: number, darkest: number): void {
  if (!(lightness > darkest && lightness <= rawLightness)) {
    throw new OutOfRange('lightness', `L* ${lightness}`, `L* above ${darkest} to ${rawLightness}`);
  }
}

/** Part of the colour difference of 52 between raw and burnt that is a loss of L*. */
const lostWhenBurnt = 47;

/**
 * First order to a ceiling: dE/dt = k (52 - dE), k = 42000 exp(-64151 / (R T)), 1/s.
 *
 * Fitted to crumb on a plate of 140 to 250 degC, checked by its authors at 200 and 250 degC; hotter is carried on
 * by us. The water activity does not enter: the crumb was dry.
 * Our own: of the colour difference of 52 a loss of 47 in L* is taken, the rest going into a* and b* as bread
 * does, so L* = 85 - 47 (1 - exp(-I)) with I the integral of k.
 *
 * Source: Zanoni, Peri, Bruno 1995, LWT - Food Science and Technology 28, 604-609 (abstract).
 */
export const zanoni1995: BrowningLaw = {
  id: 'zanoni-1995',
  source: 'Zanoni, Peri, Bruno 1995, LWT 28, 604-609',
  darkest: rawLightness - lostWhenBurnt,
  rate(temperature, waterActivity) {
    check(temperature, waterActivity);
    return 42000 * Math.exp(-64151 / (gasConstant * temperature));
  },
  lightness(integral) {
    checkIntegral(integral);
    return rawLightness - lostWhenBurnt * (1 - Math.exp(-integral));
  },
  integralFor(lightness) {
    checkLightness(lightness, rawLightness - lostWhenBurnt);
    return -Math.log(1 - (rawLightness - lightness) / lostWhenBurnt);
  },
};

/** Below this the second law's rate falls again, at 473 K, and a dry crust would cease to brown. */
const driest = 0.15;

/**
 * Decay of the lightness: dL/dt = -k L, k = (k0 + k1/aw) exp(-(k2 + k3/aw)/T) with k0 7.9233e6 and k1 2.7397e6
 * per minute, k2 8701.5 K and k3 49.4738 K; here per second. L* = 85 exp(-I).
 *
 * Fitted to loaves at 180 to 220 degC. The constants and their unit are from memory; that they are per minute is
 * borne out by the law of Zanoni, which agrees within 10 % at 200 degC. Our own: below a water activity of 0.15,
 * where the form turns over, the value at 0.15 is kept.
 *
 * Source: Purlis and Salvadori 2009, Food Research International 42, 865-870 (constants from memory).
 */
export const purlis2009: BrowningLaw = {
  id: 'purlis-2009',
  source: 'Purlis and Salvadori 2009, Food Res Int 42, 865-870 (constants from memory)',
  darkest: 0,
  rate(temperature, waterActivity) {
    check(temperature, waterActivity);
    const inverse = 1 / Math.max(waterActivity, driest);
    const perMinute = (7.9233e6 + 2.7397e6 * inverse) * Math.exp(-(8701.5 + 49.4738 * inverse) / temperature);
    return perMinute / 60;
  },
  lightness(integral) {
    checkIntegral(integral);
    return rawLightness * Math.exp(-integral);
  },
  integralFor(lightness) {
    checkLightness(lightness, 0);
    return Math.log(rawLightness / lightness);
  },
};

/** The first is the one used unless a plan says otherwise: its numbers were read, not remembered. */
export const browningLaws: readonly BrowningLaw[] = [zanoni1995, purlis2009];

/** The law of that name. */
export function browningLaw(id: BrowningLawId): BrowningLaw {
  return id === 'purlis-2009' ? purlis2009 : zanoni1995;
}
