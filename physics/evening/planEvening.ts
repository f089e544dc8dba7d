/** From an evening to its plan, with the simulation that this program has. */
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import type { Planned, PlanExtras } from './planWith.ts';

export type { Planned, PlanExtras } from './planWith.ts';

export interface PlanContext {
  /** ms since 1970-01-01T00:00Z, the clock of whoever asks */
  readonly now: number;
  /** whether to compute P10 to P90 as well; true unless said otherwise */
  readonly band?: boolean;
}

/**
 * Plans what a file says. Problems of the file, and what the dough or the oven cannot do with its figures, come back as
 * problems; never throws on what the file holds.
 */
export declare function planFromFile(file: unknown, context: PlanContext, engine?: Engine): Planned;

/** Plans an evening. Figures that lie beyond what can be computed come back as problems with the plan's own paths. */
export declare function planEvening(evening: Evening, extras: PlanExtras, engine?: Engine): Planned;
