/** The dough's clock and the plate's, joined: one place for the plan itself and for every change that is tried. */
import type { Evening } from './evening.ts';
import type { HandledBake } from './handsLane.ts';
import { type DoughPlan, planDough } from './planDough.ts';
import type { Bake, EveningRun } from './run.ts';
import { type BasesInput, handworkFor, schedule, type Schedule } from './schedule.ts';

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
      ahead: basesOf(evening, bakes),
      ...handworkFor(evening.pizzas.count, evening.dough.mixing),
    }),
  };
}

/** The bases of an evening, if they are baked ahead; the plate is given as long between them as on the evening. */
function basesOf({ pizzas }: Evening, bakes: EveningRun['bakes']): BasesInput | undefined {
  const seconds = bakes.flatMap(({ baseAhead }) => baseAhead?.seconds ?? []);
  if (pizzas.parBake === undefined || seconds.length === 0) return undefined;
  const waits = bakes.slice(1).map(({ inAt }, index) => inAt - bakes[index]!.outAt);
  return { seconds, wait: Math.max(0, ...waits), kept: pizzas.parBake.kept };
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

/** s from the load of the first pizza to the shaping of the last, or of the last base baked ahead: so long the dough has to keep. */
export function lastShape({ hands, ahead }: Schedule): number {
  if (ahead !== undefined) return ahead.lastShape;
  return Math.max(...hands.filter(({ kind }) => kind === 'shape').map(({ from }) => from));
}
