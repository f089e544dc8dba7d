/** The times of readings: what kind a column holds, and each as seconds since the oven was switched on. */
import { readInstant } from '../evening/clock.ts';
import { readQuantity } from '../quantities/index.ts';
import { plainNumber, type Dialect } from './delimited.ts';

/** `instant` with date; `duration` with unit; `clock` 19:30; `elapsed` 12:30 or 0:12:30; bare minutes or seconds. */
export type TimeKind = 'instant' | 'duration' | 'clock' | 'elapsed' | 'minutes' | 'seconds';

const dated = /^(\d{4}-\d{2}-\d{2})[T ](\d{1,2}:\d{2})(:\d{2}(?:\.\d+)?)?$/u;
const colons = /^(\d{1,4}):([0-5]\d)(?::([0-5]\d)(?:\.\d+)?)?\s*([ap]m)?$/iu;

function isInstant(cell: string): boolean {
  return readInstant(cell).ok || dated.test(cell);
}

/** What most cells of a column are; undefined when they are no times. */
export function timeGuess(cells: readonly string[], decimal: Dialect['decimal']): TimeKind | undefined {
  const filled = cells.filter((cell) => cell !== '');
  const count = (good: (cell: string) => boolean): number => filled.filter(good).length;
  const instants = count(isInstant);
  const durations = count((cell) => readQuantity(cell, 'duration').ok);
  const clocks = filled.map((cell) => colons.exec(cell)).filter((match) => match !== null);
  // Each cell of these kinds says itself what it is: they may stand together in one column.
  if (2 * (instants + durations + clocks.length) > filled.length) {
    if (instants >= durations && instants >= clocks.length) return 'instant';
    if (durations >= clocks.length) return 'duration';
    // A log that counts begins at nothing, or counts past what a clock shows.
    const [, hour, minute, , half] = clocks[0]!;
    const atZero = Number(hour) === 0 && Number(minute) === 0 && half === undefined;
    return atZero || clocks.some((match) => Number(match[1]) > 23) ? 'elapsed' : 'clock';
  }
  const numbers = filled.map((cell) => plainNumber(cell, decimal)).filter((n) => n !== undefined);
  if (numbers.length * 2 <= filled.length) return undefined;
  const rising = numbers.every((n, i) => i === 0 || n >= numbers[i - 1]!);
  if (!rising) return undefined;
  return numbers.at(-1)! > 400 ? 'seconds' : 'minutes';
}

/** @returns s since the oven was switched on; undefined for what is no time of that kind */
export function secondsOf(
  cell: string,
  kind: TimeKind,
  decimal: Dialect['decimal'],
  { ovenOn, offsetMinutes }: { readonly ovenOn: number; readonly offsetMinutes: number },
): number | undefined {
  const read = readInstant(cell);
  if (read.ok) return (read.instant.epochMilliseconds - ovenOn) / 1000;
  const day = dated.exec(cell);
  if (day !== null) {
    // A log without an offset was written where the plan is.
    const utc = readInstant(`${day[1]!}T${day[2]!.padStart(5, '0')}${day[3] ?? ':00'}Z`);
    return utc.ok ? (utc.instant.epochMilliseconds - offsetMinutes * 60_000 - ovenOn) / 1000 : undefined;
  }
  const parts = colons.exec(cell);
  if (parts !== null) return kind === 'elapsed' ? elapsed(parts) : clock(parts, ovenOn, offsetMinutes);
  const duration = readQuantity(cell, 'duration');
  if (duration.ok) return duration.value;
  const plain = plainNumber(cell, decimal);
  return plain === undefined ? undefined : plain * (kind === 'seconds' ? 1 : 60);
}

function elapsed([, first, second, third]: RegExpExecArray): number {
  const [a, b] = [Number(first), Number(second)];
  return third === undefined ? 60 * a + b : 3600 * a + 60 * b + Number(third);
}

/** The time of day nearest to the evening: at most half a day before or after the oven was switched on. */
function clock(
  [, first, second, third, half]: RegExpExecArray,
  ovenOn: number,
  offsetMinutes: number,
): number | undefined {
  let hour = Number(first);
  if (half !== undefined) hour = (hour % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  if (hour > 23) return undefined;
  const ofDay = 3600 * hour + 60 * Number(second) + Number(third ?? 0);
  const day = 86_400;
  const on = (((ovenOn / 1000 + 60 * offsetMinutes) % day) + day) % day;
  const ahead = (((ofDay - on) % day) + day) % day;
  return ahead > day / 2 ? ahead - day : ahead;
}
