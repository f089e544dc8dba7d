/**
 * Readings of a thermometer as a cook writes them down (`20 min,plateTop,212 degC`) or a probe logs them: columns found by
 * content, units by cell, header or range. Never throws; what cannot be read is left out, counted and named.
 */
import { placeIds, type PlaceId } from '../evening/ids.ts';
import { readShade } from '../evening/shade.ts';
import { readQuantity, type UnitSystem } from '../quantities/index.ts';
import { bakesOf, type BakeEvent, type BakeRecord } from './bakeRecords.ts';
import { dialects, plainNumber, splitCells, type Dialect, type Line } from './delimited.ts';
import { secondsOf, timeGuess, type TimeKind } from './readingTimes.ts';

export const readingPlaces = placeIds;
export type ReadingPlace = PlaceId;

export interface Reading {
  /** line of the text, 1 for the first */
  readonly line: number;
  /** s since the oven was switched on */
  readonly seconds: number;
  readonly place: ReadingPlace;
  /** K */
  readonly temperature: number;
  /** the pizza that lay on the plate, when the row names one */
  readonly pizza: number | undefined;
}

export interface DroppedRow {
  readonly line: number;
  readonly found: string;
  readonly allowed: string;
}

/** How the text was understood, for a preview; each can be said beforehand instead. */
export interface ReadingGuesses {
  readonly delimiter: Dialect['delimiter'];
  readonly decimal: Dialect['decimal'];
  readonly time: TimeKind;
  readonly unit: 'degC' | 'degF';
  /** of a column that names no place */
  readonly place: ReadingPlace;
}

export interface ReadingsRead {
  /** by time, each moment and place once */
  readonly readings: readonly Reading[];
  readonly bakes: readonly BakeRecord[];
  /** s until which it is known what lay on the plate; Infinity when it always is */
  readonly knownUntil: number;
  readonly dropped: readonly DroppedRow[];
  /** rows that say again what an earlier one said */
  readonly repeated: number;
  readonly guesses: ReadingGuesses;
}

export interface ReadingsContext {
  /** ms since 1970-01-01T00:00Z when the oven was switched on, for times of the clock */
  readonly ovenOn: number;
  /** minutes east of UTC that clock times without an offset are in */
  readonly offsetMinutes: number;
  readonly say?: Partial<ReadingGuesses>;
  /** of figures without a unit that may be either; degC unless said */
  readonly usualUnit?: ReadingGuesses['unit'];
}

/** The unit of whoever reads figures in a system. */
export function usualUnit(units: UnitSystem): ReadingGuesses['unit'] {
  return units === 'us' ? 'degF' : 'degC';
}

/** Larger texts are not looked at: a reading a second over eight hours has a tenth of this. */
export const longestText = 2_000_000;

const placeWords: readonly (readonly [RegExp, ReadingPlace])[] = [
  [/core|middle of the plate/iu, 'plateCore'],
  [/dough/iu, 'dough'],
  [/air|oven|cavity|ambient/iu, 'ovenAir'],
  [/top|plate|steel|stone|surface|infrared/iu, 'plateTop'],
];

function placeOf(cell: string): ReadingPlace | undefined {
  const exact = readingPlaces.find(
    (place) => place.toLowerCase() === cell.toLowerCase().replaceAll(/[\s_-]/gu, ''),
  );
  return exact ?? placeWords.find(([word]) => word.test(cell))?.[1];
}

const timeWord = /^(time|date|clock|minute|second|elapsed|min\b|sec\b|s$)/iu;
const unitOf = (text: string): 'degC' | 'degF' | undefined => {
  if (/(deg|°|\b|_)\s*F\b|fahrenheit/iu.test(text)) return 'degF';
  return /(deg|°|\b|_)\s*C\b|celsius/iu.test(text) ? 'degC' : undefined;
};

/** Which columns hold what. */
interface Columns {
  readonly time: number;
  /** of a list with a place in each row */
  readonly place: number | undefined;
  readonly temperatures: readonly {
    readonly index: number;
    readonly place: ReadingPlace | undefined;
    readonly unit: 'degC' | 'degF' | undefined;
  }[];
  readonly head: Line | undefined;
}

interface Table {
  readonly dialect: Dialect;
  readonly lines: readonly Line[];
  readonly columns: Columns;
  readonly kind: TimeKind;
}

const pizzaWord = /\bpizza\s*(\d{1,2})\b/iu;

function isTemperature(cell: string, dialect: Dialect): boolean {
  return plainNumber(cell, dialect.decimal) !== undefined || readQuantity(cell, 'temperature').ok;
}

/** The rows of a text in one dialect: those with as many cells as most have. */
function tableIn(text: string, dialect: Dialect, context: ReadingsContext): Table | undefined {
  const lines = splitCells(text, dialect.delimiter);
  const several = lines.filter(({ cells }) => cells.length > 1);
  const isNumber = (cell: string): boolean => plainNumber(cell, dialect.decimal) !== undefined;
  const head = several.find(
    ({ cells }) => cells.some((cell) => timeWord.test(cell)) && !cells.some(isNumber),
  );
  const body = several.filter(({ number }) => number > (head?.number ?? 0));
  if (body.length === 0) return undefined;
  const width = Math.max(...body.map(({ cells }) => cells.length));
  const column = (index: number): readonly string[] => body.map(({ cells }) => cells[index] ?? '');
  const kinds = Array.from({ length: width }, (_, index) => timeGuess(column(index), dialect.decimal));
  const named = head?.cells.findIndex((cell, i) => timeWord.test(cell) && kinds[i] !== undefined) ?? -1;
  const surest = (['instant', 'duration', 'clock', 'elapsed', 'minutes', 'seconds'] as const).find((kind) =>
    kinds.includes(kind),
  );
  if (surest === undefined) return undefined;
  const time = named >= 0 ? named : kinds.indexOf(surest);
  const others = Array.from({ length: width }, (_, index) => index).filter((index) => index !== time);
  const share = (index: number, good: (cell: string) => boolean): number =>
    column(index).filter(good).length / body.length;
  const place = others.find(
    (index) =>
      share(
        index,
        (cell) => !isTemperature(cell, dialect) && (placeOf(cell) !== undefined || pizzaWord.test(cell)),
      ) > 0.3,
  );
  const sayUnit = (index: number): 'degC' | 'degF' | undefined => unitOf(head?.cells[index] ?? '');
  const temperatures = others
    .filter(
      (index) =>
        index !== place &&
        share(index, (cell) => isTemperature(cell, dialect)) > 0.3 &&
        !timeWord.test(head?.cells[index] ?? ''),
    )
    .filter((index) => timeGuess(column(index), dialect.decimal) !== 'duration')
    .map((index) => ({ index, place: placeOf(head?.cells[index] ?? ''), unit: sayUnit(index) }));
  // A list with places has one temperature a row; another column of numbers beside it is not one.
  const used = place === undefined ? temperatures : temperatures.slice(0, 1);
  const fallback =
    place === undefined
      ? used
      : used.length > 0
        ? used
        : others
            .filter((i) => i > place)
            .slice(0, 1)
            .map((index) => ({ index, place: undefined, unit: sayUnit(index) }));
  if (fallback.length === 0) return undefined;
  const kind = context.say?.time ?? kindByHead(head?.cells[time] ?? '', kinds[time]!);
  return { dialect, lines, columns: { time, place, temperatures: fallback, head }, kind };
}

/** A header that says `time_s` or `minutes` knows better than a range. */
function kindByHead(head: string, guess: TimeKind): TimeKind {
  if (guess !== 'minutes' && guess !== 'seconds')
    return /elapsed/iu.test(head) && guess === 'clock' ? 'elapsed' : guess;
  if (/(^|[^a-z])(s|sec|secs|seconds?)([^a-z]|$)/iu.test(head)) return 'seconds';
  return /min/iu.test(head) ? 'minutes' : guess;
}

interface Row {
  readonly readings: readonly Reading[];
  readonly event?: BakeEvent;
}

const allowedRow = 'a time, a place and a temperature, such as 20 min,plateTop,212 degC';

/** Degrees without a unit above this are Fahrenheit: no kitchen oven bakes at 330 degC. */
const hotterThanAnyOven = 330;

function guessedUnit(table: Table, usual: ReadingGuesses['unit'] = 'degC'): ReadingGuesses['unit'] {
  const { columns, lines, dialect } = table;
  const values = lines.flatMap(({ cells }) =>
    columns.temperatures.map(({ index }) => plainNumber(cells[index] ?? '', dialect.decimal) ?? 0),
  );
  return Math.max(...values, 0) > hotterThanAnyOven ? 'degF' : usual;
}

/** On one line, for a message: a quote left open swallows the lines behind it. */
function shortened(text: string): string {
  return text
    .replaceAll(/\s*[\n\r]+\s*/gu, ' | ')
    .trim()
    .slice(0, 80);
}

function readRow(
  line: Line,
  table: Table,
  guesses: ReadingGuesses,
  context: ReadingsContext,
): Row | DroppedRow {
  const { columns, dialect } = table;
  const { cells, number } = line;
  const drop = (found: string, allowed = allowedRow): DroppedRow => ({
    line: number,
    found: shortened(found),
    allowed,
  });
  const time = cells[columns.time] ?? '';
  const seconds = secondsOf(time, guesses.time, dialect.decimal, context);
  if (seconds === undefined)
    return drop(
      `time ${JSON.stringify(time.slice(0, 40))}`,
      'a time such as 20 min, 19:30 or 2026-01-31T19:30:00+01:00',
    );
  if (seconds < -60 || seconds > 24 * 3600)
    return drop(
      `${(seconds / 60).toFixed(0)} min from switching the oven on`,
      'a time from switching the oven on to a day later',
    );
  const where = columns.place === undefined ? '' : (cells[columns.place] ?? '');
  const named = pizzaWord.exec(where) ?? pizzaWord.exec(cells.find((cell) => pizzaWord.test(cell)) ?? '');
  const pizza = named === null ? undefined : Number(named[1]);
  const event = /\b(in|out)\b/iu.exec(where.replace(pizzaWord, ''))?.[1]?.toLowerCase();
  if (pizza !== undefined && (event === 'in' || event === 'out')) {
    const shade = cells.map((cell) => readShade(cell.toLowerCase())).find((l) => l !== undefined);
    return { readings: [], event: { line: number, pizza, what: event, seconds, lightness: shade } };
  }
  const readings: Reading[] = [];
  for (const { index, place: ofColumn, unit } of columns.temperatures) {
    const cell = cells[index] ?? '';
    if (cell === '' && columns.temperatures.length > 1) continue;
    const place =
      columns.place === undefined ? (ofColumn ?? guesses.place) : placeOf(where.replace(pizzaWord, ''));
    if (place === undefined)
      return drop(`place ${JSON.stringify(where.slice(0, 40))}`, readingPlaces.join(', '));
    const plain = plainNumber(cell, dialect.decimal);
    const read = readQuantity(plain === undefined ? cell : String(plain), 'temperature', {
      bareUnit: unit ?? guesses.unit,
    });
    if (!read.ok) return drop(`temperature ${JSON.stringify(cell.slice(0, 40))}`, read.problem.allowed);
    if (read.value < 233 || read.value > 1273)
      return drop(`temperature ${JSON.stringify(cell.slice(0, 40))}`, '-40 degC to 1000 degC');
    readings.push({ line: number, seconds: Math.max(0, seconds), place, temperature: read.value, pizza });
  }
  return readings.length > 0 ? { readings } : drop('no temperature');
}

/** Reads a text of readings. Never throws. */
export function readReadings(text: string, context: ReadingsContext): ReadingsRead {
  const { say = {} } = context;
  const none: ReadingGuesses = {
    delimiter: ',',
    decimal: '.',
    time: 'minutes',
    unit: context.usualUnit ?? 'degC',
    place: 'plateTop',
    ...say,
  };
  if (text.length > longestText)
    return {
      readings: [],
      bakes: [],
      knownUntil: Infinity,
      dropped: [{ line: 1, found: `${text.length} characters`, allowed: `at most ${longestText}` }],
      repeated: 0,
      guesses: none,
    };
  const tried = dialects
    .filter(
      ({ delimiter, decimal }) =>
        (say.delimiter ?? delimiter) === delimiter && (say.decimal ?? decimal) === decimal,
    )
    .flatMap((dialect) => {
      const table = tableIn(text, dialect, context);
      if (table === undefined) return [];
      const guesses: ReadingGuesses = {
        ...dialect,
        time: table.kind,
        unit: guessedUnit(table, context.usualUnit),
        place: 'plateTop',
        ...say,
      };
      const head = table.columns.head?.number ?? 0;
      const rows = table.lines
        .filter(({ number }) => number > head)
        .map((line) => readRow(line, table, guesses, context));
      return [{ guesses, rows, good: rows.filter((row) => 'readings' in row).length }];
    })
    .sort((a, b) => b.good - a.good)[0];
  if (tried === undefined || tried.good === 0) {
    const lines = splitCells(text, ',');
    return {
      readings: [],
      bakes: [],
      knownUntil: Infinity,
      dropped: lines.map(({ number, cells }) => ({
        line: number,
        found: shortened(cells.join(',')),
        allowed: allowedRow,
      })),
      repeated: 0,
      guesses: tried?.guesses ?? none,
    };
  }
  const dropped = tried.rows.filter((row): row is DroppedRow => !('readings' in row));
  const rows = tried.rows.filter((row): row is Row => 'readings' in row);
  const { bakes, knownUntil, dropped: unpaired } = bakesOf(rows.flatMap(({ event }) => event ?? []));
  const sorted = rows.flatMap(({ readings }) => readings).sort((a, b) => a.seconds - b.seconds);
  const seen = new Set<string>();
  const readings = sorted.filter(({ seconds, place, pizza }) => {
    const key = `${seconds} ${place} ${pizza ?? ''}`;
    return seen.has(key) ? false : seen.add(key);
  });
  return {
    readings,
    bakes,
    knownUntil,
    dropped: [...dropped, ...unpaired],
    repeated: sorted.length - readings.length,
    guesses: tried.guesses,
  };
}
