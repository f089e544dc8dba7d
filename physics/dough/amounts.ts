/**
 * Amounts as a cook fills them in: every cell can be typed in, and it is always clear what is held and what follows.
 *
 * Held are the formula (percent of each ingredient), how many pizzas and how wide, and **one** scale: the mass per area,
 * the ball, all the dough, or the weight of one ingredient (the flour at hand, the last 9 g of yeast). Everything else
 * follows from these in one direction, so nothing can run in a circle:
 *
 *     area    -> ball  = mass per area x pi d2/4 -> dough = count x ball -> flour = 100 dough/sum -> ingredients
 *     weight  -> flour = 100 weight/percent      -> ingredients -> dough -> ball = dough/count
 *
 * Where flour or another ingredient is what there is, `spend` says what gives: the ball (all of it is used), or the
 * count (balls of a given mass, as many whole ones as there is dough for, the rest left over).
 */
import { OutOfRange } from '../evening/problem.ts';
import { pizzaArea } from './area.ts';
import {
  type Masses,
  massesFromIngredient,
  massesFromTotal,
  percentagesFromMasses,
  type Percentages,
  roundedForScale,
} from './formula.ts';

export type Scale =
  | { readonly hold: 'massPerArea'; /** kg/m2 */ readonly value: number }
  | { readonly hold: 'ballMass'; /** kg */ readonly value: number }
  | { readonly hold: 'total'; /** kg */ readonly value: number }
  | {
      readonly hold: 'ingredient';
      /** `flour` or a line of the formula */
      readonly name: string;
      /** kg */
      readonly value: number;
      readonly spend: { readonly on: 'ball' } | { readonly on: 'count'; /** kg */ readonly ballMass: number };
    };

export interface Held {
  readonly percentages: Percentages;
  readonly count: number;
  /** m */
  readonly diameter: number;
  readonly scale: Scale;
}

export interface AmountsLine {
  /** flour 100 */
  readonly percent: number;
  /** kg, exact */
  readonly mass: number;
  /** g, as the scale shows it */
  readonly grams: number;
}

export interface Amounts {
  readonly count: number;
  readonly diameter: number;
  /** kg/m2 */
  readonly massPerArea: number;
  /** kg of one ball; of all balls; of dough that makes no whole ball */
  readonly ballMass: number;
  readonly total: number;
  readonly leftOver: number;
  /** flour first */
  readonly lines: Readonly<Record<string, AmountsLine>>;
  /** cells that are typed in; every other one follows */
  readonly held: readonly Cell[];
}

/** A cell of the table: a single figure, or percent or mass of one ingredient. */
export type Cell =
  'count' | 'diameter' | 'massPerArea' | 'ballMass' | 'total' | `percent:${string}` | `mass:${string}`;

function checkWhole(count: number): void {
  if (!(Number.isInteger(count) && count >= 1))
    throw new OutOfRange('pizzas.count', String(count), 'a whole number of 1 or more');
}

function checkMass(path: string, mass: number): void {
  if (!(mass > 0 && Number.isFinite(mass)))
    throw new OutOfRange(path, `${mass} kg`, 'a finite mass above 0 kg');
}

function massesOf(held: Held): Masses {
  const { percentages, count, diameter, scale } = held;
  switch (scale.hold) {
    case 'massPerArea':
      checkMass('massPerArea', scale.value);
      return massesFromTotal(percentages, count * scale.value * pizzaArea(diameter));
    case 'ballMass':
      checkMass('pizzas.ballMass', scale.value);
      return massesFromTotal(percentages, count * scale.value);
    case 'total':
      return massesFromTotal(percentages, scale.value);
    case 'ingredient':
      return massesFromIngredient(percentages, scale.name, scale.value);
  }
}

/**
 * The whole table from what is held.
 *
 * @param scaleStep kg, of the kitchen scale; the grams shown add up to all the dough within half a step
 * @throws OutOfRange naming the cell that cannot be
 */
export function amountsOf(held: Held, scaleStep = 0.001): Amounts {
  const { diameter, scale } = held;
  checkWhole(held.count);
  const masses = massesOf(held);
  const all = Object.values(masses).reduce((sum, mass) => sum + mass, 0);
  const byBall = scale.hold === 'ingredient' && scale.spend.on === 'count' ? scale.spend.ballMass : undefined;
  if (byBall !== undefined) checkMass('pizzas.ballMass', byBall);
  const count = byBall === undefined ? held.count : Math.floor(all / byBall + 1e-9);
  if (count < 1)
    throw new OutOfRange(
      'pizzas.ballMass',
      `${byBall} kg`,
      `at most the ${all.toFixed(3)} kg of dough there is`,
    );
  const ballMass = byBall ?? all / count;
  const rounded = roundedForScale(inGrams(masses), 1000 * scaleStep);
  const flourFirst = ['flour', ...Object.keys(held.percentages)];
  return {
    count,
    diameter,
    massPerArea: ballMass / pizzaArea(diameter),
    ballMass,
    total: all,
    leftOver: Math.max(0, all - count * ballMass),
    lines: Object.fromEntries(
      flourFirst.map((name) => [
        name,
        {
          percent: name === 'flour' ? 100 : held.percentages[name]!,
          mass: masses[name]!,
          grams: rounded[name]!,
        },
      ]),
    ),
    held: heldCells(held),
  };
}

function inGrams(masses: Masses): Masses {
  return {
    ...Object.fromEntries(Object.entries(masses).map(([name, mass]) => [name, 1000 * mass])),
    flour: 1000 * masses.flour,
  };
}

function heldCells({ percentages, scale }: Held): readonly Cell[] {
  const percents = Object.keys(percentages).map((name): Cell => `percent:${name}`);
  if (scale.hold !== 'ingredient') return ['count', 'diameter', scale.hold, ...percents];
  const weight: Cell = `mass:${scale.name}`;
  return scale.spend.on === 'count'
    ? ['diameter', 'ballMass', weight, ...percents]
    : ['count', 'diameter', weight, ...percents];
}

/** What a cook types into one cell. Masses in kg, lengths in m. */
export type Edit =
  | { readonly cell: 'count' | 'diameter' | 'massPerArea' | 'ballMass' | 'total'; readonly value: number }
  | { readonly cell: 'percent'; readonly name: string; readonly value: number }
  | {
      readonly cell: 'mass';
      readonly name: string;
      readonly value: number;
      /** `recipe`: so much of it belongs to this flour, the percentage follows; `have`: so much there is, all follows */
      readonly means: 'recipe' | 'have';
    };

/**
 * What is held after a cell was typed in. A mass, ball or area becomes the scale; a percentage changes the formula and
 * leaves the scale; the weight of an ingredient is either part of the recipe (its percentage follows, flour stays) or
 * what there is (the formula stays, everything scales). A scale by ingredient that is typed over goes.
 *
 * @throws OutOfRange for flour in percent, or an ingredient that the formula does not have
 */
export function withEdit(held: Held, edit: Edit): Held {
  switch (edit.cell) {
    case 'count':
      return { ...held, count: edit.value, scale: perBall(held) };
    case 'diameter':
      return { ...held, diameter: edit.value };
    case 'massPerArea':
    case 'ballMass':
    case 'total':
      return { ...held, scale: { hold: edit.cell, value: edit.value } };
    case 'percent':
      known(held, edit.name);
      return { ...held, percentages: { ...held.percentages, [edit.name]: edit.value } };
    case 'mass':
      return withMass(held, edit.name, edit.value, edit.means);
  }
}

/** The count is typed in: a scale whose count followed keeps its ball. */
function perBall({ scale }: Held): Scale {
  return scale.hold === 'ingredient' && scale.spend.on === 'count'
    ? { hold: 'ballMass', value: scale.spend.ballMass }
    : scale;
}

function known({ percentages }: Held, name: string): void {
  if (!Object.hasOwn(percentages, name))
    throw new OutOfRange(name, 'no such ingredient', `one of ${Object.keys(percentages).join(', ')}`);
}

function withMass(held: Held, name: string, value: number, means: 'recipe' | 'have'): Held {
  if (name !== 'flour') known(held, name);
  if (means === 'have') return { ...held, scale: { hold: 'ingredient', name, value, spend: { on: 'ball' } } };
  const masses = massesOf(held);
  const typed = { ...masses, [name]: value };
  const percentages = percentagesFromMasses(typed);
  // The weights beside it stand as they were, so the dough grows by what was added.
  const total = Object.values(typed).reduce((sum, mass) => sum + mass, 0);
  return { ...held, percentages, scale: { hold: 'total', value: total } };
}
