/** Whether what a plan says of single pizzas, and of the steps of a bake, goes with the rest of it. */
import { showQuantity } from '../quantities/index.ts';
import { roundMargin } from './planDefaults.ts';
import { describe } from './planShape.ts';
import type { Problem } from './problem.ts';
import type { FullPlan, FullPlanSI } from './schema.ts';

/** kg of dough per m2: below the first it tears, above the second it is a loaf; our own limits */
const thinnest = 1;
const thickest = 15;

export const cm = (metres: number): string => showQuantity(metres, 'length', 'metric', { unit: 'cm' });
export const grams = (kilograms: number): string =>
  showQuantity(kilograms, 'mass', 'metric', { unit: 'g', decimals: 0 });

/** Half the last bit of `30 cm` against `11.811 in` must not decide. */
export const atMost = (value: number, limit: number): boolean => value <= limit * (1 + 1e-9);

/** m across of the widest pizza that a plate takes, and that limit in words. */
export function widestPizza({ shape, width, depth }: FullPlanSI['plate']): {
  readonly side: number;
  readonly allowed: string;
} {
  const round = shape === 'round';
  const side = Math.min(width, depth) - (round ? roundMargin : 0);
  return {
    side,
    allowed: round
      ? `at most ${cm(side)}, the diameter of the plate less ${cm(roundMargin)}`
      : `at most the smaller side of the plate, ${cm(side)}`,
  };
}

/** kg of a ball for a pizza of a diameter (m). */
export function ballLimits(diameter: number): { readonly lightest: number; readonly heaviest: number } {
  const area = (Math.PI / 4) * diameter ** 2;
  return { lightest: thinnest * area, heaviest: thickest * area };
}

/** What is wrong with single pizzas of a plan, and with the steps of a bake. */
export function onePizzaProblems({ pizzas, plate }: FullPlanSI, text: FullPlan): readonly Problem[] {
  const problems: Problem[] = [];
  const each = pizzas.each ?? [];
  if (each.length > pizzas.count)
    problems.push({
      path: 'pizzas.each',
      found: `${each.length} pizzas`,
      allowed: `at most the ${pizzas.count} of pizzas.count`,
    });
  const { side, allowed } = widestPizza(plate);
  each.forEach((own, index) => {
    const written = text.pizzas.each![index]!;
    const at = `pizzas.each.${index}`;
    const diameter = own.diameter ?? pizzas.diameter;
    if (!atMost(diameter, side))
      problems.push({ path: `${at}.diameter`, found: describe(written.diameter), allowed });
    const { lightest, heaviest } = ballLimits(diameter);
    const mass = own.ballMass ?? pizzas.ballMass;
    if (!(mass >= lightest && mass <= heaviest))
      problems.push({
        path: `${at}.ballMass`,
        found: describe(written.ballMass ?? text.pizzas.ballMass),
        allowed: `${grams(lightest)} to ${grams(heaviest)} for its diameter`,
      });
    own.cheese?.forEach(({ kind, waterShare }, part) => {
      if ((kind === 'custom') === (waterShare !== undefined)) return;
      problems.push({
        path: `${at}.cheese.${part}.waterShare`,
        found: waterShare === undefined ? 'nothing' : String(waterShare),
        allowed: kind === 'custom' ? 'a number from 0 to 1' : 'nothing: only kind custom takes it',
      });
    });
  });
  const paper = [pizzas.bench, ...each.map((own) => own.bench)].includes('parchment');
  if (pizzas.steps?.pullParchment === true && !paper)
    problems.push({
      path: 'pizzas.steps.pullParchment',
      found: 'true',
      allowed: 'true only for a bench of parchment',
    });
  return problems;
}
