/**
 * What the simulation of one evening gives. SI inside; times are seconds from switching the oven on, so that a run
 * knows nothing of the clock.
 */
export interface OvenTrace {
  /** s since the oven was switched on; at least one sample a quarter of a minute */
  readonly seconds: Float64Array;
  /** K */
  readonly ovenAir: Float64Array;
  readonly floor: Float64Array;
  readonly ceiling: Float64Array;
  readonly sides: Float64Array;
  readonly door: Float64Array;
  /** K, top face of the plate where the pizzas lie, its core (mid-thickness), its under-face */
  readonly plateTop: Float64Array;
  readonly plateCore: Float64Array;
  readonly plateUnder: Float64Array;
  /** K, top face of the plate beside the pizza */
  readonly plateAround: Float64Array;
  /** share of full power, 0 to 1 */
  readonly bottomElement: Float64Array;
  readonly topElement: Float64Array;
}

export interface Preheat {
  /** s until the thermostat's sensor first reaches the setting: the oven's own signal */
  readonly airReady: number;
  /** s until plate top and core are within the tolerance of where they settle, as means over a thermostat cycle */
  readonly plateReady: number;
  /** K, cycle means once nothing changes any more */
  readonly settledPlateTop: number;
  readonly settledOvenAir: number;
  /** W, mean power that holds the settled state */
  readonly idlePower: number;
  /** K at `plateReady` (cycle means) */
  readonly plateTop: number;
  readonly plateCore: number;
  readonly ovenAir: number;
  /** J from switching on to `plateReady` */
  readonly energy: number;
  readonly biotNumber: number;
  readonly plateModel: 'lumped' | 'slab';
  /** the same oven and plate with nothing ever loaded, 120 min at least */
  readonly trace: OvenTrace;
  /** what came in, what stayed, what left, J: closes to rounding */
  readonly balance: EnergyBalance;
}

export interface EnergyBalance {
  readonly supplied: number;
  readonly stored: number;
  readonly lostToRoom: number;
  readonly lostByVentAndDoor: number;
  /** carried off by steam made */
  readonly lostBySteam: number;
}

/** One layer of the pizza at one moment, from the plate upwards. */
export interface LayerSample {
  readonly layer: 'dough' | 'sauce' | 'cheese';
  /** m */
  readonly thickness: number;
  /** K */
  readonly bottom: number;
  readonly mean: number;
  readonly top: number;
  /** kg water per kg dry matter, mean */
  readonly moisture: number;
}

export interface BakeTrace {
  /** s since the oven was switched on */
  readonly seconds: Float64Array;
  /** K */
  readonly base: Float64Array;
  readonly crumb: Float64Array;
  readonly cheeseTop: Float64Array;
  readonly rimTop: Float64Array;
  /** CIE L* */
  readonly baseLightness: Float64Array;
  readonly rimLightness: Float64Array;
  /** layers of the centre column, for each sample */
  readonly layers: readonly (readonly LayerSample[])[];
}

/** What the cook did while a pizza baked. */
export interface DoneStep {
  readonly what: 'turn' | 'look' | 'pull-parchment' | 'top-element';
  /** s since the oven was switched on */
  readonly at: number;
  /** s that the door stood open or the top element was on */
  readonly lasts: number;
}

/** s from the load until each part was done; undefined for what was not when the pizza came out. */
export interface PartsDone {
  readonly base: number | undefined;
  readonly rim: number | undefined;
  readonly crumb: number | undefined;
  readonly cheese: number | undefined;
}

export interface Bake {
  /** 1 for the first */
  readonly pizza: number;
  /** s since the oven was switched on */
  readonly inAt: number;
  readonly outAt: number;
  /** K */
  readonly plateTopAtLoad: number;
  readonly plateTopAtUnload: number;
  readonly baseLightness: number;
  readonly rimLightness: number;
  /** K, coldest place of the crumb */
  readonly crumb: number;
  /** K, coldest place of the cheese */
  readonly cheese: number;
  /** kg, free water left in sauce and cheese; kg lost by the whole pizza */
  readonly waterLeftOnTop: number;
  readonly waterLost: number;
  readonly decidedBy: 'base' | 'top' | 'crumb';
  /** s from the load until the base reaches L*, whatever ended the bake; undefined if not within 40 min */
  readonly secondsToLightness: ReadonlyMap<number, number | undefined>;
  /** s under the top element that the rim still needs for its shade after `outAt`; 0 if it is there */
  readonly finish: number;
  readonly partsDone?: PartsDone;
  readonly steps?: readonly DoneStep[];
  /** for a base baked ahead: what its first bake was like */
  readonly baseAhead?: BaseAhead;
  readonly trace: BakeTrace;
  readonly balance: EnergyBalance;
  /** kg: water before = after + evaporated, to rounding */
  readonly water: { readonly before: number; readonly after: number; readonly evaporated: number };
}

/** The bake, some other day, of a base without topping. */
export interface BaseAhead {
  /** s */
  readonly seconds: number;
  readonly baseLightness: number;
  readonly rimLightness: number;
  /** kg */
  readonly waterLost: number;
}

export interface EveningRun {
  readonly preheat: Preheat;
  readonly bakes: readonly Bake[];
  /** the whole evening from switching on to ten minutes after the last pizza */
  readonly trace: OvenTrace;
  /** J, switched on to the last pizza out */
  readonly energy: number;
  /** s for the plate to cool until safe to touch in the oven, switched off and shut after the last pizza */
  readonly coolInOven: number;
}
