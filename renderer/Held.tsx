/** What keeps the plan as it stands from being computed or shown. */
import { useForecast } from './state/forecastStore.ts';
import { usePlan } from './state/planStore.ts';
import { pathName } from './words/assumed.ts';
import { wording } from '../physics/evening/problem.ts';

export function Held() {
  const drafts = usePlan((state) => state.drafts);
  const problems = useForecast((state) => state.problems);
  const fault = useForecast((state) => state.fault);
  const wrong = Object.keys(drafts);
  if (wrong.length > 0) {
    return (
      <p className="held" role="status">
        Shown is the last plan that could be read. Not taken yet: {wrong.map(pathName).join(', ')}.
      </p>
    );
  }
  if (problems.length > 0) {
    return (
      <div className="held" role="status">
        Shown is the last plan that could be computed.
        <ul>
          {problems.map((problem) => (
            <li key={problem.path}>{wording({ ...problem, path: pathName(problem.path) })}</li>
          ))}
        </ul>
      </div>
    );
  }
  if (fault !== undefined)
    return (
      <p className="held" role="status">
        The simulation failed, a fault of the program: {fault}
      </p>
    );
  return null;
}
