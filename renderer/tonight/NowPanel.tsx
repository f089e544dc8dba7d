/** What now, in type that reads from two metres, and the keys for it. */
import { Check, Plus, SkipForward } from 'lucide-react';
import { countText, doneText, spokenCount, titleOf } from './said.ts';
import { clockText } from '../words/clock.ts';
import type { Course, CourseStep } from '../../physics/tonight/course.ts';

/** ms of the moment that a step counts down to. */
export function endOf({ status, from, to, calls }: CourseStep): number {
  if (status === 'ahead') return from;
  return status === 'due' ? calls : to;
}

function untilText(step: CourseStep, now: number, offset: number): string {
  if (step.status === 'due') return `since ${clockText(step.calls, offset)}`;
  if (step.status === 'ahead') return `at ${clockText(step.from, offset)}`;
  return `until ${clockText(Math.max(step.to, now), offset)}`;
}

interface NowProps {
  readonly course: Course;
  readonly now: number;
  readonly offset: number;
  readonly onDone: (step: CourseStep) => void;
  readonly onLonger: (step: CourseStep) => void;
  readonly onSkip: (step: CourseStep) => void;
}

export function NowPanel({ course, now, offset, onDone, onLonger, onSkip }: NowProps) {
  const { now: step, next } = course;
  if (step === undefined && next === undefined)
    return (
      <section className="tonight-now" aria-labelledby="tonight-now">
        <h2 id="tonight-now" className="tonight-kind">
          Now
        </h2>
        <p className="tonight-title">The evening is over</p>
        <p className="tonight-how">The plate stays hot for hours: leave it in the oven until it is cold.</p>
      </section>
    );
  const shown = step ?? next!;
  const left = endOf(shown) - now;
  const canDo = shown.confirmed && !(shown.id === 'preheat' && shown.status === 'running');
  return (
    <section className="tonight-now" aria-labelledby="tonight-now">
      <h2 id="tonight-now" className="tonight-kind">
        {step === undefined ? 'Nothing to do until' : 'Now'}
      </h2>
      <p className="tonight-title">{titleOf(shown)}</p>
      <p className="tonight-count" role="timer" aria-live="off" aria-label={spokenCount(left)}>
        {countText(left)}
      </p>
      <p className="tonight-until">{untilText(shown, now, offset)}</p>
      {shown.step !== undefined && !(shown.id === 'preheat' && shown.status === 'running') && (
        <p className="tonight-how">{shown.step}.</p>
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
            <Check aria-hidden /> {doneText(shown)}
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
            <Plus aria-hidden /> One more minute
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
            <SkipForward aria-hidden /> Skip
          </button>
        )}
      </div>
      {step !== undefined && next !== undefined && (
        <p className="tonight-next">
          <span className="tonight-kind">Next</span>{' '}
          {titleOf({ ...next, status: next.status === 'ahead' ? 'due' : next.status })}{' '}
          <span className="tonight-next-at">{untilText(next, now, offset)}</span>
        </p>
      )}
    </section>
  );
}
