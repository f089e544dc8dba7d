/** What a thermometer would show during the preheat of an oven, with the same simulation as the plan's. */
import type { Evening } from '../evening/evening.ts';
import { prepareModel, type EveningModel } from '../evening/model.ts';
import { runPreheat } from '../evening/preheat.ts';
import { sampleAt } from '../numerics/samples.ts';
import { OutOfRange } from '../evening/problem.ts';
import type { OvenTrace } from '../evening/run.ts';
import { eveningAt } from './ovenNumbers.ts';

/** Where a thermometer can be that readings of a preheat are compared with. */
export const preheatPlaces = ['ovenAir', 'plateTop', 'plateCore'] as const;
export type PreheatPlace = (typeof preheatPlaces)[number];

export interface Forecast {
  /** s until the plate is ready */
  readonly ready: number;
  /** s until the oven signals */
  readonly signal: number;
  /** K where the plate settles */
  readonly settled: number;
  /** K, mean over a thermostat cycle around the moment (s) */
  at(place: PreheatPlace, seconds: number): number;
  /** K, standard deviation of an instant about that mean; 0 before the first switching off */
  ripple(place: PreheatPlace, seconds: number): number;
}

/** Time integral of a trace's channel, and of its square, between two moments. */
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

function forecastOf(
  trace: OvenTrace,
  switchedOn: readonly number[],
  summary: Pick<Forecast, 'ready' | 'signal' | 'settled'>,
): Forecast {
  const end = trace.seconds.at(-1)!;
  const cycle = switchedOn.length < 2 ? 0 : (switchedOn.at(-1)! - switchedOn[0]!) / (switchedOn.length - 1);
  const half = (t: number): number => Math.max(0, Math.min(cycle / 2, t - summary.signal));
  const channels = new Map(
    preheatPlaces.map((place) => {
      const means = new Means(trace.seconds, trace[place]);
      const at = (t: number): number => {
        const middle = Math.min(t, end - cycle / 2);
        return means.over(middle - half(middle), middle + half(middle));
      };
      return [place, { at, ripple: ripples(trace, place, at, summary.signal, cycle) }];
    }),
  );
  return {
    ...summary,
    at: (place, seconds) => channels.get(place)!.at(seconds),
    ripple: (place, seconds) => channels.get(place)!.ripple(seconds),
  };
}

/** Root mean square of a channel about its cycle means, over a cycle each way: what the phase may make of a reading. */
function ripples(
  trace: OvenTrace,
  place: PreheatPlace,
  mean: (t: number) => number,
  signal: number,
  cycle: number,
): (t: number) => number {
  const { seconds } = trace;
  return (t) => {
    if (t < signal || cycle === 0) return 0;
    const from = Math.max(signal, Math.min(t, seconds.at(-1)! - cycle) - cycle);
    let [sum, count] = [0, 0];
    for (let i = 0; i < seconds.length && seconds[i]! <= from + 2 * cycle; i++) {
      if (seconds[i]! < from) continue;
      sum += (trace[place][i]! - mean(seconds[i]!)) ** 2;
      count += 1;
    }
    return count === 0 ? 0 : Math.sqrt(sum / count);
  };
}

/** s; ready within 0.2 min of the plan's own step, a tenth of what readings leave open */
const coarse = { preheatStep: 10 } as const;

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

  #simulate(z: ArrayLike<number>): Forecast | undefined {
    const { emptyView, plateView } = this.#model.context;
    this.runs += 1;
    try {
      const model = prepareModel(eveningAt(this.evening, z), {
        views: { emptyView, plateView },
        resolution: coarse,
      });
      const { preheat, run } = runPreheat(model, this.#until);
      const { plateReady: ready, airReady: signal, settledPlateTop: settled, trace } = preheat;
      if (!Number.isFinite(ready) || !Number.isFinite(signal)) return undefined;
      return forecastOf(trace, run.switchedOn, { ready, signal, settled });
    } catch (error) {
      if (error instanceof OutOfRange) return undefined;
      throw error;
    }
  }
}
