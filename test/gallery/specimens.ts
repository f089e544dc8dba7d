/** What the components of the gallery are shown with: a plain evening, an extreme one, and one with long names. */
import { saturday } from '../../physics/evening/demos.ts';
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { studyOf, type EveningStudy } from '../../renderer/state/study.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Forecast } from '../../renderer/state/forecastStore.ts';

/** A fixed day, so that two looks at the gallery show the same. */
const now = Date.UTC(2026, 0, 30, 12);
const clock = { now, offsetMinutes: 60 };

const at = (time: string) => ({ kind: 'eatAt', time: `2026-01-31T${time}:00+01:00` }) as const;
const plain: PlanFile = { ...saturday, anchor: at('19:30') };
const extreme: PlanFile = {
  ...plain,
  title: 'Twenty pizzas on a block of iron for everybody who ever lived in this street and their dogs',
  oven: { preset: 'small', setpoint: '200 degC', highestSetting: '200 degC' },
  plate: { material: 'cast-iron', width: '34 cm', depth: '30 cm', thickness: '30 mm', rackHeight: 0.3 },
  pizzas: { ...plain.pizzas, count: 20, diameter: '28 cm' },
};
export const plans = { plain, extreme } as const;

export function forecastOf(file: PlanFile, band: boolean): Forecast {
  const planned = planFromFile(file, { ...clock, band });
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  return { file, evening: planned.evening, answer: planned.answer, run: planned.run };
}

export function eveningStudy(file: PlanFile): EveningStudy {
  const study = studyOf({ kind: 'evening', file }, clock);
  if (!study.ok || study.study.kind !== 'evening') throw new Error(JSON.stringify(study));
  return study.study;
}
