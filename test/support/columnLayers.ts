/** Layers and columns for tests of the pizza's column, made of matter with round figures. */
import type { ColumnSetting } from '../../physics/bake/column.ts';
import type { CellSpec } from '../../physics/bake/columnFields.ts';
import type { LayerMaterial } from '../../physics/bake/moistCell.ts';
import { standardPressure } from '../../physics/materials/constants.ts';

/** Compact matter whose conductivity does not change as long as it is dry. */
export function drySolid(conductivity: number, density: number, specificHeat: number): LayerMaterial {
  return {
    name: 'dough',
    solidsHeat: specificHeat,
    solidsDensity: density,
    porosity: 0,
    solidsConductivity: conductivity,
    solidsConductivitySlope: 0,
    halfMoisture: 0.072,
    vapourShare: 0.25,
    dryConductivityFactor: 1,
  };
}

/** Cells that grow by `ratio` from `first` (m) upwards. */
export function growingCells(first: number, ratio: number, n: number): readonly number[] {
  return Array.from({ length: n }, (_, i) => first * ratio ** i);
}

export function cellsOf(
  material: LayerMaterial,
  sizes: readonly number[],
  temperature: number,
  moisture = 0,
): readonly CellSpec[] {
  return sizes.map((thickness) => {
    const solids = thickness * material.solidsDensity;
    return { material, thickness, solids, water: solids * moisture, temperature };
  });
}

/** One square metre on plate node 1 below surface node 2; convecting face 0. */
export function columnSetting(
  cells: readonly CellSpec[],
  changes: Partial<ColumnSetting> = {},
): ColumnSetting {
  return {
    cells,
    area: 1,
    plateNode: 1,
    surfaceNode: 2,
    convectingFace: 0,
    contactResistance: 0.01,
    evaporationFactor: 1,
    pressure: standardPressure,
    evaporation: true,
    ...changes,
  };
}
