/** What now, in type that reads from two metres, and the keys for it. */
import { Check, Plus, SkipForward } from 'lucide-react';
import { Count } from './Count.tsx';
import { doneText, type Clock } from './said.ts';
import { unbroken } from '../words/unbroken.ts';
import { inUnits, type UnitSystem } from '../../physics/quantities/index.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { Course, CourseStep } from '../../physics/tonight/course.ts';

/** ms of the moment that a step counts down to. */
export function endOf({ status, from, to, calls }: CourseStep): number {
  if (status === 'ahead') return from;
  return status === 'due' ? calls : to;
}

function untilText(step: CourseStep, now: number, clock: Clock): string {
  if (step.status === 'due') return `since ${clock(step.calls)}`;
  if (step.status === 'ahead') return `at ${clock(step.from)}`;
  return `until ${clock(Math.max(step.to, now))}`;
}

/** Whether the cook says when it is over; a plate that heats up is ready by itself. */
export function canBeDone({ id, status, confirmed }: CourseStep): boolean {
  return confirmed && !(id === 'preheat' && status === 'running');
}

interface NowProps {
  readonly course: Course;
  readonly now: number;
  readonly clock: Clock;
  readonly units: UnitSystem;
  /** whether single letters work as keys, and so stand on them */
  readonly letters: boolean;
  readonly onDone: (step: CourseStep) => void;
  readonly onLonger: (step: CourseStep) => void;
  readonly onSkip: (step: CourseStep) => void;
}

export function NowPanel({ course, now, clock, units, letters, onDone, onLonger, onSkip }: NowProps) {
  const { now: step, next } = course;
  const shown = step ?? next;
  if (shown === undefined) return null;
  const heating = shown.id === 'preheat' && shown.status === 'running';
  const canDo = canBeDone(shown);
  const load = /^load-(\d+)$/u.exec(shown.id);
  return (
    <section className="tonight-now" aria-labelledby="tonight-now" tabIndex={-1}>
      <h2 id="tonight-now" className="tonight-kind">
        {step === undefined ? 'Nothing to do until' : 'Now'}
      </h2>
      <p className="tonight-title">{titleOf(shown)}</p>
      <p>
        <Count left={endOf(shown) - now} className="tonight-count" />
      </p>
      <p className="tonight-until">{untilText(shown, now, clock)}</p>
      {shown.step !== undefined && !heating && (
        <p className="tonight-how">{unbroken(inUnits(shown.step, units))}.</p>
      )}
      <div className="tonight-keys">
        {canDo && (
          <button
            type="button"
            className="key main tonight-key"
            aria-keyshortcuts="d"
            onClick={() => {
              onDone(shown);
            }}
          >
            <Check aria-hidden /> {doneText(shown)} {letters && <kbd aria-hidden>D</kbd>}
          </button>
        )}
        {shown.status !== 'ahead' && (
          <button
            type="button"
            className="key framed tonight-key"
            aria-keyshortcuts="m"
            onClick={() => {
              onLonger(shown);
            }}
          >
            <Plus aria-hidden /> One more minute {letters && <kbd aria-hidden>M</kbd>}
          </button>
        )}
        {canDo && shown.id !== 'preheat' && !shown.id.startsWith('bake-') && (
          <button
            type="button"
            className="key framed tonight-key"
            onClick={() => {
              onSkip(shown);
            }}
          >
            <SkipForward aria-hidden /> {load === null ? 'Skip' : `Leave pizza ${load[1]!} out`}
          </button>
        )}
      </div>
      {step !== undefined && next !== undefined && (
        <p className="tonight-next">
          <span className="tonight-kind">Next</span>{' '}
          {titleOf({ ...next, status: next.status === 'ahead' ? 'due' : next.status })}{' '}
          <span className="tonight-next-at">{untilText(next, now, clock)}</span>
        </p>
      )}
    </section>
  );
}
