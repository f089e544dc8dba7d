/** Ovens for the comparisons: each is read from a plan file, so that any of them can be planned with as it stands. */
import { allEffects } from '../bake/parameters.ts';
import type { Evening } from '../evening/evening.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { readPlanObject } from '../evening/readPlan.ts';
import { wording } from '../evening/problem.ts';
import { assemble, ovenContext } from '../oven/assembly.ts';
import type { OvenContext } from '../oven/assembly.ts';
import { OvenRun } from '../oven/ovenRun.ts';
import { parametersOf } from '../oven/parameters.ts';
import { readDial } from '../oven/settled.ts';

/** s */
export const step = 5;

/** The evening of a plan file with these blocks. @throws Error when it cannot be read: our own mistake */
export function eveningFor(
  blocks: Pick<PlanFile, 'kitchen' | 'oven' | 'plate' | 'pizzas' | 'toppings'>,
): Evening {
  const read = readPlanObject({ format: 'hearthclock/evening', version: 1, ...blocks }, { now: 0 });
  if (!read.ok) throw new Error(read.problems.map(wording).join('; '));
  return read.evening;
}

/** The oven of such a plan. */
function contextFor(oven: NonNullable<PlanFile['oven']>): OvenContext {
  const evening = eveningFor({ oven });
  return ovenContext(evening, parametersOf(evening.oven), allEffects);
}

/** The oven with nothing in it but its racks, cold, as it is switched on. */
export function emptyOven(oven: NonNullable<PlanFile['oven']>): OvenRun {
  const context = contextFor(oven);
  const { target } = readDial(context, step);
  return new OvenRun(context, assemble(context, undefined, undefined, 0), undefined, target);
}

/** The preset's cavity with another volume (l), its sides in the same proportion. */
export function cavityOf(
  [width, depth, height]: readonly [number, number, number],
  litres: number,
): { readonly width: string; readonly depth: string; readonly height: string } {
  const factor = Math.cbrt(litres / (width * depth * height * 1e-3));
  const cm = (side: number): string => `${(side * factor).toFixed(2)} cm`;
  return { width: cm(width), depth: cm(depth), height: cm(height) };
}
