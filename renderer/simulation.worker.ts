/** Where the plan is computed: off the window's thread, so that typing and dragging never wait. */
import { planFromFile, type Planned } from '../physics/evening/planEvening.ts';
import type { PlanFile } from '../physics/evening/planFile.ts';

export interface SimulationRequest {
  readonly id: number;
  readonly file: PlanFile;
  /** ms since 1970 */
  readonly now: number;
  /** minutes east of UTC that the window's clock keeps */
  readonly offsetMinutes: number;
  readonly band: boolean;
}

export type SimulationAnswer =
  | { readonly id: number; readonly planned: Planned; readonly fault?: undefined }
  | { readonly id: number; readonly planned?: undefined; readonly fault: string };

function answered({ id, file, ...context }: SimulationRequest): SimulationAnswer {
  try {
    return { id, planned: planFromFile(file, context) };
  } catch (error) {
    return { id, fault: error instanceof Error ? error.message : String(error) };
  }
}

self.addEventListener('message', ({ data }: MessageEvent<SimulationRequest>) => {
  self.postMessage(answered(data));
});
