/** Where readings are made sense of, off the window's thread: fits take a second or so. */
import { calibrate, type Calibrated } from '../physics/calibrate/calibrate.ts';
import type { OvenReading } from '../physics/calibrate/mostProbable.ts';
import { readReadings, type ReadingGuesses, type ReadingsRead } from '../physics/calibrate/readings.ts';
import type { PlanFile } from '../physics/evening/planFile.ts';
import { readPlanObject } from '../physics/evening/readPlan.ts';
import { preheatForecast, type PreheatForecast } from '../physics/tonight/preheatForecast.ts';
import { rehearse, type Rehearsal } from '../physics/tonight/rehearsal.ts';

interface Asked {
  readonly id: number;
  readonly file: PlanFile;
  readonly now: number;
  readonly offsetMinutes: number;
}
export type LearnRequest = Asked &
  (
    | { readonly what: 'preheat'; readonly readings: readonly OvenReading[] }
    | { readonly what: 'rehearse' }
    | {
        readonly what: 'calibrate';
        readonly text: string;
        readonly say: Partial<ReadingGuesses>;
        readonly usualUnit: ReadingGuesses['unit'];
        readonly readingSpread: number;
      }
  );
export type LearnAnswer =
  | { readonly id: number; readonly what: 'preheat'; readonly forecast: PreheatForecast | undefined }
  | { readonly id: number; readonly what: 'rehearse'; readonly rehearsal: Rehearsal }
  | {
      readonly id: number;
      readonly what: 'calibrate';
      readonly calibrated: Calibrated;
      readonly read: ReadingsRead | undefined;
    }
  | { readonly id: number; readonly what: 'fault'; readonly fault: string };

function answered(request: LearnRequest): LearnAnswer {
  const { id, file, now, offsetMinutes } = request;
  if (request.what === 'calibrate') {
    let read: ReadingsRead | undefined;
    const calibrated = calibrate(
      file,
      (ovenOn) => {
        const { say, usualUnit } = request;
        return (read = readReadings(request.text, { ovenOn, offsetMinutes, say, usualUnit }));
      },
      { now, offsetMinutes, readingSpread: request.readingSpread },
    );
    return { id, what: 'calibrate', calibrated, read };
  }
  const plan = readPlanObject(file, { now, offsetMinutes });
  if (!plan.ok) return { id, what: 'fault', fault: 'The plan cannot be read as it stands.' };
  if (request.what === 'rehearse') return { id, what: 'rehearse', rehearsal: rehearse(plan.evening) };
  return { id, what: 'preheat', forecast: preheatForecast(plan.evening, request.readings) };
}

self.addEventListener('message', ({ data }: MessageEvent<LearnRequest>) => {
  try {
    self.postMessage(answered(data));
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    self.postMessage({ id: data.id, what: 'fault', fault } satisfies LearnAnswer);
  }
});
