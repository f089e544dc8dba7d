/** What it costs to switch the oven on later than planned and to load the first pizza at its planned time all the same. */
import { zeroCelsius } from '../materials/constants.ts';
import type { Evening } from './evening.ts';
import type { LateStart } from './engine.ts';
import type { EveningRun } from './run.ts';
import { bakeAsFirst } from './series.ts';
import { preparedFor } from './simulate.ts';

/** @param lateMinutes min; those as long as the preheat itself are left out */
export function lateStart(
  evening: Evening,
  run: EveningRun,
  lateMinutes: readonly number[],
): readonly LateStart[] {
  const { model, preheat } = preparedFor(evening, run);
  const planned = evening.pizzas.loadAt ?? run.preheat.plateReady;
  return lateMinutes
    .filter((late) => late * 60 < planned)
    .map((late) => {
      const { seconds, plateTop } = bakeAsFirst(model, preheat, 1, planned - late * 60);
      return { lateMinutes: late, plateTopC: plateTop - zeroCelsius, bakeMinutes: seconds / 60 };
    });
}
