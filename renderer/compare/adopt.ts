/** Another evening made the plan, as one step of the history. */
import { fieldsOf, nameOf, type Difference } from './differences.ts';
import { say } from '../state/documentStore.ts';
import { change, usePlan } from '../state/planStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { pathName } from '../words/assumed.ts';
import { wording } from '../../physics/evening/problem.ts';

/** Returns whether the plan was changed; says so, or why not. */
export function adopt(differences: readonly Difference[]): boolean {
  const { file } = usePlan.getState();
  const problem = change(Object.fromEntries(fieldsOf(file, differences)));
  say({
    text:
      problem === undefined
        ? `The plan now: ${nameOf(differences, useSettings.getState().units)}. Undo brings the one before back.`
        : `Not changed: ${wording({ ...problem, path: pathName(problem.path) })}.`,
  });
  return problem === undefined;
}
