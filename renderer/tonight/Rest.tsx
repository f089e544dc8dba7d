/** What still comes, on the clock as it now stands; what moved keeps its planned hour beside it. */
import type { Clock } from './said.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { CourseStep } from '../../physics/tonight/course.ts';

export function Rest({ steps, clock }: { readonly steps: readonly CourseStep[]; readonly clock: Clock }) {
  const ahead = steps.filter(({ status }) => status === 'ahead');
  if (ahead.length === 0) return null;
  const rows = ahead.map((step) => ({
    step,
    at: clock(step.from),
    planned: clock(step.planned.from),
  }));
  const moved = rows.some(({ at, planned }) => at !== planned);
  return (
    <table className="small-table">
      <caption>Still to come</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">At</th>
          {moved && <th scope="col">Planned</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ step, at, planned }) => (
          <tr key={step.id}>
            <th scope="row">{titleOf(step)}</th>
            <td>{at}</td>
            {moved && <td className="muted">{at === planned ? '' : planned}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
