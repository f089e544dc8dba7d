import { describe, expect, it } from 'vitest';
import { wording } from '../../../physics/evening/problem.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';

/** Every number anywhere in an answer; a figure that is not there is null by intent. */
function numbersIn(value: unknown, path = ''): readonly (readonly [string, number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}.${key}`));
}

const blocks = {
  'a plate like paper': { plate: { thickness: '0.5 mm' } },
  'a plate of 60 mm': { plate: { thickness: '60 mm' } },
  'a stone of 60 mm': { plate: { material: 'soapstone', thickness: '60 mm' } },
  'a setting of 60 degC': { oven: { setpoint: '60 degC' } },
  'a setting of 500 degC': { oven: { setpoint: '500 degC', highestSetting: '500 degC' } },
  '500 degC with power for it': {
    oven: {
      preset: 'strong',
      setpoint: '500 degC',
      highestSetting: '500 degC',
      power: { bottom: '4 kW', top: '5 kW' },
    },
  },
  'one pizza': { pizzas: { count: 1 } },
  'twenty pizzas': { pizzas: { count: 20 } },
  'at the sea': { kitchen: { altitude: '0 m' } },
  'at 4000 m': { kitchen: { altitude: '4000 m' } },
  'a freezing kitchen': { kitchen: { roomTemperature: '-10 degC' } },
  'a hot kitchen': { kitchen: { roomTemperature: '45 degC' } },
  'an oven hot from before': { oven: { startTemperature: '240 degC' } },
  'the lowest rack': { plate: { rackHeight: 0.03 } },
  'the highest rack': { plate: { rackHeight: 0.85 } },
  'a dough of crumbs': { dough: { liquid: [{ kind: 'water', percent: 30 }] } },
  'a dough that runs': { dough: { liquid: [{ kind: 'water', percent: 120 }] } },
  'no yeast to speak of': { dough: { yeast: { kind: 'fresh', percent: 0.001 } } },
  'nothing on it': { toppings: { sauce: '0 g', cheese: [] } },
  'half a kilogram of sauce': { toppings: { sauce: '500 g' } },
} as const;

describe('extreme plans give finite figures, or a refusal that names a field', () => {
  it.each(Object.entries(blocks))('%s', (_name, change) => {
    const planned = planFromFile(
      { format: 'hearthclock/evening', version: 1, ...change },
      { now: Date.parse('2026-01-31T12:00:00Z'), advice: false, band: false },
    );
    if (!planned.ok) {
      for (const problem of planned.problems) {
        expect(wording(problem)).toMatch(
          /^(kitchen|oven|plate|pizzas|dough|toppings)\.\S+: found .+; allowed .+$/u,
        );
        expect(wording(problem)).not.toMatch(/NaN|Infinity|undefined/u);
      }
      return;
    }
    const bad = numbersIn(planned.answer).filter(([, value]) => !Number.isFinite(value));
    expect(bad).toEqual([]);
    expect(planned.answer.preheat.minutes).toBeGreaterThanOrEqual(0);
    for (const bake of planned.answer.bakes) expect(bake.minutes).toBeGreaterThan(0);
  });
});
