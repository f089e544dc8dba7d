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
