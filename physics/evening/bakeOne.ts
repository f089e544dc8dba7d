/** One pizza from door to door: the load, the bake until everything is done, and what would have been. */
import { BakeWatcher } from './bakeWatcher.ts';
import { Cook } from './cook.ts';
import type { LoadedOven } from './loadedOven.ts';
import { ovenHeat } from './preheat.ts';
import type { Bake, EnergyBalance, PartsDone } from './run.ts';
import type { TraceRecorder } from './trace.ts';

/** s the door stands open for a load and for an unload; common practice, no source */
export const doorSeconds = { load: 8, unload: 6 };
/** s after which a bake is given up */
export const longestBake = 40 * 60;
/** s under the top element after which a rim is given up */
const longestFinish = 10 * 60;
/** s, the shortest step in which a bake ends: ends are located within it */
const shortestLastStep = 0.1;
/** factor on the strain that is allowed in what is only looked at and not gone on from */
const onlyLooked = 4;
/** L* values whose times are reported whatever ended the bake */
const reported = [70, 60, 50] as const;

/** Holds the door open for so many seconds; the recorder, where there is one, takes its samples. */
export function openDoor(oven: LoadedOven, seconds: number, recorder: TraceRecorder | undefined): void {
  oven.run.doorOpen = true;
  oven.run.advance(oven.run.time + seconds, 1, () => recorder?.record(oven.run));
  oven.run.doorOpen = false;
}

/** Notes when the base reaches each of the reported L* values. */
class LightnessClock {
  readonly reached = new Map<number, number | undefined>(reported.map((value) => [value, undefined]));
  #last: number;

  constructor(watcher: BakeWatcher) {
    this.#last = watcher.baseLightness;
    for (const value of reported) if (this.#last <= value) this.reached.set(value, 0);
  }

  note(watcher: BakeWatcher, step: number): void {
    const lightness = watcher.baseLightness;
    for (const value of reported) {
      if (lightness > value || this.reached.get(value) !== undefined) continue;
      // Straight line inside the step: lightness falls smoothly.
      const part = (this.#last - value) / (this.#last - lightness);
      this.reached.set(value, watcher.seconds - (1 - part) * step);
    }
    this.#last = lightness;
  }

  get complete(): boolean {
    return this.reached.get(50) !== undefined;
  }
}

interface Ended {
  /** whether all was done within the limit */
  readonly over: boolean;
  readonly decidedBy: Bake['decidedBy'];
}

/** Bakes until all is done (or `limit` s have gone by) and tells what was waited for last. */
function bakeUntilDone(
  watcher: BakeWatcher,
  cook: Cook,
  limit: number,
  after: (step: number) => void,
): Ended {
  const take = (most: number): void => {
    const step = watcher.step(Math.min(cook.until, most));
    cook.act();
    after(step);
  };
  let decidedBy: Bake['decidedBy'] = 'base';
  let over = false;
  while (!over && watcher.seconds < limit) {
    const before = watcher.done();
    take(Math.max(watcher.untilDone, shortestLastStep));
    const { base, crumb, top } = watcher.done();
    over = base && crumb && top;
    if (over) decidedBy = !before.base ? 'base' : !before.crumb ? 'crumb' : 'top';
  }
  const finished = watcher.seconds + cook.topElementAtEnd;
  if (over && cook.topElementAtEnd > 0) cook.topElementOn();
  while (over && finished - watcher.seconds > 1e-6) take(finished - watcher.seconds);
  return { over, decidedBy };
}

/** s after the load at which the pizza is turned, when that is asked: half of what it takes without. */
function halfTime(oven: LoadedOven): number | undefined {
  if (oven.evening.pizzas.steps?.turnAtHalfTime !== true) return undefined;
  const before = oven.run.save();
  oven.load();
  const watcher = new BakeWatcher(oven);
  const cook = new Cook(watcher, undefined);
  bakeUntilDone(watcher, cook, longestBake, () => undefined);
  cook.leave();
  const half = watcher.seconds / 2;
  oven.restoreBare(before);
  return half;
}

/** Only how long the pizza would lie there, s, at most `limit`: for searches. The pizza is left where it lies. */
export function bakeSeconds(oven: LoadedOven, limit: number): number {
  return bakeWatched(oven, limit).seconds;
}

/** The same, with what it was like. */
export function bakeWatched(oven: LoadedOven, limit: number): BakeWatcher {
  const half = halfTime(oven);
  oven.load();
  const watcher = new BakeWatcher(oven);
  const cook = new Cook(watcher, half);
  bakeUntilDone(watcher, cook, limit, () => undefined);
  cook.leave();
  return watcher;
}

/** A bake of which only the end matters, and what its rim would still lack. */
export interface TriedBake {
  /** s */
  readonly seconds: number;
  readonly finish: number;
  readonly baseLightness: number;
  readonly rimLightness: number;
  /** kg */
  readonly waterLeftOnTop: number;
}

/** Bakes the next pizza to its end; it is left where it lies. */
export function tryBake(oven: LoadedOven): TriedBake {
  const watcher = bakeWatched(oven, longestBake);
  const { seconds, baseLightness, rimLightness, waterOnTop } = watcher;
  const finish = finishSeconds(oven, watcher);
  return { seconds, finish, baseLightness, rimLightness, waterLeftOnTop: waterOnTop };
}

/** J in the oven, the plate and the pizza on it */
function wholeHeat({ run, centre, rim }: LoadedOven): number {
  return ovenHeat(run) + centre.heatContent + rim.heatContent;
}

/** When each part was first done, s after the load. */
function notedParts(watcher: BakeWatcher): { note: () => void; read: () => PartsDone } {
  const at: { -readonly [K in keyof PartsDone]: PartsDone[K] } = {
    base: undefined,
    rim: undefined,
    crumb: undefined,
    cheese: undefined,
  };
  const note = (): void => {
    const { base, crumb, top } = watcher.done();
    if (base) at.base ??= watcher.seconds;
    if (crumb) at.crumb ??= watcher.seconds;
    if (top) at.cheese ??= watcher.seconds;
    if (watcher.rimIsDone()) at.rim ??= watcher.seconds;
  };
  return { note, read: () => ({ ...at }) };
}

/** Bakes one pizza until it is done and takes it out; the oven goes on from there. */
export function bakeOne(oven: LoadedOven, pizza: number, recorder: TraceRecorder): Bake {
  const half = halfTime(oven);
  oven.load();
  const { run } = oven;
  const { network } = run;
  const watcher = new BakeWatcher(oven);
  const cook = new Cook(watcher, half);
  const clock = new LightnessClock(watcher);
  const parts = notedParts(watcher);
  const heatBefore = wholeHeat(oven);
  const ledger = { ...network.ledger };
  const waterBefore = oven.centre.waterMass + oven.rim.waterMass;
  watcher.record(true);
  const { decidedBy } = bakeUntilDone(watcher, cook, longestBake, (step) => {
    clock.note(watcher, step);
    parts.note();
    watcher.record();
    recorder.record(run);
  });
  watcher.record(true);
  cook.leave();
  const balance: EnergyBalance = {
    supplied: network.ledger.supplied - ledger.supplied,
    stored: wholeHeat(oven) - heatBefore,
    lostToRoom: network.ledger.lostToRoom - ledger.lostToRoom,
    lostByVentAndDoor: network.ledger.lostByVentAndDoor - ledger.lostByVentAndDoor,
    lostBySteam: network.ledger.lostBySteam - ledger.lostBySteam,
  };
  const evaporated = oven.centre.evaporated + oven.rim.evaporated;
  const bake = {
    pizza,
    inAt: watcher.loadedAt,
    outAt: run.time,
    plateTopAtLoad: oven.plateTopAtLoad,
    plateTopAtUnload: oven.plateTop,
    baseLightness: watcher.baseLightness,
    rimLightness: watcher.rimLightness,
    crumb: watcher.crumb,
    cheese: watcher.cheese,
    waterLeftOnTop: watcher.waterOnTop,
    waterLost: evaporated,
    decidedBy,
    partsDone: parts.read(),
    steps: cook.done,
    trace: watcher.trace,
    balance,
    water: {
      before: waterBefore,
      after: oven.centre.waterMass + oven.rim.waterMass,
      evaporated,
    },
  };
  // What would have been: the pizza left where it lies, and the top element at full. The oven then goes on from `out`.
  const out = oven.save();
  const seen = watcher.save();
  network.allowedStrain *= onlyLooked;
  while (!clock.complete && watcher.seconds < longestBake) clock.note(watcher, watcher.step(Infinity, true));
  oven.restore(out);
  watcher.restore(seen);
  const finish = finishSeconds(oven, watcher);
  oven.restore(out);
  oven.unload();
  return { ...bake, secondsToLightness: clock.reached, finish };
}

/** s under the top element at full until the rim has its shade. */
function finishSeconds(oven: LoadedOven, watcher: BakeWatcher): number {
  if (watcher.rimIsDone()) return 0;
  const start = oven.run.time;
  oven.run.topElementForced = true;
  while (!watcher.rimIsDone() && oven.run.time - start < longestFinish) watcher.step(watcher.untilRim, true);
  oven.run.topElementForced = false;
  return oven.run.time - start;
}
