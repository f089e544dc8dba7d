/** Curves of an answer: a trace on an even grid of minutes, in degrees Celsius. */
import { zeroCelsius } from '../materials/constants.ts';
import type { Curves } from './answer.ts';
import type { OvenTrace } from './run.ts';

/** Points a minute: a load drops the plate's top within a quarter of a minute. */
const perMinute = 4;

/** Hundredths of a kelvin are finer than any oven is known. */
const rounded = (celsius: number): number => Math.round(celsius * 100) / 100;

/**
 * A trace read off every quarter of a minute by straight lines between its samples, from its first sample (switching
 * on, minute 0) to the last grid point that it reaches.
 */
export function curvesOf(trace: OvenTrace): Curves {
  const { seconds } = trace;
  const last = seconds[seconds.length - 1] ?? 0;
  const minutes: number[] = [];
  const ovenAirC: number[] = [];
  const plateTopC: number[] = [];
  const plateCoreC: number[] = [];
  let i = 0;
  for (let n = 0; (n * 60) / perMinute <= last; n++) {
    const t = (n * 60) / perMinute;
    while (i < seconds.length - 2 && seconds[i + 1]! <= t) i++;
    const [before, after] = [seconds[i]!, seconds[i + 1] ?? seconds[i]!];
    const share = after > before ? (t - before) / (after - before) : 0;
    const read = (values: Float64Array): number => {
      const value = values[i]! + share * ((values[i + 1] ?? values[i]!) - values[i]!);
      return rounded(value - zeroCelsius);
    };
    minutes.push(n / perMinute);
    ovenAirC.push(read(trace.ovenAir));
    plateTopC.push(read(trace.plateTop));
    plateCoreC.push(read(trace.plateCore));
  }
  return { minutes, ovenAirC, plateTopC, plateCoreC };
}
