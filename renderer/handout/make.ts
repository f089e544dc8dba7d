/** Makes a handout; it takes a moment, so the worker calls it. */
import { planFromFile } from '../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { factsOf, type HandoutOptions } from '../../physics/handout/facts.ts';
import { handouts, type HandoutId } from '../../physics/handout/files.ts';
import { localOffset } from '../words/clock.ts';

export interface HandoutAsked extends Pick<HandoutOptions, 'units' | 'paper'> {
  readonly handout: HandoutId;
  readonly file: PlanFile;
}
export type HandoutMade =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** @param now ms since 1970 */
export function makeHandout({ handout, file, ...options }: HandoutAsked, now: number): HandoutMade {
  const clock = { now, readersClock: localOffset };
  const planned = planFromFile(file, { ...clock, offsetMinutes: localOffset(now), advice: false });
  if (!planned.ok) return planned;
  return { ok: true, text: handouts[handout].make(factsOf(planned, file, { ...options, ...clock })) };
}
