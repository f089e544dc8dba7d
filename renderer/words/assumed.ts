/** What a plan did not say and what was taken instead, in words. */
import {
  customPlateFields,
  doughFields,
  kitchenFields,
  ovenFields,
  pizzaFields,
  plateFields,
  type FieldSpec,
} from '../inputs/fields.ts';
import { ovenPhysicsFields } from '../inputs/ovenPhysics.ts';
import type { Assumption } from '../../physics/evening/evening.ts';

const groups: readonly (readonly [name: string, fields: readonly FieldSpec[]])[] = [
  ['oven', [...ovenFields.first, ...ovenFields.more, ...ovenPhysicsFields]],
  ['plate', [...plateFields.first, ...plateFields.more, ...customPlateFields]],
  ['pizzas', [...pizzaFields.first, ...pizzaFields.more]],
  ['dough', [...doughFields.first, ...doughFields.more]],
  ['kitchen', kitchenFields],
];
const others: Readonly<Record<string, string>> = {
  title: 'Title',
  'anchor.kind': 'When: tied to',
  'anchor.time': 'When: time',
  'dough.liquid': 'Dough: liquid',
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

export function assumptionTexts(assumed: readonly Assumption[]): readonly string[] {
  return assumed.map(({ path, taken, from: source }) => `${pathName(path)} ${tidy(taken)}, ${from[source]}`);
}
