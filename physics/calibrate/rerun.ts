/**
 * The evening as it was run: pizzas laid down and taken out when the cook says, whatever their shade then was. Same
 * oven, plate and pizzas as the plan's; only the hours are given instead of sought.
 */
import { BakeWatcher } from '../evening/bakeWatcher.ts';
import { doorSeconds, openDoor } from '../evening/bakeOne.ts';
import { Cook } from '../evening/cook.ts';
import type { LoadedOven } from '../evening/loadedOven.ts';
import type { EveningModel } from '../evening/model.ts';
import { withPizza } from '../evening/onePizza.ts';
import type { PreheatRun } from '../evening/preheat.ts';
import type { OvenTrace } from '../evening/run.ts';
import { approachLoad, bakeAhead, readyFor } from '../evening/series.ts';
import type { TraceRecorder } from '../evening/trace.ts';
import type { BakeRecord } from './bakeRecords.ts';

export interface Rerun {
  readonly trace: OvenTrace;
  /** integral of the browning rate of each base as it came out, in the order of the records */
  readonly browned: readonly number[];
}

/** Bakes for as long as it was baked. @returns the integral of the base's browning rate */
function bakeFor(oven: LoadedOven, seconds: number, recorder: TraceRecorder): number {
  const { steps } = oven.evening.pizzas;
  oven.load();
  const watcher = new BakeWatcher(oven);
  const cook = new Cook(watcher, steps?.turnAtHalfTime === true ? seconds / 2 : undefined);
  const topFrom = cook.topElementAtEnd > 0 ? seconds - cook.topElementAtEnd : Infinity;
  const stops = (): number => (watcher.seconds < topFrom - 1e-6 ? Math.min(topFrom, seconds) : seconds);
  recorder.record(oven.run, true);
  while (seconds - watcher.seconds > 1e-6) {
    watcher.step(Math.min(cook.until, stops() - watcher.seconds));
    cook.act();
    if (watcher.seconds >= topFrom - 1e-6) cook.topElementOn();
    recorder.record(oven.run);
  }
  cook.leave();
  recorder.record(oven.run, true);
  const { base } = watcher.baked;
  oven.unload();
  return base;
}

/**
 * @param records one after another, at least one
 * @param until s; the trace goes at least so far, and a pizza that lies there still bakes until then
 * @throws OutOfRange beyond what the properties are known for
 */
export function rerun(
  model: EveningModel,
  preheat: PreheatRun,
  records: readonly BakeRecord[],
  until: number,
): Rerun {
  const opens = ({ inAt }: BakeRecord): number => Math.max(0, inAt - doorSeconds.load);
  const [first] = records;
  if (first === undefined) throw new Error('rerun: no bakes');
  const recorder = preheat.recorder.upTo(opens(first));
  const { oven } = readyFor(model, preheat, first.pizza, opens(first), recorder);
  const { run } = oven;
  const browned: number[] = [];
  for (const record of records) {
    if (record !== first) {
      oven.prepare(withPizza(model.evening, record.pizza), bakeAhead(model, preheat, record.pizza)?.kept);
      if (opens(record) > run.time) approachLoad(oven, opens(record), recorder);
    }
    openDoor(oven, doorSeconds.load, recorder);
    browned.push(bakeFor(oven, Math.max(0, (record.outAt ?? until) - run.time), recorder));
    if (record.outAt !== undefined) openDoor(oven, doorSeconds.unload, recorder);
  }
  if (until > run.time)
    run.advance(until, model.resolution.recoveryStep, () => {
      recorder.record(run);
    });
  recorder.record(run, true);
  return { trace: recorder.trace(), browned };
}
