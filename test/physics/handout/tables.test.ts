import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import { csvText, spreadsheet } from '../../../physics/handout/csv.ts';
import { curvesHead } from '../../../physics/handout/curves.ts';
import { acrossSummerTime, facts, made, zoneOffset } from '../../support/handout.ts';

const saturday = facts(demos.saturday, { rows: [] });

const records = (text: string, delimiter = ','): string[][] =>
  parse(text, { delimiter, record_delimiter: '\r\n', relax_column_count: false });

describe('the curves as CSV', () => {
  const text = made('curves', saturday);
  const [head, ...rows] = records(text);

  it('are records of one length with a header, CRLF behind each (RFC 4180, 2)', () => {
    expect(head).toEqual([...curvesHead]);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/u);
    // csv-parse refuses records of another length; the last line is within a quarter of a minute of the run's end.
    const last = saturday.run.trace.seconds.at(-1)!;
    expect(rows).toHaveLength(Math.floor(last / 15) + 1);
  });

  it('hold the curves of the answer, in degrees Celsius whatever the units', () => {
    const { curves, ovenOnAt } = saturday.answer;
    for (const [n, row] of rows.entries()) {
      expect(Number(row[0])).toBe(60 * curves.minutes[n]!);
      expect(Date.parse(row[1]!)).toBe(Date.parse(ovenOnAt) + 15_000 * n);
      for (const [column, values] of [curves.ovenAirC, curves.plateTopC, curves.plateCoreC].entries())
        expect(Math.abs(Number(row[2 + column]) - values[n]!)).toBeLessThanOrEqual(0.06);
    }
    expect(made('curves', { ...saturday, units: 'us' })).toBe(text);
  });

  it('name the pizza while it is in the oven, and its base and crumb', () => {
    for (const { pizza, inAt, outAt } of saturday.run.bakes) {
      const inside = rows.filter((row) => row[5] === String(pizza));
      expect(inside.map((row) => Number(row[0])).every((t) => t >= inAt && t <= outAt)).toBe(true);
      expect(inside.length).toBeGreaterThanOrEqual(Math.floor((outAt - inAt) / 15));
      expect(inside.every((row) => Number(row[6]) > 15 && Number(row[7]) > 15)).toBe(true);
    }
    expect(rows[0]!.slice(5)).toEqual(['', '', '']);
  });

  it('keep the offset of the wall clock on both sides of a change of summer time', () => {
    const night = facts(
      { ...acrossSummerTime, anchor: { kind: 'eatAt', time: '2026-03-29T03:10:00+02:00' } },
      { rows: [], readersClock: zoneOffset('Europe/Berlin') },
    );
    const instants = records(made('curves', night))
      .slice(1)
      .map((row) => row[1]!);
    const change = Date.UTC(2026, 2, 29, 1);
    for (const instant of instants)
      expect(instant.slice(-6)).toBe(Date.parse(instant) < change ? '+01:00' : '+02:00');
    expect(new Set(instants.map((instant) => instant.slice(-6))).size).toBe(2);
    // One row each 15 s, whatever the clock on the wall does.
    const steps = instants.slice(1).map((instant, n) => Date.parse(instant) - Date.parse(instants[n]!));
    expect(new Set(steps)).toEqual(new Set([15_000]));
  });

  it('for spreadsheets have semicolons and decimal commas, and the same figures', () => {
    const [otherHead, ...others] = records(made('curves-spreadsheet', saturday), ';');
    expect(otherHead).toEqual(curvesHead.map((name) => (name === 'instant' ? 'clock' : name)));
    expect(
      others.map((row) => row.map((cell) => cell.replace(',', '.'))).map((row) => row.toSpliced(1, 1)),
    ).toEqual(rows.map((row) => row.toSpliced(1, 1)));
    expect(others[0]![1]).toBe(rows[0]![1]!.slice(0, 19).replace('T', ' '));
  });
});

describe('cells', () => {
  it('come back as they were, whatever is in them', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: 3, maxLength: 3 }), { minLength: 1 }),
        fc.constantFrom(undefined, spreadsheet),
        (table, form) => {
          // One that could be taken for a formula has an apostrophe before it.
          const safe = table.map((row) =>
            row.map((cell) =>
              /^[=+\-@\t\r]/u.test(cell) && !/^-?\d+(\.\d+)?$/u.test(cell) ? `'${cell}` : cell,
            ),
          );
          const read = parse(csvText(table, form), {
            delimiter: form?.separator ?? ',',
            record_delimiter: '\r\n',
            skip_empty_lines: false,
          });
          expect(read).toEqual(safe);
        },
      ),
      { seed: 20260131, numRuns: 200 },
    );
  });

  it.each(['=1+1', '+1', '-a', '@a', '\t=1', '\r=1'])('make no formula of the text %j', (text) => {
    const [[cell]] = parse(csvText([[text, 'b']]), { record_delimiter: '\r\n' }) as [[string]];
    expect(cell).toBe(`'${text}`);
  });

  it('leave a negative number a number, with the decimal sign asked for', () => {
    expect(csvText([[-1.5, undefined, 0]])).toBe('-1.5,,0\r\n');
    expect(csvText([[-1.5, undefined, 0]], spreadsheet)).toBe('-1,5;;0\r\n');
  });
});
