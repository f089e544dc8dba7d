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
import { withValueAt } from '../state/path.ts';
import { materialNames, presetNames, rackHeightOf, rackPositionOf, rackText } from '../words/names.ts';
import type { WrongEntry } from '../state/wrongEntries.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

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

/** `cordierite`, `12 mm`, `third from the bottom of five`, `set to 230 °C`. */
export function differenceText({ path, value }: Difference): string {
  const { label, names, unit } = specOf(path);
  if (path === 'plate.rackHeight') return rackText(Number(value));
  if (typeof value === 'boolean') return `${label.toLowerCase()} ${value ? 'on' : 'off'}`;
  const text = String(value).replace(/\s*deg([CF])$/u, ' °$1') + (unit === undefined ? '' : ` ${unit}`);
  if (path === 'plate.material') return materialNames[value as keyof typeof materialNames];
  if (path === 'oven.preset') return `${presetNames[value as keyof typeof presetNames]} oven`;
  if (path === 'plate.thickness') return `${text} thick`;
  const said = names?.[String(value)] ?? text;
  return `${label.toLowerCase()} ${factsOf(path).kind === 'choice' ? said.toLowerCase() : said}`;
}

export function nameOf(differences: readonly Difference[]): string {
  if (differences.length === 0) return 'No difference yet';
  const text = differences.map(differenceText).join(', ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export interface Starter {
  readonly name: string;
  readonly differences: readonly Difference[];
}

const metals: readonly string[] = ['carbon-steel', 'stainless-steel', 'cast-iron', 'aluminium'];

/** What a cook asks first: stone or steel, thicker, another rack, another oven. */
export function startersFor({ plate, oven }: Evening, units: UnitSystem): readonly Starter[] {
  const metal = metals.includes(plate.material);
  const us = units === 'us';
  const position = rackPositionOf(plate.rackHeight) ?? 2;
  const thicker = 1.5 * plate.thickness;
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
      differences: [
        {
          path: 'plate.thickness',
          value: us ? `${(thicker / 0.0254).toFixed(2)} in` : `${(1000 * thicker).toFixed(0)} mm`,
        },
      ],
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
