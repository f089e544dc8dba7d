/**
 * The plan file as it lies on disk and as the window keeps it: every physical field a string with its unit, as the
 * cook typed it. What is left out is filled in by `readPlan`. `DeepPartial`: a file may leave anything out.
 */
import type { BrowningLawId } from '../bake/browning.ts';
import type {
  AnchorId,
  BenchId,
  BottomElementId,
  CheeseId,
  CoverId,
  FlourId,
  FuelId,
  InstrumentId,
  KeepId,
  LiquidId,
  LogWhatId,
  MixingId,
  OvenPresetId,
  PlaceId,
  PlateMaterialId,
  RisePieceId,
  RisePlaceId,
  SurfaceId,
  TomatoId,
  WaitRuleId,
  YeastId,
} from './ids.ts';
import type { UncertainName } from './uncertain.ts';

export const planFormat = 'hearthclock/evening';
/** The first there is: nothing older was ever written, so nothing is migrated. A newer one is refused and left alone. */
export const planVersion = 1;

/** The figures of an oven one by one, see `oven/parameters.ts` for what each is and why. */
export interface OvenPhysicsFile {
  linerCapacity?: string;
  rackCapacity?: string;
  woolThickness?: string;
  outerCoefficient?: string;
  doorPaneCapacity?: string;
  doorGapConductance?: string;
  seamConductance?: string;
  ventFlow?: string;
  wallEmissivity?: number;
  doorEmissivity?: number;
  elementLoad?: string;
  elementEmissivity?: number;
  elementCapacity?: string;
  elementConvection?: string;
  elementLossBelow?: string;
  burnerToFloor?: number;
  /** times the air that burning needs */
  burnerAir?: number;
  preheatShareBottom?: number;
  preheatShareTop?: number;
  holdShareBottom?: number;
  holdShareTop?: number;
  sensorLag?: string;
  sensorHalfBand?: string;
  sensorWallShare?: number;
  circulation?: string;
  fanCoefficient?: string;
}

/** Something that happened on the evening; which fields it has goes by `what`. */
export interface LogEntryFile {
  at: string;
  what: LogWhatId;
  /** id of a task of the plan */
  step?: string;
  /** a duration; a minus sign for sooner or back */
  by?: string;
  place?: PlaceId;
  temperature?: string;
  instrument?: InstrumentId;
  pizza?: number;
  words?: string;
  shade?: string;
}

export interface PlanFile {
  format: typeof planFormat;
  version: typeof planVersion;
  title?: string;
  anchor?: { kind?: AnchorId; time?: string };
  kitchen?: {
    roomTemperature?: string;
    altitude?: string;
    tapTemperature?: string;
    scaleStep?: string;
    energyPrice?: string;
  };
  oven?: {
    preset?: OvenPresetId;
    setpoint?: string;
    highestSetting?: string;
    startTemperature?: string;
    fuel?: FuelId;
    fan?: boolean;
    bottomElement?: BottomElementId;
    power?: { bottom?: string; top?: string };
    cavity?: { width?: string; depth?: string; height?: string };
    thermostatOffset?: string;
    /** what a preset supplies otherwise */
    physics?: OvenPhysicsFile;
  };
  plate?: {
    material?: PlateMaterialId;
    shape?: 'rectangular' | 'round';
    /** only with shape `round`, which has neither width nor depth */
    diameter?: string;
    width?: string;
    depth?: string;
    thickness?: string;
    rackHeight?: number;
    surface?: SurfaceId;
    /** one temperature, layers, or as the Biot number asks */
    model?: 'auto' | 'lumped' | 'slab';
    /** only with material `custom` */
    density?: string;
    specificHeat?: string;
    thermalConductivity?: string;
    emissivity?: number;
  };
  pizzas?: {
    count?: number;
    diameter?: string;
    ballMass?: string;
    /** `pale`, `golden`, `dark` or `lightness 53` */
    shade?: string;
    bench?: BenchId;
    /** the first, second ... pizza, where it differs from the others */
    each?: {
      diameter?: string;
      ballMass?: string;
      shade?: string;
      bench?: BenchId;
      sauce?: string;
      cheese?: { kind: CheeseId; mass: string; waterShare?: number }[];
    }[];
    steps?: {
      turnAtHalfTime?: boolean;
      lookAfter?: string;
      pullParchment?: boolean;
      topElementBefore?: string;
      topElementAfter?: string;
      topElementAtEnd?: string;
    };
    /** after the oven was switched on; without it the first pizza goes in when the plate is ready */
    loadAt?: string;
    /** between one pizza and the next; without it as short as the bakes allow */
    wait?: string;
    /** how the wait is found where the plan does not give it; `quarter-longer` unless said otherwise */
    waitRule?: WaitRuleId;
    /** bases baked ahead; `shade` is theirs when they come out the first time, `kept` from the last one wrapped to oven on */
    parBake?: { keep: KeepId; shade?: string; kept?: string };
    browningLaw?: BrowningLawId;
    /** times the rate of that law, as learned from a bake */
    browningRate?: number;
  };
  dough?: {
    flour?: FlourId;
    /** percent of the flour's mass */
    flourMoisture?: number;
    liquid?: { kind: LiquidId; percent: number; waterShare?: number }[];
    salt?: number;
    sugar?: number;
    oil?: number;
    yeast?: { kind?: YeastId; percent?: number };
    flourTemperature?: string;
    wantedTemperature?: string;
    riseTemperature?: string;
    mixing?: MixingId;
    restBeforeShaping?: string;
    /** in order; a phase without duration lasts as long as the dough needs, and at most one may */
    phases?: {
      where: RisePlaceId;
      temperature?: string;
      duration?: string;
      as: RisePieceId;
      cover?: CoverId;
    }[];
  };
  toppings?: {
    sauce?: string;
    cheese?: { kind: CheeseId; mass: string; waterShare?: number }[];
    /** contents of one can of tomatoes */
    can?: string;
    tomatoes?: TomatoId;
  };
  /** how far off an input may be (one standard deviation) where the cook knows it better than usual */
  known?: {
    thermostatOffset?: string;
    // percent of the value; for emissivities a number
  } & Partial<Record<Exclude<UncertainName, 'thermostatOffset'>, number>>;
  /** what happened, and what the cook said of it; opens the next evening */
  tonight?: { log?: LogEntryFile[] };
}
