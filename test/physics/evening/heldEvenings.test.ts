import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { durationText } from '../../../physics/evening/steps.ts';
import { setPath } from '../../../physics/evening/planPath.ts';

function planned(file: PlanFile) {
  const answer = planFromFile(file, { now: 0, band: false });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer;
}
function changed(path: string, value: string): PlanFile {
  const set = setPath(demos.saturday, path, value);
  if (!set.ok) throw new Error('does not take it');
  return set.file;
}

describe('bases baked ahead', () => {
  const bases = planned({
    ...demos.saturday,
    pizzas: { ...demos.saturday.pizzas, count: 2, parBake: { keep: 'freezer', kept: '50 h' } },
  });
  const { answer } = bases;
  const task = (id: string) => {
    const { from, to, ...rest } = answer.tasks.find((one) => one.id === id)!;
    return { ...rest, from: Date.parse(from) / 1000, to: Date.parse(to) / 1000 };
  };

  it('have their dough and an oven of their own on another day, and wait as long as the plan says', () => {
    const baking = task('hands-ahead');
    expect(baking.step).toMatch(
      /^Shape 2 bases to 30 cm on a floured bench, and bake them one after another without topping, .* wrap well and keep in the freezer$/u,
    );
    const longest = Math.max(...answer.bakes.map(({ baseAhead }) => baseAhead!.minutes));
    expect(longest).toBeGreaterThan(0.5);
    expect(baking.step).toContain(`${durationText(60 * longest)} each at most`);
    // Kept from the last one wrapped until the oven goes on again.
    expect(task('preheat').from - baking.to).toBeCloseTo(50 * 3600, -1);
    expect(task('ahead-keep')).toMatchObject({ name: 'Bases in the freezer', from: baking.to });
    // As on the evening, with the load.
    const heated = task('ahead-preheat').to - task('ahead-preheat').from;
    expect(Math.abs(heated - 60 * answer.preheat.minutes)).toBeLessThan(30);
    expect(task('ahead-bake').to - task('ahead-bake').from).toBeGreaterThan(
      answer.bakes.reduce((sum, { baseAhead }) => sum + 60 * baseAhead!.minutes, 0),
    );
    // The dough is ready when the first base is shaped, not when it is topped.
    expect(Date.parse(answer.dough.readyWindow.from) / 1000).toBeLessThanOrEqual(baking.from + 1);
    expect(task('rest').to).toBeCloseTo(baking.from, -1);
    expect(task('shape-1')).toMatchObject({
      name: 'Top 1',
      step: 'Top the base of pizza 1, baked ahead, 70 g sauce, 120 g cheese',
    });
  });

  it('stand in the chain that must not be late, and what waits is said', () => {
    const chain = answer.criticalChain;
    expect(chain.slice(chain.indexOf('hands-ahead'), chain.indexOf('hands-ahead') + 3)).toEqual([
      'hands-ahead',
      'ahead-keep',
      'preheat',
    ]);
    const said = answer.warnings.find(({ code }) => code === 'bases-baked-ahead')!.message;
    expect(said).toContain('2 bases that are baked ahead and kept 50 h in the freezer');
    expect(answer.warnings.map(({ code }) => code)).not.toContain('dough-past-its-best');
    expect(answer.guestsLate.hold.join(' ')).not.toContain('balls');
    expect(answer.slackMinutes.plate).toBeCloseTo(50 * 60, 0);
  });

  it('let a cook who begins at an hour eat when they have been kept', () => {
    const begun = planned({
      ...demos.saturday,
      anchor: { kind: 'startAt', time: '2026-01-31T10:00:00+01:00' },
      pizzas: { ...demos.saturday.pizzas, count: 1, parBake: { keep: 'refrigerator' } },
    }).answer;
    expect(begun.tasks.find(({ id }) => id === 'hands-mix')!.from).toBe('2026-01-31T10:00:00+01:00');
    // A day in the refrigerator unless it says another.
    expect(Date.parse(begun.ovenOnAt)).toBeGreaterThan(Date.parse('2026-02-01T10:00:00+01:00'));
  });
});

describe('guests twenty minutes late', () => {
  const { answer } = planned(changed('kitchen.energyPrice', '0.40 EUR/kWh'));
  const { guestsLate } = answer;

  it('take what holds the oven hot for so long, at the price of the plan', () => {
    expect(guestsLate.minutes).toBe(20);
    expect(guestsLate.energyKWh).toBeCloseTo((answer.preheat.idlePowerW * 20) / 60_000, 9);
    expect(guestsLate.cost).toBeCloseTo(0.4 * guestsLate.energyKWh, 12);
    expect(guestsLate.hold[0]).toContain(`${guestsLate.energyKWh.toFixed(2)} kWh (`);
  });

  it('find the plate and the bake of a first pizza that is loaded so much later', () => {
    const later = planned(changed('pizzas.loadAt', `${String(60 * (answer.preheat.minutes + 20))} s`)).answer;
    expect(guestsLate.plateTopC).toBeCloseTo(later.bakes[0]!.plateTopAtLoadC, 0);
    expect(60 * Math.abs(guestsLate.bakeMinutes - later.bakes[0]!.minutes)).toBeLessThan(5);
    expect(guestsLate.hold[1]).toContain(`${guestsLate.plateTopC.toFixed(0)} °C`);
  });

  it('wait for the dough as long as it keeps, and else it goes into the refrigerator', () => {
    const shaped = answer.tasks.find(({ id }) => id === `shape-${answer.bakes.length}`)!;
    const keeps = (Date.parse(answer.dough.readyWindow.to) - Date.parse(shaped.from)) / 60_000;
    expect(guestsLate.doughSpareMinutes).toBeCloseTo(keeps - 20, 1);
    expect(guestsLate.hold[2]).toMatch(/^Leave the balls covered/u);
    const quick = planned(changed('dough.yeast.percent', '3')).answer.guestsLate;
    expect(quick.doughSpareMinutes).toBeLessThan(0);
    expect(quick.hold[2]).toMatch(/^Put the balls into the refrigerator/u);
  });
});
