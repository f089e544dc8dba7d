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
  it('have their dough on another day, and the plan says so', () => {
    const { answer } = planned({
      ...demos.saturday,
      pizzas: { ...demos.saturday.pizzas, count: 2, parBake: { keep: 'freezer' } },
    });
    const [first] = answer.bakes;
    const said = answer.warnings.find(({ code }) => code === 'bases-baked-ahead')!.message;
    expect(said).toMatch(/^Mix, let rise, shape and bake the 2 bases on a day before, for the freezer, /u);
    const longest = Math.max(...answer.bakes.map(({ baseAhead }) => baseAhead!.minutes));
    expect(said).toContain(`${durationText(60 * longest)} each at most`);
    expect(first!.baseAhead!.minutes).toBeGreaterThan(0.5);
    const shaped = answer.tasks.find(({ id }) => id === 'shape-1')!;
    expect(shaped.step).toBe('Top the base of pizza 1, baked ahead, 70 g sauce, 120 g cheese');
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
