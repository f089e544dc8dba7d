/** Everything else that runs, the soonest first, each with its own minute more. */
import { Count } from './Count.tsx';
import { endOf } from './NowPanel.tsx';
import type { Clock } from './said.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { CourseStep } from '../../physics/tonight/course.ts';

interface TimersProps {
  readonly steps: readonly CourseStep[];
  /** stands in large type already */
  readonly large: string | undefined;
  readonly now: number;
  readonly clock: Clock;
  readonly onLonger: (step: CourseStep) => void;
  readonly onDone: (step: CourseStep) => void;
}

export function Timers({ steps, large, now, clock, onLonger, onDone }: TimersProps) {
  const running = steps
    .filter(({ id, status }) => id !== large && (status === 'running' || status === 'due'))
    .sort((a, b) => endOf(a) - endOf(b));
  if (running.length === 0) return null;
  return (
    <section aria-labelledby="tonight-timers">
      <h2 id="tonight-timers">Running as well</h2>
      <ul className="timers">
        {running.map((step) => {
          const title = titleOf(step);
          return (
            <li key={step.id} data-step={step.id} className={step.status === 'due' ? 'due' : undefined}>
              <span className="timer-name">{title}</span>
              <Count left={endOf(step) - now} className="timer-count" />
              <span className="muted">
                {step.status === 'due' ? 'since' : 'until'} {clock(endOf(step))}
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
