/** Cells taken into the plan, each as one step of the history. Every function returns why not, or nothing. */
import { edited, type Edited } from './held.ts';
import { useHold } from './holdStore.ts';
import { writtenLength, writtenMass } from './entries.ts';
import { effectsOfNumber } from '../inputs/effects.ts';
import { change, usePlan } from '../state/planStore.ts';
import { valueAt } from '../state/path.ts';
import { pathName } from '../words/assumed.ts';
import { OutOfRange, type Problem } from '../../physics/evening/problem.ts';
import type { Edit } from '../../physics/dough/amounts.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

function reason({ path, found, allowed }: Problem): string {
  return `${pathName(path)}: found ${found}; allowed ${allowed}.`;
}

/** Why a figure cannot be, from what the computation says of it. */
export function refusalOf(make: () => string | undefined): string | undefined {
  try {
    return make();
  } catch (error) {
    if (error instanceof OutOfRange) return reason(error.problem);
    throw error;
  }
}

export function takeFields(fields: Readonly<Record<string, unknown>>): string | undefined {
  const problem = change(fields);
  return problem === undefined ? undefined : reason(problem);
}

/** Percent as the plan keeps what followed from weights: four digits are finer than any scale. */
function tidyPercent(percent: number): number {
  return Number(percent.toPrecision(4));
}

/** A list of the plan in full, so that one part of it can be replaced even where the plan leaves the list out. */
export function listAt(path: string, otherwise: readonly object[]): readonly object[] {
  const list = valueAt(usePlan.getState().file, path);
  return Array.isArray(list) ? (list as readonly object[]) : otherwise;
}

export function liquidList({ dough }: Evening): readonly object[] {
  const parts = dough.liquid.map(({ kind, percent, waterShare }) => ({
    kind,
    percent,
    ...(waterShare === undefined ? {} : { waterShare }),
  }));
  return listAt('dough.liquid', parts);
}

function percentFields(
  evening: Evening,
  percentages: Edited['percentages'],
): Readonly<Record<string, unknown>> {
  const { dough } = evening;
  const fields: Record<string, unknown> = {};
  let liquids = liquidList(evening);
  for (const [name, percent] of Object.entries(percentages)) {
    const index = dough.liquid.findIndex(({ kind }) => kind === name);
    if (name === 'yeast') fields['dough.yeast.percent'] = tidyPercent(percent);
    else if (name === 'salt' || name === 'sugar' || (name === 'oil' && index === -1))
      fields[`dough.${name}`] = tidyPercent(percent);
    else {
      // Several liquids of one kind are one line here: the first of them takes the change.
      const others = dough.liquid.filter((part, i) => part.kind === name && i !== index);
      const rest = others.reduce((sum, part) => sum + part.percent, 0) + (name === 'oil' ? dough.oil : 0);
      const own = tidyPercent(percent - rest);
      liquids = liquids.map((part, i) => (i === index ? { ...part, percent: own } : part));
      fields['dough.liquid'] = liquids;
    }
  }
  return fields;
}

/**
 * A cell of the dough.
 *
 * @param asTyped the cell's own field of the plan, which keeps the text that was typed
 */
export function takeEdit(
  edit: Edit,
  evening: Evening,
  units: UnitSystem,
  asTyped: Readonly<Record<string, unknown>> = {},
): string | undefined {
  const { scale, gives } = useHold.getState();
  return refusalOf(() => {
    const after = edited(evening, scale, edit, gives);
    const { pizzas } = evening;
    const refusal = takeFields({
      ...(after.count === pizzas.count ? {} : { 'pizzas.count': after.count }),
      ...(after.diameter === pizzas.diameter
        ? {}
        : { 'pizzas.diameter': writtenLength(after.diameter, units) }),
      ...(Math.abs(after.ballMass - pizzas.ballMass) < 5e-6
        ? {}
        : { 'pizzas.ballMass': writtenMass(after.ballMass, units) }),
      ...percentFields(evening, after.percentages),
      ...asTyped,
      ...effectsOfNumber('pizzas.count', after.count, usePlan.getState().file),
    });
    if (refusal === undefined) useHold.setState({ scale: after.scale });
    return refusal;
  });
}
