import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainNumber } from '../../../physics/calibrate/delimited.ts';
import { readReadings, usualUnit, type ReadingsContext } from '../../../physics/calibrate/readings.ts';

/** 2026-01-31T17:42:00+01:00 */
const ovenOn = Date.UTC(2026, 0, 31, 16, 42);
const context: ReadingsContext = { ovenOn, offsetMinutes: 60 };
const read = (text: string, other: Partial<ReadingsContext> = {}) =>
  readReadings(text, { ...context, ...other });
/** minute, place, degrees C to a tenth */
const rows = (text: string, other: Partial<ReadingsContext> = {}) =>
  read(text, other).readings.map(({ seconds, place, temperature }) => [
    Math.round(seconds / 6) / 10,
    place,
    Math.round(10 * (temperature - 273.15)) / 10,
  ]);

describe('rows that a cook writes', () => {
  it('takes minutes, instants and clock times; units in each cell', () => {
    const text = [
      'time,place,temperature',
      '20 min,plateTop,212 degC',
      '2026-01-31T18:12:00+01:00,ovenAir,482 degF',
      '18:22,plateTop,255 °C',
      '1:05 h,plateCore,530F',
    ].join('\n');
    expect(rows(text)).toEqual([
      [20, 'plateTop', 212],
      [30, 'ovenAir', 250],
      [40, 'plateTop', 255],
      [65, 'plateCore', 276.7],
    ]);
    expect(read(text).dropped).toEqual([]);
  });

  it('works without a header, with spaces in place names, in any order of time', () => {
    expect(rows('30 min,plate top,230 degC\n10 min,oven air,180 degC')).toEqual([
      [10, 'ovenAir', 180],
      [30, 'plateTop', 230],
    ]);
  });

  it('reads a bake from its two rows, and a reading that names a pizza', () => {
    const { readings, bakes } = read(
      'time,place,temperature\n40 min,plateTop,250 degC\n50 min,pizza 1 in,\n53 min,plateTop pizza 1,231 degC\n57 min,pizza 1 out,lightness 55\n',
    );
    expect(bakes).toEqual([{ pizza: 1, inAt: 3000, outAt: 3420, lightness: 55 }]);
    expect(readings.map(({ pizza }) => pizza)).toEqual([undefined, 1]);
  });

  it('drops and counts what it cannot read, and says which line and what is allowed', () => {
    const { readings, bakes, dropped, repeated } = read(
      [
        'time,place,temperature',
        '20 min,plateTop,212 degC',
        '21 min,chimney,212 degC',
        'soon,plateTop,212 degC',
        '22 min,plateTop,hot',
        '23 min,plateTop,5000 degC',
        '20 min,plateTop,213 degC',
        '-30 min,plateTop,20 degC',
        '50 min,pizza 2 in,',
      ].join('\r\n'),
    );
    expect(readings).toHaveLength(1);
    expect(repeated).toBe(1);
    expect(dropped.map(({ line, found }) => [line, found])).toEqual([
      [3, 'place "chimney"'],
      [4, 'time "soon"'],
      [5, 'temperature "hot"'],
      [6, 'temperature "5000 degC"'],
      [8, '-30 min from switching the oven on'],
    ]);
    expect(bakes).toEqual([{ pizza: 2, inAt: 3000, outAt: undefined, lightness: undefined }]);
    expect(dropped[0]!.allowed).toContain('plateTop');
  });
});

describe('logs of thermometers', () => {
  it('a preamble, seconds, several columns with their places in the header', () => {
    const text = [
      'Device,Probe 4',
      'Exported,2026-02-01',
      '',
      'time_s,plate_top_degC,oven_air_degC',
      '600,82.5,190.1',
      '1200,153.0,',
      '1800,,249.6',
    ].join('\n');
    expect(rows(text)).toEqual([
      [10, 'plateTop', 82.5],
      [10, 'ovenAir', 190.1],
      [20, 'plateTop', 153],
      [30, 'ovenAir', 249.6],
    ]);
  });

  it('semicolons and decimal commas, local date and time, quotes', () => {
    const text = 'Date;"Plate, top (°C)"\r\n2026-01-31 17:52:00;"82,5"\r\n2026-01-31 18:02:30;153,25\r\n';
    const { guesses } = read(text);
    expect(guesses).toMatchObject({ delimiter: ';', decimal: ',', time: 'instant' });
    expect(rows(text)).toEqual([
      [10, 'plateTop', 82.5],
      [20.5, 'plateTop', 153.3],
    ]);
  });

  it('tabs; Fahrenheit told by its range; elapsed mm:ss', () => {
    const text = 'elapsed\tT\n00:00\t70\n10:00\t180.5\n25:30\t480\n';
    const { guesses } = read(text);
    expect(guesses).toMatchObject({ delimiter: '\t', unit: 'degF', time: 'elapsed' });
    expect(rows(text)).toEqual([
      [0, 'plateTop', 21.1],
      [10, 'plateTop', 82.5],
      [25.5, 'plateTop', 248.9],
    ]);
  });

  it('a column of minutes and a guess that the cook corrects', () => {
    const text = '5,40\n10,80\n15,120\n';
    expect(rows(text)[0]).toEqual([5, 'plateTop', 40]);
    expect(rows(text, { say: { place: 'ovenAir', unit: 'degF' } })[0]).toEqual([5, 'ovenAir', 4.4]);
  });

  it('a header that knows better than the range: minutes past 400, elapsed hours', () => {
    expect(rows('Time (min),T\n10,80\n450,250\n').map(([m]) => m)).toEqual([10, 450]);
    expect(rows('Elapsed,T\n12:30,80\n13:00,90\n').map(([m]) => m)).toEqual([12.5, 13]);
  });

  it('local date and time without seconds; days that there are not, and hours past a clock, are dropped', () => {
    const text = '2026-01-31 17:52,80\n2026-02-31 17:53,90\n2026-01-31 17:54,100\n';
    expect(rows(text).map(([m]) => m)).toEqual([10, 12]);
    expect(read(text).dropped.map(({ line, found }) => [line, found])).toEqual([
      [2, 'time "2026-02-31 17:53"'],
    ]);
    const clocks = '6:02 pm,80\n12:10 am,90\n18:10,100\n';
    expect(rows(clocks).map(([m]) => m)).toEqual([20, 28, 388]);
    const past = read('18:10,80\n18:20,90\n25:10,95', { say: { time: 'clock' } });
    expect(past.dropped.map(({ line, found }) => [line, found])).toEqual([[3, 'time "25:10"']]);
  });

  it('a list of places with a row that breaks off, and one of bakes alone', () => {
    const text = 'time,place,temperature\n20 min,plateTop,212 degC\n25 min,plateTop\n30 min\n';
    const { readings, dropped } = read(text);
    expect(readings).toHaveLength(1);
    expect(dropped.map(({ line, found }) => [line, found])).toEqual([
      [3, 'temperature ""'],
      [4, 'place ""'],
    ]);
    const blank = read('time,plateTop,ovenAir\n20 min,200,210\n22 min,,\n24 min,205,212\n');
    expect(blank.dropped).toMatchObject([{ line: 3, found: 'no temperature' }]);
    expect(read('50 min,pizza 1 in,\n57 min,pizza 1 out,golden\n').bakes).toHaveLength(1);
  });

  it('clock times of an evening that goes past midnight', () => {
    const late = Date.UTC(2026, 0, 31, 22, 30);
    expect(rows('23:40,plateTop,60 degC\n0:10,plateTop,150 degC', { ovenOn: late }).map(([m]) => m)).toEqual([
      10, 40,
    ]);
  });
});

describe('whatever it is given', () => {
  it('never throws, gives finite figures in order, and each moment and place once', () => {
    const cell = fc.oneof(
      fc.constantFrom(
        'time',
        'plateTop',
        '20 min',
        '212 degC',
        '1,5',
        '12:30',
        '',
        '"',
        'NaN',
        '1e400',
        '2026-01-31T18:00:00Z',
        '=1+1',
        '__proto__',
      ),
      fc.string({ maxLength: 12 }),
      fc.double().map(String),
    );
    const text = fc
      .array(fc.array(cell, { maxLength: 5 }), { maxLength: 12 })
      .chain((lines) =>
        fc.constantFrom(',', ';', '\t').map((d) => lines.map((line) => line.join(d)).join('\n')),
      );
    fc.assert(
      fc.property(fc.oneof(text, fc.string({ maxLength: 300 })), (input) => {
        const { readings } = read(input);
        for (const [i, { seconds, temperature }] of readings.entries()) {
          expect(Number.isFinite(seconds) && seconds >= 0 && Number.isFinite(temperature)).toBe(true);
          if (i > 0) expect(seconds).toBeGreaterThanOrEqual(readings[i - 1]!.seconds);
        }
        const keys = readings.map(({ seconds, place, pizza }) => `${seconds} ${place} ${pizza ?? ''}`);
        expect(new Set(keys).size).toBe(keys.length);
      }),
      { numRuns: 300 },
    );
  });

  it('takes a number past all bounds for none', () => {
    expect(plainNumber('9'.repeat(400), '.')).toBeUndefined();
  });

  it('refuses a text of more than two million characters without looking at it', () => {
    const { readings, dropped } = read('5,40\n'.repeat(500_000));
    expect(readings).toEqual([]);
    expect(dropped[0]!.found).toBe('2500000 characters');
  });
});

describe('figures without a unit', () => {
  const bare = '20 min,plateTop,250\n30 min,plateTop,280';
  it('are in the unit of whoever reads, unless no oven is as hot', () => {
    expect(read(bare).guesses.unit).toBe('degC');
    expect(read(bare, { usualUnit: usualUnit('us') }).guesses.unit).toBe('degF');
    expect(read(bare, { usualUnit: usualUnit('metric') }).guesses.unit).toBe('degC');
    expect(read(bare.replace('280', '480')).guesses.unit).toBe('degF');
    expect(read(bare, { usualUnit: 'degF', say: { unit: 'degC' } }).guesses.unit).toBe('degC');
  });
});
