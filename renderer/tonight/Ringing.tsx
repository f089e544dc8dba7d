/** Alarms that ring until they are heard; those that came due while nobody looked say since when. */
import { BellRing } from 'lucide-react';
import type { Clock } from './said.ts';
import { spanText } from '../words/clock.ts';
import type { AlarmState } from '../../physics/tonight/alarms.ts';

interface RingingProps {
  readonly alarms: AlarmState;
  readonly now: number;
  readonly clock: Clock;
  readonly onHeard: (steps: readonly string[]) => void;
}

export function Ringing({ alarms: { ringing }, now, clock, onHeard }: RingingProps) {
  const many = ringing.length > 1;
  return (
    <div role="alert" className={many ? 'ringing many' : 'ringing'}>
      {ringing.map(({ alarm, missed }) => (
        <div key={alarm.step} className="ringing-one">
          <BellRing aria-hidden />
          <p>
            <strong>{alarm.title}</strong>
            {missed && (
              <span>
                {' '}
                missed at {clock(alarm.at)}, {spanText((now - alarm.at) / 60_000)} ago
              </span>
            )}
          </p>
          <button
            type="button"
            className="key framed tonight-key"
            onClick={() => {
              onHeard([alarm.step]);
            }}
          >
            Heard<span className="hidden">: {alarm.title}</span>
          </button>
        </div>
      ))}
      {many && (
        <button
          type="button"
          className="key framed tonight-key ringing-all"
          onClick={() => {
            onHeard(ringing.map(({ alarm }) => alarm.step));
          }}
        >
          All heard
        </button>
      )}
    </div>
  );
}
