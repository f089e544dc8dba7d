/** First bakes on one preheat, for tests that change what the preheat does not know of. */
import { bakeOne, doorSeconds, openDoor } from '../../physics/evening/bakeOne.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import { prepareModel } from '../../physics/evening/model.ts';
import type { EveningModel, ModelOptions } from '../../physics/evening/model.ts';
import { runPreheat } from '../../physics/evening/preheat.ts';
import type { PreheatRun } from '../../physics/evening/preheat.ts';
import type { Bake } from '../../physics/evening/run.ts';
import { readyFor } from '../../physics/evening/series.ts';
import { TraceRecorder } from '../../physics/evening/trace.ts';
import type { Effects } from '../../physics/bake/parameters.ts';

export interface Heated {
  readonly model: EveningModel;
  readonly preheat: PreheatRun;
}

export function heated(evening: Evening, options: ModelOptions = {}): Heated {
  const model = prepareModel(evening, options);
  return { model, preheat: runPreheat(model) };
}

/** The first bake of another pizza, or with effects switched off from the load on, on the same plate. */
export function firstBake(
  { model, preheat }: Heated,
  evening: Evening = model.evening,
  effects: Partial<Effects> = {},
): Bake {
  const context = { ...model.context, effects: { ...model.context.effects, ...effects } };
  const load = evening.pizzas.loadAt ?? preheat.preheat.plateReady;
  const { oven } = readyFor({ ...model, context, evening }, preheat, 1, load);
  openDoor(oven, doorSeconds.load, undefined);
  return bakeOne(oven, 1, new TraceRecorder(30));
}

export const secondsOf = ({ inAt, outAt }: Bake): number => outAt - inAt;

/** Shares of heat and water that a bake's accounts leave open. */
export function unaccounted({ balance, water }: Bake): { readonly heat: number; readonly water: number } {
  const { supplied, stored, lostToRoom, lostByVentAndDoor, lostBySteam } = balance;
  return {
    heat:
      Math.abs(supplied - stored - lostToRoom - lostByVentAndDoor - lostBySteam) /
      Math.max(supplied, Math.abs(stored), lostToRoom),
    water: Math.abs(water.before - water.after - water.evaporated) / water.before,
  };
}
