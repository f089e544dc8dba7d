/**
 * The whole evening in one run: preheat, load, bake, unload, recover, next. Between two pizzas the plate is given as
 * long as it takes for the next bake to stay within a quarter of the first: the shortest wait that does is also the
 * shortest total, since waiting a minute saves less than a minute of bake.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { coolingInShutOven, safeToTouch } from '../plate/cooling.ts';
import { bakeOne, bakeSeconds, doorSeconds, longestBake, openDoor } from './bakeOne.ts';
import type { Evening } from './evening.ts';
import { LoadedOven } from './loadedOven.ts';
import { highestReachable } from '../oven/settled.ts';
import { prepareModel } from './model.ts';
import type { EveningModel, ModelOptions } from './model.ts';
import { runPreheat } from './preheat.ts';
import type { PreheatRun } from './preheat.ts';
import type { OvenState } from '../oven/ovenRun.ts';
import { OutOfRange } from './problem.ts';
import type { Bake, EveningRun } from './run.ts';
import type { TraceRecorder } from './trace.ts';

/** s that hands need between taking one pizza out and laying the next down; common practice, no source */
export const shortestTurn = 90;
/** s after which a plate is taken not to get any hotter for the next pizza */
export const longestWait = 20 * 60;
/** a later pizza may bake this much longer than the first */
export const longerBake = 1.25;
/** s after the last pizza that are still shown */
const afterglow = 10 * 60;
/** s between the waits that are tried */
const waitGrid = 15;

/** What a run was made from, so that questions about it need no second preheat. */
const prepared = new WeakMap<EveningRun, { readonly model: EveningModel; readonly preheat: PreheatRun }>();

export function preparedFor(
  evening: Evening,
  run: EveningRun,
): { readonly model: EveningModel; readonly preheat: PreheatRun } {
  const kept = prepared.get(run);
  if (kept) return kept;
  const model = prepareModel(evening);
  return { model, preheat: runPreheat(model) };
}

/** The oven as it is `time` seconds after it was switched on, with the plate ready for pizzas. */
export function loadedAt(model: EveningModel, { states, run }: PreheatRun, time: number): LoadedOven {
  let k = states.length - 1;
  while (k > 0 && states[k]!.state.time > time) k--;
  run.load(states[k]!.state);
  run.advance(time, model.resolution.preheatStep);
  return new LoadedOven(model, run);
}

/**
 * @throws OutOfRange naming `oven.setpoint` when the oven cannot reach its setting or the plate never settles
 */
export function simulateEvening(evening: Evening, options: ModelOptions = {}): EveningRun {
  const { model, preheat } = heated(evening, options);
  refuseHopeless(model, preheat);
  const { plateReady } = preheat.preheat;
  const oven = loadedAt(model, preheat, plateReady);
  const recorder = preheat.recorder.upTo(plateReady);
  const bakes: Bake[] = [];
  for (let pizza = 1; pizza <= evening.pizzas.count; pizza++)
    bakes.push(pizza === 1 ? bakeNext(oven, 1, recorder) : bakeAfterWait(oven, pizza, bakes[0]!, recorder));
  const energy = oven.run.network.ledger.supplied;
  const off = oven.run.save();
  oven.run.advance(oven.run.time + afterglow, model.resolution.recoveryStep, () => {
    recorder.record(oven.run);
  });
  recorder.record(oven.run, true);
  oven.restoreBare(off);
  const coolInOven = coolingInShutOven(oven.run, safeToTouch);
  const run: EveningRun = {
    preheat: preheat.preheat,
    bakes,
    trace: recorder.trace(),
    energy,
    coolInOven,
  };
  prepared.set(run, { model, preheat });
  return run;
}

function refuseHopeless({ evening, dial, context, material }: EveningModel, { preheat }: PreheatRun): void {
  if (Number.isFinite(preheat.airReady) && Number.isFinite(preheat.plateReady)) return;
  const { setpoint } = evening.oven;
  const found = `${(setpoint - zeroCelsius).toFixed(0)} degC`;
  // An oven that gave its signal is strong enough: it is the plate that takes too long.
  const highest = Number.isFinite(preheat.airReady) ? setpoint : highestReachable(context, material, dial);
  throw new OutOfRange(
    'oven.setpoint',
    found,
    highest < setpoint
      ? `${Math.floor(highest - zeroCelsius).toFixed(0)} degC at most: more this oven does not reach with its power and losses`
      : 'a setting that oven and plate reach within 8 h',
  );
}

/**
 * Prepares and preheats. Powers beyond what any oven has drive air or plate out of the range of the property tables:
 * that is the plan's to mend.
 */
function heated(
  evening: Evening,
  options: ModelOptions,
): { readonly model: EveningModel; readonly preheat: PreheatRun } {
  try {
    const model = prepareModel(evening, options);
    return { model, preheat: runPreheat(model) };
  } catch (error) {
    if (!(error instanceof OutOfRange) || !error.problem.path.endsWith(' temperature')) throw error;
    const { bottom, top } = evening.oven.power;
    const kilowatts = ((bottom + top) / 1000).toFixed(1);
    throw new OutOfRange(
      'oven.setpoint',
      `${(evening.oven.setpoint - zeroCelsius).toFixed(0)} degC with ${kilowatts} kW in this cavity`,
      'a setting and powers that keep air and plate within what their properties are known for, some 620 degC',
    );
  }
}

/** Opens the door, lays a pizza down, bakes it, takes it out. */
function bakeNext(oven: LoadedOven, pizza: number, recorder: TraceRecorder): Bake {
  openDoor(oven, doorSeconds.load, recorder);
  recorder.record(oven.run, true);
  const bake = bakeOne(oven, pizza, recorder);
  recorder.record(oven.run, true);
  openDoor(oven, doorSeconds.unload, recorder);
  return bake;
}

/**
 * Bakes a later pizza after the shortest wait that keeps it within `longerBake` of the first. Usually the turn that
 * hands need is wait enough; only if it is not, other waits are tried.
 */
function bakeAfterWait(oven: LoadedOven, pizza: number, first: Bake, recorder: TraceRecorder): Bake {
  const start = oven.run.save();
  const until = recorder.last;
  const allowed = longerBake * (first.outAt - first.inAt);
  const attempt = (wait: number): Bake => {
    oven.restoreBare(start);
    recorder.cutAfter(until);
    oven.run.advance(start.time + wait, oven.model.resolution.recoveryStep, () => {
      recorder.record(oven.run);
    });
    return bakeNext(oven, pizza, recorder);
  };
  const bake = attempt(shortestTurn);
  if (bake.outAt - bake.inAt <= allowed) return bake;
  return attempt(shortestWait(oven, start, allowed));
}

/** The shortest wait of the grid after which the pizza bakes within `allowed` seconds; the longest if none does. */
function shortestWait(oven: LoadedOven, start: OvenState, allowed: number): number {
  const bakesAfter = (wait: number): number => {
    oven.restoreBare(start);
    oven.run.advance(start.time + wait, oven.model.resolution.recoveryStep);
    openDoor(oven, doorSeconds.load, undefined);
    return bakeSeconds(oven, Math.min(allowed + 1, longestBake));
  };
  // The bake shortens steadily with the wait: halve the grid down to one step.
  let low = 0;
  let high = Math.floor((longestWait - shortestTurn) / waitGrid);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (bakesAfter(shortestTurn + middle * waitGrid) > allowed) low = middle;
    else high = middle;
  }
  return shortestTurn + high * waitGrid;
}

/** s that the first pizza would take if it were laid down `time` seconds after switching on. */
export function firstBakeAt(
  model: EveningModel,
  preheat: PreheatRun,
  time: number,
): { readonly seconds: number; readonly plateTop: number } {
  const oven = loadedAt(model, preheat, time);
  openDoor(oven, doorSeconds.load, undefined);
  const { plateTop } = oven;
  return { seconds: bakeSeconds(oven, longestBake), plateTop };
}
