/** How fast yeast makes gas: temperature, dose, salt, sugar, alcohol. Everything relative, nothing in millilitres. */
import type { Dough, LiquidPart } from '../evening/evening.ts';
import { OutOfRange } from '../evening/problem.ts';
import { freshYeastFor, waterShareOf } from './ingredients.ts';

/** K: below `lowest` and above `highest` nothing happens, at `best` the rate is 1. */
export interface CardinalTemperatures {
  readonly lowest: number;
  readonly best: number;
  readonly highest: number;
}

/**
 * Cardinal temperatures for **gas**, not for growth: 1.3, 39 and 46 degC. Published growth values (best 32.3, highest
 * 45.4 degC: Salvado et al. 2011, Appl. Environ. Microbiol. 77:2292) give a response from 20 to 30 degC of 1.64 where
 * the trade sees the rate double in 9.4 K (2.1) to grow by 10 % a kelvin (2.6); fermentation rises steadily to 40 degC
 * and then falls steeply (White and Munns 1951, J. Inst. Brew. 57:280). 39 and 46 degC give 2.17. The lowest lies
 * between 1.3 and 4.3 degC over the genus (Salvado et al.); in the refrigerator the model hangs on it. 1.3 degC lets a
 * dough with 0.3 % instant yeast take some days at 4 degC, as it does (common practice, no source); 2.8 would take
 * two weeks.
 */
export const gasTemperatures: CardinalTemperatures = { lowest: 274.45, best: 312.15, highest: 319.15 };

/**
 * Relative rate at a temperature, 0 to 1: the cardinal temperature model with inflection,
 *
 *     (T - Tmax)(T - Tmin)^2 / {(Topt - Tmin) [(Topt - Tmin)(T - Topt) - (Topt - Tmax)(Topt + Tmin - 2 T)]}
 *
 * and 0 outside Tmin..Tmax.
 *
 * @param temperature T in K (or in the scale of the cardinal temperatures)
 * @throws OutOfRange when T is not a number, or Topt is not above the middle of Tmin and Tmax, where the form fails
 *
 * Source: Rosso, Lobry, Bajard and Flandrois 1995, Appl. Environ. Microbiol. 61:610.
 */
export function cardinalRate(temperature: number, cardinal: CardinalTemperatures = gasTemperatures): number {
  const { lowest, best, highest } = cardinal;
  if (!(best > (lowest + highest) / 2 && best < highest))
    throw new OutOfRange('best', `${best} K`, `${(lowest + highest) / 2} K to ${highest} K, ends excluded`);
  if (Number.isNaN(temperature)) throw new OutOfRange('temperature', 'NaN', 'a temperature in K');
  if (temperature <= lowest || temperature >= highest) return 0;
  const above = temperature - lowest;
  const span = best - lowest;
  return (
    ((temperature - highest) * above * above) /
    (span * (span * (temperature - best) - (best - highest) * (best + lowest - 2 * temperature)))
  );
}

/**
 * Exponent of the dose: rate is proportional to dose^0.7. CO2 in 2 h grew from 1200 to 1800 as the yeast went from 2.8
 * to 5 %, ln 1.5/ln 1.786 = 0.70 (table of dough strains, Appl. Environ. Microbiol., volume 1 unit not printed). A
 * household manual's 1/4, 1/2, 1 cake at 12, 5, 3 h speaks for 1.0; over the wide span of long rises yeast grows and
 * the exponent falls towards 0.4. Doubling the yeast shortens a rise to 0.62.
 */
export const doseExponent = 0.7;

/**
 * Share of the rate left by salt (percent of flour): 1 up to 1 %, then exp(-0.11 (s - 1)). That salt slows from 1 % is
 * published (Cereal Chem. 44:300, 1967, and general texts), a dose curve is not: the slope is our estimate.
 */
export function saltFactor(percent: number): number {
  return percent <= 1 ? 1 : Math.exp(-0.11 * (percent - 1));
}

/**
 * Share of the rate left by sugar (percent of flour): 1 up to 5 %, then exp(-0.249 (s - 5)), which meets the 0.29 per
 * unit of yeast that an ordinary baker's strain keeps at 10 % sucrose (580/5.6 against 1800/5, same table as the dose
 * exponent). Osmotolerant yeast keeps more.
 */
export function sugarFactor(percent: number): number {
  return percent <= 5 ? 1 : Math.exp(-0.249 * (percent - 5));
}

/**
 * Share of the rate left by alcohol: 1 - (p/101.6)^1.95, 0 from 101.6 g/L on.
 *
 * @param gramsPerLitre ethanol in the dough's water
 * Source: Warren et al. 1990, Biotechnol. Prog. 6:319, for growth; taken for gas by us.
 */
export function alcoholFactor(gramsPerLitre: number): number {
  return gramsPerLitre >= 101.6 ? 0 : 1 - (gramsPerLitre / 101.6) ** 1.95;
}

/** g ethanol per litre of the dough's liquid; beer taken as one of 5 % by volume, 39.5 g/L. */
export function alcoholOf(liquid: readonly LiquidPart[]): number {
  let all = 0;
  let beer = 0;
  for (const { kind, percent } of liquid) {
    if (kind === 'oil' || kind === 'honey') continue;
    all += percent;
    if (kind === 'beer') beer += percent;
  }
  return all > 0 ? (39.5 * beer) / all : 0;
}

/** What of a dough decides how fast it rises. */
export type Leavened = Pick<Dough, 'liquid' | 'salt' | 'sugar' | 'yeast'>;

/** Percent of flour that is sugar: what is added, and honey but for its water (USDA SR 19296, 17.1 %). */
export function sugarOf({ sugar, liquid }: Pick<Leavened, 'sugar' | 'liquid'>): number {
  return liquid.reduce(
    (sum, part) => (part.kind === 'honey' ? sum + part.percent * (1 - waterShareOf(part)) : sum),
    sugar,
  );
}

/** Everything but dose and temperature. */
export function surroundingsFactor(dough: Omit<Leavened, 'yeast'>): number {
  return saltFactor(dough.salt) * sugarFactor(sugarOf(dough)) * alcoholFactor(alcoholOf(dough.liquid));
}

/** Percent of fresh yeast that the dough holds, or the equal of it. */
export function freshDose({ yeast }: Pick<Leavened, 'yeast'>): number {
  return yeast.percent * freshYeastFor[yeast.kind];
}

/**
 * Rate of a dough at its best temperature, relative to 1 % fresh yeast without salt, sugar or alcohol.
 *
 * @throws OutOfRange for a dose that is not above 0 or beyond 40 % (fresh)
 */
export function doughRate(dough: Leavened): number {
  const fresh = freshDose(dough);
  if (!(fresh > 0 && fresh <= 40))
    throw new OutOfRange(
      'dough.yeast.percent',
      `${dough.yeast.percent} % ${dough.yeast.kind}`,
      'more than 0 % and at most what equals 40 % of fresh yeast',
    );
  return fresh ** doseExponent * surroundingsFactor(dough);
}
