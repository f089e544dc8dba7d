import { pathName } from '../words/assumed.ts';
import { wording } from '../../physics/evening/problem.ts';
import type { Outcome } from '../state/studies.ts';

/** Why an evening cannot be computed; nothing where it can. */
export function troubleOf(outcome: Outcome | undefined): readonly string[] {
  if (outcome === undefined || outcome.ok === true) return [];
  if (outcome.ok === 'fault') return [`The simulation failed, a fault of the program: ${outcome.fault}`];
  return outcome.problems.map((problem) => `${wording({ ...problem, path: pathName(problem.path) })}.`);
}
