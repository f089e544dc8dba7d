/**
 * The plan file as it lies on disk and as the window keeps it: every physical field a string with its unit, as the
 * cook typed it. What is left out is filled in by `readPlan`. `DeepPartial`: a file may leave anything out.
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

export const planFormat = 'hearthclock/evening';
export const planVersion = 1;

export interface PlanFile {
  format: typeof planFormat;
  version: typeof planVersion;
  title?: string;
  anchor?: { kind?: 'eatAt' | 'startAt'; time?: string };
  kitchen?: { roomTemperature?: string; altitude?: string };
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
  };
  plate?: {
    material?: PlateMaterialId;
    width?: string;
    depth?: string;
    thickness?: string;
    rackHeight?: number;
    surface?: SurfaceId;
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
  };
  dough?: {
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
  };
  toppings?: { sauce?: string; cheese?: { kind: CheeseId; mass: string; waterShare?: number }[] };
}
