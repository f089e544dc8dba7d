/** The dough's clock and the plate's, joined: one place for the plan itself and for every change that is tried. */
import type { Evening } from './evening.ts';
import type { HandledBake } from './handsLane.ts';
import { type DoughPlan, planDough } from './planDough.ts';
import type { Bake, EveningRun } from './run.ts';
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
      bakes: bakes.map((bake) => handled(evening, bake)),
      stages: dough.stages,
      ready: dough.rise.seconds,
      past: dough.rise.past,
      ...handworkFor(evening.pizzas.count, evening.dough.mixing),
    }),
  };
}

const stepKinds = { turn: 'turn', look: 'look', 'pull-parchment': 'pull', 'top-element': 'top' } as const;

/** What the cook does to a bake, as far as hands are needed. */
function handled({ pizzas }: Evening, { inAt, outAt, steps = [] }: Bake): HandledBake {
  const before = pizzas.steps?.topElementBefore ?? 0;
  return {
    inAt,
    outAt,
    steps: [
      ...(before > 0 ? [{ what: 'top-before' as const, at: inAt - before }] : []),
      ...steps.map(({ what, at }) => ({ what: stepKinds[what], at })),
    ],
  };
}

/** s from the load of the first pizza to the shaping of the last: so long the dough has to keep. */
export function lastShape({ hands }: Schedule): number {
  return Math.max(...hands.filter(({ kind }) => kind === 'shape').map(({ from }) => from));
}
