import { describe, expect, it } from 'vitest';
import { readReadings } from '../../../physics/calibrate/readings.ts';
import type { Happened, LogEntry } from '../../../physics/tonight/log.ts';
import { readingRows } from '../../../physics/tonight/readingRows.ts';

const on = Date.UTC(2026, 0, 31, 18, 0);
const at = (minutes: number, happened: Happened): LogEntry => ({ ...happened, at: on + 60_000 * minutes });
const reading = (minutes: number, celsius: number): LogEntry =>
  at(minutes, {
    what: 'reading',
    place: 'plateTop',
    temperature: celsius + 273.15,
    instrument: 'probe',
  });

const evening: readonly LogEntry[] = [
  at(-30, { what: 'begun' }),
  at(0, { what: 'done', step: 'preheat' }),
  reading(20, 152.04),
  at(50, { what: 'done', step: 'load-1' }),
  reading(53, 228),
  at(56, { what: 'done', step: 'bake-1' }),
  at(57, { what: 'done', step: 'bake-1' }),
  at(58, { what: 'words', pizza: 1, words: 'good', lightness: 55 }),
  reading(59, 240),
  at(60, { what: 'done', step: 'load-2' }),
];

describe("tonight's log as rows to learn from", () => {
  it('reads back as what happened: readings, bakes with their shade, one that lies there still', () => {
    const { readings, bakes, dropped } = readReadings(readingRows(evening), { ovenOn: 0, offsetMinutes: 0 });
    expect(dropped).toEqual([]);
    expect(readings.map(({ seconds, place }) => [Math.round(seconds / 60), place])).toEqual([
      [20, 'plateTop'],
      [53, 'plateTop'],
      [59, 'plateTop'],
    ]);
    expect(readings[0]!.temperature).toBeCloseTo(152 + 273.15, 6);
    // The later word on when it came out counts.
    expect(bakes).toEqual([
      { pizza: 1, inAt: 3000, outAt: 3420, lightness: 55 },
      { pizza: 2, inAt: 3600, outAt: undefined, lightness: undefined },
    ]);
  });

  it('moves with a clock that was put back', () => {
    const moved = [...evening, at(-2, { what: 'clockMoved', seconds: -3600 }), reading(1, 245)];
    const { readings } = readReadings(readingRows(moved), { ovenOn: 0, offsetMinutes: 0 });
    expect(readings.map(({ seconds }) => Math.round(seconds / 60))).toEqual([20, 53, 59, 61]);
  });

  it('is empty before the oven is on, and while nothing was read or judged', () => {
    expect(readingRows(evening.filter(({ at: when }) => when < on))).toBe('');
    expect(readingRows(evening.filter(({ what }) => what === 'done' || what === 'begun'))).toBe('');
  });
});
