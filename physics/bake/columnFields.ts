/** The state of a column of pizza, cell by cell, and the vapour in its pores that belongs to it. */
import { activitySlopes, saturation, vapourPotential, waterActivity } from './moistCell.ts';
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

const atSaturation = { pressure: 0, slope: 0 };

/** Sets x, its slopes and the potential from temperature and water. @param pressure Pa */
export function updateVapour(
  state: ColumnFields,
  { cells, pressure }: { readonly cells: readonly CellSpec[]; readonly pressure: number },
): void {
  for (let i = 0; i < cells.length; i++) {
    const { material, solids } = cells[i]!;
    const T = state.temperature[i]!;
    const W = state.water[i]! / solids;
    const a = waterActivity(W, T, material.halfMoisture);
    saturation(T, atSaturation);
    const { pressure: ps, slope } = atSaturation;
    const x = (a * ps) / pressure;
    state.x[i] = x;
    state.psi[i] = vapourPotential(x);
    state.xT[i] = (a * slope + activitySlopes.perKelvin(a) * ps) / pressure;
    state.xW[i] = (activitySlopes.perMoisture(a, W) * ps) / (pressure * solids);
  }
}
