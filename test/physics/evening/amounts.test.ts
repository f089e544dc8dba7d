import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { shoppingList, yeastInstead } from '../../../physics/evening/shopping.ts';
import { canSizes, cansFor, sauceShare, toppingsAnswer } from '../../../physics/evening/toppings.ts';

const ounce = 0.45359237 / 16;

function saturday(): Evening {
  const read = readPlanObject(demos.saturday, { now: 0 });
  if (!read.ok) throw new Error('the demo evening does not read');
  return read.evening;
}

describe('sauce by the can', () => {
  // American Can Company recipe booklet (No. 10 = 105 oz); 5 oz per 12 in pizza: Pizza Today, Oct 2019. By division.
  it('a No. 10 can does 21 pizzas of 12 in at 5 oz; 28 oz do 5.6', () => {
    const ten = canSizes['No. 10'];
    expect(cansFor(5 * ounce, 21, ten, 'crushed')).toMatchObject({ count: 1, leftForPizzas: 0 });
    expect(cansFor(5 * ounce, 22, ten, 'crushed').count).toBe(2);
    const small = cansFor(5 * ounce, 5, canSizes['28 oz'], 'crushed');
    expect([small.count, small.leftForPizzas]).toEqual([1, 0]);
    expect(small.left / ounce).toBeCloseTo(3, 9);
  });

  it('Armed Forces Recipe Service, pizza: one No. 10 can, 6 lb 9 oz, for four sheet pans', () => {
    expect(canSizes['No. 10'] / ounce).toBe(6 * 16 + 9);
  });

  it('A Manual of Home-Making, Table XXVI: whole tomatoes drain to 0.56 of their weight', () => {
    expect(sauceShare.whole).toBeCloseTo(0.56, 2);
    expect(cansFor(0.07, 4, 0.4, 'whole').count).toBe(2);
  });

  it('opens no can for no sauce, and exactly one for what it holds', () => {
    expect(cansFor(0, 4, 0.4, 'crushed')).toEqual({ count: 0, yield: 0.4, left: 0, leftForPizzas: 0 });
    expect(cansFor(0.1, 4, 0.4, 'crushed').count).toBe(1);
  });

  it('adds sauce and cheese up over the evening, with what is left to freeze', () => {
    const answer = toppingsAnswer(saturday());
    expect(answer).toMatchObject({ cans: 1, leftForPizzas: 1 });
    expect(answer.sauceG).toBeCloseTo(280, 9);
    expect(answer.cheeseG).toBeCloseTo(480, 9);
    expect(answer.leftSauceG).toBeCloseTo(120, 9);
    // PMQ Think Tank survey: 4 to 8 oz of cheese on 12 in, 0.155 to 0.311 g/cm2 of the whole pizza.
    expect(answer.cheeseGPerCm2).toBeGreaterThan(0.155);
    expect(answer.cheeseGPerCm2).toBeLessThan(0.311);
  });
});

describe('toppings that the plan leaves out', () => {
  it('follow the area of the pizza, rim left bare', () => {
    const read = readPlanObject(
      { format: 'hearthclock/evening', version: 1, pizzas: { diameter: '24 cm' } },
      { now: 0 },
    );
    if (!read.ok) throw new Error('does not read');
    const share = ((0.24 - 0.0254) / (0.3 - 0.0254)) ** 2;
    expect(read.evening.toppings.sauce).toBeCloseTo(0.07 * share, 3);
    expect(read.evening.toppings.cheese[0]!.mass).toBeCloseTo(0.12 * share, 3);
    expect(read.assumed).toContainEqual({ path: 'toppings.sauce', taken: '43 g', from: 'common default' });
  });
});

describe('yeast of another kind', () => {
  // "Breads" (ckbk) 0.40 and 0.33; Gisslen, "Professional Cooking", 0.50 and 0.35; home-baking list 1/4 oz for 2/3 oz.
  it('gives the span of the published equivalents', () => {
    const { 'active-dry': active, instant, fresh } = yeastInstead(10, 'fresh');
    expect(active[0]).toBeCloseTo(3.75, 9);
    expect(active[1]).toBeCloseTo(5, 9);
    expect(instant[0]).toBeCloseTo(3.3, 9);
    expect(instant[1]).toBeCloseTo(3.5, 9);
    expect(fresh).toEqual([10, 10]);
  });

  it('comes back: a span from dry to fresh holds the fresh that it came from', () => {
    const [low, high] = yeastInstead(3.4, 'instant').fresh;
    expect(low).toBeLessThan(10.1);
    expect(high).toBeGreaterThan(10.1);
  });
});

describe('shopping list', () => {
  const grams = { flour: 602, water: 373, salt: 15, oil: 9, yeast: 1.2 };

  it('names what is bought, flour for the bench too, and leaves out the tap', () => {
    const list = shoppingList(saturday(), grams);
    expect(list.map(({ item }) => item)).toEqual([
      'wheat flour',
      'salt',
      'oil',
      'instant yeast',
      'crushed tomatoes',
      'low-moisture mozzarella',
    ]);
    expect(list[0]).toMatchObject({ grams: 642, note: '40 g of it for the bench' });
    expect(list[3]!.note).toBe('or 3.4 g to 3.6 g fresh yeast, or 1.3 g to 1.8 g active dry yeast');
    expect(list[4]).toEqual({
      item: 'crushed tomatoes',
      grams: 400,
      note: '1 can of 400 g; 120 g are left, enough to freeze for 1 more',
    });
  });

  it('speaks of beer, semolina and drained tomatoes where there are such', () => {
    const evening = saturday();
    const list = shoppingList(
      {
        ...evening,
        pizzas: { ...evening.pizzas, bench: 'semolina' },
        toppings: { ...evening.toppings, tomatoes: 'whole' },
      },
      { flour: 600, beer: 370, yeast: 1.2 },
    );
    const items = list.map(({ item }) => item);
    expect(items).toEqual(expect.arrayContaining(['semolina', 'beer', 'whole tomatoes, to drain']));
    expect(items).not.toContain('salt');
  });
});
