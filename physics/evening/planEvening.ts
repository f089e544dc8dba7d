/** From an evening to its plan, with the simulation that this program has. */
import { adviceFor } from './advice.ts';
import type { OffsetAt } from './clock.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import type { GoalId } from './ids.ts';
import { lateStart } from './lateStart.ts';
import type { PlanFile } from './planFile.ts';
import { type Planned, type PlanExtras, planWith } from './planWith.ts';
import { readPlanObject } from './readPlan.ts';
import { simulateEvening } from './simulate.ts';
import { remediesFor } from './remedies.ts';
import { spreadOf } from './spread.ts';
import { waitCurves } from './waitCurve.ts';

export type { Planned, PlanExtras } from './planWith.ts';

export interface PlanContext {
  /** ms since 1970-01-01T00:00Z, the clock of whoever asks */
  readonly now: number;
  /** minutes east of UTC that this clock keeps, for a plan that does not name a day */
  readonly offsetMinutes?: number;
  /** the same at other moments, where its clock is put forward and back */
  readonly readersClock?: OffsetAt;
  /** whether to compute P10 to P90 as well; true unless said otherwise */
  readonly band?: boolean;
  /** whether to try remedies and waits as well; as `band` unless said otherwise */
  readonly advice?: boolean;
  /** what to advise for; nothing unless said */
  readonly goal?: GoalId;
}

const ours: Engine = {
  simulateEvening,
  spreadOf,
  lateStart,
  remediesFor,
  waitCurves: (run) => waitCurves(run),
};

/**
 * Plans what a file says. Problems of the file, and what the dough or the oven cannot do with its figures, come back as
 * problems; never throws on what the file holds.
 */
export function planFromFile(file: unknown, context: PlanContext, engine: Engine = ours): Planned {
  const read = readPlanObject(file, context);
  if (!read.ok) return read;
  const { evening, assumed, warnings } = read;
  const { goal, ...asked } = context;
  const planned = planWith(evening, { ...asked, assumed, warnings }, engine);
  if (goal === undefined || !planned.ok) return planned;
  const advice = adviceFor(goal, {
    file: file as PlanFile,
    evening,
    answer: planned.answer,
    plan: (changed) =>
      planFromFile(changed, { ...asked, band: false, advice: false }, { ...engine, lateStart: () => [] }),
  });
  return { ...planned, answer: { ...planned.answer, advice } };
}

/** Plans an evening. Figures that lie beyond what can be computed come back as problems with the plan's own paths. */
export function planEvening(evening: Evening, extras: PlanExtras, engine: Engine = ours): Planned {
  return planWith(evening, extras, engine);
}
