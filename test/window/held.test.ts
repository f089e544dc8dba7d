/** Cells of the dough: what is typed in holds, everything else follows, and nothing runs in a circle. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edited, formulaOf, heldOf } from '../../renderer/amounts/held.ts';
import { perAreaText, readPerArea } from '../../renderer/amounts/entries.ts';
import { amountsOf, type Edit, type Scale } from '../../physics/dough/amounts.ts';
import { saturday } from '../../physics/evening/demos.ts';
import { doughMass } from '../../physics/evening/onePizza.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import type { Evening } from '../../physics/evening/evening.ts';

function evening(pizzas: object = {}): Evening {
  const read = readPlanObject({ ...saturday, pizzas: { ...saturday.pizzas, ...pizzas } }, { now: 0 });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.evening;
}

/** The evening as it stands once the plan was changed: its ball to a tenth of a gram, as the plan writes it. */
function after(before: Evening, scale: Scale | undefined, edit: Edit, gives: 'ball' | 'count' = 'ball') {
  const change = edited(before, scale, edit, gives);
  const { salt, sugar, oil, yeast, ...liquids } = { ...formulaOf(before), ...change.percentages };
  const next: Evening = {
    ...before,
    pizzas: {
      ...before.pizzas,
      count: change.count,
      diameter: change.diameter,
      ballMass: Math.round(change.ballMass * 1e4) / 1e4,
    },
    dough: {
      ...before.dough,
      salt: salt!,
      sugar: sugar!,
      oil: oil!,
      yeast: { ...before.dough.yeast, percent: yeast! },
      liquid: before.dough.liquid.map((part) => ({ ...part, percent: liquids[part.kind]! })),
    },
  };
  return { evening: next, scale: change.scale };
}

describe('a cell typed in', () => {
  it('all of the dough: the ball follows, and holds it when there is one pizza more', () => {
    const first = after(evening(), undefined, { cell: 'total', value: 1.2 });
    expect(first.evening.pizzas.ballMass).toBeCloseTo(0.3, 6);
    const second = after(first.evening, first.scale, { cell: 'count', value: 5 });
    expect(second.evening.pizzas.ballMass).toBeCloseTo(0.24, 6);
    expect(amountsOf(heldOf(second.evening, second.scale)).held).toContain('total');
  });

  it('dough by area: a wider pizza takes a heavier ball, as the square of its diameter', () => {
    const first = after(evening(), undefined, { cell: 'massPerArea', value: 3.5 });
    const second = after(first.evening, first.scale, { cell: 'diameter', value: 0.36 });
    expect(second.evening.pizzas.ballMass / first.evening.pizzas.ballMass).toBeCloseTo((0.36 / 0.3) ** 2, 3);
  });

  it('flour that there is: all scales with it, and it stays when the water is changed', () => {
    const first = after(evening(), undefined, { cell: 'mass', name: 'flour', value: 0.5, means: 'have' });
    const flour = (one: { evening: Evening; scale: Scale }): number =>
      amountsOf(heldOf(one.evening, one.scale)).lines['flour']!.mass;
    expect(flour(first)).toBeCloseTo(0.5, 9);
    expect(doughMass(first.evening)).toBeCloseTo(0.5 * (1 + 0.62 + 0.025 + 0.015 + 0.002), 3);
    const second = after(first.evening, first.scale, { cell: 'percent', name: 'water', value: 70 });
    expect(flour(second)).toBeCloseTo(0.5, 9);
    expect(doughMass(second.evening)).toBeGreaterThan(doughMass(first.evening));
  });

  it('flour that there is, at the ball there is: as many whole balls as it gives', () => {
    const { evening: next } = after(
      evening(),
      undefined,
      { cell: 'mass', name: 'flour', value: 1, means: 'have' },
      'count',
    );
    // 1 kg of flour make 1.662 kg of dough: six balls of 250 g and 162 g left over.
    expect(next.pizzas.count).toBe(6);
    expect(next.pizzas.ballMass).toBeCloseTo(0.25, 9);
  });

  it('weight of water that belongs to the formula: its percentage follows', () => {
    const before = evening();
    const flour = amountsOf(heldOf(before, undefined)).lines['flour']!.mass;
    const change = edited(
      before,
      undefined,
      { cell: 'mass', name: 'water', value: 0.7 * flour, means: 'recipe' },
      'ball',
    );
    expect(change.percentages['water']).toBeCloseTo(70, 6);
    expect(change.percentages['salt']).toBeUndefined();
  });

  it('all of the dough, where one pizza has a ball of its own: the others share the rest', () => {
    const before = evening({ each: [{}, {}, {}, { ballMass: '200 g' }] });
    const next = after(before, undefined, { cell: 'total', value: 1.1 });
    expect(next.evening.pizzas.ballMass).toBeCloseTo(0.3, 6);
    expect(doughMass(next.evening)).toBeCloseTo(1.1, 6);
    expect(() => edited(before, undefined, { cell: 'total', value: 0.19 }, 'ball')).toThrow(
      /pizzas.ballMass/,
    );
  });

  it('is what it was typed, whatever was typed before', () => {
    const masses = fc.double({ min: 0.05, max: 5, noNaN: true });
    const edits: fc.Arbitrary<Edit> = fc.oneof(
      masses.map((value): Edit => ({ cell: 'total', value })),
      masses.map((value): Edit => ({ cell: 'ballMass', value })),
      fc.integer({ min: 1, max: 20 }).map((value): Edit => ({ cell: 'count', value })),
      fc.double({ min: 0.1, max: 0.6, noNaN: true }).map((value): Edit => ({ cell: 'diameter', value })),
      fc
        .double({ min: 40, max: 90, noNaN: true })
        .map((value): Edit => ({ cell: 'percent', name: 'water', value })),
      masses.map((value): Edit => ({ cell: 'mass', name: 'flour', value, means: 'have' })),
    );
    fc.assert(
      fc.property(fc.array(edits, { minLength: 1, maxLength: 6 }), (sequence) => {
        let state: { evening: Evening; scale: Scale | undefined } = { evening: evening(), scale: undefined };
        for (const edit of sequence) state = after(state.evening, state.scale, edit);
        const last = sequence.at(-1)!;
        const shown = amountsOf(heldOf(state.evening, state.scale));
        const figure =
          last.cell === 'percent' || last.cell === 'mass'
            ? shown.lines[last.name]![last.cell]
            : shown[last.cell];
        // A ball is written to a tenth of a gram; twenty of them to two grams.
        expect(Math.abs(figure - last.value)).toBeLessThanOrEqual(Math.max(0.0011, 1e-6 * last.value));
        expect(shown.ballMass).toBeCloseTo(state.evening.pizzas.ballMass, 3);
      }),
      { numRuns: 100 },
    );
  });
});

describe('an entry by area', () => {
  it('is read in either unit and shown in the one chosen', () => {
    // 1 oz/in2 is 28.349523125 g on 6.4516 cm2 (international avoirdupois ounce, inch of 25.4 mm): 4.394 g/cm2.
    expect(readPerArea('0.35 g/cm²', 'us')).toEqual({ ok: true, value: 3.5 });
    const american = readPerArea('0.1', 'us');
    expect(american.ok && american.value).toBeCloseTo(4.3942, 3);
    expect(perAreaText(4.3942, 'us')).toBe('0.100 oz/in²');
    expect(readPerArea('much', 'metric')).toEqual({
      ok: false,
      reason: 'Found "much"; allowed a number with g/cm2 or oz/in2, such as 0.35 g/cm2.',
    });
  });
});
