/** An evening whose pizzas differ: dough, toppings, shopping and steps count each as what it is. Figures invented. */
import { describe, expect, it } from 'vitest';
import { toppedArea } from '../../../physics/dough/area.ts';
import { cautionsFor } from '../../../physics/evening/cautions.ts';
import { demos } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { planDough, segmentsOf } from '../../../physics/evening/planDough.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { shoppingList } from '../../../physics/evening/shopping.ts';
import { ballStep, prepareStep, shapeStep } from '../../../physics/evening/steps.ts';
import { toppingsAnswer } from '../../../physics/evening/toppings.ts';
import { plateMaterial } from '../../../physics/materials/plates.ts';

function evening(pizzas: Readonly<Record<string, unknown>>): Evening {
  const plan = { ...demos.saturday, pizzas: { ...demos.saturday.pizzas, ...pizzas } };
  const read = readPlanObject(plan, { now: 0 });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.evening;
}

/** Four pizzas: the second for a child, the third without sauce, the fourth as all. */
const mixed = evening({
  count: 4,
  each: [
    { cheese: [{ kind: 'hard', mass: '40 g' }] },
    { diameter: '20 cm', ballMass: '120 g', sauce: '30 g', bench: 'parchment' },
    { sauce: '0 g', bench: 'metal', cheese: [] },
  ],
});
const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

describe('an evening whose pizzas differ', () => {
  const dough = planDough(mixed);

  it('weighs dough for the balls as they are, within half a step of the scale', () => {
    expect(Math.abs(sum(Object.values(dough.grams)) - (3 * 250 + 120))).toBeLessThanOrEqual(0.5);
    expect(dough.batch.flour).toBeCloseTo((planDough(evening({ count: 4 })).batch.flour * 870) / 1000, 9);
  });

  it('lets all the dough rise in one piece and a ball of mean size after it', () => {
    expect(segmentsOf(mixed).map(({ mass }) => mass)).toEqual([
      expect.closeTo(0.87, 12),
      expect.closeTo(0.2175, 12),
    ]);
  });

  it('adds up sauce and cheese pizza by pizza', () => {
    const answer = toppingsAnswer(mixed);
    const area = 3 * toppedArea(0.3) + toppedArea(0.2);
    expect(answer.sauceG).toBeCloseTo(70 + 30 + 0 + 70, 9);
    expect(answer.cheeseG).toBeCloseTo(40 + 120 + 0 + 120, 9);
    expect(answer.sauceGPerCm2).toBeCloseTo(170 / (1e4 * area), 9);
    expect(
      answer.each.map(({ ballG, diameterCm, sauceG, cheeseG }) => [ballG, diameterCm, sauceG, cheeseG]),
    ).toEqual(
      [
        [250, 30, 70, 40],
        [120, 20, 30, 120],
        [250, 30, 0, 0],
        [250, 30, 70, 120],
      ].map((row) => row.map((value) => expect.closeTo(value, 9) as number)),
    );
    // 230 g are left of a can of 400 g; a sauced pizza takes 57 g in the mean.
    expect(answer).toMatchObject({ cans: 1, leftForPizzas: 4 });
  });

  it('buys each cheese once, and flour for the bench of those that lie on it', () => {
    const list = shoppingList(mixed, dough.grams);
    const of = (item: string): number | undefined => list.find((one) => one.item === item)?.grams;
    expect(of('hard cheese')).toBeCloseTo(40, 9);
    expect(of('low-moisture mozzarella')).toBeCloseTo(240, 9);
    expect(list[0]!.note).toBe('20 g of it for the bench');
  });

  it('says for each what to divide, to weigh and to shape', () => {
    expect(ballStep(mixed, dough.stages.at(-1)!)).toMatch(
      /^Divide the dough into 3 balls of 250 g and 1 of 120 g, cover/,
    );
    expect(prepareStep(mixed)).toBe(
      'Get ready 70 g sauce and 40 g cheese for pizza 1; 30 g sauce and 120 g cheese for pizza 2; 70 g sauce and 120 g cheese for pizza 4, and keep the cheese cool',
    );
    expect(shapeStep(mixed, 2)).toBe('Shape pizza 2 to 20 cm on baking paper, 30 g sauce, 120 g cheese');
    expect(shapeStep(mixed, 3)).toBe('Shape pizza 3 to 30 cm on an oiled sheet');
  });

  it('warns of the paper and the oil under one pizza as under all', () => {
    const codes = cautionsFor({
      evening: { ...mixed, dough: { ...mixed.dough, oil: 0 }, plate: { ...mixed.plate, surface: 'bare' } },
      material: plateMaterial('carbon-steel', 'bare', undefined),
      plateMass: 8,
      hottestPlate: 530,
      toppingsOut: 600,
      doughOut: 3600,
    }).map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['parchment-above-rating', 'oil-near-smoke-point']));
  });

  it('is the plain evening when each repeats what all are', () => {
    const plain = evening({ count: 3 });
    const same = evening({ count: 3, each: [{ diameter: '30 cm' }, { ballMass: '250 g' }, {}] });
    expect(planDough(same).grams).toEqual(planDough(plain).grams);
    expect(toppingsAnswer(same)).toEqual(toppingsAnswer(plain));
    expect(shoppingList(same, dough.grams)).toEqual(shoppingList(plain, dough.grams));
    expect(prepareStep(same)).toBe(prepareStep(plain));
  });
});
