/** What happened tonight as rows to learn from: readings, and each pizza in and out with the shade of its base. */
import { zeroCelsius } from '../materials/constants.ts';
import { byTodaysClock, type LogEntry } from './log.ts';

/**
 * @param log of one evening
 * @returns a text that `readReadings` takes, minutes from switching the oven on; empty when nothing was read or judged
 */
export function readingRows(log: readonly LogEntry[]): string {
  const happened = byTodaysClock(log);
  const on = happened.findLast((entry) => entry.what === 'done' && entry.step === 'preheat')?.at;
  if (on === undefined) return '';
  const minutes = (at: number): string => `${((at - on) / 60_000).toFixed(2)} min`;
  const lightness = (pizza: string): number | undefined =>
    happened.findLast(
      (entry): entry is LogEntry & { what: 'words' } =>
        entry.what === 'words' && entry.pizza === Number(pizza) && entry.lightness !== undefined,
    )?.lightness;
  const rows = happened.flatMap((entry): readonly string[] => {
    if (entry.at < on) return [];
    if (entry.what === 'reading' && entry.place !== 'dough')
      return [`${minutes(entry.at)},${entry.place},${(entry.temperature - zeroCelsius).toFixed(1)} degC`];
    // A step confirmed twice counts as it was said last.
    if (
      entry.what !== 'done' ||
      entry !== happened.findLast((other) => other.what === 'done' && other.step === entry.step)
    )
      return [];
    const [, step, pizza] = /^(load|bake)-(\d+)$/u.exec(entry.step) ?? [];
    if (step === undefined || pizza === undefined) return [];
    if (step === 'load') return [`${minutes(entry.at)},pizza ${pizza} in,`];
    const shade = lightness(pizza);
    return [
      `${minutes(entry.at)},pizza ${pizza} out,${shade === undefined ? '' : `lightness ${shade.toFixed(0)}`}`,
    ];
  });
  const tells = rows.some((row) => / degC$|,lightness /u.test(row));
  return tells ? ['time,place,temperature', ...rows, ''].join('\n') : '';
}
