import type { CustomMaterial } from '../evening/evening.ts';
import { plateMaterialIds, surfaceIds, type PlateMaterialId, type SurfaceId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import { checkRange, throughPoints, type Curve } from './curves.ts';
import {
  carbonSteelConductivity,
  carbonSteelHeat,
  coldestPlate,
  stainlessConductivity,
  stainlessHeat,
} from './metals.ts';
import type { Sourced } from './sourced.ts';
import { surfaceEmissivity } from './surfaces.ts';

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

/** What is known of a material before its surface is chosen. */
interface Bulk {
  readonly name: string;
  readonly metallic: boolean;
  readonly density: Sourced;
  readonly heat: Curve;
  readonly conductivity: (temperature: number) => number;
  readonly heatFrom: Omit<Sourced, 'value'>;
  readonly conductivityFrom: Omit<Sourced, 'value'>;
}

/** Hottest plate of the materials other than steel, K. */
const hottestPlate = 900;

function lines(what: string, ...points: readonly (readonly [celsius: number, value: number])[]): Curve {
  return throughPoints(`${what} temperature`, coldestPlate, hottestPlate, points);
}

const clause = (where: string, spread: number) =>
  ({ source: where, spread, standing: 'read in the source' }) as const;
const memory = (where: string, spread: number) =>
  ({ source: where, spread, standing: 'from memory' }) as const;

const bulks: Readonly<Record<Exclude<PlateMaterialId, 'custom'>, Bulk>> = {
  'carbon-steel': {
    name: 'Carbon steel',
    metallic: true,
    density: { value: 7850, ...clause('EN 1993-1-2:2005', 0.01) },
    heat: carbonSteelHeat,
    conductivity: carbonSteelConductivity,
    heatFrom: clause('EN 1993-1-2:2005, 3.4.1.2, as quoted in programs', 0.03),
    conductivityFrom: clause('EN 1993-1-2:2005, 3.4.1.3, as quoted in programs', 0.1),
  },
  'stainless-steel': {
    name: 'Stainless steel',
    metallic: true,
    density: { value: 7900, ...clause('EN 12524:2000, stainless steel', 0.01) },
    heat: stainlessHeat,
    conductivity: stainlessConductivity,
    heatFrom: clause('EN 1993-1-2:2005, Annex C, as quoted in programs', 0.05),
    conductivityFrom: clause('EN 1993-1-2:2005, Annex C, as quoted in programs', 0.1),
  },
  'cast-iron': {
    name: 'Cast iron',
    metallic: true,
    density: { value: 7200, ...memory('grey iron, textbooks: 7100 to 7300', 0.03) },
    heat: lines('cast iron', [20, 460], [300, 540]),
    conductivity: lines('cast iron', [20, 50], [400, 40]).value,
    heatFrom: memory('grey iron, textbooks: 460 to 540 between 20 and 300 degC', 0.08),
    conductivityFrom: memory('grey iron, textbooks: 45 to 55, falling to about 40 at 400 degC', 0.15),
  },
  aluminium: {
    name: 'Aluminium',
    metallic: true,
    density: { value: 2700, ...memory('EN 1999-1-2', 0.03) },
    heat: lines('aluminium', [0, 903], [500, 1108]),
    conductivity: lines('aluminium', [0, 190], [500, 225]).value,
    heatFrom: memory('EN 1999-1-2: 903 + 0.41 t', 0.03),
    conductivityFrom: memory('EN 1999-1-2, alloys 3xxx and 6xxx: 190 + 0.07 t', 0.2),
  },
  cordierite: {
    name: 'Cordierite',
    metallic: false,
    density: { value: 2000, ...clause('tile maker: 1800 to 2400 by porosity', 0.15) },
    heat: lines('cordierite', [20, 800], [400, 971]),
    conductivity: lines('cordierite', [20, 2]).value,
    heatFrom: {
      source:
        'IEC 60672 types C 410 to C 530: 750 to 1200 (from memory); rise between those of fireclay and mullite',
      spread: 0.15,
      standing: 'our estimate',
    },
    conductivityFrom: memory('IEC 60672 types C 410 to C 530: 1.2 to 2.5', 0.3),
  },
  'fired-clay': {
    name: 'Fired clay',
    metallic: false,
    density: { value: 2150, ...clause('VDI Heat Atlas 2010, fireclay brick', 0.2) },
    // The atlas begins at 400 degC: held constant below, the heat taken up would be a tenth too much.
    heat: lines('fired clay', [20, 800], [400, 956], [600, 997]),
    conductivity: lines('fired clay', [400, 1.05], [600, 1.1]).value,
    heatFrom: clause(
      'ASHRAE Fundamentals 2013, fired clay brick: 800 at room temperature; VDI Heat Atlas 2010: 956 at 400, 997 at 600 degC',
      0.1,
    ),
    conductivityFrom: clause('VDI Heat Atlas 2010, fireclay brick: 1.05 at 400, 1.10 at 600 degC', 0.2),
  },
  soapstone: {
    name: 'Soapstone',
    metallic: false,
    density: { value: 2980, ...clause('quarry data page', 0.1) },
    heat: lines('soapstone', [20, 980]),
    conductivity: lines('soapstone', [20, 6.4]).value,
    heatFrom: clause('quarry data page; another dealer says 1005', 0.1),
    conductivityFrom: clause('quarry data page (fired steatite, 2 to 3, is another material)', 0.3),
  },
};

/** Surfaces that a material is met with. For `custom` all: its emissivity is the cook's own number. */
export function allowedSurfaces(id: PlateMaterialId): readonly SurfaceId[] {
  if (id === 'custom') return surfaceIds;
  const known = surfaceEmissivity[id];
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
  if (!Object.hasOwn(bulks, id)) {
    throw new OutOfRange('plate.material', id, plateMaterialIds.join(', '));
  }
  const emissivity = surfaceEmissivity[id][surface];
  if (emissivity === undefined) {
    throw new OutOfRange('plate.surface', `${surface} on ${id}`, allowedSurfaces(id).join(', '));
  }
  const bulk = bulks[id];
  const celsius = 250;
  const quoted = celsius + 273.15;
  return {
    id,
    name: bulk.name,
    density: bulk.density.value,
    metallic: bulk.metallic,
    emissivity: emissivity.value,
    specificHeat: bulk.heat.value,
    specificEnthalpy: bulk.heat.integral,
    thermalConductivity: bulk.conductivity,
    sources: [
      { property: 'density', unit: 'kg/m3', celsius: undefined, ...bulk.density },
      {
        property: 'specificHeat',
        unit: 'J/(kg K)',
        celsius,
        value: bulk.heat.value(quoted),
        ...bulk.heatFrom,
      },
      {
        property: 'thermalConductivity',
        unit: 'W/(m K)',
        celsius,
        value: bulk.conductivity(quoted),
        ...bulk.conductivityFrom,
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
  const heat = lines('plate', [20, specificHeat]);
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
