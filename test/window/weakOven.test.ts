/** Help for a weak oven: what is tried, that all of it can be planned, and that the best comes first. */
import { describe, expect, it } from 'vitest';
import { firstPizzaOf, helpsFor, inWeakOven, ranked } from '../../renderer/adjust/weakOven.ts';
import { measures, type Compared } from '../../physics/evening/comparison.ts';
import { saturday } from '../../physics/evening/demos.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import { studyOf } from '../../renderer/state/study.ts';

const clock = { now: 0, offsetMinutes: 60 };

function compared(file: object): Compared {
  const study = studyOf({ kind: 'evening', file: file as typeof saturday }, clock);
  if (!study.ok || study.study.kind !== 'evening') throw new Error(JSON.stringify(study));
  return study.study.compared;
}

describe('help for a weak oven', () => {
  const weak = inWeakOven(saturday, 493.15);
  const read = readPlanObject(weak, clock);
  if (!read.ok) throw new Error('demo');
  const now = compared(firstPizzaOf(weak));

  it('is asked of the same plan at the lower setting, with one pizza', () => {
    expect(read.evening.oven.setpoint).toBeCloseTo(493.15, 6);
    expect(read.evening.oven.highestSetting).toBeCloseTo(493.15, 6);
    // 30 K less: the base browns later (Zanoni, Peri and Bruno 1995: the rate grows with temperature).
    expect(measures.first_bake_min(now)).toBeGreaterThan(
      measures.first_bake_min(compared(firstPizzaOf(saturday))) + 1,
    );
  });

  it.each(['metric', 'us'] as const)(
    'names rack, plate, top element, topping and time, each a plan that can be read (%s)',
    (units) => {
      const helps = helpsFor(weak, read.evening, now, units);
      for (const id of [
        'rack 1',
        'rack -1',
        'thicker',
        'thinner',
        'top-at-end',
        'top-before',
        'soak',
        'less-topping',
        'thin',
      ])
        expect(helps.map((help) => help.id)).toContain(id);
      for (const { what, file } of helps)
        expect(readPlanObject(file, clock), what).toMatchObject({ ok: true });
    },
  );

  it('is ordered by what it brings; a thicker plate bakes faster, a thinner one slower', () => {
    const helps = helpsFor(weak, read.evening, now, 'metric').filter(({ id }) =>
      ['thicker', 'thinner'].includes(id),
    );
    const tried = ranked(
      helps,
      helps.map(({ file }) => compared(firstPizzaOf(file))),
      now,
    );
    expect(tried.map(({ help }) => help.id)).toEqual(['thicker', 'thinner']);
    expect(tried[0]!.gains).toBeGreaterThan(tried[1]!.gains);
    const [thicker, thinner] = tried.map((one) => measures.first_bake_min(one.compared));
    expect(thicker).toBeLessThan(measures.first_bake_min(now));
    expect(thinner).toBeGreaterThan(measures.first_bake_min(now));
    // What is not worked out yet is not shown.
    expect(ranked(helps, [undefined, undefined], now)).toEqual([]);
  });
});
