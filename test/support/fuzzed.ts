/** What any text at all may do to a reader: be taken, or be refused in one line that says what is allowed. Nothing else. */
import fc from 'fast-check';
import { expect } from 'vitest';
import { readReadings } from '../../physics/calibrate/readings.ts';
import { readInstant, writeInstant } from '../../physics/evening/clock.ts';
import { demos } from '../../physics/evening/demos.ts';
import { allPlanPaths, setPath } from '../../physics/evening/planPath.ts';
import { writePlan } from '../../physics/evening/planText.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { readPlanText } from '../../physics/evening/readPlan.ts';
import { quantityKinds, readQuantity } from '../../physics/quantities/index.ts';

/** Text that is nearly good: a good one with a few pieces cut out, put in, doubled or moved. */
export function nearly(good: readonly string[], spice: readonly string[]): fc.Arbitrary<string> {
  const edit = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.integer({ min: 0, max: 6 }),
    put: fc.oneof(fc.constantFrom('', ...spice), fc.string({ maxLength: 4, unit: 'binary' })),
  });
  const edited = fc.tuple(fc.constantFrom(...good), fc.array(edit, { maxLength: 4 })).map(([text, edits]) =>
    edits.reduce((sum, { at, length, put }) => {
      const place = Math.floor(at * sum.length);
      return sum.slice(0, place) + put + sum.slice(place + length);
    }, text),
  );
  return fc.oneof({ weight: 4, arbitrary: edited }, fc.string({ maxLength: 40, unit: 'binary' }));
}

function oneLine({ found, allowed }: Pick<Problem, 'found' | 'allowed'>): void {
  for (const text of [found, allowed]) {
    expect(text.trim()).not.toBe('');
    expect(text).not.toMatch(/[\n\r]| at .+:\d+:\d+/u);
  }
  // What was found may quote anything.
  expect(allowed).not.toMatch(/\[object|undefined|NaN/u);
}

const units = [
  '550F',
  '9.5 mm',
  '3/8 in',
  '1 1/2 in',
  '12,7 mm',
  '½ in',
  `5' 3"`,
  '1:30 h',
  '2 lb 4 oz',
  '0.035 W/(m K)',
  '1e3 W',
  '-10 degC',
  '1 h 30 min',
  '7850 kg/m3',
  '5 F degrees',
];
const unitSpice = [
  '.',
  ',',
  '/',
  '-',
  '−',
  'e400',
  'e-400',
  '0',
  '9'.repeat(30),
  ' ',
  '\u00a0',
  '°',
  'K',
  'in',
  '"',
  '½',
  'Infinity',
  'NaN',
  '\0',
  '٣',
];

export function fuzzUnits(numRuns: number, seed: number): void {
  fc.assert(
    fc.property(nearly(units, unitSpice), fc.constantFrom(...quantityKinds), (text, kind) => {
      const read = readQuantity(text, kind);
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
      else oneLine(read.problem);
    }),
    { numRuns, seed },
  );
}

const clocks = [
  '2026-01-31T19:30:00+01:00',
  '2026-03-29T02:30:00+01:00',
  '2024-02-29T00:00:00Z',
  '1970-01-01T00:00:00-12:00',
];
const clockSpice = ['T', 'Z', '+', '-', ':', '0', '60', '24', '99', '2026', '.5', ' ', '29', '31'];

export function fuzzClock(numRuns: number, seed: number): void {
  fc.assert(
    fc.property(nearly(clocks, clockSpice), (text) => {
      const read = readInstant(text);
      if (!read.ok) {
        oneLine(read.problem);
        return;
      }
      const again = readInstant(writeInstant(read.instant));
      // Written to the nearest second.
      const moved = again.ok ? again.instant.epochMilliseconds - read.instant.epochMilliseconds : Infinity;
      expect(Math.abs(moved)).toBeLessThanOrEqual(500);
    }),
    { numRuns, seed },
  );
}

const plans = Object.values(demos).map((demo) => writePlan(demo));
const planSpice = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ',',
  ':',
  'null',
  'true',
  '1e999',
  '-0',
  '"__proto__": {"a": 1},',
  '"constructor": 1,',
  '\\u0000',
  '\\ud800',
  ' ',
  '\n',
  '"9.5 s"',
];

export function fuzzPlans(numRuns: number, seed: number): void {
  fc.assert(
    fc.property(nearly(plans, planSpice), (text) => {
      const read = readPlanText(text, { now: 0 });
      if (read.ok) expect(Object.hasOwn(Object.prototype, 'a')).toBe(false);
      else {
        expect(read.problems.length).toBeGreaterThan(0);
        for (const problem of read.problems) {
          expect(problem.path).not.toBe('');
          oneLine(problem);
        }
      }
    }),
    { numRuns, seed },
  );
}

const entries = [
  ...units,
  ...clocks,
  'golden',
  'lightness 53',
  'true',
  '0.33',
  '[]',
  '{"kind":"milk","percent":5}',
];

/** `--set path=value` with paths and values that are nearly good. */
export function fuzzSettings(numRuns: number, seed: number): void {
  const paths = fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom(...allPlanPaths) },
    { weight: 1, arbitrary: nearly(allPlanPaths, ['.', '0', '__proto__', 'constructor', '*']) },
  );
  fc.assert(
    fc.property(
      paths,
      nearly(entries, unitSpice),
      fc.constantFrom(...Object.values(demos)),
      (path, text, file) => {
        const set = setPath(file, path, text);
        if (!set.ok) oneLine(set.problem);
      },
    ),
    { numRuns, seed },
  );
}

const logs = [
  'time,place,temperature\n5 min,ovenAir,120 degC\n20 min,plateTop,212 degC\n35 min,plateCore,480 degF\n',
  'Time;Temp 1 (°C)\r\n00:00:00;21,4\r\n00:05:00;98,2\r\n00:10:00;161,0\r\n',
  'Probe log v2\nserial 17\n\ndate\ttop_degF\tair_degF\n2026-01-31T18:50:00+01:00\t300\t410\n2026-01-31T18:55:00+01:00\t352\t455\n',
  'time,place,temperature,pizza\n36 min,plateTop,252 degC,1\n43 min,base,lightness 58,1\n',
  '"0:30","72.5"\n"1:00","80"\n',
];
const logSpice = [
  ',',
  ';',
  '\t',
  '"',
  '""',
  '\n',
  '\r',
  ':',
  '-',
  '1e9',
  '=1+1',
  '\ufeff',
  '°F',
  'degC',
  ' ',
  '99999',
  '.',
];

export function fuzzReadings(numRuns: number, seed: number): void {
  const ovenOn = Date.parse('2026-01-31T18:45:00+01:00');
  fc.assert(
    fc.property(nearly(logs, logSpice), (text) => {
      const { readings, bakes, dropped, repeated } = readReadings(text, { ovenOn, offsetMinutes: 60 });
      let last = -Infinity;
      for (const { seconds, temperature } of readings) {
        expect(Number.isFinite(seconds) && Number.isFinite(temperature)).toBe(true);
        expect(seconds).toBeGreaterThanOrEqual(Math.max(last, 0));
        last = seconds;
      }
      for (const { inAt, outAt, lightness } of bakes)
        expect([inAt, outAt, lightness].every(Number.isFinite)).toBe(true);
      expect(repeated).toBeGreaterThanOrEqual(0);
      for (const row of dropped) {
        expect(row.line).toBeGreaterThan(0);
        oneLine(row);
      }
    }),
    { numRuns, seed },
  );
}

export const fuzzers = {
  'logs of readings': fuzzReadings,
  'texts for quantities': fuzzUnits,
  'texts for instants': fuzzClock,
  'texts for plan files': fuzzPlans,
  'paths and values of --set': fuzzSettings,
} as const;
