/** Different pizzas one after another: what a plan says of all of them, with what it says of one. */
import type { Evening } from './evening.ts';

/**
 * The evening as if all its pizzas were the n-th one.
 *
 * @param pizza 1 for the first
 */
export function withPizza(evening: Evening, pizza: number): Evening {
  const own = evening.pizzas.each?.[pizza - 1];
  if (own === undefined) return evening;
  const { pizzas, toppings } = evening;
  return {
    ...evening,
    pizzas: {
      ...pizzas,
      diameter: own.diameter ?? pizzas.diameter,
      ballMass: own.ballMass ?? pizzas.ballMass,
      shadeLightness: own.shadeLightness ?? pizzas.shadeLightness,
      bench: own.bench ?? pizzas.bench,
    },
    toppings: {
      ...toppings,
      sauce: own.sauce ?? toppings.sauce,
      cheese: own.cheese ?? toppings.cheese,
    },
  };
}

/** For each pizza in its order the evening as if all were like it. */
export function everyPizza(evening: Evening): readonly Evening[] {
  return Array.from({ length: evening.pizzas.count }, (_, index) => withPizza(evening, index + 1));
}

/** kg of each ball, in the order of the pizzas */
export function ballMasses(evening: Evening): readonly number[] {
  return everyPizza(evening).map(({ pizzas }) => pizzas.ballMass);
}

/** kg of all balls together */
export function doughMass(evening: Evening): number {
  const { count, ballMass, each } = evening.pizzas;
  return each === undefined ? count * ballMass : sum(ballMasses(evening));
}

/** kg of cheese on one pizza of an evening whose pizzas are alike */
export function cheeseOn({ toppings }: Pick<Evening, 'toppings'>): number {
  return sum(toppings.cheese.map(({ mass }) => mass));
}

/** 0 of none. */
export function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}
