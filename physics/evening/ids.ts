/**
 * The names a plan file may use. Each list is the single place where an id is introduced; materials and ovens get
 * theirs from their tables.
 */
import { tabledMaterialIds } from '../materials/plateTable.ts';

export { ovenPresetIds, type OvenPresetId } from '../oven/presets.ts';

/** those of the table, and the cook's own */
export const plateMaterialIds = [...tabledMaterialIds, 'custom'] as const;
export const surfaceIds = ['seasoned', 'bare', 'rolled', 'rusted', 'enamelled'] as const;
/** what the clock of an evening is tied to */
export const anchorIds = ['eatAt', 'startAt', 'ovenOnAt'] as const;
export const fuelIds = ['electric', 'gas'] as const;
export const bottomElementIds = ['hidden', 'exposed'] as const;
export const benchIds = ['metal', 'flour', 'semolina', 'parchment'] as const;
/** where a base baked ahead waits for its evening */
export const keepIds = ['room', 'refrigerator', 'freezer'] as const;
/**
 * how long the plate is left bare before the next pizza: until that bakes no more than a quarter longer; as the first;
 * not longer than hands need; or so that every two come close together and each such pair finds the plate alike
 */
export const waitRuleIds = ['quarter-longer', 'alike', 'fastest', 'in-pairs'] as const;
/** what advice can be asked for */
export const goalIds = ['sooner', 'darker-base', 'drier-top', 'less-energy', 'weaker-oven'] as const;
export const shadeIds = ['pale', 'golden', 'dark'] as const;
export const liquidIds = ['water', 'beer', 'milk', 'whey', 'oil', 'honey', 'custom'] as const;
/** how the flour is sold: by the strength of its gluten, or what it is instead */
export const flourIds = ['strong', 'medium', 'weak', 'wholemeal', 'rye', 'gluten-free'] as const;
export const risePlaceIds = ['room', 'refrigerator', 'warm'] as const;
export const risePieceIds = ['bulk', 'balls'] as const;
export const coverIds = ['covered', 'oiled', 'boxed'] as const;
export const tomatoIds = ['crushed', 'whole'] as const;
export const yeastIds = ['fresh', 'active-dry', 'instant'] as const;
export const mixingIds = ['hand', 'mixer', 'food-processor'] as const;
export const cheeseIds = ['low-moisture-mozzarella', 'fresh-mozzarella', 'hard', 'custom'] as const;

export type PlateMaterialId = (typeof plateMaterialIds)[number];
export type SurfaceId = (typeof surfaceIds)[number];
export type AnchorId = (typeof anchorIds)[number];
export type FuelId = (typeof fuelIds)[number];
export type BottomElementId = (typeof bottomElementIds)[number];
export type KeepId = (typeof keepIds)[number];
export type BenchId = (typeof benchIds)[number];
export type WaitRuleId = (typeof waitRuleIds)[number];
export type GoalId = (typeof goalIds)[number];
export type ShadeId = (typeof shadeIds)[number];
export type LiquidId = (typeof liquidIds)[number];
export type FlourId = (typeof flourIds)[number];
export type RisePlaceId = (typeof risePlaceIds)[number];
export type RisePieceId = (typeof risePieceIds)[number];
export type CoverId = (typeof coverIds)[number];
export type TomatoId = (typeof tomatoIds)[number];
export type YeastId = (typeof yeastIds)[number];
export type MixingId = (typeof mixingIds)[number];
export type CheeseId = (typeof cheeseIds)[number];

/** Where a thermometer is. */
export const placeIds = ['ovenAir', 'plateTop', 'plateCore', 'dough'] as const;
export type PlaceId = (typeof placeIds)[number];

/** What reads the plate: a probe on it, or its radiation from afar. */
export const instrumentIds = ['probe', 'infrared'] as const;
export type InstrumentId = (typeof instrumentIds)[number];

/** What can happen on an evening. */
export const logWhatIds = [
  'begun',
  'done',
  'skipped',
  'longer',
  'guestsLate',
  'reading',
  'heard',
  'words',
  'clockMoved',
] as const;
export type LogWhatId = (typeof logWhatIds)[number];
