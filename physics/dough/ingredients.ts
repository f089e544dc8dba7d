/** What the ingredients of a dough are made of, and a dough as lines of a formula. */
import type { Dough, LiquidPart } from '../evening/evening.ts';
import type { LiquidId, YeastId } from '../evening/ids.ts';
import { OutOfRange } from '../evening/problem.ts';
import type { Percentages } from './formula.ts';

/**
 * Mass fraction of water in a liquid. Source: USDA National Nutrient Database for Standard Reference, abbreviated
 * file, NDB 14003 (beer, regular), 1077 (milk, whole), 1114 (whey, sweet), 4053 (olive oil), 19296 (honey).
 */
const waterShares: Readonly<Record<Exclude<LiquidId, 'custom'>, number>> = {
  water: 1,
  beer: 0.9196,
  milk: 0.8813,
  whey: 0.9312,
  oil: 0,
  honey: 0.171,
};

/**
 * Mass fraction of water in flour when nobody says: 0.14, the basis to which mills and laboratories refer flour
 * figures (from memory: "14 % moisture basis"). Flour on sale may hold up to 0.155 (Codex Stan 152-1985, 3.2.1).
 */
const standardFlourMoisture = 0.14;

/**
 * Mass of fresh (compressed) yeast that does the work of one unit of mass of this kind.
 * Source: "Breads" (ckbk), yeast conversions: active dry 0.40 and instant 0.33 of the fresh. Elsewhere 0.50 and 0.35
 * (Gisslen, "Professional Cooking"); by solids 0.326 and 0.316 (AACC 89-01.01): a spread of a tenth to a quarter.
 */
export const freshYeastFor: Readonly<Record<YeastId, number>> = {
  fresh: 1,
  'active-dry': 1 / 0.4,
  instant: 1 / 0.33,
};

/**
 * The same, lowest and highest of the published equivalents: active dry 0.375 (home-baking list, 1/4 oz for 2/3 oz) to
 * 0.50 and instant 0.33 to 0.35 of the fresh (Gisslen, "Professional Cooking"; AVPN dry to fresh as 1 to 3).
 */
export const freshYeastRange: Readonly<Record<YeastId, readonly [low: number, high: number]>> = {
  fresh: [1, 1],
  'active-dry': [1 / 0.5, 1 / 0.375],
  instant: [1 / 0.35, 1 / 0.33],
};

/** The same leavening in another kind of yeast, in the unit of `amount` (g or percent). */
export function convertYeast(amount: number, from: YeastId, to: YeastId): number {
  if (!(amount >= 0 && Number.isFinite(amount)))
    throw new OutOfRange('yeast', String(amount), 'a finite amount of 0 or more');
  return (amount * freshYeastFor[from]) / freshYeastFor[to];
}

/** Mass fraction of water in one liquid of a dough. @throws OutOfRange for a custom liquid without a share in 0..1 */
export function waterShareOf(part: LiquidPart): number {
  if (part.kind !== 'custom') return waterShares[part.kind];
  const share = part.waterShare;
  if (share === undefined || !(share >= 0 && share <= 1))
    throw new OutOfRange('dough.liquid.waterShare', String(share), '0 to 1 for a custom liquid');
  return share;
}

/** The dough as lines of a formula: its liquids by their kind, then salt, sugar, oil, yeast; what is 0 is left out. */
export function percentagesOf(
  dough: Pick<Dough, 'liquid' | 'salt' | 'sugar' | 'oil' | 'yeast'>,
): Percentages {
  const lines: Record<string, number> = {};
  for (const { kind, percent } of dough.liquid) lines[kind] = (lines[kind] ?? 0) + percent;
  lines['salt'] = dough.salt;
  lines['sugar'] = dough.sugar;
  lines['oil'] = (lines['oil'] ?? 0) + dough.oil;
  lines['yeast'] = dough.yeast.percent;
  return Object.fromEntries(Object.entries(lines).filter(([, percent]) => percent !== 0));
}

export interface Hydration {
  /** percent, the liquids as written in the formula; oil and honey wet no flour worth the name and are left out */
  readonly nominalPercent: number;
  /** kg water (liquids and flour together) per kg of bone-dry flour */
  readonly waterPerDryFlour: number;
  /** percent of plain water that flour of standard moisture would need to hold as much water per dry flour */
  readonly truePercent: number;
}

/**
 * How wet a dough really is.
 *
 *     w = (sum of percent_i share_i / 100 + x) / (1 - x)      g water per g dry flour
 *     true percent = 100 (w (1 - x0) - x0),  x0 = 0.14
 *
 * so that plain water on flour of standard moisture gives back its own percentage. The water in yeast (below 1 % of
 * flour in any pizza dough) and in sugar and oil (none) is left out.
 *
 * @param flourMoisture x, mass fraction of water in the flour as it is weighed
 * @throws OutOfRange for a moisture outside 0 to 0.2
 */
export function hydration(liquid: readonly LiquidPart[], flourMoisture = standardFlourMoisture): Hydration {
  if (!(flourMoisture >= 0 && flourMoisture <= 0.2))
    throw new OutOfRange('flourMoisture', String(flourMoisture), '0 to 0.2 (mass fraction)');
  let nominalPercent = 0;
  let water = flourMoisture;
  for (const part of liquid) {
    if (part.kind !== 'oil' && part.kind !== 'honey') nominalPercent += part.percent;
    water += (part.percent * waterShareOf(part)) / 100;
  }
  const waterPerDryFlour = water / (1 - flourMoisture);
  const truePercent = 100 * (waterPerDryFlour * (1 - standardFlourMoisture) - standardFlourMoisture);
  return { nominalPercent, waterPerDryFlour, truePercent };
}
