/** The state of a column of pizza, cell by cell, and the vapour in its pores that belongs to it. */
import { activitySlopes, saturation, vapourPotential, tabulatedActivity } from './moistCell.ts';
import type { LayerMaterial } from './moistCell.ts';

export interface CellSpec {
  readonly material: LayerMaterial;
  /** m */
  readonly thickness: number;
  /** kg/m2 */
  readonly solids: number;
  readonly water: number;
  /** K */
  readonly temperature: number;
}

export interface ColumnSetting {
  readonly cells: readonly CellSpec[];
  /** m2 */
  readonly area: number;
  readonly plateNode: number;
  readonly surfaceNode: number;
  /** index of the surface among the network's convecting faces: its h drives the evaporation */
  readonly convectingFace: number;
  /** m2 K/W between the plate's uppermost node and the dough: half a plate cell, contact, what lies between */
  contactResistance: number;
  /** factor on the evaporation from the top */
  readonly evaporationFactor: number;
  /** Pa */
  readonly pressure: number;
  readonly evaporation: boolean;
  /** whether vapour moves from cell to cell, and whether the cavity knows of the steam; both true unless said */
  readonly vapourInside?: boolean;
  readonly cavityHumidity?: boolean;
}

export interface ColumnState {
  readonly heat: Float64Array;
  readonly water: Float64Array;
  readonly temperature: Float64Array;
  readonly baseFace: number;
  readonly evaporated: number;
  readonly steamHeatTotal: number;
}

/** The state of a column and the vapour that belongs to it, cell by cell. */
export interface ColumnFields {
  /** K */
  readonly temperature: Float64Array;
  /** kg/m2 */
  readonly water: Float64Array;
  /** J/m2 above 0 degC */
  readonly heat: Float64Array;
  /** mole fraction of vapour in the pores, its slopes by temperature and water, its potential */
  readonly x: Float64Array;
  readonly xT: Float64Array;
  readonly xW: Float64Array;
  readonly psi: Float64Array;
}

/** Fields of a column of n cells, all zero. */
export function emptyFields(n: number): ColumnFields {
  const field = (): Float64Array => new Float64Array(n);
  return {
    temperature: field(),
    water: field(),
    heat: field(),
    x: field(),
    xT: field(),
    xW: field(),
    psi: field(),
  };
}

/** What stays of the cells through a bake, as arrays: a step reads them some sixty times a thousandth of a second. */
export interface CellConstants {
  /** kg/m2, and m2/kg */
  readonly solids: Float64Array;
  readonly perSolids: Float64Array;
  /** J/(m2 K) of the dry matter */
  readonly solidsCapacity: Float64Array;
  /** m */
  readonly halfThickness: Float64Array;
  /** kg/kg at which the water activity is one half at 100 degC */
  readonly halfMoisture: Float64Array;
  readonly vapourShare: Float64Array;
}

/** The constants of a column, read off its cells once. */
export function cellConstants(cells: readonly CellSpec[]): CellConstants {
  const each = (read: (cell: CellSpec) => number): Float64Array => Float64Array.from(cells, read);
  return {
    solids: each(({ solids }) => solids),
    perSolids: each(({ solids }) => 1 / solids),
    solidsCapacity: each(({ solids, material }) => solids * material.solidsHeat),
    halfThickness: each(({ thickness }) => thickness / 2),
    halfMoisture: each(({ material }) => material.halfMoisture),
    vapourShare: each(({ material }) => material.vapourShare),
  };
}

const atSaturation = { pressure: 0, slope: 0 };

/** Sets x, its slopes and the potential from temperature and water. @param pressure Pa */
export function updateVapour(state: ColumnFields, constants: CellConstants, pressure: number): void {
  const { temperature, water, x, xT, xW, psi } = state;
  const { perSolids, halfMoisture } = constants;
  const n = temperature.length;
  const perPressure = 1 / pressure;
  for (let i = 0; i < n; i++) {
    const T = temperature[i]!;
    const dry = perSolids[i]!;
    const W = water[i]! * dry;
    const a = tabulatedActivity(W, T, halfMoisture[i]!);
    saturation(T, atSaturation);
    const share = atSaturation.pressure * perPressure;
    const full = a * share;
    x[i] = full;
    psi[i] = vapourPotential(full);
    xT[i] = a * atSaturation.slope * perPressure + activitySlopes.perKelvin(a) * share;
    xW[i] = activitySlopes.perMoisture(a, W) * share * dry;
  }
}
