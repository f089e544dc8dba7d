/** The dough's clock and the plate's, joined: one place for the plan itself and for every change that is tried. */
import type { Evening } from './evening.ts';
import { type DoughPlan, planDough } from './planDough.ts';
import type { EveningRun } from './run.ts';
import { handworkFor, schedule, type Schedule } from './schedule.ts';

export interface Joined {
  readonly dough: DoughPlan;
  readonly plan: Schedule;
}

/**
 * @param bakes of the oven's run; only the times count
 * @throws OutOfRange as `planDough`
 */
export function joinClocks(
  evening: Evening,
  bakes: EveningRun['bakes'],
  dough: DoughPlan = planDough(evening),
): Joined {
  return {
    dough,
    plan: schedule({
      kind: evening.anchor.kind,
      bakes,
      stages: dough.stages,
      ready: dough.rise.seconds,
      past: dough.rise.past,
      ...handworkFor(evening.pizzas.count, evening.dough.mixing),
    }),
  };
}

/** s from the load of the first pizza to the shaping of the last: so long the dough has to keep. */
export function lastShape({ hands }: Schedule): number {
  return Math.max(...hands.filter(({ kind }) => kind === 'shape').map(({ from }) => from));
}
