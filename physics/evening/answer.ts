/**
 * The answer of a plan as scripts read it: `npm run --silent plan -- FILE --json` prints exactly one `PlanAnswer`.
 * Temperatures in degrees Celsius, times as RFC 3339 with the offset of the anchor. Keys may be added, never renamed.
 */
import type { Assumption } from './evening.ts';
import type { AnchorId, GoalId, RisePieceId, RisePlaceId, WaitRuleId, YeastId } from './ids.ts';
import type { Spread } from './uncertain.ts';

export interface Warning {
  /** stable, kebab-case */
  readonly code: string;
  /** one plain sentence with the figure that triggered it */
  readonly message: string;
  /** where the limit behind a caution comes from, and how sure that is; absent where a warning rests on no source */
  readonly source?: string;
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

/** What the answer says of a bake where there is something to say. */
export interface BakeExtras {
  /** from the load; null for what was not done when the pizza came out */
  readonly partsDoneMinutes?: Readonly<Record<'base' | 'rim' | 'crumb' | 'cheese', number | null>>;
  /** what the cook does meanwhile */
  readonly steps?: readonly { readonly what: string; readonly at: string; readonly seconds: number }[];
  /** the first bake of a base that is finished here */
  readonly baseAhead?: {
    readonly minutes: number;
    readonly baseLightness: number;
    readonly rimLightness: number;
    readonly waterLostG: number;
  };
}

/** What can be done about the first bake, and whether to wait or to bake longer for the others. */
export interface BakeAdvice {
  /** the published law behind every lightness */
  readonly browningLaw: string;
  readonly disagreement: { readonly first: string; readonly last: string; readonly minutes: number } | null;
  /** the best first, each with what the first bake then is */
  readonly remedies: readonly {
    readonly what: string;
    /** fields of the plan with their new values, as `--set` takes them */
    readonly change: readonly { readonly path: string; readonly value: string }[];
    readonly minutes: number;
    readonly finishMinutes: number;
    readonly baseLightness: number;
    readonly rimLightness: number;
    readonly waterLeftOnTopG: number;
    readonly preheatMinutes: number;
  }[];
  /** how the waits of the plan were found; `given` where it says them itself */
  readonly waitRule: WaitRuleId | 'given';
  /** for each pizza after the first */
  readonly waitOrBake: readonly {
    readonly pizza: number;
    /** as the plan has it */
    readonly plannedWaitMinutes: number;
    readonly waitMinutes: readonly number[];
    readonly bakeMinutes: readonly number[];
    readonly totalMinutes: readonly number[];
    readonly plateTopC: readonly number[];
  }[];
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
  readonly needs: readonly ('hands' | 'oven' | 'counter')[];
  /** ids of the tasks that are over before it begins */
  readonly waitsFor: readonly string[];
  /** minutes that it may begin later, or take longer, with all else in its order; absent where nothing is done or waits */
  readonly slackMinutes?: number;
  /** where hands were busy at its own time: minutes later (less than 0: sooner), and the task they were busy with */
  readonly moved?: { readonly minutes: number; readonly for: string };
}

export interface DoughPhase {
  readonly where: RisePlaceId;
  readonly as: RisePieceId;
  readonly from: string;
  readonly to: string;
  readonly placeC: number;
}

/** Left out where nothing sane does it. */
export interface DoughForTime {
  /** from the end of mixing to ready */
  readonly minutes: number;
  /** at the temperatures of the plan */
  readonly yeastPercent?: number;
  readonly yeastG?: number;
  /** of the place that lasts as long as the dough needs, at the dose of the plan */
  readonly placeC?: number;
}

export interface ToppingsAnswer {
  readonly sauceG: number;
  readonly cheeseG: number;
  /** g/cm2 of the part that is topped, over all pizzas */
  readonly sauceGPerCm2: number;
  readonly cheeseGPerCm2: number;
  /** pizza by pizza, also where they are all alike */
  readonly each: readonly {
    readonly pizza: number;
    readonly diameterCm: number;
    readonly ballG: number;
    readonly sauceG: number;
    readonly cheeseG: number;
  }[];
  /** cans to open, g of sauce in each, g of sauce left over, and for how many pizzas more that is */
  readonly cans: number;
  readonly canYieldG: number;
  readonly leftSauceG: number;
  readonly leftForPizzas: number;
}

export interface ShoppingItem {
  readonly item: string;
  readonly grams: number;
  /** `2 cans of 400 g`, `or 3.6 g fresh`; empty when there is nothing to say */
  readonly note: string;
}

export interface Suggestion {
  readonly id:
    /** nothing has to change: what is first and what the others can wait */
    | 'in-time'
    | 'oven-earlier'
    | 'together'
    | 'phase'
    | 'yeast'
    | 'place'
    | 'liquid'
    | 'rest'
    | 'ahead'
    | 'plate'
    | 'load-colder'
    | 'later';
  /** one plain sentence with its figures */
  readonly message: string;
  /** fields of the plan with their new values, as `--set` takes them; empty when nothing in the plan changes */
  readonly change: readonly { readonly path: string; readonly value: string }[];
  /** minutes by which the first pizza comes sooner, or the late start is made up, or the dough keeps longer */
  readonly gainsMinutes: number;
  /** whether this change alone makes them meet */
  readonly meets: boolean;
}

/** What advice speaks of, of one plan. */
export interface AdviceOutcome {
  readonly preheatMinutes: number;
  /** the first pizza */
  readonly bakeMinutes: number;
  /** from switching on, or from a begin that is given, until the last pizza is cut */
  readonly eveningMinutes: number;
  readonly energyKWh: number;
  /** of the first pizza: base, what its rim lacks under the top element, water left on top */
  readonly baseLightness: number;
  readonly finishMinutes: number;
  readonly waterLeftOnTopG: number;
}

export interface Advised {
  readonly what: string;
  /** one plain sentence: what to do, what it brings and what it costs */
  readonly message: string;
  /** fields of the plan with their new values, as `--set` takes them */
  readonly change: readonly { readonly path: string; readonly value: string }[];
  /** what the plan gives with them */
  readonly after: AdviceOutcome;
  /** by how much the goal's own measure gets better */
  readonly gain: number;
}

/** For a goal the few changes that bring most, the best first. */
export interface Advice {
  readonly goal: GoalId;
  readonly before: AdviceOutcome;
  /** what the goal begins from, such as a darker shade or the weaker oven itself; each item holds it as well */
  readonly basis?: Advised;
  readonly items: readonly Advised[];
}

/** What is held when guests come late, found out when all is ready, and what that costs. */
export interface GuestsLate {
  readonly minutes: number;
  readonly energyKWh: number;
  /** at the plan's price, when it gives one */
  readonly cost?: number;
  /** of the first pizza, loaded so much later */
  readonly plateTopC: number;
  readonly bakeMinutes: number;
  /** that the dough is still good after the last pizza is shaped; less than 0 when it is not */
  readonly doughSpareMinutes: number;
  /** what to do with oven, dough and toppings, a sentence each */
  readonly hold: readonly string[];
}

export interface PlanAnswer {
  readonly title: string;
  /** what the clock is tied to */
  readonly anchor: { readonly kind: AnchorId; readonly at: string };
  readonly ovenOnAt: string;
  readonly airReadyAt: string;
  readonly plateReadyAt: string;
  readonly eatAt: string;
  readonly lastEatAt: string;
  /** null only in the window, while the point forecast is shown and the band is still being computed */
  readonly range: Spread | null;
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
    /** at `plateTopC`: what a kelvin takes, and what is stored above the kitchen's temperature */
    readonly plateHeatJPerK: number;
    readonly plateEnergyKWh: number;
    /** what a hand-held infrared thermometer shows of the plate through the open door, set as most are sold */
    readonly infrared: { readonly plateEmissivity: number; readonly setTo: number; readonly showsC: number };
  };
  /** the energy at the plan's price, when it gives one */
  readonly cost?: {
    readonly perKWh: number;
    readonly currency: string;
    readonly preheat: number;
    readonly evening: number;
  };
  /** minutes until the plate may be touched, bare in open air and in the shut oven; null when it never is */
  readonly cooling: {
    readonly belowC: number;
    readonly openAirMinutes: number | null;
    readonly shutOvenMinutes: number | null;
  };
  readonly bakes: readonly (BakeAnswer & BakeExtras)[];
  /** left out with `band: false` */
  readonly bakeAdvice?: BakeAdvice;
  readonly dough: {
    readonly liquidC: number;
    readonly doughC: number;
    readonly trueHydrationPercent: number;
    readonly nominalHydrationPercent: number;
    readonly riseMinutes: number;
    readonly riseRangeMinutes: Range;
    readonly readyWindow: { readonly from: string; readonly to: string };
    readonly ingredientsG: Readonly<Record<string, number>>;
    /** the liquid by the bakers' rule of three temperatures, and in a sentence why the balance differs */
    readonly liquidByRuleC: number;
    readonly liquidWhy: string;
    /** g of the water to take as ice; 0 when the tap is cold enough */
    readonly iceG: number;
    /** g of each kind of yeast that would do the work, lowest to highest of the published equivalents */
    readonly yeastG: Readonly<Record<YeastId, Range>>;
    /** yeast, or else the temperature of its place, that makes the dough ready after other times */
    readonly forTimes: readonly DoughForTime[];
    /** where the dough stands, from the end of mixing until it is shaped */
    readonly phases: readonly DoughPhase[];
  };
  readonly toppings: ToppingsAnswer;
  readonly shopping: readonly ShoppingItem[];
  readonly tasks: readonly Task[];
  readonly curves: Curves;
  readonly preheatCurve: Curves;
  readonly energyKWh: number;
  /**
   * The chain that has to begin first: were the evening to begin later, or supper be sooner, it is this one that would
   * have to give. `slackMinutes`: how much later than it the others may begin, or how much longer they may take.
   */
  readonly limitedBy: 'plate' | 'dough' | 'hands';
  readonly slackMinutes: Readonly<Record<'plate' | 'dough' | 'hands', number>>;
  /** ids of the tasks that wait one for the other from the evening's begin to its end: none of them has slack */
  readonly criticalChain: readonly string[];
  /** when each has to begin at the latest for this plan */
  readonly beginBy: Readonly<Record<'plate' | 'dough' | 'hands', string>>;
  /** what would make dough and plate meet where they do not, or sooner; the cheapest first, each computed anew */
  readonly suggestions: readonly Suggestion[];
  /** what switching on later costs, for the first pizza at its planned load */
  readonly lateStart: readonly {
    readonly lateMinutes: number;
    readonly plateTopC: number;
    readonly bakeMinutes: number;
  }[];
  readonly guestsLate: GuestsLate;
  /** only when a goal was given */
  readonly advice?: Advice;
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
