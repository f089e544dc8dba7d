/** The evening before it is begun: its first steps, when they are planned, and what was said the last time. */
import { useState } from 'react';
import { allowNotes, allowSound } from './alert.ts';
import { Rest } from './Rest.tsx';
import type { Clock } from './said.ts';
import { begin, planNext, startRehearsal } from './tonightStore.ts';
import { WordsList, type Said } from './Words.tsx';
import { learn } from '../state/learn.ts';
import { usePlan } from '../state/planStore.ts';
import { spanText } from '../words/clock.ts';
import { rehearsalSpeed } from '../../physics/tonight/rehearsal.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { Course } from '../../physics/tonight/course.ts';

function Rehearse() {
  const file = usePlan((state) => state.file);
  const [busy, setBusy] = useState(false);
  return (
    <button
      type="button"
      className="key framed tonight-key"
      disabled={busy}
      onClick={() => {
        allowSound();
        setBusy(true);
        void learn({ what: 'rehearse', file }).then((answer) => {
          setBusy(false);
          if (answer.what === 'rehearse') startRehearsal(answer.rehearsal);
        });
      }}
    >
      Rehearse at {rehearsalSpeed} times the speed
    </button>
  );
}

interface BeforeProps {
  readonly course: Course;
  readonly now: number;
  readonly clock: Clock;
  readonly day: (moment: number) => string;
  readonly said: readonly Said[];
}

export function Before({ course, now, clock, day, said }: BeforeProps) {
  const [first] = course.steps;
  const next = course.steps.find(({ confirmed, planned }) => confirmed && planned.to > now);
  return (
    <div className="tonight-before">
      <p className="tonight-title">
        {next === undefined
          ? 'This evening has gone by'
          : `${titleOf({ ...next, status: 'due' })}, ${clock(next.planned.from)}`}
      </p>
      {first !== undefined && (
        <p className="tonight-how">
          {next === undefined
            ? `It was planned for ${day(first.planned.from)}. Give it another day to cook it again.`
            : first.planned.from < now
              ? `The plan began ${spanText((now - first.planned.from) / 60_000)} ago, on ${day(first.planned.from)}. What lies before now is taken to have gone as planned; alarms ring from when you begin.`
              : `${day(first.planned.from)}, as planned. Alarms ring from when you begin.`}
        </p>
      )}
      <div className="tonight-keys">
        {next === undefined ? (
          <button type="button" className="key main tonight-key" onClick={planNext}>
            Plan it again
          </button>
        ) : (
          <button
            type="button"
            className="key main tonight-key"
            onClick={() => {
              allowSound();
              allowNotes();
              begin();
            }}
          >
            Begin the evening
          </button>
        )}
        <Rehearse />
      </div>
      <div className="tonight">
        {next !== undefined && (
          <Rest
            steps={course.steps
              .filter(({ planned }) => planned.to > now)
              .sort((a, b) => a.planned.from - b.planned.from)
              .map((step) => ({ ...step, from: step.planned.from, status: 'ahead' }))}
            clock={clock}
          />
        )}
        {said.length > 0 && (
          <section aria-labelledby="last-time">
            <h2 id="last-time">Last time</h2>
            <WordsList said={said} />
          </section>
        )}
      </div>
    </div>
  );
}
