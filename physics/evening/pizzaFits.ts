/** Whether what a plan says of single pizzas, and of the steps of a bake, goes with the rest of it. */
import { showQuantity } from '../quantities/index.ts';
import { describe } from './planShape.ts';
import type { Problem } from './problem.ts';
import type { FullPlan, FullPlanSI } from './schema.ts';

/** kg of dough per m2: the same limits as for all pizzas together */
const thinnest = 1;
const thickest = 15;

const grams = (kilograms: number): string =>
  showQuantity(kilograms, 'mass', 'metric', { unit: 'g', decimals: 0 });

export function onePizzaProblems({ pizzas, plate }: FullPlanSI, text: FullPlan): readonly Problem[] {
  const problems: Problem[] = [];
  const each = pizzas.each ?? [];
  if (each.length > pizzas.count)
    problems.push({
      path: 'pizzas.each',
      found: `${each.length} pizzas`,
      allowed: `at most the ${pizzas.count} of pizzas.count`,
    });
  const side = Math.min(plate.width, plate.depth);
  each.forEach((own, index) => {
    const written = text.pizzas.each![index]!;
    const at = `pizzas.each.${index}`;
    const diameter = own.diameter ?? pizzas.diameter;
    if (diameter > side * (1 + 1e-9))
      problems.push({
        path: `${at}.diameter`,
        found: describe(written.diameter),
        allowed: `at most the smaller side of the plate, ${showQuantity(side, 'length', 'metric', { unit: 'cm' })}`,
      });
    const area = (Math.PI / 4) * diameter ** 2;
    const mass = own.ballMass ?? pizzas.ballMass;
    if (!(mass >= thinnest * area && mass <= thickest * area))
      problems.push({
        path: `${at}.ballMass`,
        found: describe(written.ballMass ?? text.pizzas.ballMass),
        allowed: `${grams(thinnest * area)} to ${grams(thickest * area)} for its diameter`,
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
