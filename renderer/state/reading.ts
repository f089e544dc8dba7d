/** The plan in SI, read on the window's own thread: what the fields show, and whether an entry can be taken. */
import { localOffset } from '../words/clock.ts';
import { readPlanObject, type PlanRead } from '../../physics/evening/readPlan.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';

// One evening of planning: what "the next half past seven" means does not move while the window is open.
const openedAt = Date.now();
const read = new WeakMap<PlanFile, PlanRead>();

export function readingOf(file: PlanFile): PlanRead {
  const known = read.get(file);
  if (known !== undefined) return known;
  const fresh = readPlanObject(file, { now: openedAt, offsetMinutes: localOffset(openedAt) });
  read.set(file, fresh);
  return fresh;
}

export function problemsOf(file: PlanFile): readonly Problem[] {
  const reading = readingOf(file);
  return reading.ok ? [] : reading.problems;
}

/** The plan of a text: parsed and read, or what is wrong with it. */
export function planOf(
  parsed: unknown,
):
  | { readonly ok: true; readonly file: PlanFile }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const reading = readPlanObject(parsed, { now: openedAt, offsetMinutes: localOffset(openedAt) });
  // What could be read has the shape of a plan file.
  return reading.ok ? { ok: true, file: parsed as PlanFile } : reading;
}
