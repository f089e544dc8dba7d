/** Alarms that ring until they are heard; those that came due while nobody looked say since when. */
import { BellRing } from 'lucide-react';
import { clockText, spanText } from '../words/clock.ts';
import type { AlarmState } from '../../physics/tonight/alarms.ts';

interface RingingProps {
  readonly alarms: AlarmState;
  readonly now: number;
  readonly offset: number;
  readonly onHeard: (step: string) => void;
}

export function Ringing({ alarms, now, offset, onHeard }: RingingProps) {
  return (
    <div role="alert" className="ringing">
      {alarms.ringing.map(({ alarm, missed }) => (
        <div key={alarm.step} className="ringing-one">
          <BellRing aria-hidden />
          <p>
            <strong>{alarm.title}</strong>
            {missed && (
              <span>
                {' '}
                missed at {clockText(alarm.at, offset)}, {spanText((now - alarm.at) / 60_000)} ago
              </span>
            )}
          </p>
          <button
            type="button"
            className="key framed tonight-key"
            onClick={() => {
              onHeard(alarm.step);
            }}
          >
            Heard
          </button>
        </div>
      ))}
    </div>
  );
}
