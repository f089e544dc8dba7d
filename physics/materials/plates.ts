/** A plate as the oven computes with it: a row of the plate table with its surface, or the cook's own numbers. */
import { zeroCelsius } from './constants.ts';
import type { CustomMaterial } from '../evening/evening.ts';
import { plateMaterialIds, surfaceIds, type PlateMaterialId, type SurfaceId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import { checkRange, throughPoints } from './curves.ts';
import { coldestPlate, hottestPlate } from './metals.ts';
import { plateTable } from './plateTable.ts';
import type { Sourced } from './sourced.ts';

export type PlateProperty = 'density' | 'specificHeat' | 'thermalConductivity' | 'emissivity';

/** One value a plate is computed with; a property that varies is quoted at `celsius`. */
export interface PlateSource extends Sourced {
  readonly property: PlateProperty;
  readonly unit: 'kg/m3' | 'J/(kg K)' | 'W/(m K)' | '1';
  /** degC at which the value holds, where it varies */
  readonly celsius: number | undefined;
}

export interface PlateMaterial {
  readonly id: PlateMaterialId;
  readonly name: string;
  /** kg/m3 */
  readonly density: number;
  readonly metallic: boolean;
  /** total, of the chosen surface */
  readonly emissivity: number;
  /** J/(kg K) at a temperature in K; OutOfRange outside 250 K to 900 K at least, NaN included */
  readonly specificHeat: (temperature: number) => number;
  /** J/kg from 273.15 K: the exact integral of specificHeat; same range */
  readonly specificEnthalpy: (temperature: number) => number;
  /** W/(m K); same range */
  readonly thermalConductivity: (temperature: number) => number;
  readonly sources: readonly PlateSource[];
}

/** Surfaces that a material is met with. For `custom` all: its emissivity is the cook's own number. */
export function allowedSurfaces(id: PlateMaterialId): readonly SurfaceId[] {
  if (id === 'custom') return surfaceIds;
  const known = plateTable[id].emissivity;
  return surfaceIds.filter((surface) => known[surface] !== undefined);
}

/**
 * A plate's material with the emissivity of its surface.
 *
 * @param custom the cook's own numbers, needed for `custom` and not looked at otherwise
 * @throws OutOfRange for an unknown material, a surface the material does not have, or a custom number that is
 *   missing or not physical. Its functions throw OutOfRange outside 250 K to 900 K (steels: to 1473.15 K).
 */
export function plateMaterial(
  id: PlateMaterialId,
  surface: SurfaceId,
  custom?: CustomMaterial,
): PlateMaterial {
  if (id === 'custom') return customMaterial(custom);
  if (!Object.hasOwn(plateTable, id)) {
    throw new OutOfRange('plate.material', id, plateMaterialIds.join(', '));
  }
  const emissivity = plateTable[id].emissivity[surface];
  if (emissivity === undefined) {
    throw new OutOfRange('plate.surface', `${surface} on ${id}`, allowedSurfaces(id).join(', '));
  }
  const row = plateTable[id];
  const celsius = 250;
  const quoted = celsius + zeroCelsius;
  return {
    id,
    name: row.name,
    density: row.density.value,
    metallic: row.metallic,
    emissivity: emissivity.value,
    specificHeat: row.heat.value,
    specificEnthalpy: row.heat.integral,
    thermalConductivity: row.conductivity,
    sources: [
      { property: 'density', unit: 'kg/m3', celsius: undefined, ...row.density },
      {
        property: 'specificHeat',
        unit: 'J/(kg K)',
        celsius,
        value: row.heat.value(quoted),
        ...row.heatFrom,
      },
      {
        property: 'thermalConductivity',
        unit: 'W/(m K)',
        celsius,
        value: row.conductivity(quoted),
        ...row.conductivityFrom,
      },
      { property: 'emissivity', unit: '1', celsius: undefined, ...emissivity },
    ],
  };
}

function customMaterial(custom: CustomMaterial | undefined): PlateMaterial {
  if (custom === undefined) {
    throw new OutOfRange(
      'plate.custom',
      'nothing',
      'density, specificHeat, thermalConductivity and emissivity',
    );
  }
  const { density, specificHeat, thermalConductivity, emissivity } = custom;
  for (const [field, value] of Object.entries({ density, specificHeat, thermalConductivity })) {
    if (!(value > 0 && value < Infinity)) {
      throw new OutOfRange(`plate.custom.${field}`, String(value), 'a number above 0');
    }
  }
  if (!(emissivity > 0 && emissivity <= 1)) {
    throw new OutOfRange('plate.custom.emissivity', String(emissivity), 'above 0, up to 1');
  }
  const own = {
    source: 'entered by the cook',
    spread: 0,
    standing: 'read in the source',
    celsius: undefined,
  } as const;
  const heat = throughPoints('plate temperature', coldestPlate, hottestPlate, [[20, specificHeat]]);
  return {
    id: 'custom',
    name: 'Own material',
    density,
    // Only metals conduct better than about 10 W/(m K); no stone of a kitchen does.
    metallic: thermalConductivity > 10,
    emissivity,
    specificHeat: heat.value,
    specificEnthalpy: heat.integral,
    thermalConductivity: (temperature) => {
      checkRange('plate temperature', temperature, coldestPlate, hottestPlate);
      return thermalConductivity;
    },
    sources: [
      { property: 'density', unit: 'kg/m3', value: density, ...own },
      { property: 'specificHeat', unit: 'J/(kg K)', value: specificHeat, ...own },
      { property: 'thermalConductivity', unit: 'W/(m K)', value: thermalConductivity, ...own },
      { property: 'emissivity', unit: '1', value: emissivity, ...own },
    ],
  };
}
