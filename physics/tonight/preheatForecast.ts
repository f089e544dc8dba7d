/** What tonight's readings say of tonight's preheat. */
import { fitOven, infraredSpread, type Quantiles } from '../calibrate/fit.ts';
import type { OvenReading } from '../calibrate/mostProbable.ts';
import { preheatPlaces } from '../calibrate/forecast.ts';
import type { Evening } from '../evening/evening.ts';
import { byTodaysClock, type LogEntry } from './log.ts';

/** Readings of the log that speak of the preheat: after the oven was switched on, before the first pizza went in. */
export function preheatReadings(log: readonly LogEntry[]): readonly OvenReading[] {
  const happened = byTodaysClock(log);
  const doneAt = (step: string): number | undefined =>
    happened.findLast((entry) => entry.what === 'done' && entry.step === step)?.at;
  const on = doneAt('preheat');
  if (on === undefined) return [];
  const end = doneAt('load-1') ?? Infinity;
  return happened.flatMap((entry): readonly OvenReading[] => {
    if (entry.what !== 'reading' || entry.at <= on || entry.at >= end) return [];
    const place = preheatPlaces.find((known) => known === entry.place);
    return place === undefined
      ? []
      : [
          {
            seconds: (entry.at - on) / 1000,
            place,
            temperature: entry.temperature,
            spread: entry.instrument === 'infrared' && place !== 'ovenAir' ? infraredSpread : undefined,
          },
        ];
  });
}

export interface PreheatForecast {
  /** s from switching on until the plate is ready */
  readonly ready: Quantiles;
  /** false when readings and model disagree by more than chance allows */
  readonly agrees: boolean;
}

/** @returns undefined without readings, or for an oven that never gets its plate ready */
export function preheatForecast(
  evening: Evening,
  readings: readonly OvenReading[],
  readingSpread?: number,
): PreheatForecast | undefined {
  if (readings.length === 0) return undefined;
  const fit = fitOven(evening, readings, readingSpread);
  return fit && { ready: fit.ready, agrees: fit.agrees };
}
