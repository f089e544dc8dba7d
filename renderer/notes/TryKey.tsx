/** The key that takes an advice into the plan. */
import { changeByTexts } from '../state/planStore.ts';
import { say } from '../state/documentStore.ts';
import type { PlanChange } from '../words/advice.ts';
import { wording } from '../../physics/evening/problem.ts';

/** Takes an advice into the plan as one step of the history; absent where nothing in the plan changes. */
export function TryKey({ change, what }: { readonly change: readonly PlanChange[]; readonly what: string }) {
  if (change.length === 0) return null;
  return (
    <button
      type="button"
      className="key framed try-key"
      aria-label={`Try: ${what}`}
      onClick={() => {
        const problem = changeByTexts(change);
        if (problem !== undefined) say({ text: `Not changed: ${wording(problem)}.` });
      }}
    >
      Try
    </button>
  );
}
