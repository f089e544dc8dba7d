/**
 * A formula in baker's percentages: every ingredient as percent of the flour's mass, flour itself 100. The arithmetic
 * knows no ingredient by name except `flour`; masses may be in any unit, as long as it is one.
 */
import { OutOfRange } from '../evening/problem.ts';

/** Percent of flour mass by ingredient; flour is left out, being 100. */
export type Percentages = Readonly<Record<string, number>>;
/** Mass by ingredient, `flour` among them. */
export type Masses = Readonly<Record<string, number>> & { readonly flour: number };

function checkPositive(path: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new OutOfRange(path, String(value), 'a finite number above 0');
}

/**
 * Sum of a formula, percent: flour 100 and everything else.
 *
 * @throws OutOfRange for a percentage that is negative or not finite, and for one named `flour`
 */
export function percentSum(percentages: Percentages): number {
  let sum = 100;
  for (const [name, percent] of Object.entries(percentages)) {
    if (name === 'flour') throw new OutOfRange('flour', `${percent} %`, 'flour left out: it is always 100 %');
    if (!(percent >= 0 && Number.isFinite(percent)))
      throw new OutOfRange(name, `${percent} %`, 'a finite percentage of 0 or more');
    sum += percent;
  }
  return sum;
}

/** Masses for so much flour. @throws OutOfRange as `percentSum`, and for a flour mass not above 0 */
export function massesFromFlour(percentages: Percentages, flour: number): Masses {
  percentSum(percentages);
  checkPositive('flour', flour);
  const masses: Record<string, number> & { flour: number } = { flour };
  for (const [name, percent] of Object.entries(percentages)) masses[name] = (flour * percent) / 100;
  return masses;
}

/** Masses for so much dough (count x ball mass): flour = total x 100 / sum. @throws OutOfRange as above */
export function massesFromTotal(percentages: Percentages, total: number): Masses {
  checkPositive('total', total);
  return massesFromFlour(percentages, (total * 100) / percentSum(percentages));
}

/** Masses when so much of one ingredient is there ("there are 9 g of yeast left"). @throws OutOfRange as above */
export function massesFromIngredient(percentages: Percentages, name: string, mass: number): Masses {
  checkPositive(name, mass);
  if (name === 'flour') return massesFromFlour(percentages, mass);
  const percent = percentages[name];
  if (percent === undefined || !(percent > 0))
    throw new OutOfRange(
      name,
      percent === undefined ? 'no such ingredient' : `${percent} %`,
      `one of flour, ${Object.keys(percentages).join(', ')} with more than 0 %`,
    );
  return massesFromFlour(percentages, (mass * 100) / percent);
}

/** The way back: percentages from weighed masses. @throws OutOfRange for flour not above 0 or a negative mass */
export function percentagesFromMasses(masses: Masses): Percentages {
  checkPositive('flour', masses.flour);
  const percentages: Record<string, number> = {};
  for (const [name, mass] of Object.entries(masses)) {
    if (!(mass >= 0 && Number.isFinite(mass)))
      throw new OutOfRange(name, String(mass), 'a finite mass of 0 or more');
    if (name !== 'flour') percentages[name] = (100 * mass) / masses.flour;
  }
  return percentages;
}

/** Ingredients that the kitchen scale weighs; the small ones go on a fine scale, to 0.1 g, below 1 g to 0.01 g. */
const coarse = new Set(['flour', 'water', 'beer', 'milk', 'whey', 'custom']);

/** g, the smallest step a cook can weigh of this ingredient at about this mass */
export function scaleStep(name: string, grams: number, kitchenStep = 1): number {
  if (coarse.has(name)) return kitchenStep;
  return Math.min(kitchenStep, grams < 1 ? 0.01 : 0.1);
}

/** Whole steps, written without the dust of binary fractions: 1.2 and not 1.2000000000000002. */
function toStep(grams: number, step: number): number {
  return Number((Math.round(grams / step) * step).toFixed(6));
}

/**
 * Grams as the scale shows them: each rounded to its own step, the flour taking up what the rounding of the others
 * left over, so that the sum stays within half a step of the exact sum (no ball comes out short).
 *
 * @param exact masses in g
 * @param kitchenStep g, step of the scale for flour and liquids
 * @throws OutOfRange for a step not above 0
 */
export function roundedForScale(exact: Masses, kitchenStep = 1): Masses {
  checkPositive('kitchen.scaleStep', kitchenStep);
  const rounded: Record<string, number> & { flour: number } = { flour: 0 };
  let sum = 0;
  let others = 0;
  for (const [name, grams] of Object.entries(exact)) {
    sum += grams;
    if (name === 'flour') continue;
    const shown = toStep(grams, scaleStep(name, grams, kitchenStep));
    rounded[name] = shown;
    others += shown;
  }
  rounded.flour = toStep(sum - others, kitchenStep);
  return rounded;
}
