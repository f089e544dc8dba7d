/** Where handouts are made: the plan with its range and other ovens take a moment, and typing goes on meanwhile. */
import { planFromFile } from '../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { factsOf, type HandoutOptions } from '../../physics/handout/facts.ts';
import { handouts, type HandoutId } from '../../physics/handout/files.ts';
import { localOffset } from '../words/clock.ts';

export interface HandoutRequest extends Pick<HandoutOptions, 'units' | 'paper' | 'now'> {
  readonly id: HandoutId;
  readonly file: PlanFile;
}
export type HandoutAnswer =
  { readonly text: string } | { readonly problems: readonly Problem[] } | { readonly fault: string };

function made({ id, file, ...options }: HandoutRequest): HandoutAnswer {
  const { now } = options;
  const planned = planFromFile(file, { now, offsetMinutes: localOffset(now), advice: false });
  if (!planned.ok) return { problems: planned.problems };
  return { text: handouts[id].make(factsOf(planned, file, { ...options, readersClock: localOffset })) };
}

function answered(request: HandoutRequest): HandoutAnswer {
  try {
    return made(request);
  } catch (error) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }
}

self.addEventListener('message', ({ data }: MessageEvent<HandoutRequest>) => {
  self.postMessage(answered(data));
});
