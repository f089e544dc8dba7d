/**
 * An evening rehearsed: the plan's kitchen with an oven that is not the planned one, for a clock that runs faster. Invented
 * figures, the same every time for the same seed.
 */
import type { Evening } from '../evening/evening.ts';
import { prepareModel } from '../evening/model.ts';
import { runPreheat } from '../evening/preheat.ts';
import { sampleAt } from '../numerics/samples.ts';
import { SeededRandom } from '../numerics/random.ts';

/** Real oven against planned: a fifth weaker, its dial 8 K low; a thermometer that is off by 2 K. */
export const rehearsalOven = { power: 0.8, thermostatOffset: -8, noise: 2 } as const;

/** How much faster the clock of a rehearsal runs. */
export const rehearsalSpeed = 60;

export interface Rehearsal {
  /** s until its plate is ready: what the forecast has to find out */
  readonly ready: number;
  /** s from switching on, and K of plate top and air then, as the thermometer shows them */
  readonly seconds: readonly number[];
  readonly plateTop: readonly number[];
  readonly ovenAir: readonly number[];
}

/** An evening with an oven unlike its plan, played through. @param seed of the noise of its readings */
export function rehearse(evening: Evening, seed = 1): Rehearsal {
  const { oven } = evening;
  const { power, thermostatOffset, noise } = rehearsalOven;
  const { preheat } = runPreheat(
    prepareModel({
      ...evening,
      oven: {
        ...oven,
        power: { bottom: power * oven.power.bottom, top: power * oven.power.top },
        thermostatOffset: oven.thermostatOffset + thermostatOffset,
      },
    }),
  );
  const { trace, plateReady } = preheat;
  const random = new SeededRandom(seed);
  const seconds = Array.from({ length: Math.floor(trace.seconds.at(-1)! / 30) }, (_, i) => 30 * (i + 1));
  const shown = (values: Float64Array): readonly number[] =>
    seconds.map((t) => sampleAt(trace.seconds, values, t) + noise * random.normal());
  return { ready: plateReady, seconds, plateTop: shown(trace.plateTop), ovenAir: shown(trace.ovenAir) };
}

/** K that the thermometer shows so many s after switching on. */
export function rehearsedReading(
  rehearsal: Rehearsal,
  place: 'plateTop' | 'ovenAir',
  seconds: number,
): number {
  const { seconds: times } = rehearsal;
  const i = Math.min(Math.max(Math.round(seconds / 30) - 1, 0), times.length - 1);
  return rehearsal[place][i]!;
}
