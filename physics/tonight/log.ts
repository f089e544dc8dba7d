/** What happened on the evening, entry by entry, as the plan file keeps it. Everything else is worked out from it. */
import { zeroCelsius } from '../materials/constants.ts';
import { instantOf, writeInstant } from '../evening/clock.ts';
import type { InstrumentId } from '../evening/ids.ts';
import type { LogEntryFile } from '../evening/planFile.ts';
import { readShade } from '../evening/shade.ts';
import { quantityOf } from '../quantities/index.ts';
import type { ReadingPlace } from '../calibrate/readings.ts';

export type Happened =
  /** the cook has begun: alarms ring from now on; a new evening with the same plan begins anew */
  | { readonly what: 'begun' }
  /** a step is over; for `preheat`: the oven was switched on */
  | { readonly what: 'done'; readonly step: string }
  | { readonly what: 'skipped'; readonly step: string }
  /** it takes so many seconds longer (one more minute) */
  | { readonly what: 'longer'; readonly step: string; readonly seconds: number }
  /** what still lies ahead is wanted so many seconds later; less than 0: sooner */
  | { readonly what: 'guestsLate'; readonly seconds: number }
  | {
      readonly what: 'reading';
      readonly place: ReadingPlace;
      readonly temperature: number;
      readonly instrument: InstrumentId;
    }
  /** the alarm of a step was heard */
  | { readonly what: 'heard'; readonly step: string }
  /** the cook's own words about a pizza, with the shade of its base if it was judged */
  | {
      readonly what: 'words';
      readonly pizza: number;
      readonly words: string;
      readonly lightness: number | undefined;
    }
  /** the clock on the wall was put forward (or back, less than 0) by so many seconds: earlier entries move with it */
  | { readonly what: 'clockMoved'; readonly seconds: number };

export type LogEntry = Happened & {
  /** ms since 1970-01-01T00:00Z, by the clock as it then was */
  readonly at: number;
};

function secondsOf(text: string): number {
  const size = quantityOf(text.replace(/^-/u, ''), 'duration');
  return text.startsWith('-') ? -size : size;
}

/** The schema of the plan has seen that every entry has what its kind needs. */
function entryOf(entry: LogEntryFile): LogEntry {
  const at = instantOf(entry.at).epochMilliseconds;
  switch (entry.what) {
    case 'begun':
      return { at, what: 'begun' };
    case 'done':
    case 'skipped':
    case 'heard':
      return { at, what: entry.what, step: entry.step! };
    case 'longer':
      return { at, what: 'longer', step: entry.step!, seconds: secondsOf(entry.by!) };
    case 'guestsLate':
    case 'clockMoved':
      return { at, what: entry.what, seconds: secondsOf(entry.by!) };
    case 'reading':
      return {
        at,
        what: 'reading',
        place: entry.place!,
        temperature: quantityOf(entry.temperature!, 'temperature'),
        instrument: entry.instrument ?? 'probe',
      };
    case 'words': {
      const lightness = entry.shade === undefined ? undefined : readShade(entry.shade);
      return { at, what: 'words', pizza: entry.pizza!, words: entry.words!, lightness };
    }
  }
}

/** The log of a plan file that has been read, in the order of the file. */
export function readLog(entries: readonly LogEntryFile[]): readonly LogEntry[] {
  return entries.map(entryOf);
}

const shortest = (seconds: number): string =>
  `${seconds < 0 ? '-' : ''}${Number(Math.abs(seconds).toFixed(1))} s`;

/** An entry in the words of the file. @param offsetMinutes east of UTC, of the clock on the wall */
export function writeEntry(entry: LogEntry, offsetMinutes: number): LogEntryFile {
  const at = writeInstant({ epochMilliseconds: entry.at, offsetMinutes });
  switch (entry.what) {
    case 'begun':
      return { at, what: 'begun' };
    case 'done':
    case 'skipped':
    case 'heard':
      return { at, what: entry.what, step: entry.step };
    case 'longer':
      return { at, what: 'longer', step: entry.step, by: shortest(entry.seconds) };
    case 'guestsLate':
    case 'clockMoved':
      return { at, what: entry.what, by: shortest(entry.seconds) };
    case 'reading':
      return {
        at,
        what: 'reading',
        place: entry.place,
        temperature: `${Number((entry.temperature - zeroCelsius).toFixed(1))} degC`,
        instrument: entry.instrument,
      };
    case 'words':
      return {
        at,
        what: 'words',
        pizza: entry.pizza,
        words: entry.words,
        ...(entry.lightness === undefined
          ? {}
          : { shade: `lightness ${Number(entry.lightness.toFixed(1))}` }),
      };
  }
}

/** Entries by the clock as it is now: those before it was put forward or back move with it. */
export function byTodaysClock(log: readonly LogEntry[]): readonly LogEntry[] {
  return log.map((entry, index) => {
    const moved = log
      .slice(index + 1)
      .reduce((sum, later) => (later.what === 'clockMoved' ? sum + later.seconds : sum), 0);
    return { ...entry, at: entry.at + 1000 * moved };
  });
}

/** Entries of the evening that runs: since it was last begun. Empty while none runs. */
export function sinceBegun(log: readonly LogEntry[]): readonly LogEntry[] {
  const begun = log.findLastIndex(({ what }) => what === 'begun');
  return begun < 0 ? [] : log.slice(begun);
}

/**
 * The places in the log of what goes when the last thing the cook said is taken back; an alarm that was heard and a
 * clock that was moved stay. When that is the beginning, what was taken to have gone as planned goes with it.
 */
export function takenBack(log: readonly LogEntry[]): ReadonlySet<number> {
  const begun = log.findLastIndex(({ what }) => what === 'begun');
  if (begun < 0) return new Set();
  const assumed = log.findIndex(
    ({ what, at }, index) => index > begun && !(what === 'done' && at <= log[begun]!.at),
  );
  const said = log.findLastIndex(({ what }) => what !== 'heard' && what !== 'clockMoved');
  const began = assumed < 0 ? log.length : assumed;
  const together = (index: number): boolean =>
    log[index]!.what === 'skipped' && log[said]!.what === 'skipped' && log[index]!.at === log[said]!.at;
  let first = said;
  if (said < began) first = begun;
  // A whole pizza, or the rest of the evening, is left out with one key.
  else while (first - 1 >= began && together(first - 1)) first -= 1;
  const end = said < began ? began : said + 1;
  return new Set(Array.from({ length: end - first }, (_, i) => first + i));
}
