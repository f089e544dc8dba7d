/** Lets the evening run: looks at the clock, rings, follows readings, and hands the alarms to the shell. */
import { bridge } from '../bridgeClient.ts';
import { allowSound, keepAwake, note, sound } from './alert.ts';
import {
  alarmsFrom,
  courseNow,
  endRehearsal,
  isRunning,
  presentMoment,
  record,
  said,
  useTonight,
  wholeLog,
} from './tonightStore.ts';
import { useDocument } from '../state/documentStore.ts';
import { learn } from '../state/learn.ts';
import { usePlan } from '../state/planStore.ts';
import { useForecast } from '../state/forecastStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { spanText } from '../words/clock.ts';
import { inUnits } from '../../physics/quantities/index.ts';
import { alarmsOf, heard, lookAt, movedClock, noAlarms, type Alarm } from '../../physics/tonight/alarms.ts';
import { compareClocks, type ClockLook } from '../../physics/tonight/clockWatch.ts';
import { movedBetween, type Course } from '../../physics/tonight/course.ts';
import { sinceBegun } from '../../physics/tonight/log.ts';
import { rehearsalSpeed } from '../../physics/tonight/rehearsal.ts';
import { preheatReadings } from '../../physics/tonight/preheatForecast.ts';

/** ms between two looks; a hidden window is given fewer, which the shell's pushes make up for */
const every = 500;
const repeatSound = 3000;
/** ms for which it stands there what the last entry moved */
const telling = 5 * 60_000;
/** ms to the next handwork from which on the screen may rest; the machine stays awake for its alarms */
const longWait = 30 * 60_000;

let before: ClockLook | undefined;
let sounded = 0;
let sent = '[]';
let asked = '';
let reloaded = false;

/** Sleep and clocks that were moved; a rehearsal's own clock is left alone. */
function watchClocks(): void {
  const look = { wall: Date.now(), counted: performance.now() };
  const found = before === undefined ? ({ kind: 'steady' } as const) : compareClocks(before, look);
  before = look;
  if (found.kind === 'steady' || !isRunning() || useTonight.getState().rehearsal !== undefined) return;
  const span = spanText(Math.abs(found.seconds) / 60);
  if (found.kind === 'back') {
    record({ what: 'clockMoved', seconds: found.seconds });
    const { alarms } = useTonight.getState();
    useTonight.setState({
      alarms: movedClock(alarms, found.seconds),
      ...said([], `The clock went back by ${span}. What was noted and what runs went with it.`),
    });
  } else
    useTonight.setState(
      said(
        [],
        `The machine slept for ${span}, or its clock was put forward. What came due meanwhile is shown as missed.`,
      ),
    );
}

function tellShell(alarms: readonly Alarm[], now: number): void {
  const ahead = alarms
    .filter(({ at }) => at > now)
    .map(({ step, at, title, body }) => ({
      step,
      at: Math.round(at),
      title: title.slice(0, 60),
      body: body.slice(0, 180),
    }));
  const text = JSON.stringify(ahead);
  if (text === sent) return;
  sent = text;
  bridge.call('setAlarms', ahead).catch(() => {
    // The window itself still rings; it only is held back while it is hidden.
    sent = '';
  });
}

/** What has to stay on: the screen while somebody may look at it, the machine while an alarm may come. */
function wakeful(course: Course, now: number): 'screen' | 'machine' {
  const soon = course.steps.some(
    ({ status, confirmed, from, lane }) =>
      status === 'due' ||
      (status === 'running' && lane !== 'dough') ||
      (status === 'ahead' && confirmed && from - now < longWait),
  );
  return soon ? 'screen' : 'machine';
}

function ring(course: Course, now: number): void {
  const { rehearsal } = useTonight.getState();
  const { units } = useSettings.getState();
  const alarms = alarmsOf(course).map((alarm) => ({ ...alarm, body: inUnits(alarm.body, units) }));
  if (!reloaded) {
    reloaded = true;
    useTonight.setState({ alarms: alarmsFrom(course) });
  }
  // A rehearsal's clock takes a minute from one look to the next.
  const missedAfter = rehearsal === undefined ? undefined : 5 * rehearsalSpeed;
  const tick = lookAt(useTonight.getState().alarms, alarms, now, missedAfter);
  useTonight.setState({ alarms: tick.state });
  for (const { alarm } of tick.began) note(alarm.title, alarm.body);
  if (tick.state.ringing.length > 0 && (tick.began.length > 0 || performance.now() - sounded > repeatSound)) {
    sounded = performance.now();
    sound();
  }
  tellShell(rehearsal === undefined ? alarms : [], now);
}

/** A reading moves the forecast of the plate. */
function followReadings(): void {
  const file = usePlan.getState().file;
  const readings = preheatReadings(sinceBegun(wholeLog()));
  const key = JSON.stringify(readings);
  if (key === asked) return;
  asked = key;
  if (readings.length === 0) {
    useTonight.setState({ preheat: undefined });
    return;
  }
  void learn({ what: 'preheat', file: { ...file, tonight: {} }, readings }).then((answer) => {
    if (key !== asked || answer.what !== 'preheat') return;
    const now = presentMoment();
    const course = courseNow(now);
    useTonight.setState({ preheat: answer.forecast });
    const after = courseNow(now);
    const moved = course && after ? movedBetween(course, after) : [];
    const note = moved.length === 0 ? 'The reading leaves the forecast where it was.' : '';
    useTonight.setState({ now, ...said(moved, note) });
  });
}

function look(): void {
  watchClocks();
  const now = presentMoment();
  const course = courseNow(now);
  const running = isRunning(course);
  keepAwake(running && course !== undefined ? wakeful(course, now) : 'off');
  const { saidAt, moved, note } = useTonight.getState();
  const old = (moved.length > 0 || note !== '') && performance.now() - saidAt > telling;
  useTonight.setState({ now, ...(old ? said([], '') : {}) });
  if (!running || course === undefined) {
    if (useTonight.getState().alarms.ringing.length > 0) useTonight.setState({ alarms: noAlarms });
    tellShell([], now);
    return;
  }
  followReadings();
  ring(course, now);
}

/** The cook has heard the alarms of these steps. */
export function hear(steps: readonly string[]): void {
  allowSound();
  useTonight.setState({ alarms: steps.reduce(heard, useTonight.getState().alarms) });
  record(...steps.map((step) => ({ what: 'heard', step }) as const));
}

/** Starts looking at the clock; one for the life of the window, whichever view is open. */
export function followEvening(): void {
  setInterval(look, every);
  for (const name of ['focus', 'pageshow'] as const) window.addEventListener(name, look);
  document.addEventListener('visibilitychange', look);
  bridge.on('alarmDue', look);
  useDocument.subscribe((state, old) => {
    if (state.opened === old.opened) return;
    // Another plan: what rang belongs to the one before.
    endRehearsal();
    reloaded = false;
    asked = '';
  });
  useForecast.subscribe((state, old) => {
    if (state.forecast !== old.forecast) look();
  });
}
