/** The view Tonight: the evening before it is begun, while it runs, and when it is over; or a rehearsal of it. */
import { useMemo } from 'react';
import { Before } from './Before.tsx';
import { Running } from './Running.tsx';
import { kitchenClock, offsetsOf } from './said.ts';
import { courseFrom, logOf, useTonight } from './tonightStore.ts';
import { wordsOf } from './Words.tsx';
import { useForecast } from '../state/forecastStore.ts';
import { usePlan } from '../state/planStore.ts';
import { dayText } from '../words/clock.ts';
import { stageOf } from '../../physics/tonight/course.ts';
import { sinceBegun } from '../../physics/tonight/log.ts';

export function TonightView() {
  const answer = useForecast((state) => state.forecast?.answer);
  const log = usePlan((state) => state.file.tonight?.log);
  const now = useTonight((state) => state.now);
  const preheat = useTonight((state) => state.preheat);
  const rehearsal = useTonight((state) => state.rehearsal);
  const entries = logOf(rehearsal, log);
  const course = useMemo(
    () => answer && courseFrom(answer.tasks, entries, now, preheat),
    [answer, entries, now, preheat],
  );
  if (answer === undefined || course === undefined) return <p className="muted">Working out the evening …</p>;
  const offsetAt = offsetsOf(answer.anchor.at);
  const clock = kitchenClock(offsetAt, now);
  const tonight = sinceBegun(entries);
  const stage = stageOf(course, tonight, now);
  return (
    <div className="tonight-page">
      <h1 className="hidden">Tonight</h1>
      {stage === 'before' ? (
        <Before
          course={course}
          now={now}
          clock={clock}
          day={(moment) => dayText(moment, offsetAt(moment))}
          said={wordsOf(entries)}
        />
      ) : (
        <Running
          course={course}
          over={stage === 'over'}
          planned={answer.range?.preheatMinutes}
          now={now}
          clock={clock}
          said={wordsOf(tonight)}
        />
      )}
    </div>
  );
}
