/** When the crumb is done: its starch. */
import { gasConstant } from '../materials/constants.ts';

/**
 * Rate at which wheat starch gelatinises, 1/s: d(1 - a)/dt = -k (1 - a), k = 2.8e18 exp(-139000/(R T)), T in kelvin.
 * 98 % takes 138 s at 90 degC and 74 s at 95 degC. Meant for 60 to 100 degC in dough with water enough.
 *
 * Source: Zanoni, Schiraldi, Simonetta 1995, J. Food Eng. 24, 25-33 (constants from memory).
 */
export function gelatinisationRate(temperature: number): number {
  return 2.8e18 * Math.exp(-139_000 / (gasConstant * temperature));
}
