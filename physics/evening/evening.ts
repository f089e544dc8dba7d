/**
 * An evening as the computation sees it: every figure in SI (K, m, kg, s, W), nothing left out, nothing to be
 * looked up. `readPlan` makes one from a plan file; percentages stay percentages of flour mass (baker's percent).
 */
import type { Known } from './uncertain.ts';
import type { BrowningLawId } from '../bake/browning.ts';
import type {
  AnchorId,
  BenchId,
  BottomElementId,
  CheeseId,
  CoverId,
  FlourId,
  FuelId,
  KeepId,
  LiquidId,
  MixingId,
  OvenPresetId,
  PlateMaterialId,
  RisePieceId,
  RisePlaceId,
  SurfaceId,
  TomatoId,
  WaitRuleId,
  YeastId,
} from './ids.ts';

/** A point on the clock: milliseconds since 1970-01-01T00:00Z, and the offset it is to be shown with. */
export interface Instant {
  readonly epochMilliseconds: number;
  readonly offsetMinutes: number;
}

export interface Anchor {
  /**
   * `eatAt`: the first pizza is cut (out of the oven plus a minute). `startAt`: the cook begins (flour in the bowl).
   * `ovenOnAt`: the oven is switched on.
   */
  readonly kind: AnchorId;
  readonly time: Instant;
}

export interface EnergyPrice {
  readonly perKWh: number;
  /** as the cook wrote it: `EUR`, `p`, `$` */
  readonly currency: string;
}

export interface Kitchen {
  /** K */
  readonly roomTemperature: number;
  /** m above the sea */
  readonly altitude: number;
  /** what a kWh of the oven's energy costs, when the plan says so */
  readonly energyPrice: EnergyPrice | undefined;
  /** K, of the cold tap */
  readonly tapTemperature: number;
  /** kg, the smallest step of the kitchen scale */
  readonly scaleStep: number;
}

/** The oven that stands in the kitchen: what a cook can say of it. The physical rest belongs to the preset. */
export interface Oven {
  readonly preset: OvenPresetId;
  /** K, what the dial is set to */
  readonly setpoint: number;
  /** K, the highest the dial goes */
  readonly highestSetting: number;
  /** K, of air, walls and plate when it is switched on */
  readonly startTemperature: number;
  readonly fuel: FuelId;
  readonly fan: boolean;
  readonly bottomElement: BottomElementId;
  /** W; for gas, `bottom` is the burner's input and `top` the grill's */
  readonly power: { readonly bottom: number; readonly top: number };
  /** m, inside */
  readonly cavity: { readonly width: number; readonly depth: number; readonly height: number };
  /** K, how much hotter the oven is than its dial says; 0 for an honest one */
  readonly thermostatOffset: number;
  /** what the plan itself says of the oven's physics instead of the preset */
  readonly physics: OvenPhysics;
}

/** Figures of an oven that a preset supplies and a plan may replace, one by one, SI. See `oven/parameters.ts`. */
export interface OvenPhysics {
  readonly linerCapacity?: number | undefined;
  readonly rackCapacity?: number | undefined;
  readonly woolThickness?: number | undefined;
  readonly outerCoefficient?: number | undefined;
  readonly doorPaneCapacity?: number | undefined;
  readonly doorGapConductance?: number | undefined;
  readonly seamConductance?: number | undefined;
  readonly ventFlow?: number | undefined;
  readonly wallEmissivity?: number | undefined;
  readonly doorEmissivity?: number | undefined;
  readonly elementLoad?: number | undefined;
  readonly elementEmissivity?: number | undefined;
  readonly elementCapacity?: number | undefined;
  readonly elementConvection?: number | undefined;
  readonly elementLossBelow?: number | undefined;
  readonly burnerToFloor?: number | undefined;
  readonly burnerAir?: number | undefined;
  readonly preheatShareBottom?: number | undefined;
  readonly preheatShareTop?: number | undefined;
  readonly holdShareBottom?: number | undefined;
  readonly holdShareTop?: number | undefined;
  readonly sensorLag?: number | undefined;
  readonly sensorHalfBand?: number | undefined;
  readonly sensorWallShare?: number | undefined;
  readonly circulation?: number | undefined;
  readonly fanCoefficient?: number | undefined;
}

/** Thermal properties of the cook's own plate (material `custom`). SI. */
export interface CustomMaterial {
  readonly density: number;
  readonly specificHeat: number;
  readonly thermalConductivity: number;
  readonly emissivity: number;
}

export interface Plate {
  readonly material: PlateMaterialId;
  readonly shape: 'rectangular' | 'round';
  /** m; both the diameter of a round plate */
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
  /** underside above the cavity floor, as a share of the cavity height */
  readonly rackHeight: number;
  readonly surface: SurfaceId;
  /** how the plate is computed in the preheat: one temperature, layers, or as its Biot number asks */
  readonly model: 'auto' | 'lumped' | 'slab';
  /** only with material `custom` */
  readonly custom: CustomMaterial | undefined;
}

export interface Pizzas {
  readonly count: number;
  /** m */
  readonly diameter: number;
  /** kg */
  readonly ballMass: number;
  /** L* that the base is to reach (CIE 1976) */
  readonly shadeLightness: number;
  readonly bench: BenchId;
  /** what sets the first, second ... pizza apart from the others */
  readonly each?: readonly OnePizza[] | undefined;
  readonly steps?: BakeSteps | undefined;
  /** s after switching on at which the first pizza goes in, ready plate or not; undefined: when the plate is ready */
  readonly loadAt?: number | undefined;
  /** s between a pizza and the next; undefined: as the rule finds */
  readonly wait?: number | undefined;
  /** undefined: `quarter-longer`, the shortest total that keeps every bake within a quarter of the first */
  readonly waitRule?: WaitRuleId | undefined;
  readonly parBake?: ParBake | undefined;
  /** the published law that colours base and rim; undefined: the first of `browningLaws` */
  readonly browningLaw?: BrowningLawId | undefined;
  /** times the law's own rate, as learned from a bake; undefined: 1 */
  readonly browningRate?: number | undefined;
}

/** One pizza of its own; what is undefined is as for all. */
export interface OnePizza {
  readonly diameter?: number | undefined;
  readonly ballMass?: number | undefined;
  readonly shadeLightness?: number | undefined;
  readonly bench?: BenchId | undefined;
  /** kg */
  readonly sauce?: number | undefined;
  readonly cheese?: readonly CheesePart[] | undefined;
}

/** What the cook does to a bake beside loading and unloading. Durations in s; undefined or false: not done. */
export interface BakeSteps {
  /** door open, the pizza turned, at half the time it takes without */
  readonly turnAtHalfTime?: boolean | undefined;
  /** door open for a look so long after the load */
  readonly lookAfter?: number | undefined;
  /** the paper pulled out as soon as the base has set */
  readonly pullParchment?: boolean | undefined;
  /** top element at full and the bottom off, so long before each load; so long after it until the pizza comes out; and
   * so long on top of a bake that is done */
  readonly topElementBefore?: number | undefined;
  readonly topElementAfter?: number | undefined;
  readonly topElementAtEnd?: number | undefined;
}

/** Bases baked ahead without topping until they have set, kept, and finished on the evening. */
export interface ParBake {
  readonly keep: KeepId;
  /** L* of the base when it comes out the first time */
  readonly shadeLightness: number;
  /** s from the last base wrapped to switching the oven on for the evening */
  readonly kept: number;
}

export interface LiquidPart {
  readonly kind: LiquidId;
  /** baker's percentage */
  readonly percent: number;
  /** mass fraction of water, given only for `custom` */
  readonly waterShare: number | undefined;
}

/** A stretch of the rise: where the dough stands, how warm it is there, in one piece or as balls. */
export interface RisePhase {
  readonly where: RisePlaceId;
  /** K, of the surroundings */
  readonly temperature: number;
  /** s; undefined for the one that lasts as long as the dough needs */
  readonly duration: number | undefined;
  readonly as: RisePieceId;
  readonly cover: CoverId;
}

export interface Dough {
  readonly flour: FlourId;
  /** mass fraction of water in the flour as it is weighed */
  readonly flourMoisture: number;
  readonly liquid: readonly LiquidPart[];
  readonly salt: number;
  readonly sugar: number;
  readonly oil: number;
  readonly yeast: { readonly kind: YeastId; readonly percent: number };
  /** K */
  readonly flourTemperature: number;
  readonly wantedTemperature: number;
  /** K, where the dough rises; the room's when the plan does not say */
  readonly riseTemperature: number;
  readonly mixing: MixingId;
  /** s, from divided and balled to shaped; not used when a phase says how the balls stand */
  readonly restBeforeShaping: number;
  /** the rise in order; empty for one rise at `riseTemperature`, its last `restBeforeShaping` as balls */
  readonly phases: readonly RisePhase[];
}

export interface CheesePart {
  readonly kind: CheeseId;
  /** kg a pizza */
  readonly mass: number;
  /** mass fraction of water, given only for `custom` */
  readonly waterShare: number | undefined;
}

export interface Toppings {
  /** kg a pizza */
  readonly sauce: number;
  readonly cheese: readonly CheesePart[];
  /** kg in one can of tomatoes, and whether whole ones are drained before they become sauce */
  readonly can: number;
  readonly tomatoes: TomatoId;
}

export interface Evening {
  readonly title: string;
  readonly anchor: Anchor;
  readonly kitchen: Kitchen;
  readonly oven: Oven;
  readonly plate: Plate;
  readonly pizzas: Pizzas;
  readonly dough: Dough;
  readonly toppings: Toppings;
  /** what the cook knows, or has measured, better than usual */
  readonly known: Known;
}

/** Something the plan file did not say and what was taken instead, for the list of assumptions. */
export interface Assumption {
  readonly path: string;
  /** as a plan file would write it */
  readonly taken: string;
  readonly from: 'demo evening' | 'oven preset' | 'plate material' | 'kitchen' | 'common default';
}
