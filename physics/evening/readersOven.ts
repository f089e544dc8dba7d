/**
 * What a recipe is like in ovens that stop earlier or go further: the same kitchen, plate and pizza, the oven of the
 * evening set to each highest setting in turn.
 */
import type { ModelOptions } from './model.ts';
import { fromCelsius, fromFahrenheit, type UnitSystem } from '../quantities/index.ts';
import { attempt } from './attempt.ts';
import { longestBake } from './bakeOne.ts';
import type { Evening } from './evening.ts';
import { preparedFor, simulateEvening } from './simulate.ts';

export interface ReadersRow {
  readonly settingK: number;
  /** whether an oven of this kind gets there, and this plate in it; everything else is null when not */
  readonly reached: boolean;
  /** from switching on until the plate is ready */
  readonly preheatMinutes: number | null;
  readonly plateTopK: number | null;
  /** of the first pizza; null when it is not done within 40 min, and then `finishMinutes` is null too */
  readonly firstBakeMinutes: number | null;
  /** under the top element afterwards, until the rim has its shade; 0 when it has */
  readonly finishMinutes: number | null;
}

const unreached = { reached: false, preheatMinutes: null, plateTopK: null, firstBakeMinutes: null } as const;

/**
 * The first pizza on a plate that is ready, at each setting: a time of loading that the evening fixes for the cook's own
 * oven does not hold for another.
 *
 * @param settings K
 */
export function readersOven(evening: Evening, settings: readonly number[]): readonly ReadersRow[] {
  // Cavity and plate stay as they are, and so does what they see of each other.
  let views: ModelOptions['views'];
  return settings.map((settingK) => {
    const asked: Evening = {
      ...evening,
      oven: { ...evening.oven, setpoint: settingK, highestSetting: settingK },
      pizzas: { ...evening.pizzas, count: 1, loadAt: undefined },
    };
    const run = attempt(() => simulateEvening(asked, views === undefined ? {} : { views }));
    if (run === undefined) return { settingK, ...unreached, finishMinutes: null };
    const { emptyView, plateView } = preparedFor(asked, run).model.context;
    views = { emptyView, plateView };
    const first = run.bakes[0]!;
    const seconds = first.outAt - first.inAt;
    const done = seconds < longestBake;
    return {
      settingK,
      reached: true,
      preheatMinutes: run.preheat.plateReady / 60,
      plateTopK: run.preheat.plateTop,
      firstBakeMinutes: done ? seconds / 60 : null,
      finishMinutes: done ? first.finish / 60 : null,
    };
  });
}

/** Highest settings that are printed on ovens: common practice, no source. degC and degF. */
const usual = { metric: [220, 230, 250, 275, 300], us: [450, 475, 500, 525, 550] } as const;

/** Settings worth a row, K, rising: the usual ones, and the evening's own where it is none of them. */
export function readersSettings({ oven }: Evening, units: UnitSystem): readonly number[] {
  const kelvin = units === 'us' ? fromFahrenheit : fromCelsius;
  // Within half a step of the dial it is the same setting.
  const others = usual[units].map(kelvin).filter((setting) => Math.abs(setting - oven.setpoint) > 2.5);
  return [...others, oven.setpoint].sort((a, b) => a - b);
}
