/**
 * The dough of a plan as cells that can all be typed in, and what a cell typed in changes in the plan. The plan keeps
 * count, diameter, percentages and one ball; which of the masses is held beside them is the window's own.
 */
import {
  amountsOf,
  withEdit,
  type Amounts,
  type Edit,
  type Held,
  type Scale,
} from '../../physics/dough/amounts.ts';
import { percentagesOf } from '../../physics/dough/ingredients.ts';
import { ballMasses, sum } from '../../physics/evening/onePizza.ts';
import { OutOfRange } from '../../physics/evening/problem.ts';
import type { Percentages } from '../../physics/dough/formula.ts';
import type { Evening } from '../../physics/evening/evening.ts';

/** What "there is so much of it" makes give: the balls, or the number of pizzas at the ball there is. */
export type Gives = 'ball' | 'count';

/** Balls are written into the plan to a tenth of a gram; kg. */
const written = 1e-4;

/** Every line that a formula may have, those of 0 % too: each of them can be typed in. */
export function formulaOf({ dough }: Evening): Percentages {
  const { yeast, salt, sugar, oil, ...liquids } = percentagesOf(dough);
  return { ...liquids, yeast: yeast ?? 0, salt: salt ?? 0, sugar: sugar ?? 0, oil: oil ?? 0 };
}

/** Whether some pizza has a ball or a size of its own. */
export function pizzasDiffer({ pizzas }: Evening): boolean {
  return pizzas.each?.some((own) => own.ballMass !== undefined || own.diameter !== undefined) ?? false;
}

/** All of it in equal shares to the pizzas that have none of their own. @throws OutOfRange when nothing is left */
export function commonShare(total: number, owns: readonly (number | undefined)[], path: string): number {
  const own = sum(owns.map((value) => value ?? 0));
  const common = owns.filter((value) => value === undefined).length;
  if (common === 0 || total <= own)
    throw new OutOfRange(
      path,
      `${(1000 * total).toFixed(0)} g in all`,
      `more than the ${(1000 * own).toFixed(0)} g of the pizzas of their own`,
    );
  return (total - own) / common;
}

/** The same thing held as before, with the figure that the plan has of it now. */
function scaleAgain({ hold, ...rest }: Scale, plain: Amounts): Scale {
  if (hold === 'massPerArea' || hold === 'ballMass' || hold === 'total') return { hold, value: plain[hold] };
  const { name, spend } = rest as Extract<Scale, { hold: 'ingredient' }>;
  const mass = plain.lines[name]?.mass ?? 0;
  if (mass === 0) return { hold: 'ballMass', value: plain.ballMass };
  return {
    hold,
    name,
    value: mass,
    spend: spend.on === 'ball' ? spend : { on: 'count', ballMass: plain.ballMass },
  };
}

/** What is held of this plan. A scale that no longer fits it, since it was changed elsewhere, is read off anew. */
export function heldOf(evening: Evening, scale: Scale | undefined): Held {
  const { count, diameter, ballMass } = evening.pizzas;
  const base = { percentages: formulaOf(evening), count, diameter };
  if (pizzasDiffer(evening)) {
    // Balls that differ are held by their sum; see `edited` for what a cell then changes.
    return { ...base, scale: { hold: 'total', value: sum(ballMasses(evening)) } };
  }
  const plain: Held = { ...base, scale: { hold: 'ballMass', value: ballMass } };
  if (scale === undefined || scale.hold === 'ballMass') return plain;
  const asked: Held = { ...base, scale };
  try {
    const amounts = amountsOf(asked);
    if (Math.abs(amounts.ballMass - ballMass) <= written && amounts.count === count) return asked;
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
  }
  return { ...base, scale: scaleAgain(scale, amountsOf(plain)) };
}

export interface Edited {
  readonly scale: Scale;
  readonly count: number;
  readonly diameter: number;
  readonly ballMass: number;
  /** only those that changed */
  readonly percentages: Percentages;
}

/**
 * The plan after a cell was typed in.
 *
 * @throws OutOfRange saying what cannot be
 */
export function edited(evening: Evening, scale: Scale | undefined, edit: Edit, gives: Gives): Edited {
  const before = heldOf(evening, scale);
  const differ = pizzasDiffer(evening);
  // A ball or an area typed in is that of the pizzas alike; only what concerns all of the dough goes by the sum.
  const alike = differ && ['ballMass', 'massPerArea', 'count', 'diameter', 'percent'].includes(edit.cell);
  const { ballMass } = evening.pizzas;
  const from: Held = alike ? { ...before, scale: { hold: 'ballMass', value: ballMass } } : before;
  let held = withEdit(from, edit);
  if (held.scale.hold === 'ingredient' && edit.cell === 'mass') {
    const spend: Extract<Scale, { hold: 'ingredient' }>['spend'] =
      gives === 'count' && !differ ? { on: 'count', ballMass } : { on: 'ball' };
    held = { ...held, scale: { ...held.scale, spend } };
  }
  const after = amountsOf(held);
  const changed = Object.entries(held.percentages).filter(
    ([name, value]) => value !== before.percentages[name],
  );
  const owns = Array.from({ length: after.count }, (_, i) => evening.pizzas.each?.[i]?.ballMass);
  return {
    scale: differ ? { hold: 'ballMass', value: ballMass } : held.scale,
    count: after.count,
    diameter: after.diameter,
    ballMass: differ && !alike ? commonShare(after.total, owns, 'pizzas.ballMass') : after.ballMass,
    percentages: Object.fromEntries(changed),
  };
}
