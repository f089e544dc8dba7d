/** Everything that runs, the soonest first, each with its own minute more. */
import { endOf } from './NowPanel.tsx';
import { countText, spokenCount, titleOf } from './said.ts';
import { clockText } from '../words/clock.ts';
import type { CourseStep } from '../../physics/tonight/course.ts';

interface TimersProps {
  readonly steps: readonly CourseStep[];
  /** stands in large type already */
  readonly large: string | undefined;
  readonly now: number;
  readonly offset: number;
  readonly onLonger: (step: CourseStep) => void;
  readonly onDone: (step: CourseStep) => void;
}

export function Timers({ steps, large, now, offset, onLonger, onDone }: TimersProps) {
  const running = steps
    .filter(({ id, status }) => id !== large && (status === 'running' || status === 'due'))
    .sort((a, b) => endOf(a) - endOf(b));
  return (
    <section aria-labelledby="tonight-timers">
      <h2 id="tonight-timers">Running as well</h2>
      {running.length === 0 && <p className="muted">Nothing else runs.</p>}
      <ul className="timers">
        {running.map((step) => {
          const left = endOf(step) - now;
          const title = titleOf(step);
          return (
            <li key={step.id} data-step={step.id} className={step.status === 'due' ? 'due' : undefined}>
              <span className="timer-name">{title}</span>
              <span className="timer-count" role="timer" aria-live="off" aria-label={spokenCount(left)}>
                {countText(left)}
              </span>
              <span className="muted">
                {step.status === 'due' ? 'since' : 'until'} {clockText(endOf(step), offset)}
              </span>
              <button
                type="button"
                className="key framed timer-key"
                onClick={() => {
                  onLonger(step);
                }}
              >
                +1 min<span className="hidden"> for {title}</span>
              </button>
              {step.id !== 'preheat' && (
                <button
                  type="button"
                  className="key framed timer-key"
                  onClick={() => {
                    onDone(step);
                  }}
                >
                  Over<span className="hidden">: {title}</span>
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
