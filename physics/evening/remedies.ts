/**
 * Base, rim, crumb and cheese are seldom done at the same moment. Which of them the others wait for, and what a cook can
 * do about it: every remedy is tried in the model and comes with what it makes of the first bake.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { parchmentRating } from './cautions.ts';
import type { BakeSteps, Evening } from './evening.ts';
import { bakeWatched, doorSeconds, longestBake, openDoor, tryBake } from './bakeOne.ts';
import type { TriedBake } from './bakeOne.ts';
import type { LoadedOven } from './loadedOven.ts';
import { prepareModel } from './model.ts';
import type { EveningModel } from './model.ts';
import { withPizza } from './onePizza.ts';
import { runPreheat } from './preheat.ts';
import type { PreheatRun } from './preheat.ts';
import type { Bake, EveningRun } from './run.ts';
import { readyFor } from './series.ts';
import { preparedFor } from './simulate.ts';

/** A field of the plan and its new value, as `--set` takes them. */
export interface PlanChange {
  readonly path: string;
  readonly value: string;
}

export type RemedyId =
  | 'rack-higher'
  | 'rack-lower'
  | 'parchment'
  | 'semolina'
  | 'flour'
  | 'pull-parchment'
  | 'top-element-before'
  | 'top-element-after'
  | 'top-element-at-end';

export interface Remedy {
  readonly what: RemedyId;
  readonly change: readonly PlanChange[];
  /** s that the first pizza then bakes, and of what its rim would still lack under the top element */
  readonly bake: number;
  readonly finish: number;
  readonly baseLightness: number;
  readonly rimLightness: number;
  /** kg of water left on top */
  readonly waterLeftOnTop: number;
  /** s until the plate is ready */
  readonly plateReady: number;
}

/** What was done first, what last, and the seconds between. */
export interface Disagreement {
  readonly first: 'base' | 'rim' | 'crumb' | 'cheese';
  readonly last: 'base' | 'rim' | 'crumb' | 'cheese';
  readonly seconds: number;
}

/** share of the cavity's height that a cook moves the plate by: about one rack position of five; our choice */
export const rackStep = 0.15;
/** shares of the height between which a plate with a pizza and a hand still fits; our choice */
export const lowestRack = 0.06;
export const highestRack = 0.75;
/** s of the top element before the load; makers name 3 to 5 min for its own heating up */
const warmTop = 300;
/** s: whatever is done within so short a time of each other counts as done together; our choice */
const together = 20;

/** Which part of a bake was done first, which last; of parts that were not done, the rim by its time under the top. */
export function disagreement({ partsDone, finish, inAt, outAt }: Bake): Disagreement | undefined {
  if (partsDone === undefined) return undefined;
  const end = outAt - inAt;
  const times = (['base', 'rim', 'crumb', 'cheese'] as const).map((part) => ({
    part,
    at: partsDone[part] ?? end + (part === 'rim' ? finish : 0),
  }));
  // Crumb and cheese may be done long before: nobody waits for them then.
  const [base, rim] = times.slice(0, 2);
  const last = times.reduce((a, b) => (b.at > a.at ? b : a));
  const first = last.part === 'base' ? rim! : base!;
  return { first: first.part, last: last.part, seconds: last.at - first.at };
}

interface Tried {
  readonly bake: TriedBake;
  readonly plateReady: number;
}

/** The oven with its door just shut behind the first pizza of this plan. */
function doorShut(model: EveningModel, preheat: PreheatRun, evening: Evening): LoadedOven {
  const load = evening.pizzas.loadAt ?? preheat.preheat.plateReady;
  const { oven } = readyFor({ ...model, evening }, preheat, 1, load);
  openDoor(oven, doorSeconds.load, undefined);
  return oven;
}

function tryPizza(model: EveningModel, preheat: PreheatRun, evening: Evening): Tried {
  return { bake: tryBake(doorShut(model, preheat, evening)), plateReady: preheat.preheat.plateReady };
}

/** s of preheat that a plan at another height is simulated for, at least */
const shortPreheat = 1800;

function tryPlate(evening: Evening, rackHeight: number): Tried {
  const changed = { ...evening, plate: { ...evening.plate, rackHeight } };
  const model = prepareModel(changed);
  return tryPizza(model, runPreheat(model, shortPreheat), changed);
}

function withSteps(evening: Evening, steps: BakeSteps): Evening {
  const { pizzas } = evening;
  return { ...evening, pizzas: { ...pizzas, steps: { ...pizzas.steps, ...steps } } };
}

/** A remedy's outcome on the plan: all pizzas alike, since only the first is tried. */
function remedy(what: RemedyId, change: readonly PlanChange[], { bake, plateReady }: Tried): Remedy {
  return {
    what,
    change,
    bake: bake.seconds,
    finish: bake.finish,
    baseLightness: bake.baseLightness,
    rimLightness: bake.rimLightness,
    waterLeftOnTop: bake.waterLeftOnTop,
    plateReady,
  };
}

const secondsText = (seconds: number): string => `${Math.round(seconds)} s`;

/** What can be done for the first pizza of a run, the best first: least left to do for the rim, then the shorter bake. */
export function remediesFor(evening: Evening, run: EveningRun): readonly Remedy[] {
  const { model, preheat } = preparedFor(evening, run);
  const first = run.bakes[0]!;
  const apart = disagreement(first);
  if (apart === undefined || apart.seconds < together) return [];
  const asked = withPizza(evening, 1);
  const found: Remedy[] = [];
  const step = (what: RemedyId, name: keyof BakeSteps, seconds: number): void => {
    const tried = tryPizza(model, preheat, withSteps(asked, { [name]: seconds }));
    found.push(remedy(what, [{ path: `pizzas.steps.${name}`, value: secondsText(seconds) }], tried));
  };
  const bench = (what: 'parchment' | 'semolina' | 'flour'): void => {
    if (asked.pizzas.bench === what) return;
    const tried = tryPizza(model, preheat, { ...asked, pizzas: { ...asked.pizzas, bench: what } });
    found.push(remedy(what, [{ path: 'pizzas.bench', value: what }], tried));
  };
  const rack = (what: 'rack-higher' | 'rack-lower', by: number): void => {
    const height = Math.round((asked.plate.rackHeight + by) * 100) / 100;
    if (height < lowestRack || height > highestRack) return;
    found.push(remedy(what, [{ path: 'plate.rackHeight', value: String(height) }], tryPlate(asked, height)));
  };
  if (apart.last === 'base') {
    // The rim darkens while the base still needs heat from below.
    rack('rack-lower', -rackStep);
    if (asked.pizzas.bench === 'parchment') {
      const pulled = tryPizza(model, preheat, withSteps(asked, { pullParchment: true }));
      found.push(remedy('pull-parchment', [{ path: 'pizzas.steps.pullParchment', value: 'true' }], pulled));
    }
    if (asked.pizzas.bench !== 'metal') bench('flour');
  } else {
    rack('rack-higher', rackStep);
    // Not above what is printed on the paper.
    if (asked.oven.setpoint <= parchmentRating + zeroCelsius) bench('parchment');
    if (asked.pizzas.bench !== 'parchment') bench('semolina');
    step('top-element-before', 'topElementBefore', warmTop);
    if (first.finish > 0) {
      step('top-element-at-end', 'topElementAtEnd', first.finish);
      step('top-element-after', 'topElementAfter', meeting(model, preheat, asked, first));
    }
  }
  return found.sort((a, b) => a.finish - b.finish || a.bake - b.bake);
}

/** L* within which rim and base count as done together */
const near = 0.5;

/** s after the load at which the top element goes on so that rim and base are done together; 0 when even that is late. */
function meeting(model: EveningModel, preheat: PreheatRun, evening: Evening, plain: Bake): number {
  const wanted = evening.pizzas.shadeLightness + model.bake.rimLighter;
  const tooLight = (topElementAfter: number): number => {
    const oven = doorShut(model, preheat, withSteps(evening, { topElementAfter }));
    return bakeWatched(oven, longestBake).rimLightness - wanted;
  };
  let low = { at: 0, over: tooLight(0) };
  if (low.over >= 0) return 0;
  let high = { at: plain.outAt - plain.inAt, over: plain.rimLightness - wanted };
  // A straight line between both ends finds it in two or three; the later one that is dark enough is kept.
  for (let i = 0; i < 5 && low.over < -near && high.at - low.at > 1; i++) {
    const at = low.at + ((high.at - low.at) * (low.over + near / 2)) / (low.over - high.over);
    const over = tooLight(at);
    if (over > 0) high = { at, over };
    else low = { at, over };
  }
  return low.at;
}
