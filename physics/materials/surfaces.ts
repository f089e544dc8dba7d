import type { PlateMaterialId, SurfaceId } from '../evening/ids.ts';
import type { Sourced } from './sourced.ts';

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

/**
 * Total emissivity of each surface that a material is met with, near 200 to 300 degC where the source says.
 * A bright plate against a seasoned one is the largest effect of any surface: the radiation it takes up
 * differs by a factor of nearly four.
 */
export const surfaceEmissivity: Readonly<
  Record<Exclude<PlateMaterialId, 'custom'>, Readonly<Partial<Record<SurfaceId, Sourced>>>>
> = {
  'carbon-steel': {
    seasoned: blackFilm,
    bare: {
      value: 0.25,
      spread: 0.4,
      source: `steel polished 0.14 to 0.38, cold rolled bright 0.20 to 0.24, ${camera}`,
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
  'stainless-steel': {
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
  'cast-iron': {
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
  aluminium: {
    seasoned: blackFilm,
    bare: {
      value: 0.15,
      spread: 0.3,
      source: 'oxidised at 600 degC, 0.11 to 0.19 between 200 and 600 degC, engineering data page',
      standing: 'read in the source',
    },
    rolled: {
      value: 0.09,
      spread: 0.4,
      source: 'commercial sheet, 100 degC, engineering data page',
      standing: 'read in the source',
    },
    enamelled: enamel,
  },
  cordierite: {
    seasoned: oiledStone,
    bare: {
      value: 0.9,
      spread: 0.06,
      source: `fired clay 0.91, ${camera}; cordierite taken as the same`,
      standing: 'derived',
    },
    enamelled: { ...enamel, source: `glaze taken as ${enamel.source}` },
  },
  'fired-clay': {
    seasoned: oiledStone,
    bare: {
      value: 0.91,
      spread: 0.05,
      source: `fired clay, 70 degC, ${camera}`,
      standing: 'read in the source',
    },
    enamelled: { ...enamel, source: `glaze taken as ${enamel.source}` },
  },
  soapstone: {
    seasoned: oiledStone,
    bare: {
      value: 0.87,
      spread: 0.07,
      source: `granite 0.85 to 0.88, ${camera}; soapstone taken as the same`,
      standing: 'derived',
    },
  },
};
