/** What a thermometer would show while an oven with other numbers heats up, by the same simulation as the plan's. */
import { attempt } from '../evening/attempt.ts';
import type { Evening } from '../evening/evening.ts';
import type { PlaceId } from '../evening/ids.ts';
import { prepareModel, type EveningModel } from '../evening/model.ts';
import { runPreheat } from '../evening/preheat.ts';
import { sampleAt } from '../numerics/samples.ts';
import type { OvenTrace } from '../evening/run.ts';
import { eveningAt } from './ovenNumbers.ts';

/** Where a thermometer can be that readings of a preheat are compared with. */
export const preheatPlaces = ['ovenAir', 'plateTop', 'plateCore'] as const;
export type PreheatPlace = (typeof preheatPlaces)[number];

/** The same with a pizza in the oven: its plate can be read under it or beside it. */
export const seenPlaces = [...preheatPlaces, 'plateAround'] as const;
export type SeenPlace = (typeof seenPlaces)[number];

/** The places of readings, and of the simulation beside them, as a sentence names them. */
export const placeWords: Readonly<Record<SeenPlace | PlaceId, string>> = {
  ovenAir: 'air',
  plateTop: 'plate top',
  plateCore: 'plate core',
  plateAround: 'plate beside the pizza',
  dough: 'dough',
};

export interface Forecast {
  /** s until the plate is ready */
  readonly ready: number;
  /** s until the oven signals */
  readonly signal: number;
  /** K where the plate settles */
  readonly settled: number;
  /** K, mean over a thermostat cycle around the moment (s), with nothing ever laid down */
  at(place: SeenPlace, seconds: number): number;
  /** K, standard deviation of an instant about that mean; 0 before the first switching off */
  ripple(place: SeenPlace, seconds: number): number;
}

/** Time integral of a trace's channel between two moments. */
class Means {
  readonly #seconds: Float64Array;
  readonly #values: Float64Array;
  readonly #sums: Float64Array;

  constructor(seconds: Float64Array, values: Float64Array) {
    this.#seconds = seconds;
    this.#values = values;
    this.#sums = new Float64Array(seconds.length);
    for (let i = 1; i < seconds.length; i++)
      this.#sums[i] =
        this.#sums[i - 1]! + ((values[i]! + values[i - 1]!) / 2) * (seconds[i]! - seconds[i - 1]!);
  }

  /** The mean over a stretch; at its middle when it has no length. */
  over(from: number, to: number): number {
    if (to - from < 1) return sampleAt(this.#seconds, this.#values, (from + to) / 2);
    const sum = (t: number): number => sampleAt(this.#seconds, this.#sums, t);
    return (sum(to) - sum(from)) / (to - from);
  }
}

type At = (place: SeenPlace, seconds: number) => number;

function byPlace(make: (place: SeenPlace) => (seconds: number) => number): At {
  const made = new Map(seenPlaces.map((place) => [place, make(place)]));
  return (place, seconds) => made.get(place)!(seconds);
}

interface Summary extends Pick<Forecast, 'ready' | 'signal' | 'settled'> {
  /** s from one switching on to the next; 0 without any */
  readonly cycle: number;
}

/** Means over a cycle, from the oven's signal on. */
function cycleMeans(trace: OvenTrace, { signal, cycle }: Summary): At {
  const end = trace.seconds.at(-1)!;
  const half = (t: number): number => Math.max(0, Math.min(cycle / 2, t - signal));
  return byPlace((place) => {
    const means = new Means(trace.seconds, trace[place]);
    return (t) => {
      const middle = Math.min(t, end - cycle / 2);
      return means.over(middle - half(middle), middle + half(middle));
    };
  });
}

/** Root mean square of a channel about its cycle means, over a cycle each way: what the phase may make of a reading. */
function ripples(trace: OvenTrace, mean: At, { signal, cycle }: Summary): At {
  const { seconds } = trace;
  return (place, t) => {
    if (t < signal || cycle === 0) return 0;
    const from = Math.max(signal, Math.min(t, seconds.at(-1)! - cycle) - cycle);
    let [sum, count] = [0, 0];
    for (let i = 0; i < seconds.length && seconds[i]! <= from + 2 * cycle; i++) {
      if (seconds[i]! < from) continue;
      sum += (trace[place][i]! - mean(place, seconds[i]!)) ** 2;
      count += 1;
    }
    return count === 0 ? 0 : Math.sqrt(sum / count);
  };
}

/** s; ready within 0.2 min of the plan's own step, a tenth of what readings leave open */
const coarse = { preheatStep: 10, bakeStep: 4, recoveryStep: 8, allowedStrain: 4 } as const;

/**
 * Forecasts for one evening's oven and plate with other numbers (`ovenNumbers`), sharing what does not change. Those
 * asked for before are kept.
 */
export class Forecaster {
  readonly evening: Evening;
  /** simulated preheats so far */
  runs = 0;
  readonly #model: EveningModel;
  readonly #until: number;
  readonly #kept = new Map<string, Forecast | undefined>();

  /** @param until s that the curves must reach */
  constructor(evening: Evening, until: number) {
    this.evening = evening;
    this.#until = Math.max(3600, until);
    this.#model = prepareModel(evening);
  }

  /** @returns undefined for an oven that never gets its plate ready, or beyond what the properties are known for */
  at(z: ArrayLike<number>): Forecast | undefined {
    const key = Array.from(z).join(' ');
    if (!this.#kept.has(key)) this.#kept.set(key, this.#simulate(z));
    return this.#kept.get(key);
  }

  /** The plan's model with the numbers that `z` says, in steps as fine as a fit needs. */
  modelAt(z: ArrayLike<number>): EveningModel {
    const { emptyView, plateView } = this.#model.context;
    return prepareModel(eveningAt(this.evening, z), {
      views: { emptyView, plateView },
      resolution: coarse,
    });
  }

  #simulate(z: ArrayLike<number>): Forecast | undefined {
    this.runs += 1;
    return attempt(() => {
      const { preheat, run } = runPreheat(this.modelAt(z), this.#until);
      const { plateReady: ready, airReady: signal, settledPlateTop: settled, trace } = preheat;
      if (!Number.isFinite(ready) || !Number.isFinite(signal)) return undefined;
      const on = run.switchedOn;
      const cycle = on.length < 2 ? 0 : (on.at(-1)! - on[0]!) / (on.length - 1);
      const summary: Summary = { ready, signal, settled, cycle };
      const at = cycleMeans(trace, summary);
      return { ready, signal, settled, at, ripple: ripples(trace, at, summary) };
    });
  }
}
