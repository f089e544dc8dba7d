import { describe, expect, it } from 'vitest';
import { saturday } from '../../../physics/evening/demos.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { readLog, sinceBegun, writeEntry, type LogEntry } from '../../../physics/tonight/log.ts';
import { preheatForecast, preheatReadings } from '../../../physics/tonight/preheatForecast.ts';

const minute = 60_000;
const on = Date.UTC(2026, 0, 31, 17, 42);
const at = (minutes: number): string => new Date(on + minutes * minute).toISOString().replace('.000', '');

describe('the log of a plan', () => {
  it('comes back as it was written, whatever happened', () => {
    const entries: readonly LogEntry[] = [
      { at: on, what: 'begun' },
      { at: on, what: 'done', step: 'preheat' },
      { at: on + minute, what: 'longer', step: 'rest', seconds: 90 },
      { at: on + minute, what: 'guestsLate', seconds: 1200 },
      { at: on + 2 * minute, what: 'clockMoved', seconds: -3600 },
      { at: on + 3 * minute, what: 'reading', place: 'ovenAir', temperature: 473.15, instrument: 'infrared' },
      { at: on + 4 * minute, what: 'words', pizza: 2, words: 'good', lightness: 55 },
      { at: on + 5 * minute, what: 'words', pizza: 3, words: 'better', lightness: undefined },
    ];
    expect(readLog(entries.map((entry) => writeEntry(entry, 60)))).toEqual(entries);
  });

  it('takes a thermometer that is not named for a probe', () => {
    const entry = { at: at(5), what: 'reading', place: 'plateTop', temperature: '200 degC' } as const;
    expect(readLog([entry])).toMatchObject([{ instrument: 'probe', temperature: 473.15 }]);
  });

  it('counts from the last beginning, and is empty before any', () => {
    const begun = { at: on, what: 'begun' } as const;
    const heard = { at: on, what: 'heard', step: 'bake-1' } as const;
    expect(sinceBegun([begun, heard, begun, heard])).toEqual([begun, heard]);
    expect(sinceBegun([heard])).toEqual([]);
  });
});

describe('what it tells of the preheat', () => {
  const reading = (
    minutes: number,
    place: 'ovenAir' | 'plateTop' | 'dough',
    instrument: 'probe' | 'infrared',
  ) => ({ at: on + minutes * minute, what: 'reading', place, temperature: 450, instrument }) as const;
  const log: readonly LogEntry[] = [
    reading(-1, 'plateTop', 'probe'),
    { at: on, what: 'done', step: 'preheat' },
    reading(10, 'plateTop', 'infrared'),
    reading(12, 'ovenAir', 'infrared'),
    reading(14, 'dough', 'probe'),
    reading(20, 'plateTop', 'probe'),
    { at: on + 40 * minute, what: 'done', step: 'load-1' },
    reading(45, 'plateTop', 'probe'),
  ];

  it('readings of oven and plate, from switching on to the first load; an infrared one of a surface is less sure', () => {
    const found = preheatReadings(log);
    expect(found.map(({ seconds, place }) => [seconds / 60, place])).toEqual([
      [10, 'plateTop'],
      [12, 'ovenAir'],
      [20, 'plateTop'],
    ]);
    expect(found.map(({ spread }) => spread !== undefined)).toEqual([true, false, false]);
    expect(preheatReadings(log.slice(0, 6))).toHaveLength(3);
  });

  it('nothing before the oven is on', () => {
    expect(preheatReadings(log.slice(0, 1))).toEqual([]);
    const plan = readPlanObject(saturday, { now: 0 });
    if (!plan.ok) throw new Error('the built-in evening is a plan');
    expect(preheatForecast(plan.evening, [])).toBeUndefined();
  });
});
