/** One pizza from door to door: the load, the bake until everything is done, and what would have been. */
import { BakeWatcher } from './bakeWatcher.ts';
import type { LoadedOven } from './loadedOven.ts';
import { ovenHeat } from './preheat.ts';
import type { Bake, EnergyBalance } from './run.ts';
import type { TraceRecorder } from './trace.ts';

/** s the door stands open for a load and for an unload; common practice, no source */
export const doorSeconds = { load: 8, unload: 6 };
/** s after which a bake is given up */
export const longestBake = 40 * 60;
/** s under the top element after which a rim is given up */
const longestFinish = 10 * 60;
/** L* values whose times are reported whatever ended the bake */
const reported = [70, 60, 50] as const;

export function openDoor(oven: LoadedOven, seconds: number, recorder: TraceRecorder | undefined): void {
  oven.run.doorOpen = true;
  oven.run.advance(oven.run.time + seconds, 1, () => recorder?.record(oven.run));
  oven.run.doorOpen = false;
}

/** Only how long the pizza would lie there, s, at most `limit`: for searches. */
export function bakeSeconds(oven: LoadedOven, limit: number): number {
  oven.load();
  const watcher = new BakeWatcher(oven);
  while (watcher.seconds < limit) {
    watcher.step();
    const { base, crumb, top } = watcher.done();
    if (base && crumb && top) break;
  }
  return watcher.seconds;
}

/** Notes when the base reaches each of the reported L* values. */
class LightnessClock {
  readonly reached = new Map<number, number | undefined>(reported.map((value) => [value, undefined]));
  #last = 85;

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

/** Bakes until all is done (or the bake is given up) and tells what was waited for last. */
function bakeUntilDone(
  watcher: BakeWatcher,
  clock: LightnessClock,
  recorder: TraceRecorder,
): Bake['decidedBy'] {
  const { run } = watcher.oven;
  watcher.record(true);
  let decidedBy: Bake['decidedBy'] = 'base';
  for (let over = false; !over && watcher.seconds < longestBake;) {
    const before = watcher.done();
    clock.note(watcher, watcher.step());
    watcher.record();
    recorder.record(run);
    const { base, crumb, top } = watcher.done();
    over = base && crumb && top;
    if (over) decidedBy = !before.base ? 'base' : !before.crumb ? 'crumb' : 'top';
  }
  watcher.record(true);
  return decidedBy;
}

/** J in the oven, the plate and the pizza on it */
function wholeHeat({ run, centre, rim }: LoadedOven): number {
  return ovenHeat(run) + centre.heatContent + rim.heatContent;
}

/** Bakes one pizza until it is done and takes it out; the oven goes on from there. */
export function bakeOne(oven: LoadedOven, pizza: number, recorder: TraceRecorder): Bake {
  const plateTopAtLoad = oven.plateTop;
  oven.load();
  const { network } = oven.run;
  const watcher = new BakeWatcher(oven);
  const clock = new LightnessClock();
  const heatBefore = wholeHeat(oven);
  const ledger = { ...network.ledger };
  const waterBefore = oven.centre.waterMass + oven.rim.waterMass;
  const decidedBy = bakeUntilDone(watcher, clock, recorder);
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
    outAt: oven.run.time,
    plateTopAtLoad,
    plateTopAtUnload: oven.plateTop,
    baseLightness: watcher.baseLightness,
    rimLightness: watcher.rimLightness,
    crumb: watcher.crumb,
    cheese: watcher.cheese,
    waterLeftOnTop: watcher.waterOnTop,
    waterLost: evaporated,
    decidedBy,
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
  while (!clock.complete && watcher.seconds < longestBake) clock.note(watcher, watcher.step(true));
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
  while (!watcher.rimIsDone() && oven.run.time - start < longestFinish) watcher.step(true);
  oven.run.topElementForced = false;
  return oven.run.time - start;
}
