/** What a plan did not say and what was taken instead, in words. */
import {
  bakingFields,
  customPlateFields,
  doughFields,
  kitchenFields,
  onePizzaFields,
  ovenFields,
  parBakeFields,
  pizzaFields,
  plateFields,
  type FieldSpec,
} from '../inputs/fields.ts';
import { knownFields } from '../inputs/known.ts';
import { ovenPhysicsFields } from '../inputs/ovenPhysics.ts';
import type { Assumption } from '../../physics/evening/evening.ts';

const groups: readonly (readonly [name: string, fields: readonly FieldSpec[]])[] = [
  ['oven', [...ovenFields.first, ...ovenFields.more, ...ovenPhysicsFields]],
  ['plate', [...plateFields.first, ...plateFields.more, ...customPlateFields]],
  ['pizzas', [...pizzaFields.first, ...pizzaFields.more, ...bakingFields, ...parBakeFields]],
  ['dough', [...doughFields.first, ...doughFields.more]],
  ['kitchen', kitchenFields],
  ['known', knownFields],
];
const others: Readonly<Record<string, string>> = {
  title: 'Title',
  'anchor.kind': 'When: tied to',
  'anchor.time': 'When: time',
};
/** Lists, named as a whole. */
const lists: Readonly<Record<string, string>> = {
  'dough.liquid': 'Dough: liquid',
  'dough.phases': 'Dough: stretches of the rise',
  'toppings.cheese': 'Pizzas: cheese',
};
const from: Record<Assumption['from'], string> = {
  'demo evening': 'as in the example',
  'oven preset': 'from the preset',
  'plate material': 'usual for the material',
  kitchen: 'from the kitchen',
  'common default': 'usual',
};

/** `Oven: bottom power` */
export function pathName(path: string): string {
  const known = others[path];
  if (known !== undefined) return known;
  const own = /^pizzas\.each\.(\d+)\./u.exec(path)?.[1];
  if (own !== undefined) {
    const label = onePizzaFields(Number(own)).find((one) => one.path === path)?.label ?? 'cheese';
    return `Pizza ${String(Number(own) + 1)}: ${label.toLowerCase()}`;
  }
  for (const [start, name] of Object.entries(lists)) if (path.startsWith(start)) return name;
  for (const [group, fields] of groups) {
    const field = fields.find((one) => one.path === path);
    if (field !== undefined) {
      return `${group.replace(/^./u, (first) => first.toUpperCase())}: ${field.label.toLowerCase()}`;
    }
  }
  return path;
}

function tidy(taken: string): string {
  return taken
    .replace(/\s*deg([CF])\b/gu, ' °$1')
    .replaceAll(/^true$/gu, 'yes')
    .replaceAll(/^false$/gu, 'no');
}

function unitOf(path: string): string {
  const unit = groups.flatMap(([, fields]) => fields).find((one) => one.path === path)?.unit;
  return unit === undefined ? '' : ` ${unit}`;
}

export function assumptionTexts(assumed: readonly Assumption[]): readonly string[] {
  return assumed.map(
    ({ path, taken, from: source }) => `${pathName(path)} ${tidy(taken)}${unitOf(path)}, ${from[source]}`,
  );
}
