/** The view Tonight: the clock running. What now, what next, what runs; readings, guests, words; a rehearsal. */
import { useEffect, useMemo, useState } from 'react';
import { Undo2 } from 'lucide-react';
import { allowNotes, allowSound } from './alert.ts';
import { hear } from './followEvening.ts';
import { NowPanel } from './NowPanel.tsx';
import { PlateReading, type Where } from './PlateReading.tsx';
import { Rest } from './Rest.tsx';
import { Ringing } from './Ringing.tsx';
import { movedText, titleOf } from './said.ts';
import { Timers } from './Timers.tsx';
import {
  begin,
  courseNow,
  endRehearsal,
  record,
  startRehearsal,
  useTonight,
  wholeLog,
} from './tonightStore.ts';
import { Words, WordsList, wordsOf } from './Words.tsx';
import { useForecast, type Forecast } from '../state/forecastStore.ts';
import { learn } from '../state/learn.ts';
import { undo, usePlan } from '../state/planStore.ts';
import { useSettings, useUnits } from '../state/settingsStore.ts';
import { clockText, dayText, offsetOf, spanText } from '../words/clock.ts';
import { temperatureK } from '../words/figures.ts';
import { sinceBegun } from '../../physics/tonight/log.ts';
import { rehearsalSpeed, rehearsedReading } from '../../physics/tonight/rehearsal.ts';
import type { Course, CourseStep } from '../../physics/tonight/course.ts';

const done = ({ id }: CourseStep): void => {
  allowSound();
  record({ what: 'done', step: id });
};
const longer = ({ id }: CourseStep): void => {
  record({ what: 'longer', step: id, seconds: 60 });
};
const skip = ({ id }: CourseStep): void => {
  record({ what: 'skipped', step: id });
};
const guestsLate = (): void => {
  record({ what: 'guestsLate', seconds: 600 });
};
const read = (temperature: number, { place, instrument }: Where): void => {
  record({ what: 'reading', place, temperature, instrument });
};

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest('input, select, textarea, [role="menu"], [role="dialog"]') !== null
  );
}

/** One letter each for what the hands in flour do most. */
function useKeys(course: Course | undefined): void {
  const letters = useSettings((state) => state.letterKeys);
  useEffect(() => {
    if (!letters || course === undefined) return undefined;
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const step = course.now ?? course.next;
      const key = event.key.toLowerCase();
      if (key === 'g') guestsLate();
      else if (
        key === 'd' &&
        step?.confirmed === true &&
        !(step.id === 'preheat' && step.status === 'running')
      )
        done(step);
      else if (key === 'm' && step !== undefined && step.status !== 'ahead') longer(step);
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', press);
    return () => {
      window.removeEventListener('keydown', press);
    };
  }, [course, letters]);
}

/** Milestones for whoever does not look: a minute before an end, never a count. */
function Milestones({ course, now }: { readonly course: Course; readonly now: number }) {
  const near = course.steps.find(
    ({ status, to, id }) =>
      status === 'running' && /^(bake|preheat)/u.test(id) && to - now > 50_000 && to - now <= 60_000,
  );
  return (
    <p className="hidden" role="status">
      {near === undefined ? '' : `1 minute left: ${titleOf(near)}`}
    </p>
  );
}

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

function Before({
  course,
  now,
  offset,
}: {
  readonly course: Course;
  readonly now: number;
  readonly offset: number;
}) {
  const [first] = course.steps;
  const said = wordsOf(wholeLog());
  return (
    <div className="tonight-before">
      <p className="tonight-title">
        {first === undefined
          ? 'Nothing to do'
          : `${titleOf(first)} at ${clockText(first.planned.from, offset)}`}
      </p>
      {first !== undefined && (
        <p className="muted">
          {dayText(first.planned.from, offset)}, as planned
          {first.planned.from < now ? `: ${spanText((now - first.planned.from) / 60_000)} ago` : ''}. Alarms
          ring from when you begin; what lies before then is taken to have gone as planned.
        </p>
      )}
      <div className="tonight-keys">
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
        <Rehearse />
      </div>
      {said.length > 0 && (
        <section aria-labelledby="last-time">
          <h2 id="last-time">Last time</h2>
          <WordsList said={said} />
        </section>
      )}
    </div>
  );
}

function thermometer(course: Course, now: number, units: 'metric' | 'us'): string | undefined {
  const { rehearsal } = useTonight.getState();
  const preheat = course.steps.find(({ id }) => id === 'preheat');
  if (
    rehearsal === undefined ||
    preheat === undefined ||
    preheat.status === 'due' ||
    preheat.status === 'ahead'
  )
    return undefined;
  const seconds = (now - preheat.from) / 1000;
  const at = (place: 'plateTop' | 'ovenAir'): string =>
    temperatureK(rehearsedReading(rehearsal.kitchen, place, seconds), units);
  return `${at('plateTop')} on the plate, ${at('ovenAir')} in the air`;
}

function Running({
  course,
  forecast,
  now,
  offset,
}: {
  readonly course: Course;
  readonly forecast: Forecast;
  readonly now: number;
  readonly offset: number;
}) {
  const units = useUnits();
  const { alarms, preheat, rehearsal, moved, note } = useTonight();
  useKeys(course);
  const log = sinceBegun(wholeLog());
  const out = course.steps
    .flatMap(({ id, status }) => (id.startsWith('bake-') && status === 'done' ? [Number(id.slice(5))] : []))
    .reverse();
  const text = [note, movedText(moved, course, offset)].filter((one) => one !== '').join(' ');
  const shown = thermometer(course, now, units);
  return (
    <>
      <Ringing alarms={alarms} now={now} offset={offset} onHeard={hear} />
      {rehearsal !== undefined && (
        <p className="rehearsal-line">
          Rehearsal at {rehearsalSpeed} times the speed, {clockText(now, offset)}, with an oven a fifth weaker
          than planned and its dial 8 K low. Nothing of it is kept.
          <button type="button" className="key framed timer-key" onClick={endRehearsal}>
            End it
          </button>
        </p>
      )}
      <p className="tonight-moved" role="status">
        {text}
      </p>
      <div className="tonight">
        <div className="tonight-column">
          <NowPanel course={course} now={now} offset={offset} onDone={done} onLonger={longer} onSkip={skip} />
          <Timers
            steps={course.steps}
            large={course.now?.id}
            now={now}
            offset={offset}
            onLonger={longer}
            onDone={done}
          />
        </div>
        <div className="tonight-column">
          <PlateReading
            units={units}
            offset={offset}
            preheat={course.steps.find(({ id }) => id === 'preheat')}
            forecast={preheat}
            planned={forecast.answer.range?.preheatMinutes}
            shown={shown}
            onRead={read}
          />
          <Words
            out={out}
            said={wordsOf(log)}
            onSay={(pizza, words, lightness) => {
              record({ what: 'words', pizza, words, lightness });
            }}
          />
          <section aria-labelledby="tonight-guests">
            <h2 id="tonight-guests">The evening</h2>
            {course.doughPast !== undefined && (
              <p className="reason">
                The dough is past its time from {clockText(course.doughPast, offset)}: shape sooner, or keep
                it cool.
              </p>
            )}
            <div className="tonight-keys">
              <button
                type="button"
                className="key framed tonight-key"
                aria-keyshortcuts="g"
                onClick={guestsLate}
              >
                Guests 10 min late
              </button>
              {rehearsal === undefined && (
                <button type="button" className="key framed tonight-key" onClick={undo}>
                  <Undo2 aria-hidden /> Take back
                </button>
              )}
              {rehearsal === undefined && (
                <button type="button" className="key framed tonight-key" onClick={begin}>
                  Begin anew
                </button>
              )}
            </div>
          </section>
          <Rest steps={course.steps} offset={offset} />
        </div>
      </div>
      <Milestones course={course} now={now} />
    </>
  );
}

export function TonightView() {
  const forecast = useForecast((state) => state.forecast);
  const log = usePlan((state) => state.file.tonight?.log);
  const now = useTonight((state) => state.now);
  const preheat = useTonight((state) => state.preheat);
  const rehearsal = useTonight((state) => state.rehearsal);
  const course = useMemo(
    () => (forecast === undefined ? undefined : courseNow(now)),
    // What the course is worked out from.
    // eslint-disable-next-line react-hooks/exhaustive-deps -- courseNow reads the stores itself
    [forecast, log, now, preheat, rehearsal],
  );
  if (forecast === undefined || course === undefined)
    return <p className="muted">Working out the evening …</p>;
  const offset = offsetOf(forecast.answer.ovenOnAt);
  const running = sinceBegun(wholeLog()).length > 0;
  return (
    <div className="tonight-page">
      <h1 className="hidden">Tonight</h1>
      {running ? (
        <Running course={course} forecast={forecast} now={now} offset={offset} />
      ) : (
        <Before course={course} now={now} offset={offset} />
      )}
    </div>
  );
}
