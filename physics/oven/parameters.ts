/**
 * The physical parameters of an oven: what a cook cannot know and a preset supplies. Each has its reason here and none
 * is fitted to one case; where the reason is "our estimate" its spread is one of those that `spread.ts` varies.
 *
 * Figures that grow with the oven (racks, seams, vent) are those of the preset's own cavity; another size takes them in
 * proportion. A plan may replace any of them (`oven.physics`), and then they are taken as they stand.
 */
import type { Oven, OvenPhysics } from '../evening/evening.ts';
import type { OvenPresetId } from '../evening/ids.ts';
import { quantityOf } from '../quantities/index.ts';
import { burningAir, ovenPresets } from './presets.ts';

export interface OvenParameters {
  /**
   * J/(m2 K); enamelled sheet of 0.6 to 0.8 mm: 7850 kg/m3 x 500 J/(kg K) x 0.7 mm = 2.7 kJ, and half as much again for
   * flanges, runners and enamel
   */
  readonly linerCapacity: number;
  /** J/K of racks and runners, carried by the side walls: wire racks of 1 to 2 kg (from memory) at 500 J/(kg K) */
  readonly rackCapacity: number;
  /** m of mineral wool; 25 to 40 mm is what fits between a liner and a 60 cm or 30 in carcase, our estimate */
  readonly woolThickness: number;
  /** W/(m2 K), outer sheet to kitchen: some 5 by radiation at 40 degC, some 4 by natural convection */
  readonly outerCoefficient: number;
  /** J/(m2 K), one pane of 4 mm: 2500 kg/m3 x 800 J/(kg K) x 4 mm = 8 kJ */
  readonly doorPaneCapacity: number;
  /** W/(m2 K), inner to outermost pane, two gaps in series, each some 7 by radiation and still air, our estimate */
  readonly doorGapConductance: number;
  /** W/K, metal bridges and door seam: 0.3 W/K a metre of seam, our estimate */
  readonly seamConductance: number;
  /** m3/s of kitchen air through the vent when nothing burns: 7 cm2 under the draught of 0.4 m of hot air, our estimate */
  readonly ventFlow: number;
  /**
   * m3/s of kitchen air drawn in addition for each W of burner input. Methane needs 17.2 kg of air a kg, 55.5 MJ by
   * higher heating value: 0.31 g/s a kW; the vent draws the excess whether the burner is lit or not.
   */
  readonly burnerAir: number;
  /** total hemispherical, enamel 0.85 to 0.92 (textbooks, from memory) */
  readonly wallEmissivity: number;
  /** oven glass 0.90 to 0.97 (infrared camera maker's table) */
  readonly doorEmissivity: number;
  readonly element: {
    /** W/m2 of rated power on the rod's surface: bare heaters are built for 42 to 87 kW/m2 (thesis 81679, see docs) */
    readonly surfaceLoad: number;
    /** steel oxidised 0.80 (200 to 600 degC), strongly so 0.88 (50) to 0.98 (500): between (infrared camera maker's table) */
    readonly emissivity: number;
    /** J/(m2 K): a rod of 8 mm, 2 mm deep by volume over surface, 3000 J/(m3 K) x 1000 of steel and magnesia */
    readonly capacity: number;
    /** W/(m2 K), rod to cavity air: a horizontal cylinder of 8 mm, 430 K hotter than the air, Churchill and Chu: 14 */
    readonly convection: number;
    /** W/K from a hidden bottom element down into the insulation below it: k A/d of hot wool, 0.09 x 0.05 m2 / 0.03 m */
    readonly lossBelow: number;
  };
  /** share of a gas burner's heat that goes to the floor sheet; the rest comes into the cavity with the gases */
  readonly burnerToFloor: number;
  /** share of rated power that each element has until the thermostat first cuts out, and after it */
  readonly preheatShare: { readonly bottom: number; readonly top: number };
  readonly holdShare: { readonly bottom: number; readonly top: number };
  readonly thermostat: {
    /** s, first-order lag of the sensor: a rod or bulb of 4 to 6 mm in slow air, c rho d/(4 h) */
    readonly lag: number;
    /** K, half of the switching difference: 4 electronic, 7 to 12 hydraulic (common practice, no source) */
    readonly halfBand: number;
    /** share of what the sensor sees that is wall (the mean of ceiling and sides), the rest is air: h_r/(h_r + h_c) */
    readonly wallShare: number;
  };
  /**
   * W/(m2 K) on every face from the loop of air that hot floor, elements and vent keep going, joined to natural
   * convection as a third power. Baik et al. 1999 (J Food Sci 64, 688-694): 4 to 12 for the convective part in an
   * oven with 0.02 to 0.44 m/s of air; 5 to 10 without a fan is common practice: the lower end of both. These reasons
   * allow 4 as well; 5 was taken after 4 had left plates 16 to 18 K above the air, more than is expected (no source).
   */
  readonly circulation: number;
  /** factor on all natural convection, for spreads */
  readonly convectionFactor: number;
  /** W/(m2 K), forced convection everywhere when the fan runs; 15 to 30 is common practice, no source */
  readonly fanCoefficient: number;
}

interface Size {
  readonly floor: number;
  readonly seam: number;
  readonly volume: number;
}

function size({ width, depth, height }: { width: number; depth: number; height: number }): Size {
  return { floor: width * depth, seam: 2 * (width + height), volume: width * depth * height };
}

function metres(text: string): number {
  return quantityOf(text, 'length');
}

const sizes = new Map<OvenPresetId, Size>();

/** The preset's own cavity, read once. */
function presetSize(id: OvenPresetId): Size {
  const known = sizes.get(id);
  if (known) return known;
  const { width, depth, height } = ovenPresets[id].typePlate.cavity;
  const own = size({ width: metres(width), depth: metres(depth), height: metres(height) });
  sizes.set(id, own);
  return own;
}

/**
 * The parameters of an oven: its preset's, in proportion to its size, with what the plan itself says. An oven whose
 * fuel differs from its preset's takes the shares of the preset that has the fuel: a burner cannot be switched as
 * elements are.
 */
export function parametersOf(oven: Oven): OvenParameters {
  const { parameters: preset, typePlate } = ovenPresets[oven.preset];
  const [here, own] = [size(oven.cavity), presetSize(oven.preset)];
  const sized: OvenParameters = {
    ...preset,
    rackCapacity: (preset.rackCapacity * here.floor) / own.floor,
    seamConductance: (preset.seamConductance * here.seam) / own.seam,
    ventFlow: (preset.ventFlow * here.volume) / own.volume,
  };
  const fuel = typePlate.fuel === oven.fuel ? {} : ofFuel(oven);
  return withOwn({ ...sized, ...fuel }, oven.physics);
}

/** The figures that the plan itself gives, as they stand. */
function withOwn(p: OvenParameters, own: OvenPhysics): OvenParameters {
  const { element, preheatShare, holdShare, thermostat } = p;
  return {
    linerCapacity: own.linerCapacity ?? p.linerCapacity,
    rackCapacity: own.rackCapacity ?? p.rackCapacity,
    woolThickness: own.woolThickness ?? p.woolThickness,
    outerCoefficient: own.outerCoefficient ?? p.outerCoefficient,
    doorPaneCapacity: own.doorPaneCapacity ?? p.doorPaneCapacity,
    doorGapConductance: own.doorGapConductance ?? p.doorGapConductance,
    seamConductance: own.seamConductance ?? p.seamConductance,
    ventFlow: own.ventFlow ?? p.ventFlow,
    burnerAir: own.burnerAir === undefined ? p.burnerAir : own.burnerAir * burningAir,
    wallEmissivity: own.wallEmissivity ?? p.wallEmissivity,
    doorEmissivity: own.doorEmissivity ?? p.doorEmissivity,
    element: {
      surfaceLoad: own.elementLoad ?? element.surfaceLoad,
      emissivity: own.elementEmissivity ?? element.emissivity,
      capacity: own.elementCapacity ?? element.capacity,
      convection: own.elementConvection ?? element.convection,
      lossBelow: own.elementLossBelow ?? element.lossBelow,
    },
    burnerToFloor: own.burnerToFloor ?? p.burnerToFloor,
    preheatShare: {
      bottom: own.preheatShareBottom ?? preheatShare.bottom,
      top: own.preheatShareTop ?? preheatShare.top,
    },
    holdShare: {
      bottom: own.holdShareBottom ?? holdShare.bottom,
      top: own.holdShareTop ?? holdShare.top,
    },
    thermostat: {
      lag: own.sensorLag ?? thermostat.lag,
      halfBand: own.sensorHalfBand ?? thermostat.halfBand,
      wallShare: own.sensorWallShare ?? thermostat.wallShare,
    },
    circulation: own.circulation ?? p.circulation,
    convectionFactor: p.convectionFactor,
    fanCoefficient: own.fanCoefficient ?? p.fanCoefficient,
  };
}

function ofFuel(oven: Oven): Partial<OvenParameters> {
  const id = oven.fuel === 'gas' ? 'north-american-gas' : 'north-american';
  const { preheatShare, holdShare, burnerToFloor, circulation, ventFlow } = ovenPresets[id].parameters;
  const scale = size(oven.cavity).volume / presetSize(id).volume;
  return { preheatShare, holdShare, burnerToFloor, circulation, ventFlow: ventFlow * scale };
}
