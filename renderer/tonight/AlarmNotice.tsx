/** An alarm that rings while another view than Tonight is open. */
import { BellRing } from 'lucide-react';
import { hear } from './followEvening.ts';
import { useTonight } from './tonightStore.ts';
import { showView, useView } from '../state/viewStore.ts';

export function AlarmNotice() {
  const ringing = useTonight((state) => state.alarms.ringing);
  const view = useView((state) => state.view);
  const [first, ...others] = ringing;
  if (view === 'tonight' || first === undefined) return null;
  return (
    <div className="notice alarm" role="alert">
      <BellRing aria-hidden />
      <p>
        <strong>{first.alarm.title}</strong>
        {others.length > 0 && ` and ${String(others.length)} more`}
      </p>
      <button
        type="button"
        className="key"
        onClick={() => {
          showView('tonight');
        }}
      >
        Show Tonight
      </button>
      <button
        type="button"
        className="key"
        onClick={() => {
          hear(ringing.map(({ alarm }) => alarm.step));
        }}
      >
        Heard
      </button>
    </div>
  );
}
