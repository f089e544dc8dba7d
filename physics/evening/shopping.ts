/** What has to be in the house: the dough's ingredients, tomatoes by the can, cheese, and yeast of another kind. */
import { freshYeastRange } from '../dough/ingredients.ts';
import type { Range, ShoppingItem } from './answer.ts';
import type { Evening } from './evening.ts';
import { type BenchId, type CheeseId, type FlourId, type YeastId, yeastIds } from './ids.ts';
import { everyPizza } from './onePizza.ts';
import { yeastNames } from './steps.ts';
import { toppingsAnswer } from './toppings.ts';

/** As a list names them. */
export const flourNames: Readonly<Record<FlourId, string>> = {
  strong: 'strong wheat flour',
  medium: 'wheat flour',
  weak: 'weak wheat flour',
  wholemeal: 'wholemeal flour',
  rye: 'rye flour',
  'gluten-free': 'flour without gluten',
};
export const cheeseNames: Readonly<Record<CheeseId, string>> = {
  'low-moisture-mozzarella': 'low-moisture mozzarella',
  'fresh-mozzarella': 'fresh mozzarella',
  hard: 'hard cheese',
  custom: 'cheese of your own',
};
/** g on the bench for each pizza: common practice, no source. */
export const benchFlour = 10;

/** g, `3.5` or `12`: yeast is bought by the gram. */
const few = (grams: number): string => Number(grams.toPrecision(2)).toString();

/**
 * g of each kind that does the work of so much of one, lowest and highest of the published equivalents (see
 * `freshYeastRange`); the kind itself is what it is.
 */
export function yeastInstead(grams: number, kind: YeastId): Readonly<Record<YeastId, Range>> {
  const of = (other: YeastId): Range => {
    if (other === kind) return [grams, grams];
    const [low, high] = freshYeastRange[kind];
    const [otherLow, otherHigh] = freshYeastRange[other];
    return [(grams * low) / otherHigh, (grams * high) / otherLow];
  };
  return { fresh: of('fresh'), 'active-dry': of('active-dry'), instant: of('instant') };
}

/** @param grams as weighed, by ingredient */
export function shoppingList(
  evening: Evening,
  grams: Readonly<Record<string, number>>,
): readonly ShoppingItem[] {
  const { dough, toppings } = evening;
  const every = everyPizza(evening);
  const onBenchOf = (bench: BenchId): number =>
    benchFlour * every.filter(({ pizzas }) => pizzas.bench === bench).length;
  const items: ShoppingItem[] = [];
  const add = (item: string, mass: number | undefined, note = ''): void => {
    if (mass !== undefined && mass > 0) items.push({ item, grams: mass, note });
  };
  const onBench = onBenchOf('flour');
  add(
    flourNames[dough.flour],
    grams['flour']! + onBench,
    onBench > 0 ? `${onBench} g of it for the bench` : '',
  );
  add('semolina', onBenchOf('semolina'), 'for the bench');
  for (const name of ['beer', 'milk', 'whey', 'honey', 'sugar', 'salt', 'oil']) add(name, grams[name]);
  add('other liquid', grams['custom']);
  const { kind } = dough.yeast;
  const instead = yeastInstead(grams['yeast'] ?? 0, kind);
  const others = yeastIds
    .filter((id) => id !== kind)
    .map((id) => `${few(instead[id][0])} g to ${few(instead[id][1])} g ${yeastNames[id]}`);
  add(yeastNames[kind], grams['yeast'], `or ${others.join(', or ')}`);
  const { cans, sauceG, leftSauceG, leftForPizzas } = toppingsAnswer(evening);
  const left =
    leftSauceG < 1
      ? ''
      : `; ${leftSauceG.toFixed(0)} g are left${leftForPizzas > 0 ? `, enough to freeze for ${leftForPizzas} more` : ''}`;
  add(
    toppings.tomatoes === 'whole' ? 'whole tomatoes, to drain' : 'crushed tomatoes',
    sauceG > 0 ? 1000 * cans * toppings.can : 0,
    `${cans} ${cans === 1 ? 'can' : 'cans'} of ${(1000 * toppings.can).toFixed(0)} g${left}`,
  );
  const cheeses = new Map<CheeseId, number>();
  for (const part of every.flatMap((own) => own.toppings.cheese))
    cheeses.set(part.kind, (cheeses.get(part.kind) ?? 0) + 1000 * part.mass);
  for (const [cheese, mass] of cheeses) add(cheeseNames[cheese], mass);
  return items;
}
