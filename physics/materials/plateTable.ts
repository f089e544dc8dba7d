/**
 * The materials a plate is made of, one row each. A new row is offered, checked and computed with everywhere; what it
 * lacks the compiler names. Values are SI; each carries its source, its spread and its standing.
 */
import type { SurfaceId } from '../evening/ids.ts';
import { throughPoints, type Curve } from './curves.ts';
import {
  carbonSteelConductivity,
  carbonSteelHeat,
  coldestPlate,
  hottestPlate,
  stainlessConductivity,
  stainlessHeat,
} from './metals.ts';
import type { Sourced } from './sourced.ts';

/** What is known of a material, whatever its surface. */
export interface PlateRow {
  /** as it begins a sentence or stands in a list */
  readonly name: string;
  /** metals bend, stones crack and are sold thicker */
  readonly metallic: boolean;
  /** as it is usually sold or kept: what a plan takes that does not say; one of those in `emissivity` */
  readonly usualSurface: SurfaceId;
  /** kg/m3 */
  readonly density: Sourced;
  /** J/(kg K) over K, with its integral */
  readonly heat: Curve;
  /** W/(m K) over K */
  readonly conductivity: (temperature: number) => number;
  readonly heatFrom: Omit<Sourced, 'value'>;
  readonly conductivityFrom: Omit<Sourced, 'value'>;
  /**
   * Total emissivity of each surface that the material is met with, near 200 to 300 degC where the source says.
   * A bright plate against a seasoned one is the largest effect of any surface: the radiation it takes up
   * differs by a factor of nearly four.
   */
  readonly emissivity: Readonly<Partial<Record<SurfaceId, Sourced>>>;
}

const camera = 'infrared camera maker, emissivity table';
const blackFilm: Sourced = {
  value: 0.9,
  spread: 0.06,
  source: `by analogy with soot 0.95, lampblack 0.95 and dull black lacquer 0.96 in an ${camera}`,
  standing: 'derived',
};
const enamel: Sourced = {
  value: 0.9,
  spread: 0.05,
  source: 'vitreous enamel on steel, heat transfer textbooks: 0.85 to 0.92',
  standing: 'from memory',
};
const oiledStone: Sourced = {
  value: 0.92,
  spread: 0.05,
  source: 'between fired clay 0.91 and the black films of soot and lacquer',
  standing: 'our estimate',
};

/** A property as straight lines through points in degC, one point for a constant; see {@link throughPoints}. */
function lines(what: string, ...points: readonly (readonly [celsius: number, value: number])[]): Curve {
  return throughPoints(`${what} temperature`, coldestPlate, hottestPlate, points);
}

const read = (where: string, spread: number) =>
  ({ source: where, spread, standing: 'read in the source' }) as const;
const quoted = (where: string, spread: number) =>
  ({ source: where, spread, standing: 'second hand' }) as const;
const memory = (where: string, spread: number) =>
  ({ source: where, spread, standing: 'from memory' }) as const;

const rows = {
  'carbon-steel': {
    name: 'Carbon steel',
    metallic: true,
    usualSurface: 'seasoned',
    density: { value: 7850, ...quoted('EN 1993-1-2:2005, as quoted in a program', 0.01) },
    heat: carbonSteelHeat,
    conductivity: carbonSteelConductivity,
    heatFrom: quoted('EN 1993-1-2:2005, 3.4.1.2, as quoted in programs', 0.03),
    conductivityFrom: quoted('EN 1993-1-2:2005, 3.4.1.3, as quoted in programs', 0.1),
    emissivity: {
      seasoned: blackFilm,
      bare: {
        value: 0.25,
        spread: 0.4,
        source: `steel cold rolled bright 0.20 to 0.24 (20 to 70 degC), polished 0.07 (100 degC) to 0.38 (1000 degC), ${camera}`,
        standing: 'derived',
      },
      rolled: {
        value: 0.7,
        spread: 0.15,
        source: `hot rolled with mill scale 0.60 (130 degC) to 0.77 (20 degC), ${camera}; also EN 1993-1-2`,
        standing: 'derived',
      },
      rusted: {
        value: 0.79,
        spread: 0.08,
        source: `steel oxidised, 200 degC, ${camera}`,
        standing: 'read in the source',
      },
      enamelled: enamel,
    },
  },
  'stainless-steel': {
    name: 'Stainless steel',
    metallic: true,
    usualSurface: 'bare',
    density: {
      value: 7900,
      ...quoted('EN 12524:2000, stainless steel, as a heat-transfer library has it', 0.01),
    },
    heat: stainlessHeat,
    conductivity: stainlessConductivity,
    heatFrom: quoted('EN 1993-1-2:2005, Annex C, as quoted in programs', 0.05),
    conductivityFrom: quoted('EN 1993-1-2:2005, Annex C, as quoted in programs', 0.1),
    emissivity: {
      seasoned: blackFilm,
      bare: {
        value: 0.25,
        spread: 0.4,
        source: 'cleaned or polished 0.15 to 0.3, heat transfer textbooks',
        standing: 'from memory',
      },
      rolled: {
        value: 0.4,
        spread: 0.25,
        source: 'EN 1993-1-2:2005, stainless steel in fire design',
        standing: 'from memory',
      },
      enamelled: enamel,
    },
  },
  'cast-iron': {
    name: 'Cast iron',
    metallic: true,
    usualSurface: 'seasoned',
    density: { value: 7200, ...memory('grey iron, textbooks: 7100 to 7300', 0.03) },
    heat: lines('cast iron', [20, 460], [300, 540]),
    conductivity: lines('cast iron', [20, 50], [400, 40]).value,
    heatFrom: memory('grey iron, textbooks: 460 to 540 between 20 and 300 degC', 0.08),
    conductivityFrom: memory('grey iron, textbooks: 45 to 55, falling to about 40 at 400 degC', 0.15),
    emissivity: {
      seasoned: blackFilm,
      bare: {
        value: 0.66,
        spread: 0.2,
        source: `cast iron oxidised, 260 degC (casting 0.81 at 50 degC), ${camera}`,
        standing: 'read in the source',
      },
      rusted: {
        value: 0.79,
        spread: 0.1,
        source: `steel oxidised, 200 degC, ${camera}; rust taken as the same on iron`,
        standing: 'derived',
      },
      enamelled: enamel,
    },
  },
  aluminium: {
    name: 'Aluminium',
    metallic: true,
    usualSurface: 'bare',
    density: { value: 2700, ...memory('EN 1999-1-2', 0.03) },
    heat: lines('aluminium', [0, 903], [500, 1108]),
    conductivity: lines('aluminium', [0, 190], [500, 225]).value,
    heatFrom: memory('EN 1999-1-2: 903 + 0.41 t', 0.03),
    conductivityFrom: memory('EN 1999-1-2, alloys 3xxx and 6xxx: 190 + 0.07 t', 0.2),
    emissivity: {
      seasoned: blackFilm,
      bare: {
        value: 0.15,
        spread: 0.3,
        source:
          'middle of oxidised at 600 degC, 0.11 to 0.19 between 200 and 600 degC, engineering data page',
        standing: 'derived',
      },
      rolled: {
        value: 0.09,
        spread: 0.4,
        source: 'commercial sheet, 100 degC, engineering data page',
        standing: 'read in the source',
      },
      enamelled: enamel,
    },
  },
  cordierite: {
    name: 'Cordierite',
    metallic: false,
    usualSurface: 'bare',
    density: { value: 2000, ...read('tile maker: 1800 to 2400 by porosity', 0.15) },
    heat: lines('cordierite', [20, 800], [400, 971]),
    conductivity: lines('cordierite', [20, 2]).value,
    heatFrom: {
      source:
        'IEC 60672 types C 410 to C 530: 750 to 1200 (from memory); rise between those of fireclay and mullite',
      spread: 0.15,
      standing: 'our estimate',
    },
    conductivityFrom: memory('IEC 60672 types C 410 to C 530: 1.2 to 2.5', 0.3),
    emissivity: {
      seasoned: oiledStone,
      bare: {
        value: 0.9,
        spread: 0.06,
        source: `fired clay 0.91, ${camera}; cordierite taken as the same`,
        standing: 'derived',
      },
      enamelled: { ...enamel, source: `glaze taken as ${enamel.source}` },
    },
  },
  'fired-clay': {
    name: 'Fired clay',
    metallic: false,
    usualSurface: 'bare',
    density: {
      value: 2150,
      ...quoted('VDI Heat Atlas 2010, fireclay brick, as a heat-transfer library has it', 0.2),
    },
    // The atlas begins at 400 degC: held constant below, the heat taken up would be a tenth too much.
    heat: lines('fired clay', [20, 800], [400, 956], [600, 997]),
    conductivity: lines('fired clay', [400, 1.05], [600, 1.1]).value,
    heatFrom: quoted(
      'ASHRAE Fundamentals 2013, fired clay brick: 800 at room temperature; VDI Heat Atlas 2010: 956 at 400, 997 at 600 degC; as a heat-transfer library has them',
      0.1,
    ),
    conductivityFrom: quoted(
      'VDI Heat Atlas 2010, fireclay brick: 1.05 at 400, 1.10 at 600 degC, as a heat-transfer library has it',
      0.2,
    ),
    emissivity: {
      seasoned: oiledStone,
      bare: {
        value: 0.91,
        spread: 0.05,
        source: `fired clay, 70 degC, ${camera}`,
        standing: 'read in the source',
      },
      enamelled: { ...enamel, source: `glaze taken as ${enamel.source}` },
    },
  },
  soapstone: {
    name: 'Soapstone',
    metallic: false,
    usualSurface: 'bare',
    density: { value: 2980, ...read('quarry data page', 0.1) },
    heat: lines('soapstone', [20, 980]),
    conductivity: lines('soapstone', [20, 6.4]).value,
    heatFrom: read('quarry data page; another dealer says 1005', 0.1),
    conductivityFrom: read('quarry data page (fired steatite, 2 to 3, is another material)', 0.3),
    emissivity: {
      seasoned: oiledStone,
      bare: {
        value: 0.87,
        spread: 0.07,
        source: `granite 0.85 to 0.88, ${camera}; soapstone taken as the same`,
        standing: 'derived',
      },
    },
  },
} satisfies Readonly<Record<string, PlateRow>>;

export type TabledMaterialId = keyof typeof rows;
export const plateTable: Readonly<Record<TabledMaterialId, PlateRow>> = rows;
export const tabledMaterialIds = Object.keys(rows) as readonly TabledMaterialId[];
