/** Evenings beside the plan: what a comparison, a map or a table of ovens asks of each, and what comes back. */
import { comparedOf, type Compared } from '../../physics/evening/comparison.ts';
import type { Advice } from '../../physics/evening/answer.ts';
import type { GoalId } from '../../physics/evening/ids.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { readersOven, type ReadersRow } from '../../physics/evening/readersOven.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';

export type StudyJob =
  | { readonly kind: 'evening'; readonly file: PlanFile }
  /** what brings this plan nearer to a goal */
  | { readonly kind: 'goal'; readonly file: PlanFile; readonly goal: GoalId }
  /** the first pizza of this plan in an oven that reaches so many K */
  | { readonly kind: 'reader'; readonly file: PlanFile; readonly setting: number };

/** A curve in minutes. */
export interface Curve {
  readonly minutes: readonly number[];
  readonly values: readonly number[];
}
export interface EveningStudy {
  readonly kind: 'evening';
  readonly compared: Compared;
  /** K against minutes since the oven went on, nothing loaded */
  readonly plateTop: Curve;
  readonly air: Curve;
  /** of the first pizza, against minutes in the oven: L*, L*, K, K */
  readonly baseLightness: Curve;
  readonly rimLightness: Curve;
  readonly base: Curve;
  readonly crumb: Curve;
}
export interface ReaderStudy {
  readonly kind: 'reader';
  readonly row: ReadersRow;
}
export interface GoalStudy {
  readonly kind: 'goal';
  readonly advice: Advice;
}
export type Study =
  | { readonly ok: true; readonly study: EveningStudy | ReaderStudy | GoalStudy }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface Clock {
  readonly now: number;
  readonly offsetMinutes: number;
}

function curve(seconds: Float64Array, values: Float64Array, from = 0): Curve {
  return { minutes: Array.from(seconds, (s) => (s - from) / 60), values: Array.from(values) };
}

/** Works one out; what the plan's own figures make impossible comes back as problems. */
export function studyOf(job: StudyJob, clock: Clock): Study {
  if (job.kind === 'reader') {
    const read = readPlanObject(job.file, clock);
    if (!read.ok) return read;
    const [row] = readersOven(read.evening, [job.setting]);
    return { ok: true, study: { kind: 'reader', row: row! } };
  }
  if (job.kind === 'goal') {
    const planned = planFromFile(job.file, { ...clock, band: false, goal: job.goal });
    return planned.ok ? { ok: true, study: { kind: 'goal', advice: planned.answer.advice! } } : planned;
  }
  const planned = planFromFile(job.file, { ...clock, band: false });
  if (!planned.ok) return planned;
  const { preheat, bakes } = planned.run;
  const { trace, inAt } = bakes[0]!;
  const ofBake = (values: Float64Array): Curve => curve(trace.seconds, values, inAt);
  return {
    ok: true,
    study: {
      kind: 'evening',
      compared: comparedOf(planned.answer),
      plateTop: curve(preheat.trace.seconds, preheat.trace.plateTop),
      air: curve(preheat.trace.seconds, preheat.trace.ovenAir),
      baseLightness: ofBake(trace.baseLightness),
      rimLightness: ofBake(trace.rimLightness),
      base: ofBake(trace.base),
      crumb: ofBake(trace.crumb),
    },
  };
}
