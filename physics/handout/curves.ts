/** The curves of an evening as a table: one row each quarter of a minute from switching on, degrees Celsius. */
import { writeInstant, type OffsetAt } from '../evening/clock.ts';
import type { EveningRun } from '../evening/run.ts';
import { zeroCelsius } from '../materials/constants.ts';
import { sampleAt } from '../numerics/samples.ts';
import { csvText, spreadsheet, type CsvCell } from './csv.ts';

export const curvesHead = [
  'time_s',
  'instant',
  'oven_air_degC',
  'plate_top_degC',
  'plate_core_degC',
  'pizza',
  'base_degC',
  'crumb_degC',
] as const;

/** s between rows */
const every = 15;

const tenths = (kelvin: number): number => Number((kelvin - zeroCelsius).toFixed(1));

/**
 * @param ovenOn ms since 1970-01-01T00:00Z
 * @param instant writes a moment for the second column
 */
function rows(
  { trace, bakes }: Pick<EveningRun, 'trace' | 'bakes'>,
  ovenOn: number,
  instant: (epochMilliseconds: number) => string,
): readonly (readonly CsvCell[])[] {
  const last = trace.seconds.at(-1) ?? 0;
  const read = (values: Float64Array, t: number): number => tenths(sampleAt(trace.seconds, values, t));
  return Array.from({ length: Math.floor(last / every) + 1 }, (_, n) => {
    const t = n * every;
    const bake = bakes.find(({ inAt, outAt }) => t >= inAt && t <= outAt);
    const inside = (name: 'base' | 'crumb'): CsvCell =>
      bake && tenths(sampleAt(bake.trace.seconds, bake.trace[name], t));
    return [
      t,
      instant(ovenOn + 1000 * t),
      read(trace.ovenAir, t),
      read(trace.plateTop, t),
      read(trace.plateCore, t),
      bake?.pizza,
      inside('base'),
      inside('crumb'),
    ];
  });
}

type Curves = Pick<EveningRun, 'trace' | 'bakes'>;

/** RFC 4180; the second column is the RFC 3339 instant. */
export function curvesCsv(run: Curves, ovenOn: number, offsetAt: OffsetAt): string {
  const instant = (epochMilliseconds: number): string =>
    writeInstant({ epochMilliseconds, offsetMinutes: offsetAt(epochMilliseconds) });
  return csvText([curvesHead, ...rows(run, ovenOn, instant)]);
}

/** Semicolons and decimal commas; the second column is the clock on the wall, as spreadsheets read a date. */
export function curvesForSpreadsheets(run: Curves, ovenOn: number, offsetAt: OffsetAt): string {
  const wall = (epochMilliseconds: number): string =>
    writeInstant({ epochMilliseconds, offsetMinutes: offsetAt(epochMilliseconds) })
      .slice(0, 19)
      .replace('T', ' ');
  return csvText(
    [curvesHead.map((name) => (name === 'instant' ? 'clock' : name)), ...rows(run, ovenOn, wall)],
    spreadsheet,
  );
}
