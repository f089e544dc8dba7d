/** In what other evenings differ from the plan: each by one or more of its fields. */
import { effects, effectsOfNumber } from '../inputs/effects.ts';
import {
  bakingFields,
  factsOf,
  kitchenFields,
  ovenFields,
  pizzaFields,
  plateFields,
  type FieldSpec,
} from '../inputs/fields.ts';
import { isQuantity, shownQuantity } from '../inputs/shown.ts';
import { withValueAt } from '../state/path.ts';
import { materialNames, presetNames, rackHeightOf, rackPositionOf, rackText } from '../words/names.ts';
import type { WrongEntry } from '../state/wrongEntries.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { readQuantity, toInches, type UnitSystem } from '../../physics/quantities/index.ts';

export interface Difference {
  readonly path: string;
  /** as a plan holds it */
  readonly value: string | number | boolean;
  /** an entry that was not taken, as typed, with the reason; the value before it holds */
  readonly wrong?: WrongEntry;
}

export interface FieldChoice {
  readonly name: string;
  readonly fields: readonly FieldSpec[];
}
/** Every field that another evening may differ in. */
export const comparable: readonly FieldChoice[] = [
  { name: 'Plate', fields: [...plateFields.first, ...plateFields.more] },
  { name: 'Oven', fields: [...ovenFields.first, ...ovenFields.more] },
  { name: 'Pizzas', fields: pizzaFields.first },
  { name: 'Baking', fields: bakingFields.filter(({ path }) => !path.startsWith('pizzas.parBake')) },
  { name: 'Kitchen', fields: kitchenFields.filter(({ path }) => path !== 'kitchen.energyPrice') },
];

export function specOf(path: string): FieldSpec {
  const spec = comparable.flatMap(({ fields }) => fields).find((one) => one.path === path);
  if (spec === undefined) throw new RangeError(`field: found ${path}; allowed one that can be compared`);
  return spec;
}

/** The fields that change in a plan, what a choice takes along included, in the order in which they are set. */
export function fieldsOf(
  file: PlanFile,
  differences: readonly Difference[],
): readonly (readonly [path: string, value: unknown])[] {
  return differences.flatMap(({ path, value }) => [
    ...Object.entries(
      typeof value === 'string' ? effects(path, value, file) : effectsOfNumber(path, value, file),
    ),
    [path, value] as const,
  ]);
}

export function withDifferences(file: PlanFile, differences: readonly Difference[]): PlanFile {
  return fieldsOf(file, differences).reduce(
    (changed, [path, value]) => withValueAt(changed, path, value),
    file,
  );
}

/** The value as its field shows it: as typed where that is in the units shown, else converted. */
export function valueText({ path, value }: Difference, units: UnitSystem): string {
  const { kind } = factsOf(path);
  const read = typeof value === 'string' && isQuantity(kind) ? readQuantity(value, kind) : undefined;
  return read?.ok === true ? shownQuantity(String(value), read.value, path, units) : String(value);
}

/** `cordierite`, `12 mm`, `third from the bottom of five`, `set to 230 °C`. */
export function differenceText(difference: Difference, units: UnitSystem): string {
  const { path, value } = difference;
  const { label, names, unit } = specOf(path);
  if (path === 'plate.rackHeight') return rackText(Number(value));
  if (typeof value === 'boolean') return `${label.toLowerCase()} ${value ? 'on' : 'off'}`;
  const text = valueText(difference, units) + (unit === undefined ? '' : ` ${unit}`);
  if (path === 'plate.material') return materialNames[value as keyof typeof materialNames];
  if (path === 'oven.preset') return `${presetNames[value as keyof typeof presetNames]} oven`;
  if (path === 'plate.thickness') return `${text} thick`;
  const said = names?.[String(value)] ?? text;
  return `${label.toLowerCase()} ${factsOf(path).kind === 'choice' ? said.toLowerCase() : said}`;
}

export function nameOf(differences: readonly Difference[], units: UnitSystem): string {
  if (differences.length === 0) return 'No difference yet';
  const material = differences.some(({ path }) => path === 'plate.material');
  // `Cordierite, 15 mm`: what it is made of says that it is a thickness.
  const text = differences
    .map((one) => differenceText(one, units))
    .map((one) => (material ? one.replace(/ thick$/u, '') : one))
    .join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export interface Starter {
  readonly name: string;
  readonly differences: readonly Difference[];
}

/** Plates are sold in steps of about half as much again. */
const plateStep = 1.5;
/** in, in words and as a number: thicknesses that plates are sold in by the inch */
const inches: readonly (readonly [text: string, size: number])[] = [
  ['1/8', 1 / 8],
  ['3/16', 3 / 16],
  ['1/4', 1 / 4],
  ['3/8', 3 / 8],
  ['1/2', 1 / 2],
  ['5/8', 5 / 8],
  ['3/4', 3 / 4],
  ['1', 1],
  ['1 1/4', 1.25],
  ['1 1/2', 1.5],
  ['2', 2],
];

/** The next plate that a cook could buy, thicker or thinner than this one, m. */
export function soldThickness(metres: number, which: 'thicker' | 'thinner', units: UnitSystem): string {
  const wanted = which === 'thicker' ? metres * plateStep : metres / plateStep;
  if (units === 'metric') return `${(1000 * wanted).toFixed(0)} mm`;
  const beyond = inches.filter(([, size]) =>
    which === 'thicker' ? size > 1.1 * toInches(metres) : size < toInches(metres) / 1.1,
  );
  const apart = ([, size]: readonly [string, number]): number => Math.abs(Math.log(size / toInches(wanted)));
  const nearest = [...beyond].sort((a, b) => apart(a) - apart(b))[0]?.[0];
  return `${nearest ?? toInches(wanted).toFixed(2)} in`;
}

const metals: readonly string[] = ['carbon-steel', 'stainless-steel', 'cast-iron', 'aluminium'];

/** What a cook asks first: stone or steel, thicker, another rack, another oven. */
export function startersFor({ plate, oven }: Evening, units: UnitSystem): readonly Starter[] {
  const metal = metals.includes(plate.material);
  const us = units === 'us';
  const position = rackPositionOf(plate.rackHeight) ?? 2;
  return [
    {
      name: metal ? 'A stone' : 'Steel',
      differences: [
        { path: 'plate.material', value: metal ? 'cordierite' : 'carbon-steel' },
        { path: 'plate.thickness', value: metal ? (us ? '5/8 in' : '15 mm') : us ? '3/8 in' : '8 mm' },
      ],
    },
    {
      name: 'A thicker plate',
      differences: [{ path: 'plate.thickness', value: soldThickness(plate.thickness, 'thicker', units) }],
    },
    {
      name: position < 5 ? 'One rack up' : 'One rack down',
      differences: [
        { path: 'plate.rackHeight', value: rackHeightOf(position < 5 ? position + 1 : position - 1) },
      ],
    },
    {
      name: 'Another oven',
      differences: [{ path: 'oven.preset', value: oven.preset === 'strong' ? 'european' : 'strong' }],
    },
  ];
}
