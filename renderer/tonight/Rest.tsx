/** What still comes, on the clock as it now stands; what moved keeps its planned hour beside it. */
import { titleOf } from './said.ts';
import { clockText } from '../words/clock.ts';
import type { CourseStep } from '../../physics/tonight/course.ts';

export function Rest({ steps, offset }: { readonly steps: readonly CourseStep[]; readonly offset: number }) {
  const ahead = steps.filter(({ status }) => status === 'ahead');
  if (ahead.length === 0) return null;
  return (
    <table className="small-table">
      <caption>Still to come</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">At</th>
          <th scope="col">Planned</th>
        </tr>
      </thead>
      <tbody>
        {ahead.map((step) => {
          const [at, planned] = [clockText(step.from, offset), clockText(step.planned.from, offset)];
          return (
            <tr key={step.id}>
              <th scope="row">{titleOf(step)}</th>
              <td>{at}</td>
              <td className="muted">{at === planned ? '' : planned}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
