/**
 * The answer of a plan as scripts read it: `npm run --silent plan -- FILE --json` prints exactly one `PlanAnswer`.
 * Temperatures in degrees Celsius, times as RFC 3339 with the offset of the anchor. Keys may be added, never renamed.
 */
import type { Assumption } from './evening.ts';

export interface Warning {
  /** stable, kebab-case */
  readonly code: string;
  /** one plain sentence with the figure that triggered it */
  readonly message: string;
}

export type Range = readonly [p10: number, p90: number];

export interface BakeAnswer {
  readonly pizza: number;
  readonly inAt: string;
  readonly outAt: string;
  readonly minutes: number;
  readonly plateTopAtLoadC: number;
  readonly plateTopAtUnloadC: number;
  readonly baseLightness: number;
  readonly rimLightness: number;
  readonly crumbC: number;
  readonly waterLeftOnTopG: number;
  readonly waterLostG: number;
  readonly decidedBy: 'base' | 'top' | 'crumb';
  readonly minutesToLightness: Readonly<Record<string, number | null>>;
  readonly finishMinutes: number;
  /** minutes the plate was given to recover before this pizza; 0 for the first */
  readonly waitBeforeMinutes: number;
}

/** One bar in the lanes of the clock. */
export interface Task {
  /** stable within a plan: `mix`, `rise`, `preheat`, `bake-1` … */
  readonly id: string;
  readonly lane: 'dough' | 'oven' | 'hands';
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** what the cook does, as a line for the fridge; absent for bars in which nothing is done */
  readonly step?: string;
}

export interface PlanAnswer {
  readonly title: string;
  readonly ovenOnAt: string;
  readonly airReadyAt: string;
  readonly plateReadyAt: string;
  readonly eatAt: string;
  readonly lastEatAt: string;
  /** null only in the window, while the point forecast is shown and the band is still being computed */
  readonly range: { readonly preheatMinutes: Range; readonly bakeMinutes: Range } | null;
  readonly preheat: {
    readonly minutes: number;
    readonly airReadyMinutes: number;
    readonly settledPlateTopC: number;
    readonly idlePowerW: number;
    readonly plateTopC: number;
    readonly plateCoreC: number;
    readonly ovenAirC: number;
    readonly energyKWh: number;
    readonly biot: number;
    readonly plateModel: 'lumped' | 'slab';
    readonly plateMassKg: number;
  };
  readonly bakes: readonly BakeAnswer[];
  readonly dough: {
    readonly liquidC: number;
    readonly doughC: number;
    readonly trueHydrationPercent: number;
    readonly nominalHydrationPercent: number;
    readonly riseMinutes: number;
    readonly riseRangeMinutes: Range;
    readonly readyWindow: { readonly from: string; readonly to: string };
    readonly ingredientsG: Readonly<Record<string, number>>;
  };
  readonly tasks: readonly Task[];
  readonly curves: Curves;
  readonly preheatCurve: Curves;
  readonly energyKWh: number;
  readonly limitedBy: 'plate' | 'dough' | 'hands';
  readonly slackMinutes: Readonly<Record<'plate' | 'dough' | 'hands', number>>;
  /** what switching on later costs, for the first pizza at its planned load */
  readonly lateStart: readonly {
    readonly lateMinutes: number;
    readonly plateTopC: number;
    readonly bakeMinutes: number;
  }[];
  readonly assumed: readonly Assumption[];
  readonly warnings: readonly Warning[];
}

export interface Curves {
  /** from `ovenOnAt` */
  readonly minutes: readonly number[];
  readonly ovenAirC: readonly number[];
  readonly plateTopC: readonly number[];
  readonly plateCoreC: readonly number[];
}
