/** Pizza after pizza: how each comes to the plate, how long the plate is given before it, what a base baked ahead is like. */
import type { OvenState } from '../oven/ovenRun.ts';
import { bakeOne, bakeSeconds, bakeWatched, doorSeconds, longestBake, openDoor } from './bakeOne.ts';
import { LoadedOven } from './loadedOven.ts';
import type { EveningModel } from './model.ts';
import type { WaitRuleId } from './ids.ts';
import { withPizza } from './onePizza.ts';
import { afterKeeping, bareBase } from './parBake.ts';
import type { KeptBase } from './parBake.ts';
import type { PreheatRun } from './preheat.ts';
import type { Bake, BaseAhead } from './run.ts';
import type { TraceRecorder } from './trace.ts';

/** s that hands need between taking one pizza out and laying the next down; common practice, no source */
export const shortestTurn = 90;
/** s after which a plate is taken not to get any hotter for the next pizza */
export const longestWait = 20 * 60;
/** a later pizza may bake this much longer than it would as the first */
export const longerBake = 1.25;
/** bakes that differ by less are alike to a cook; our choice */
export const alike = 1.04;
/** s between the waits that are tried */
const waitGrid = 15;

/** The oven as it is `time` seconds after it was switched on, with the plate ready for pizzas. */
export function loadedAt(
  model: EveningModel,
  { states, run }: PreheatRun,
  time: number,
  recorder?: TraceRecorder,
): LoadedOven {
  let k = states.length - 1;
  while (k > 0 && states[k]!.state.time > time) k--;
  run.load(states[k]!.state);
  run.advance(time, model.resolution.preheatStep, () => {
    if (recorder && run.time > recorder.last) recorder.record(run);
  });
  return new LoadedOven(model, run);
}

interface Ahead {
  readonly kept: KeptBase;
  readonly report: BaseAhead;
}

/** Bakes the base of the n-th pizza without topping on a plate that is ready, and keeps it. */
export function bakeAhead(model: EveningModel, preheat: PreheatRun, pizza: number): Ahead | undefined {
  const asked = withPizza(model.evening, pizza);
  if (asked.pizzas.parBake === undefined) return undefined;
  const oven = loadedAt(model, preheat, preheat.preheat.plateReady);
  oven.prepare(bareBase(asked));
  openDoor(oven, doorSeconds.load, undefined);
  const watcher = bakeWatched(oven, longestBake);
  return {
    kept: afterKeeping(asked, watcher.baked),
    report: {
      seconds: watcher.seconds,
      baseLightness: watcher.baseLightness,
      rimLightness: watcher.rimLightness,
      waterLost: oven.centre.evaporated + oven.rim.evaporated,
    },
  };
}

/** Lets the bare oven go on until `time`, its top element at full at the end where the plan says so. */
export function approachLoad(oven: LoadedOven, time: number, recorder: TraceRecorder | undefined): void {
  const { run, model, evening } = oven;
  const record = (): void => {
    recorder?.record(run);
  };
  const under = Math.min(evening.pizzas.steps?.topElementBefore ?? 0, time - run.time);
  run.advance(time - under, model.resolution.recoveryStep, record);
  run.topElementForced = under > 0;
  run.advance(time, model.resolution.recoveryStep, record);
  run.topElementForced = false;
}

/** The oven just before the n-th pizza could be laid down `time` seconds after switching on, as if it were the first. */
export function readyFor(
  model: EveningModel,
  preheat: PreheatRun,
  pizza: number,
  time: number,
  recorder?: TraceRecorder,
): { readonly oven: LoadedOven; readonly ahead: Ahead | undefined } {
  const asked = withPizza(model.evening, pizza);
  const ahead = bakeAhead(model, preheat, pizza);
  const under = Math.min(asked.pizzas.steps?.topElementBefore ?? 0, time);
  const oven = loadedAt(model, preheat, time - under, recorder);
  oven.prepare(asked, ahead?.kept);
  approachLoad(oven, time, recorder);
  return { oven, ahead };
}

/** s that the n-th pizza would take if it were laid down `time` seconds after switching on, and K of the plate then. */
export function bakeAsFirst(
  model: EveningModel,
  preheat: PreheatRun,
  pizza: number,
  time: number,
): { readonly seconds: number; readonly plateTop: number } {
  const { oven } = readyFor(model, preheat, pizza, time);
  openDoor(oven, doorSeconds.load, undefined);
  const { plateTop } = oven;
  return { seconds: bakeSeconds(oven, longestBake), plateTop };
}

/** Opens the door, lays a pizza down, bakes it, takes it out. */
export function bakeNext(oven: LoadedOven, pizza: number, recorder: TraceRecorder): Bake {
  openDoor(oven, doorSeconds.load, recorder);
  recorder.record(oven.run, true);
  const bake = bakeOne(oven, pizza, recorder);
  recorder.record(oven.run, true);
  openDoor(oven, doorSeconds.unload, recorder);
  return bake;
}

/** s that the pizza which is next would bake after a wait, at most `limit`; the oven is left with it. */
export function bakeAfter(oven: LoadedOven, start: OvenState, wait: number, limit: number): number {
  oven.restoreBare(start);
  approachLoad(oven, start.time + wait, undefined);
  openDoor(oven, doorSeconds.load, undefined);
  return bakeSeconds(oven, limit);
}

/**
 * Bakes a later pizza after the wait that the plan gives, or after the shortest that keeps it within what its rule allows.
 *
 * @param allowed s that it may bake by the usual rule, `longerBake` times as long as the first
 *
 * Usually the turn that hands need is wait enough; only if it is not, other waits are tried.
 */
export function bakeAfterWait(
  oven: LoadedOven,
  pizza: number,
  allowed: number,
  recorder: TraceRecorder,
): Bake {
  const start = oven.run.save();
  const until = recorder.last;
  const attempt = (wait: number): Bake => {
    oven.restoreBare(start);
    recorder.cutAfter(until);
    approachLoad(oven, start.time + wait, recorder);
    return bakeNext(oven, pizza, recorder);
  };
  const given = oven.evening.pizzas.wait;
  if (given !== undefined) return attempt(given);
  const atOnce = attempt(shortestTurn);
  const seconds = atOnce.outAt - atOnce.inAt;
  const most = (allowed / longerBake) * mayBake(oven.evening.pizzas.waitRule, pizza);
  return seconds <= most ? atOnce : attempt(shortestWait(oven, start, most, seconds));
}

/**
 * How much longer than as the first the n-th pizza may bake by a rule. Every minute of wait saves less than a minute of
 * bake, so that whoever is in a hurry does not wait at all.
 */
function mayBake(rule: WaitRuleId = 'quarter-longer', pizza: number): number {
  switch (rule) {
    case 'quarter-longer':
      return longerBake;
    case 'alike':
      return alike;
    case 'fastest':
      return Infinity;
    case 'in-pairs':
      return pizza % 2 === 0 ? Infinity : alike;
  }
}

/** s by which a bake may stay below what is allowed before a shorter wait is looked for */
const closeEnough = 5;

/** About the shortest wait of the grid after which the pizza bakes within `allowed` seconds; the longest if none does. */
function shortestWait(oven: LoadedOven, start: OvenState, allowed: number, atOnce: number): number {
  // Places on the grid and how much too long the bake is there. It shortens with the wait, ever more slowly.
  let low = { at: 0, over: atOnce - allowed };
  let high = { at: Math.floor((longestWait - shortestTurn) / waitGrid), over: -Infinity };
  // While a plate recovers, a minute's wait shortens the bake by half a minute or so.
  let next = low.over / 6;
  while (high.at - low.at > 1 && high.over < -closeEnough) {
    const at = Math.round(Math.min(Math.max(next, low.at + 1), high.at - 1));
    const over = bakeAfter(oven, start, shortestTurn + at * waitGrid, longestBake) - allowed;
    if (over > 0) low = { at, over };
    else {
      // The curve is hollow: a straight line through an end that stays lies ever higher above it.
      if (high.over > -Infinity) low = { ...low, over: low.over / 2 };
      high = { at, over };
    }
    next = high.over > -Infinity ? low.at + ((high.at - low.at) * low.over) / (low.over - high.over) : 2 * at;
  }
  return shortestTurn + high.at * waitGrid;
}
