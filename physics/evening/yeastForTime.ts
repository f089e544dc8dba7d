/** What yeast and liquid make of the time a dough takes, asked one at a time. SI. */
import { freshYeastFor } from '../dough/ingredients.ts';
import { doughTemperatureWith } from '../dough/liquidTemperature.ts';
import { riseTime } from '../dough/rise.ts';
import { yeastFor } from '../dough/riseSolve.ts';
import { attempt } from './attempt.ts';
import { mostFreshYeast } from './doughChanges.ts';
import type { Evening } from './evening.ts';
import { type DoughPlan, segmentsOf } from './planDough.ts';

/**
 * Percent of flour, of the plan's own kind, that makes the dough ready after so many s from the end of mixing;
 * undefined where no sane dose does.
 */
export function yeastForTime(evening: Evening, plan: DoughPlan, seconds: number): number | undefined {
  const { dough } = evening;
  const { kind } = dough.yeast;
  const { doughTemperature } = plan.liquid;
  const percent = attempt(() => yeastFor(seconds, kind, dough, doughTemperature, segmentsOf(evening)));
  return percent !== undefined && percent * freshYeastFor[kind] <= mostFreshYeast ? percent : undefined;
}

export interface LiquidEffect {
  /** K, of the liquid and of the dough when mixing ends */
  readonly liquid: number;
  readonly dough: number;
  /** s from the end of mixing to ready; undefined where the dough never is */
  readonly rise: number | undefined;
}

/** What liquids of other temperatures would make of the same dough. */
export function liquidEffects(
  evening: Evening,
  plan: DoughPlan,
  temperatures: readonly number[],
): readonly LiquidEffect[] {
  const segments = segmentsOf(evening);
  return temperatures.map((liquid) => {
    const dough = doughTemperatureWith(plan.batch, liquid);
    return { liquid, dough, rise: attempt(() => riseTime(evening.dough, dough, segments).seconds) };
  });
}
