/** The dough's half of a plan: what to weigh, how warm to pour, how long it rises and where. */
import { massesFromTotal, roundedForScale } from '../dough/formula.ts';
import { hydration, percentagesOf } from '../dough/ingredients.ts';
import { type Batch, type LiquidAdvice, liquidTemperature } from '../dough/liquidTemperature.ts';
import { type OpenSegment, type Rise, riseTime } from '../dough/rise.ts';
import { shareKilled } from '../dough/yeastSurvival.ts';
import type { Warning } from './answer.ts';
import { doughWarnings } from './doughWarnings.ts';
import type { Evening, RisePhase } from './evening.ts';
import { doughMass } from './onePizza.ts';

/** A stretch of the rise with its length in s. */
export type RiseStage = RisePhase & { readonly duration: number };

export interface DoughPlan {
  /** g as weighed, by ingredient; the sum is that of all balls within half a step of the scale */
  readonly grams: Readonly<Record<string, number>>;
  readonly batch: Batch;
  readonly liquid: LiquidAdvice;
  readonly rise: Rise;
  /** where the dough stands and how long, from the end of mixing until it is shaped */
  readonly stages: readonly RiseStage[];
  readonly nominalHydrationPercent: number;
  readonly trueHydrationPercent: number;
  /** share of the yeast that heat kills at most */
  readonly killed: number;
  readonly warnings: readonly Warning[];
}

/**
 * The phases that an evening means: those of the plan, or one rise that lasts as long as it needs; and the rest as
 * balls after them, where no phase says how the balls stand.
 */
export function phasesOf({ dough }: Evening): readonly RisePhase[] {
  const place = { where: 'room', temperature: dough.riseTemperature, cover: 'covered' } as const;
  const phases =
    dough.phases.length > 0 ? dough.phases : [{ ...place, duration: undefined, as: 'bulk' } as const];
  return phases.some((phase) => phase.as === 'balls')
    ? phases
    : [...phases, { ...place, duration: dough.restBeforeShaping, as: 'balls' }];
}

/** The same as the rise computes them: in one piece of all the dough, or as balls. */
export function segmentsOf(evening: Evening): readonly OpenSegment[] {
  const all = doughMass(evening);
  // Balls that differ go by their mean: it lies between the one that follows the room first and the one that does last.
  const ball = all / evening.pizzas.count;
  return phasesOf(evening).map(({ temperature, duration, cover, as }) => ({
    temperature,
    duration,
    cover,
    mass: as === 'balls' ? ball : all,
  }));
}

/** What goes into the bowl, unrounded. @throws OutOfRange for a formula that cannot be */
function batchOf(evening: Evening): Batch {
  const { dough, kitchen } = evening;
  const { flour } = massesFromTotal(percentagesOf(dough), doughMass(evening));
  const share = flour / 100;
  return {
    flour,
    liquid: dough.liquid.map((part) => ({ mass: share * part.percent, part })),
    solids: share * (dough.salt + dough.sugar + dough.yeast.percent),
    oil: share * dough.oil,
    flourTemperature: dough.flourTemperature,
    roomTemperature: kitchen.roomTemperature,
    wanted: dough.wantedTemperature,
    mixing: dough.mixing,
    tapTemperature: kitchen.tapTemperature,
  };
}

/** @throws OutOfRange for a dough that cannot be made or is not ready within 14 days; its path is a field of the plan */
export function planDough(evening: Evening): DoughPlan {
  const { dough, kitchen } = evening;
  const exact = massesFromTotal(percentagesOf(dough), doughMass(evening));
  const inGrams = Object.fromEntries(Object.entries(exact).map(([name, mass]) => [name, 1000 * mass]));
  const batch = batchOf(evening);
  const liquid = liquidTemperature(batch);
  const { nominalPercent, truePercent } = hydration(dough.liquid, dough.flourMoisture);
  const rise = riseTime(dough, liquid.doughTemperature, segmentsOf(evening));
  const stages = phasesOf(evening).map((phase, index) => ({
    ...phase,
    duration: rise.segments[index]!.duration,
  }));
  const plan = {
    grams: roundedForScale({ ...inGrams, flour: 1000 * exact.flour }, 1000 * kitchen.scaleStep),
    batch,
    liquid,
    rise,
    stages,
    nominalHydrationPercent: nominalPercent,
    trueHydrationPercent: truePercent,
    killed: shareKilled(liquid.doughTemperature, rise.segments),
  };
  return { ...plan, warnings: doughWarnings(evening, plan, segmentsOf(evening)) };
}
