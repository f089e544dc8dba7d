/** The table for readers whose ovens stop elsewhere, as words: one row for each setting. */
import type { Evening } from '../evening/evening.ts';
import type { ReadersRow } from '../evening/readersOven.ts';
import { kept } from '../quantities/index.ts';
import type { Words } from './words.ts';

export interface TableRow {
  readonly cells: readonly string[];
  /** the setting that the recipe itself is baked at */
  readonly own: boolean;
}

/** Heads of its columns. */
export const readersHead = [
  'Oven set to',
  'Plate ready after',
  'Bake',
  'Then under the top element',
] as const;

/** `6½ min`: nobody knows another's oven to the second. */
export function halves(minutes: number): string {
  const twice = Math.round(2 * minutes);
  const [whole, half] = [Math.floor(twice / 2), twice % 2 === 1];
  if (twice === 0) return kept(`${Math.round(60 * minutes)} s`);
  return kept(`${whole === 0 ? '' : whole}${half ? '½' : ''} min`);
}

const nothing = '–';

function cells(row: ReadersRow, words: Words): readonly string[] {
  const setting = words.kelvin(row.settingK);
  if (row.preheatMinutes === null) return [setting, 'never in such an oven', nothing, nothing];
  const preheat = words.minutes(Math.round(row.preheatMinutes));
  if (row.firstBakeMinutes === null || row.finishMinutes === null)
    return [setting, preheat, `not done in ${kept('40 min')}`, nothing];
  // A few seconds more of top heat are within what nobody can see.
  const finish = row.finishMinutes < 0.25 ? nothing : halves(row.finishMinutes);
  return [setting, preheat, halves(row.firstBakeMinutes), finish];
}

/** A row for each setting, the evening's own marked. */
export function readersTable(
  rows: readonly ReadersRow[],
  { oven }: Evening,
  words: Words,
): readonly TableRow[] {
  return rows.map((row) => ({ cells: cells(row, words), own: row.settingK === oven.setpoint }));
}
