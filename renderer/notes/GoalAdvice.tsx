/** What brings the plan nearer to a goal: asked for by the cook, worked out beside the plan, each change with a key. */
import { useId, useMemo } from 'react';
import { TryKey } from './TryKey.tsx';
import { Choice } from '../inputs/Choice.tsx';
import { useLook } from '../state/lookStore.ts';
import { useStudied } from '../state/studies.ts';
import { goalNames } from '../words/names.ts';
import { unbroken } from '../words/unbroken.ts';
import { goalIds } from '../../physics/evening/ids.ts';
import type { Advice, Advised } from '../../physics/evening/answer.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { inUnits, type UnitSystem } from '../../physics/quantities/index.ts';
import type { StudyJob } from '../state/study.ts';

function Items({ advice, units }: { readonly advice: Advice; readonly units: UnitSystem }) {
  const all: readonly Advised[] = [...(advice.basis ? [advice.basis] : []), ...advice.items];
  if (all.length === 0) return <p>Nothing that was tried brings it nearer without a caution.</p>;
  return (
    <ul className="two-columns">
      {all.map(({ what, message, change }) => (
        <li key={what} className="advice">
          <span>{unbroken(inUnits(message, units))}</span>
          <TryKey change={change} what={inUnits(message, units)} />
        </li>
      ))}
    </ul>
  );
}

export function GoalAdvice({ file, units }: { readonly file: PlanFile; readonly units: UnitSystem }) {
  const [chosen, setChosen] = useLook<string>('goal', '');
  const goal = goalIds.find((known) => known === chosen);
  const jobs = useMemo(
    (): readonly StudyJob[] => (goal === undefined ? [] : [{ kind: 'goal', file, goal }]),
    [file, goal],
  );
  const [outcome] = useStudied('goal', jobs).outcomes;
  const id = useId();
  return (
    <section className="across goal-advice">
      <div className="goal-ask">
        <h2>
          <label htmlFor={id}>What brings most for</label>
        </h2>
        <Choice
          id={id}
          options={[['', 'choose a goal'], ...goalIds.map((known) => [known, goalNames[known]] as const)]}
          value={goal ?? ''}
          onChoose={setChosen}
        />
      </div>
      <div aria-live="polite">
        {goal !== undefined && outcome === undefined && (
          <p className="muted">Planning what could be changed…</p>
        )}
        {outcome?.ok === true && outcome.study.kind === 'goal' && (
          <Items advice={outcome.study.advice} units={units} />
        )}
        {outcome?.ok === 'fault' && <p>Not worked out: {outcome.fault}.</p>}
        {outcome?.ok === false && <p>The plan has something wrong; see above.</p>}
      </div>
    </section>
  );
}
