/**
 * An evening as the computation sees it: every figure in SI (K, m, kg, s, W), nothing left out, nothing to be
 * looked up. `readPlan` makes one from a plan file; percentages stay percentages of flour mass (baker's percent).
 */
import type {
  BenchId,
  BottomElementId,
  CheeseId,
  FuelId,
  LiquidId,
  MixingId,
  OvenPresetId,
  PlateMaterialId,
  SurfaceId,
  YeastId,
} from './ids.ts';

/** A point on the clock: milliseconds since 1970-01-01T00:00Z, and the offset it is to be shown with. */
export interface Instant {
  readonly epochMilliseconds: number;
  readonly offsetMinutes: number;
}

export interface Anchor {
  /** `eatAt`: the first pizza is cut (out of the oven plus a minute). `startAt`: the cook begins (flour in the bowl). */
  readonly kind: 'eatAt' | 'startAt';
  readonly time: Instant;
}

export interface Kitchen {
  /** K */
  readonly roomTemperature: number;
  /** m above the sea */
  readonly altitude: number;
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
  /** m */
  readonly width: number;
  readonly depth: number;
  readonly thickness: number;
  /** underside above the cavity floor, as a share of the cavity height */
  readonly rackHeight: number;
  readonly surface: SurfaceId;
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
}

export interface LiquidPart {
  readonly kind: LiquidId;
  /** baker's percentage */
  readonly percent: number;
  /** mass fraction of water, given only for `custom` */
  readonly waterShare: number | undefined;
}

export interface Dough {
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
  /** s, from divided and balled to shaped */
  readonly restBeforeShaping: number;
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
}

/** Something the plan file did not say and what was taken instead, for the list of assumptions. */
export interface Assumption {
  readonly path: string;
  /** as a plan file would write it */
  readonly taken: string;
  readonly from: 'demo evening' | 'oven preset' | 'plate material' | 'kitchen' | 'common default';
}
