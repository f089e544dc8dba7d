/** What no single field can say: whether the fields of a plan go together. */
import { longestRise } from '../dough/rise.ts';
import { allowedSurfaces } from '../materials/plates.ts';
import { showQuantity } from '../quantities/index.ts';
import { parametersOf } from '../oven/parameters.ts';
import { atMost, ballLimits, cm, grams, onePizzaProblems, widestPizza } from './pizzaFits.ts';
import { customGiven } from './planDefaults.ts';
import type { PlanFile } from './planFile.ts';
import { describe } from './planShape.ts';
import type { Problem } from './problem.ts';
import type { FullPlan, FullPlanSI } from './schema.ts';

/** m kept free above the plate for a pizza and the hand that brings it */
const headroom = 0.01;

function plateProblems({ plate, oven }: FullPlanSI, text: FullPlan): Problem[] {
  const problems: Problem[] = [];
  for (const side of ['width', 'depth'] as const) {
    // Air must pass: a plate that touches two walls would part the oven in two.
    if (!(plate[side] < oven.cavity[side]))
      problems.push({
        path: plate.shape === 'round' ? 'plate.diameter' : `plate.${side}`,
        found: describe(text.plate[side]),
        allowed: `less than the ${side} of the cavity, ${cm(oven.cavity[side])}`,
      });
  }
  const free = oven.cavity.height * (1 - plate.rackHeight) - plate.thickness;
  if (!atMost(headroom, free))
    problems.push({
      path: 'plate.rackHeight',
      found: `${plate.rackHeight}, which leaves ${cm(Math.max(0, free))} above a plate of ${text.plate.thickness}`,
      allowed: `a height that leaves ${cm(headroom)} of the cavity's ${cm(oven.cavity.height)} free above the plate`,
    });
  const surfaces = allowedSurfaces(plate.material);
  if (!surfaces.includes(plate.surface))
    problems.push({
      path: 'plate.surface',
      found: describe(plate.surface),
      allowed: `for ${plate.material}: ${surfaces.join(', ')}`,
    });
  return problems;
}

/** K by which an oven must be set hotter than its kitchen to have anything to do */
const leastRise = 5;

/** An oven that is set no hotter than the kitchen never switches on: there is no preheat to plan. */
function dialProblems({ oven, kitchen }: FullPlanSI, text: FullPlan): Problem[] {
  const reached = oven.setpoint + oven.thermostatOffset;
  const least = kitchen.roomTemperature + leastRise;
  if (reached >= least) return [];
  return [
    {
      // The lowest setting is hotter than the hottest kitchen.
      path: 'oven.thermostatOffset',
      found: describe(text.oven.thermostatOffset),
      allowed: `setpoint and thermostat offset together at least ${showQuantity(least, 'temperature', 'metric')}, a little above the kitchen`,
    },
  ];
}

/** Something must heat in both stages of the control. */
function shareOfPowerProblems({ oven }: FullPlanSI): Problem[] {
  const problems: Problem[] = [];
  const { preheatShare, holdShare } = parametersOf({ ...oven, physics: oven.physics });
  const stages = { preheatShare, holdShare } as const;
  for (const stage of ['preheatShare', 'holdShare'] as const)
    if (stages[stage].bottom * oven.power.bottom + stages[stage].top * oven.power.top < leastPower)
      problems.push({
        path: `oven.physics.${stage}Bottom`,
        found: describe(stages[stage].bottom),
        allowed: `shares of bottom and top that leave at least ${leastPower} W`,
      });
  return problems;
}
/** W that an oven must be able to give */
const leastPower = 100;

function pizzaProblems({ pizzas, plate, dough }: FullPlanSI, text: FullPlan): Problem[] {
  const problems: Problem[] = [];
  const { side, allowed } = widestPizza(plate);
  if (!atMost(pizzas.diameter, side))
    problems.push({ path: 'pizzas.diameter', found: describe(text.pizzas.diameter), allowed });
  const { lightest, heaviest } = ballLimits(pizzas.diameter);
  if (!(pizzas.ballMass >= lightest && pizzas.ballMass <= heaviest))
    problems.push({
      path: 'pizzas.ballMass',
      found: describe(text.pizzas.ballMass),
      allowed: `${grams(lightest)} to ${grams(heaviest)} for ${text.pizzas.diameter} across`,
    });
  const liquid = dough.liquid.reduce((sum, part) => sum + part.percent, 0);
  if (!(liquid >= 30 && liquid <= 120))
    problems.push({
      path: 'dough.liquid',
      found: `${Number(liquid.toFixed(3))} percent of flour in all`,
      allowed: '30 to 120 percent in all',
    });
  return problems;
}

/** One phase may be left open, balls stay balls, and longer than two weeks no dough keeps. */
function phaseProblems({ dough }: FullPlanSI): Problem[] {
  const problems: Problem[] = [];
  let open = 0;
  let balled = false;
  let fixed = 0;
  for (const [index, phase] of dough.phases.entries()) {
    const path = `dough.phases.${index}`;
    fixed += phase.duration ?? 0;
    if (phase.duration === undefined && ++open > 1)
      problems.push({
        path: `${path}.duration`,
        found: 'nothing, a second time',
        allowed: 'a duration: only one phase may last as long as the dough needs',
      });
    if (balled && phase.as === 'bulk')
      problems.push({
        path: `${path}.as`,
        found: '"bulk" after balls',
        allowed: 'balls: balled stays balled',
      });
    balled ||= phase.as === 'balls';
  }
  if (fixed > longestRise)
    problems.push({
      path: 'dough.phases',
      found: `${(fixed / 3600).toFixed(0)} h in all`,
      allowed: `at most ${longestRise / 3600} h in all`,
    });
  return problems;
}

/** `waterShare` belongs to a custom liquid or cheese, which cannot do without it. */
function shareProblems(
  path: string,
  parts: readonly { kind: string; waterShare?: number | undefined }[],
): Problem[] {
  return parts.flatMap(({ kind, waterShare }, index) => {
    const at = `${path}.${index}.waterShare`;
    if (kind === 'custom' && waterShare === undefined)
      return [{ path: at, found: 'nothing', allowed: 'a number from 0 to 1, needed for kind custom' }];
    if (kind !== 'custom' && waterShare !== undefined)
      return [{ path: at, found: String(waterShare), allowed: 'nothing: only kind custom takes it' }];
    return [];
  });
}

function customProblems(file: PlanFile, { plate }: FullPlanSI): Problem[] {
  const { given, missing } = customGiven(file);
  if (plate.material === 'custom')
    return missing.map((name) => ({
      path: `plate.${name}`,
      found: 'nothing',
      allowed: `a value: material custom needs its ${name}`,
    }));
  return given.map((name) => ({
    path: `plate.${name}`,
    found: describe(file.plate?.[name as keyof typeof file.plate]),
    allowed: 'nothing: only material custom takes it',
  }));
}

/** Every way in which the fields of a plan do not go together. */
export function fitProblems(file: PlanFile, text: FullPlan, plan: FullPlanSI): readonly Problem[] {
  return [
    ...plateProblems(plan, text),
    ...customProblems(file, plan),
    ...dialProblems(plan, text),
    ...shareOfPowerProblems(plan),
    ...pizzaProblems(plan, text),
    ...onePizzaProblems(plan, text),
    ...phaseProblems(plan),
    ...shareProblems('dough.liquid', plan.dough.liquid),
    ...shareProblems('toppings.cheese', plan.toppings.cheese),
  ];
}
