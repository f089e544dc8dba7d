/** What a cook can do about an oven that reaches less: each tried on the same pizza, and what it brings. */
import { soldThickness, withDifferences, type Difference } from '../compare/differences.ts';
import { withValueAt } from '../state/path.ts';
import { rackHeightOf, rackPositionOf, rackText } from '../words/names.ts';
import { measures, type Compared } from '../../physics/evening/comparison.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

/** The plan in an oven that goes no further than this, K: one pizza is enough to see what the bake becomes. */
export function inWeakOven(file: PlanFile, setting: number): PlanFile {
  const written = `${String(Number((setting - 273.15).toFixed(2)))} degC`;
  return withDifferences(file, [
    { path: 'oven.highestSetting', value: written },
    { path: 'oven.setpoint', value: written },
  ]);
}
/** Bakes of the others follow from the first: left out, the answer comes sooner. */
export function firstPizzaOf(file: PlanFile): PlanFile {
  return ['pizzas.loadAt', 'pizzas.each'].reduce(
    (less, path) => withValueAt(less, path, undefined),
    withValueAt(file, 'pizzas.count', 1),
  );
}

export interface Help {
  readonly id: string;
  readonly what: string;
  readonly file: PlanFile;
}

const minutesText = (minutes: number): string => `${String(Math.ceil(minutes))} min`;

/** Topping that is left out where less is asked for: a third, our choice. */
const lessTopping = 2 / 3;
/** min that the plate is left to soak beyond ready; that the top element glows before the load. Our choice. */
const soak = 20;
const glow = 5;

/**
 * Everything that is tried for the weak oven.
 *
 * @param weak the plan in the weak oven, `evening` the same one read
 * @param now what it is there without help
 */
export function helpsFor(
  weak: PlanFile,
  evening: Evening,
  now: Compared,
  units: UnitSystem,
): readonly Help[] {
  const { plate, pizzas, toppings } = evening;
  const helps: Help[] = [];
  const add = (id: string, what: string, differences: readonly Difference[]): void => {
    helps.push({ id, what, file: withDifferences(weak, differences) });
  };
  const position = rackPositionOf(plate.rackHeight);
  for (const by of [1, -1]) {
    const next = (position ?? 2) + by;
    if (position === undefined || next < 1 || next > 5) continue;
    const height = rackHeightOf(next);
    add(`rack ${String(by)}`, `One rack ${by > 0 ? 'up' : 'down'}, ${rackText(height)}`, [
      { path: 'plate.rackHeight', value: height },
    ]);
  }
  for (const id of ['thicker', 'thinner'] as const) {
    const text = soldThickness(plate.thickness, id, units);
    add(id, `A ${id} plate, ${text}`, [{ path: 'plate.thickness', value: text }]);
  }
  const lacks = measures.rim_finish_min(now);
  if (lacks > 0.2)
    add('top-at-end', `Top element for the last ${minutesText(lacks)}`, [
      { path: 'pizzas.steps.topElementAtEnd', value: minutesText(lacks) },
    ]);
  add('top-before', `Top element for ${String(glow)} min before the load`, [
    { path: 'pizzas.steps.topElementBefore', value: `${String(glow)} min` },
  ]);
  const loadAt = minutesText(now.preheat.minutes + soak);
  add('soak', `${String(soak)} min more of warming up, first pizza in after ${loadAt}`, [
    { path: 'pizzas.loadAt', value: loadAt },
  ]);
  // To what a kitchen scale shows.
  const less = (kg: number): string =>
    showQuantity(lessTopping * kg, 'mass', units, {
      unit: units === 'us' ? 'oz' : 'g',
      decimals: units === 'us' ? 1 : 0,
    });
  const sauce = less(toppings.sauce);
  const cheese = toppings.cheese.map(({ kind, mass, waterShare }) => ({
    kind,
    mass: less(mass),
    ...(waterShare === undefined ? {} : { waterShare }),
  }));
  helps.push({
    id: 'less-topping',
    what: `A third less topping, ${sauce} of sauce`,
    file: withValueAt(withValueAt(weak, 'toppings.sauce', sauce), 'toppings.cheese', cheese),
  });
  const ball = showQuantity(0.85 * pizzas.ballMass, 'mass', units, units === 'us' ? {} : { decimals: 0 });
  add('thin', `A thinner base, balls of ${ball}`, [{ path: 'pizzas.ballMass', value: ball }]);
  return helps;
}

/** min from the load until base and rim both have their shade */
export function untilDone(compared: Compared): number {
  return measures.first_bake_min(compared) + measures.rim_finish_min(compared);
}

export interface Tried {
  readonly help: Help;
  readonly compared: Compared;
  /** min by which base and rim are done sooner; below 0 later */
  readonly gains: number;
}

/** The best first. */
export function ranked(
  helps: readonly Help[],
  compared: readonly (Compared | undefined)[],
  now: Compared,
): readonly Tried[] {
  return helps
    .flatMap((help, i): readonly Tried[] => {
      const then = compared[i];
      return then === undefined ? [] : [{ help, compared: then, gains: untilDone(now) - untilDone(then) }];
    })
    .sort((a, b) => b.gains - a.gains);
}
