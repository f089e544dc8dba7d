/** The evening while it runs: what now and next, what runs as well, readings, words, what still comes. */
import { useEffect, useRef } from 'react';
import { Undo2 } from 'lucide-react';
import { allowSound } from './alert.ts';
import { hear } from './followEvening.ts';
import { canBeDone, NowPanel } from './NowPanel.tsx';
import { Over } from './Over.tsx';
import { PlateReading, type Where } from './PlateReading.tsx';
import { Rest } from './Rest.tsx';
import { Ringing } from './Ringing.tsx';
import { movedText, type Clock } from './said.ts';
import { Timers } from './Timers.tsx';
import {
  begin,
  endEvening,
  endRehearsal,
  leaveOut,
  record,
  takeBack,
  useTonight,
  type RunningRehearsal,
} from './tonightStore.ts';
import { Words, type Said } from './Words.tsx';
import { useSettings, useUnits } from '../state/settingsStore.ts';
import { degreesApart, temperatureK } from '../words/figures.ts';
import { rehearsalOven, rehearsalSpeed, rehearsedReading } from '../../physics/tonight/rehearsal.ts';
import { titleOf } from '../../physics/tonight/titles.ts';
import type { Course, CourseStep } from '../../physics/tonight/course.ts';
import type { Range } from '../../physics/evening/answer.ts';

/** ms within which the large key, pressed again, was pressed by a hand that slipped: its next step has moved there */
const slip = 500;
let lastDone = -Infinity;

function done({ id }: CourseStep): void {
  if (performance.now() - lastDone < slip) return;
  lastDone = performance.now();
  allowSound();
  record({ what: 'done', step: id });
}
function longer({ id }: CourseStep): void {
  record({ what: 'longer', step: id, seconds: 60 });
}
function guestsLate(): void {
  record({ what: 'guestsLate', seconds: 600 });
}
function read(temperature: number, { place, instrument }: Where): void {
  record({ what: 'reading', place, temperature, instrument });
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    target.closest('input, select, textarea, [role="menu"], [role="dialog"], [role="alertdialog"]') !== null
  );
}

/** One letter each for what the hands in flour do most. */
function useKeys(course: Course, letters: boolean): void {
  useEffect(() => {
    if (!letters) return undefined;
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const step = course.now ?? course.next;
      const key = event.key.toLowerCase();
      if (!['g', 'd', 'm'].includes(key)) return;
      event.preventDefault();
      // A key that is held down was pressed once.
      if (event.repeat) return;
      if (key === 'g') guestsLate();
      else if (key === 'd' && step && canBeDone(step)) done(step);
      else if (key === 'm' && step && step.status !== 'ahead') longer(step);
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

/** What the thermometer of a rehearsal shows while its plate heats up. */
function thermometer(
  { kitchen }: RunningRehearsal,
  preheat: CourseStep | undefined,
  now: number,
  units: 'metric' | 'us',
): string | undefined {
  if (preheat === undefined || preheat.status === 'due' || preheat.status === 'ahead') return undefined;
  const seconds = (now - preheat.from) / 1000;
  const at = (place: 'plateTop' | 'ovenAir'): string =>
    temperatureK(rehearsedReading(kitchen, place, seconds), units);
  return `${at('plateTop')} on the plate, ${at('ovenAir')} in the air`;
}

interface RunningProps {
  readonly course: Course;
  readonly over: boolean;
  /** min that the plate needs as planned */
  readonly planned: Range | undefined;
  readonly now: number;
  readonly clock: Clock;
  readonly said: readonly Said[];
}

export function Running({ course, over, planned, now, clock, said }: RunningProps) {
  const units = useUnits();
  const letters = useSettings((state) => state.letterKeys === true);
  const { alarms, preheat: forecast, rehearsal, moved, note } = useTonight();
  const place = useRef<HTMLDivElement>(null);
  useKeys(course, letters);
  const out = course.steps
    .flatMap(({ id, status }) => (id.startsWith('bake-') && status === 'done' ? [Number(id.slice(5))] : []))
    .reverse();
  const text = [note, movedText(moved, course, clock)].filter((one) => one !== '').join(' ');
  const preheat = course.steps.find(({ id }) => id === 'preheat');
  return (
    <div ref={place}>
      <Ringing
        alarms={alarms}
        now={now}
        clock={clock}
        onHeard={(steps) => {
          // The key that was pressed goes with its alarm: whoever went there by keyboard goes on from the step.
          place.current?.querySelector<HTMLElement>('.tonight-now')?.focus();
          hear(steps);
        }}
      />
      {rehearsal !== undefined && (
        <p className="rehearsal-line">
          Rehearsal at {rehearsalSpeed} times the speed, {clock(now)}, with an oven a fifth weaker than
          planned and its dial {degreesApart(-rehearsalOven.thermostatOffset, units)} low. Nothing of it is
          kept.
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
          {over ? (
            <Over rehearsed={rehearsal !== undefined} />
          ) : (
            <>
              <NowPanel
                course={course}
                now={now}
                clock={clock}
                units={units}
                letters={letters}
                onDone={done}
                onLonger={longer}
                onSkip={leaveOut}
              />
              <Timers
                steps={course.steps}
                large={course.now?.id}
                now={now}
                clock={clock}
                onLonger={longer}
                onDone={done}
              />
            </>
          )}
        </div>
        <div className="tonight-column">
          {!over && (
            <PlateReading
              units={units}
              clock={clock}
              preheat={preheat}
              loaded={course.steps.some(({ id, status }) => id === 'load-1' && status === 'done')}
              forecast={forecast}
              planned={planned}
              shown={rehearsal && thermometer(rehearsal, preheat, now, units)}
              onRead={read}
            />
          )}
          <Words
            out={out}
            said={said}
            onSay={(pizza, words, lightness) => {
              record({ what: 'words', pizza, words, lightness });
            }}
          />
          <section aria-labelledby="tonight-guests">
            <h2 id="tonight-guests">The evening</h2>
            {course.doughPast !== undefined && (
              <p className="reason">
                The dough is past its time from {clock(course.doughPast)}: shape sooner, or keep it cool.
              </p>
            )}
            <div className="tonight-keys">
              {!over && (
                <button
                  type="button"
                  className="key framed tonight-key"
                  aria-keyshortcuts="g"
                  onClick={guestsLate}
                >
                  Guests 10 min late {letters && <kbd aria-hidden>G</kbd>}
                </button>
              )}
              <button type="button" className="key framed tonight-key" onClick={takeBack}>
                <Undo2 aria-hidden /> Take back
              </button>
              {rehearsal === undefined && !over && (
                <>
                  <button type="button" className="key framed tonight-key" onClick={begin}>
                    Begin anew
                  </button>
                  <button type="button" className="key framed tonight-key" onClick={endEvening}>
                    End the evening
                  </button>
                </>
              )}
            </div>
          </section>
          {!over && <Rest steps={course.steps} clock={clock} />}
        </div>
      </div>
      <Milestones course={course} now={now} />
    </div>
  );
}
