import { beforeAll, describe, expect, it } from 'vitest';
import { saturday } from '../../../physics/evening/demos.ts';
import { planFromFile, type Planned } from '../../../physics/evening/planEvening.ts';
import { alarmsOf, heard, lookAt, noAlarms } from '../../../physics/tonight/alarms.ts';
import { courseOf, type Course } from '../../../physics/tonight/course.ts';
import type { LogEntry } from '../../../physics/tonight/log.ts';
import {
  preheatForecast,
  preheatReadings,
  type PreheatForecast,
} from '../../../physics/tonight/preheatForecast.ts';
import {
  rehearse,
  rehearsalSpeed,
  rehearsedReading,
  type Rehearsal,
} from '../../../physics/tonight/rehearsal.ts';

const minute = 60_000;
/** a look each second of a clock that runs sixty times as fast */
const step = rehearsalSpeed * 1000;

let planned: Planned & { ok: true };
let kitchen: Rehearsal;
const log: LogEntry[] = [];
const rang: { readonly step: string; readonly late: number }[] = [];
const forecasts: PreheatForecast[] = [];
let end: Course;
let ovenOn = 0;

/** A cook who does what is due at the next look, reads the plate four times, and takes out the pizzas when called. */
beforeAll(() => {
  const made = planFromFile(saturday, { now: 0, band: false, advice: false });
  if (!made.ok) throw new Error('the built-in evening');
  planned = made;
  kitchen = rehearse(planned.evening);
  const { tasks } = planned.answer;
  const at = (id: string): number => Date.parse(tasks.find((task) => task.id === id)!.from);
  let alarms = noAlarms;
  let preheatSeconds: number | undefined;
  let now = at('hands-mix') - minute;
  for (let look = 0; look < 600; look++, now += step) {
    const course = courseOf({ tasks, log, now, preheatSeconds });
    end = course;
    if (course.steps.every(({ status }) => status === 'done')) return;
    const tick = lookAt(alarms, alarmsOf(course), now);
    alarms = tick.state;
    for (const { alarm } of tick.began) {
      rang.push({ step: `${alarm.step} ${alarm.title}`, late: (now - alarm.at) / 1000 });
      alarms = heard(alarms, alarm.step);
    }
    // Handwork is over when its time is; the oven and a pizza are seen to when they call.
    const next = course.steps.find(
      ({ status, confirmed, lane, to }) =>
        confirmed && (status === 'due' || (lane === 'hands' && status === 'running' && now >= to)),
    );
    if (next !== undefined) {
      log.push({ at: now, what: 'done', step: next.id });
      if (next.id === 'preheat') ovenOn = now;
    }
    const minutesOn = ovenOn === 0 ? 0 : Math.round((now - ovenOn) / minute);
    if ([10, 20, 30, 40].includes(minutesOn)) {
      const temperature = rehearsedReading(kitchen, 'plateTop', (now - ovenOn) / 1000);
      log.push({ at: now, what: 'reading', place: 'plateTop', temperature, instrument: 'probe' });
      const forecast = preheatForecast(planned.evening, preheatReadings(log))!;
      forecasts.push(forecast);
      preheatSeconds = forecast.ready.value;
    }
  }
}, 60_000);

describe('an evening rehearsed at sixty times its speed, with an oven that is not the planned one', () => {
  it('comes to its end: every pizza loaded, baked and cut, in order', () => {
    expect(end.steps.every(({ status }) => status === 'done')).toBe(true);
    const cuts = log.flatMap((entry) =>
      entry.what === 'done' && entry.step.startsWith('cut-') ? [entry.step] : [],
    );
    expect(cuts).toEqual(['cut-1', 'cut-2', 'cut-3', 'cut-4']);
  });

  it('the forecast of the plate finds the real one from four readings', () => {
    expect(forecasts).toHaveLength(4);
    const plannedReady = planned.run.preheat.plateReady;
    expect(kitchen.ready - plannedReady).toBeGreaterThan(3 * 60);
    const last = forecasts.at(-1)!;
    expect(Math.abs(last.ready.value - kitchen.ready)).toBeLessThan(2 * 60);
    const width = ({ ready }: PreheatForecast): number => ready.p90 - ready.p10;
    expect(width(last)).toBeLessThan(width(forecasts[0]!));
    // The first pizza waited for the plate as it is, not as it was planned.
    const loaded = log.find((entry) => entry.what === 'done' && entry.step === 'load-1')!;
    expect(loaded.at - ovenOn).toBeGreaterThan(1000 * (kitchen.ready - 120));
  });

  it('each alarm rang once, in time for the look, and none was lost', () => {
    const names = rang.map(({ step: name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { late } of rang) expect(late).toBeLessThan(2 * rehearsalSpeed);
    for (const name of ['preheat Oven on', 'bake-1 Pizza 1 out', 'bake-4 Pizza 4 out'])
      expect(names).toContain(name);
  });
});
