/** What every handout is made from: one planned evening, and how its reader measures and tells the time. */
import type { PlanAnswer } from '../evening/answer.ts';
import { instantOf, type OffsetAt, wallClock } from '../evening/clock.ts';
import type { Evening } from '../evening/evening.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { readersOven, readersSettings, type ReadersRow } from '../evening/readersOven.ts';
import type { EveningRun } from '../evening/run.ts';
import type { UnitSystem } from '../quantities/index.ts';
import type { Paper } from './paper.ts';
import { wordsFor, type Words } from './words.ts';

export interface HandoutFacts {
  /** the plan as it is written */
  readonly file: PlanFile;
  readonly evening: Evening;
  readonly answer: PlanAnswer;
  readonly run: EveningRun;
  /** the same pizza in other ovens */
  readonly rows: readonly ReadersRow[];
  readonly units: UnitSystem;
  readonly paper: Paper;
  /** ms since 1970-01-01T00:00Z, when the handout is made */
  readonly now: number;
  /** the clock on the reader's wall; without it the plan's own offset holds throughout */
  readonly readersClock?: OffsetAt | undefined;
}

export interface HandoutOptions extends Pick<HandoutFacts, 'units' | 'paper' | 'now' | 'readersClock'> {
  /** the same pizza in other ovens, where that has been computed already */
  readonly rows?: readonly ReadersRow[];
}

/** @param planned what a plan gave, @param file what it was planned from */
export function factsOf(
  { evening, answer, run }: Pick<HandoutFacts, 'evening' | 'answer' | 'run'>,
  file: PlanFile,
  options: HandoutOptions,
): HandoutFacts {
  const rows = options.rows ?? readersOven(evening, readersSettings(evening, options.units));
  return { ...options, file, evening, answer, run, rows };
}

/** The offset that the wall clock of the evening keeps at each moment. */
export function offsetsOf({ answer, readersClock }: HandoutFacts): OffsetAt {
  return wallClock(instantOf(answer.eatAt), readersClock);
}

/** Units and clock of the reader. */
export function wordsOf(facts: HandoutFacts): Words {
  return wordsFor(facts.units, offsetsOf(facts));
}
