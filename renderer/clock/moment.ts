/** The state of the kitchen at one moment of the evening, read off the run. */
import type { Forecast } from '../state/forecastStore.ts';
import { epochOf } from '../words/clock.ts';
import { indexAt, sampleAt } from '../../physics/numerics/samples.ts';
import type { Bake, LayerSample } from '../../physics/evening/run.ts';

export interface BakeMoment {
  readonly pizza: number;
  /** s in the oven so far */
  readonly elapsed: number;
  /** K */
  readonly base: number;
  readonly crumb: number;
  readonly cheeseTop: number;
  readonly rimTop: number;
  /** L* */
  readonly baseLightness: number;
  readonly rimLightness: number;
  readonly layers: readonly LayerSample[];
}
export interface Moment {
  /** K */
  readonly air: number;
  readonly plateTop: number;
  readonly plateCore: number;
  readonly floor: number;
  readonly ceiling: number;
  readonly sides: number;
  /** share of full power; undefined while the oven is off */
  readonly bottomElement: number | undefined;
  readonly topElement: number | undefined;
  readonly phase: 'before' | 'running' | 'after';
  readonly bake: BakeMoment | undefined;
}

function bakeAt(bake: Bake, second: number): BakeMoment {
  const { trace } = bake;
  const read = (values: Float64Array): number => sampleAt(trace.seconds, values, second);
  return {
    pizza: bake.pizza,
    elapsed: second - bake.inAt,
    base: read(trace.base),
    crumb: read(trace.crumb),
    cheeseTop: read(trace.cheeseTop),
    rimTop: read(trace.rimTop),
    baseLightness: read(trace.baseLightness),
    rimLightness: read(trace.rimLightness),
    layers: trace.layers[Math.max(0, indexAt(trace.seconds, second))] ?? [],
  };
}

export function momentAt({ answer, run, evening }: Forecast, at: number): Moment {
  const second = (at - epochOf(answer.ovenOnAt)) / 1000;
  const { trace } = run;
  const end = trace.seconds.at(-1) ?? 0;
  if (second < 0) {
    const cold = evening.oven.startTemperature;
    return {
      air: cold,
      plateTop: cold,
      plateCore: cold,
      floor: cold,
      ceiling: cold,
      sides: cold,
      bottomElement: undefined,
      topElement: undefined,
      phase: 'before',
      bake: undefined,
    };
  }
  const read = (values: Float64Array): number => sampleAt(trace.seconds, values, second);
  // Elements switch: between two samples the earlier one holds.
  const power = (values: Float64Array): number => values[Math.max(0, indexAt(trace.seconds, second))] ?? 0;
  const running = second <= end;
  const bake = run.bakes.find(({ inAt, outAt }) => inAt <= second && second <= outAt);
  return {
    air: read(trace.ovenAir),
    plateTop: read(trace.plateTop),
    plateCore: read(trace.plateCore),
    floor: read(trace.floor),
    ceiling: read(trace.ceiling),
    sides: read(trace.sides),
    bottomElement: running ? power(trace.bottomElement) : undefined,
    topElement: running ? power(trace.topElement) : undefined,
    phase: running ? 'running' : 'after',
    bake: bake === undefined ? undefined : bakeAt(bake, second),
  };
}
