/** What the ids of a plan file are called on screen. */
import type { BrowningLawId } from '../../physics/bake/browning.ts';
import type {
  AnchorId,
  BenchId,
  BottomElementId,
  CheeseId,
  CoverId,
  FlourId,
  FuelId,
  GoalId,
  KeepId,
  LiquidId,
  MixingId,
  PlateMaterialId,
  RisePieceId,
  RisePlaceId,
  ShadeId,
  SurfaceId,
  TomatoId,
  WaitRuleId,
  YeastId,
} from '../../physics/evening/ids.ts';
import { plateTable } from '../../physics/materials/plateTable.ts';
import { ovenPresets } from '../../physics/oven/presets.ts';

/** What the rows of a table are called. */
function namesOf<Id extends string>(
  table: Readonly<Record<Id, { readonly name: string }>>,
): Record<Id, string> {
  const rows = Object.entries(table) as [Id, { readonly name: string }][];
  return Object.fromEntries(rows.map(([id, { name }]) => [id, name])) as Record<Id, string>;
}

/** What the evening is tied to, and the moment that it names. */
export const tiedTo: Record<AnchorId, { readonly name: string; readonly moment: string }> = {
  eatAt: { name: 'Eat at', moment: 'First pizza cut' },
  startAt: { name: 'Start at', moment: 'Flour in the bowl' },
  ovenOnAt: { name: 'Oven on at', moment: 'Oven switched on' },
};
export const presetNames = namesOf(ovenPresets);
export const materialNames: Record<PlateMaterialId, string> = { ...namesOf(plateTable), custom: 'My own' };
export const surfaceNames: Record<SurfaceId, string> = {
  seasoned: 'Seasoned',
  bare: 'Bare',
  rolled: 'As rolled',
  rusted: 'Rusted',
  enamelled: 'Enamelled',
};
export const fuelNames: Record<FuelId, string> = { electric: 'Electric', gas: 'Gas' };
export const bottomElementNames: Record<BottomElementId, string> = { hidden: 'Hidden', exposed: 'Exposed' };
export const benchNames: Record<BenchId, string> = {
  metal: 'Oiled metal',
  flour: 'Flour',
  semolina: 'Semolina',
  parchment: 'Parchment',
};
export const shadeNames: Record<ShadeId, string> = { pale: 'Pale', golden: 'Golden', dark: 'Dark' };
export const liquidNames: Record<LiquidId, string> = {
  water: 'Water',
  beer: 'Beer',
  milk: 'Milk',
  whey: 'Whey',
  oil: 'Oil',
  honey: 'Honey',
  custom: 'Other',
};
export const yeastNames: Record<YeastId, string> = {
  fresh: 'Fresh',
  'active-dry': 'Active dry',
  instant: 'Instant',
};
export const mixingNames: Record<MixingId, string> = {
  hand: 'By hand',
  mixer: 'Mixer',
  'food-processor': 'Food processor',
};
export const flourNames: Record<FlourId, string> = {
  strong: 'Wheat, strong',
  medium: 'Wheat, medium',
  weak: 'Wheat, weak',
  wholemeal: 'Wholemeal',
  rye: 'Rye',
  'gluten-free': 'Gluten-free',
};
export const risePlaceNames: Record<RisePlaceId, string> = {
  room: 'In the room',
  refrigerator: 'Refrigerator',
  warm: 'Somewhere warm',
};
export const risePieceNames: Record<RisePieceId, string> = { bulk: 'in one piece', balls: 'as balls' };
export const coverNames: Record<CoverId, string> = { covered: 'Covered', oiled: 'Oiled', boxed: 'Boxed' };
export const tomatoNames: Record<TomatoId, string> = { crushed: 'Crushed', whole: 'Whole, drained' };
export const keepNames: Record<KeepId, string> = {
  room: 'Kept in the room',
  refrigerator: 'Kept in the refrigerator',
  freezer: 'Kept in the freezer',
};
export const waitRuleNames: Record<WaitRuleId, string> = {
  'quarter-longer': 'No bake a quarter longer',
  alike: 'All bakes alike',
  fastest: 'Fastest',
  'in-pairs': 'Served in pairs',
};
/** What advice can be asked for. */
export const goalNames: Record<GoalId, string> = {
  sooner: 'Done sooner',
  'darker-base': 'A darker base',
  'drier-top': 'A drier top',
  'less-energy': 'Less energy',
  'weaker-oven': 'A weaker oven',
};
export const browningLawNames: Record<BrowningLawId, string> = {
  'zanoni-1995': 'Zanoni 1995',
  'purlis-2009': 'Purlis 2009',
};
export const shapeNames = { rectangular: 'Rectangular', round: 'Round' } as const;
export const plateModelNames = { auto: 'As needed', lumped: 'One lump', slab: 'In layers' } as const;
export const cheeseNames: Record<CheeseId, string> = {
  'low-moisture-mozzarella': 'Mozzarella, low moisture',
  'fresh-mozzarella': 'Mozzarella, fresh',
  hard: 'Hard cheese',
  custom: 'Other',
};

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth'];
const cardinals = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

export function cardinal(count: number): string {
  return cardinals[count] ?? String(count);
}

/**
 * The plate's underside in each rack position, lowest first, as shares of the cavity's height: the lowest some 4.5 cm
 * above the floor, each next 6 cm higher, of 35.5 cm. Our estimate; ovens differ.
 */
const rackHeights = [0.13, 0.3, 0.46, 0.63, 0.8] as const;
export const rackCount = rackHeights.length;
export function rackHeightOf(position: number): number {
  const height = rackHeights[position - 1];
  if (height === undefined) throw new RangeError(`rack: found ${position}; allowed 1 to ${rackCount}`);
  return height;
}
/** The position (1 lowest) that a height belongs to, if it is near one. */
export function rackPositionOf(height: number): number | undefined {
  const index = rackHeights.findIndex((known) => Math.abs(known - height) < 0.025);
  return index === -1 ? undefined : index + 1;
}
/** The next position above (1) or below (-1) a height; the same height at the end of the way. */
export function nextRack(height: number, direction: 1 | -1): number {
  const further = rackHeights.filter((known) => (known - height) * direction > 0.005);
  return (direction === 1 ? further[0] : further.at(-1)) ?? height;
}
/** `second from the bottom of five`, or `38 % of the height`. */
export function rackText(height: number): string {
  const position = rackPositionOf(height);
  if (position === undefined) return `${String(Math.round(height * 100))} % of the height`;
  if (position === 1) return 'lowest of five';
  if (position === rackCount) return 'highest of five';
  return `${ordinals[position - 1] ?? ''} from the bottom of five`;
}
/** `pale`, `golden`, `dark`, or between them. */
export function shadeWord(lightness: number): string {
  if (lightness > 75) return 'still white';
  if (lightness > 65) return 'pale';
  if (lightness > 55) return 'golden';
  if (lightness > 45) return 'dark';
  return 'very dark';
}
