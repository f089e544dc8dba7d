/** The simulation as the plan sees it: three functions, so that a test can put a hand-made run in their place. */
import type { Evening } from './evening.ts';
import type { Remedy } from './remedies.ts';
import type { EveningRun } from './run.ts';
import type { Spread } from './uncertain.ts';
import type { WaitCurve } from './waitCurve.ts';

/** What switching the oven on later costs, for the first pizza loaded when it was planned to be. */
export interface LateStart {
  readonly lateMinutes: number;
  readonly plateTopC: number;
  readonly bakeMinutes: number;
}

export interface Engine {
  readonly simulateEvening: (evening: Evening) => EveningRun;
  /** P10 to P90, minutes; the same seed gives the same answer */
  readonly spreadOf: (
    evening: Evening,
    run: EveningRun,
    options: { readonly samples: number; readonly seed: number },
  ) => Spread;
  readonly lateStart: (
    evening: Evening,
    run: EveningRun,
    lateMinutes: readonly number[],
  ) => readonly LateStart[];
  readonly remediesFor?: (evening: Evening, run: EveningRun) => readonly Remedy[];
  readonly waitCurves?: (run: EveningRun) => readonly WaitCurve[];
}
