/** Sauce and cheese for the whole evening: by area, by can, what is left to freeze. SI inside, kg. */
import { toppedArea } from '../dough/area.ts';
import type { ToppingsAnswer } from './answer.ts';
import type { Evening } from './evening.ts';
import type { TomatoId } from './ids.ts';
import { cheeseOn, everyPizza, sum } from './onePizza.ts';

/**
 * kg of contents in cans as sold. No. 10: 105 oz, No. 2 1/2: 29 oz, No. 2: 20 oz, No. 303: 16 oz, No. 300: 14 1/2 oz
 * (American Can Company recipe booklet, table of can sizes). 28 oz and the 400 g can of Europe: common practice, no
 * source.
 */
const ounce = 0.45359237 / 16;
export const canSizes = {
  'No. 10': 105 * ounce,
  'No. 2 1/2': 29 * ounce,
  '28 oz': 28 * ounce,
  'No. 2': 20 * ounce,
  'No. 303': 16 * ounce,
  'No. 300': 14.5 * ounce,
  '400 g': 0.4,
} as const;

/**
 * Share of a can's contents that becomes sauce: crushed tomatoes all of it; whole ones drained 19.5/34.75 = 0.56 by
 * weight (A Manual of Home-Making, Table XXVI, sample U).
 */
export const sauceShare: Readonly<Record<TomatoId, number>> = { crushed: 1, whole: 19.5 / 34.75 };

export interface Cans {
  readonly count: number;
  /** kg of sauce in one can */
  readonly yield: number;
  /** kg of sauce left over, and for how many whole pizzas more that is */
  readonly left: number;
  readonly leftForPizzas: number;
}

/**
 * Whole cans for so much sauce.
 *
 * @param each kg a pizza; 0 opens none
 * @param needed kg for all, where the pizzas differ and `each` is their mean
 */
export function cansFor(
  each: number,
  pizzas: number,
  can: number,
  tomatoes: TomatoId,
  needed = each * pizzas,
): Cans {
  const perCan = can * sauceShare[tomatoes];
  // 4 x 0.1 kg out of 0.4 kg are one can, whatever the last bit says.
  const count = needed > 0 ? Math.ceil(needed / perCan - 1e-9) : 0;
  const left = Math.max(0, count * perCan - needed);
  return {
    count,
    yield: perCan,
    left,
    leftForPizzas: each > 0 ? Math.floor(left / each + 1e-9) : 0,
  };
}

/** Sauce, cheese and cans of a whole evening, in grams. */
export function toppingsAnswer(evening: Evening): ToppingsAnswer {
  const { can, tomatoes } = evening.toppings;
  const every = everyPizza(evening);
  const area = sum(every.map(({ pizzas }) => toppedArea(pizzas.diameter)));
  const sauces = every.map(({ toppings }) => toppings.sauce);
  const cheeses = every.map(cheeseOn);
  const [sauce, cheese] = [sum(sauces), sum(cheeses)];
  const sauced = sauces.filter((mass) => mass > 0).length;
  const cans = cansFor(sauced === 0 ? 0 : sauce / sauced, sauced, can, tomatoes, sauce);
  return {
    sauceG: 1000 * sauce,
    cheeseG: 1000 * cheese,
    sauceGPerCm2: (0.1 * sauce) / area,
    cheeseGPerCm2: (0.1 * cheese) / area,
    each: every.map((own, index) => ({
      pizza: index + 1,
      diameterCm: 100 * own.pizzas.diameter,
      ballG: 1000 * own.pizzas.ballMass,
      sauceG: 1000 * own.toppings.sauce,
      cheeseG: 1000 * cheeses[index]!,
    })),
    cans: cans.count,
    canYieldG: 1000 * cans.yield,
    leftSauceG: 1000 * cans.left,
    leftForPizzas: cans.leftForPizzas,
  };
}
