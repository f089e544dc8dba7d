/** Where plans are computed: off the window's thread, so that typing and dragging never wait. */
import { planFromFile, type Planned } from '../physics/evening/planEvening.ts';
import type { PlanFile } from '../physics/evening/planFile.ts';
import { makeHandout, type HandoutAsked, type HandoutMade } from './handout/make.ts';
import { localOffset } from './words/clock.ts';
import { studyOf, type Study, type StudyJob } from './state/study.ts';

interface Asked {
  readonly id: number;
  /** ms since 1970 */
  readonly now: number;
  /** minutes east of UTC that the window's clock keeps */
  readonly offsetMinutes: number;
}
/** The plan itself, whole. */
export interface PlanRequest extends Asked {
  readonly file: PlanFile;
  readonly band: boolean;
}
/** Another evening beside it, of which little is asked. */
export interface StudyRequest extends Asked {
  readonly job: StudyJob;
}
/** The plan as something to give away. */
export interface HandoutRequest extends Asked {
  readonly asked: HandoutAsked;
}
export type SimulationRequest = PlanRequest | StudyRequest | HandoutRequest;

export interface Fault {
  readonly id: number;
  readonly fault: string;
}
export type PlanAnswered =
  { readonly id: number; readonly planned: Planned; readonly fault?: undefined } | Fault;
export type StudyAnswered =
  { readonly id: number; readonly study: Study; readonly fault?: undefined } | Fault;

export type HandoutAnswered =
  { readonly id: number; readonly made: HandoutMade; readonly fault?: undefined } | Fault;

function answered(request: SimulationRequest): PlanAnswered | StudyAnswered | HandoutAnswered {
  const { id, now, offsetMinutes } = request;
  try {
    if ('asked' in request) return { id, made: makeHandout(request.asked, now) };
    return 'job' in request
      ? { id, study: studyOf(request.job, { now, offsetMinutes }) }
      : {
          id,
          planned: planFromFile(request.file, {
            now,
            offsetMinutes,
            readersClock: localOffset,
            band: request.band,
          }),
        };
  } catch (error) {
    return { id, fault: error instanceof Error ? error.message : String(error) };
  }
}

self.addEventListener('message', ({ data }: MessageEvent<SimulationRequest>) => {
  self.postMessage(answered(data));
});
