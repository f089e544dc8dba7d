/**
 * The whole evening in one run: preheat, load, bake, unload, recover, next. Between two pizzas the plate is given as
 * long as it takes for the next bake to stay within a quarter of the first: the shortest wait that does is also the
 * shortest total, since waiting a minute saves less than a minute of bake.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { coolingInShutOven, safeToTouch } from '../plate/cooling.ts';
import type { Evening } from './evening.ts';
import { highestReachable } from '../oven/settled.ts';
import { prepareModel } from './model.ts';
import type { EveningModel, ModelOptions } from './model.ts';
import { runPreheat } from './preheat.ts';
import type { PreheatRun } from './preheat.ts';
import type { OvenState } from '../oven/ovenRun.ts';
import { withPizza } from './onePizza.ts';
import { OutOfRange } from './problem.ts';
import type { Bake, BaseAhead, EveningRun } from './run.ts';
import { bakeAfterWait, bakeAhead, bakeAsFirst, bakeNext, longerBake, readyFor } from './series.ts';

/** s after the last pizza that are still shown */
const afterglow = 10 * 60;
/** What a run was made from, so that questions about it need no second preheat. */
interface Prepared {
  readonly model: EveningModel;
  readonly preheat: PreheatRun;
  /** the oven, its plate bare, from which the wait before the second pizza begins, the third ... */
  readonly waits: readonly OvenState[];
}
const prepared = new WeakMap<EveningRun, Prepared>();

/** What a run was made from; made anew for a run that was not simulated here. */
export function preparedFor(evening: Evening, run: EveningRun): Omit<Prepared, 'waits'> {
  const kept = prepared.get(run);
  if (kept) return kept;
  const model = prepareModel(evening);
  return { model, preheat: runPreheat(model) };
}

/** The same with the states between the pizzas; undefined for a run that was not simulated here. */
export function waitsOf(run: EveningRun): Prepared | undefined {
  return prepared.get(run);
}

/**
 * @throws OutOfRange naming `oven.setpoint` when the oven cannot reach its setting or the plate never settles
 */
export function simulateEvening(evening: Evening, options: ModelOptions = {}): EveningRun {
  const { model, preheat } = heated(evening, options);
  refuseHopeless(model, preheat);
  const firstLoad = evening.pizzas.loadAt ?? preheat.preheat.plateReady;
  const recorder = preheat.recorder.upTo(firstLoad);
  const { oven, ahead } = readyFor(model, preheat, 1, firstLoad, recorder);
  recorder.record(oven.run, true);
  const waits: OvenState[] = [];
  const bakes = [reported(bakeNext(oven, 1, recorder), ahead?.report)];
  for (let pizza = 2; pizza <= evening.pizzas.count; pizza++) {
    const own = bakeAhead(model, preheat, pizza);
    oven.prepare(withPizza(evening, pizza), own?.kept);
    waits.push(oven.run.save());
    const allowed = longerBake * unhurried(model, preheat, pizza, bakes[0]!);
    bakes.push(reported(bakeAfterWait(oven, pizza, allowed, recorder), own?.report));
  }
  const energy = oven.run.network.ledger.supplied;
  const off = oven.run.save();
  oven.run.advance(oven.run.time + afterglow, 2 * model.resolution.preheatStep, () => {
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
  prepared.set(run, { model, preheat, waits });
  return run;
}

function reported(bake: Bake, baseAhead: BaseAhead | undefined): Bake {
  return baseAhead ? { ...bake, baseAhead } : bake;
}

/** s that a pizza takes on the plate as the first finds it. */
function unhurried(model: EveningModel, preheat: PreheatRun, pizza: number, first: Bake): number {
  const { evening } = model;
  const same = evening.pizzas.each === undefined || withPizza(evening, pizza) === withPizza(evening, 1);
  return same ? first.outAt - first.inAt : bakeAsFirst(model, preheat, pizza, first.inAt).seconds;
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
