/** From an evening to its plan: the run of the oven and the rise of the dough, joined on the clock. */
import type { PlanAnswer, Warning } from './answer.ts';
import type { Engine } from './engine.ts';
import type { Assumption, Evening } from './evening.ts';
import type { Problem } from './problem.ts';
import type { EveningRun } from './run.ts';

export type Planned =
  | {
      readonly ok: true;
      readonly evening: Evening;
      readonly answer: PlanAnswer;
      readonly run: EveningRun;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface PlanContext {
  /** ms since 1970-01-01T00:00Z, the clock of whoever asks */
  readonly now: number;
  /** whether to compute P10 to P90 as well; true unless said otherwise */
  readonly band?: boolean;
}

export interface PlanExtras {
  readonly assumed: readonly Assumption[];
  /** what the reading of the file already warned of */
  readonly warnings: readonly Warning[];
  readonly band?: boolean;
  /** ms since 1970-01-01T00:00Z; without it nothing can lie in the past */
  readonly now?: number;
}

export declare function planFromFile(file: unknown, context: PlanContext): Planned;

export declare function planEvening(evening: Evening, extras: PlanExtras, engine?: Engine): Planned;
