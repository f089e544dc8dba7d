import { describe, expect, it } from 'vitest';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import { saturday } from '../../../physics/evening/demos.ts';
import type { PlanAnswer } from '../../../physics/evening/answer.ts';

function planned(loadAt: string | undefined, thickness = '8 mm'): PlanAnswer {
  const plan = planFromFile(
    {
      ...saturday,
      plate: { ...saturday.plate, thickness },
      pizzas: { ...saturday.pizzas, count: 1, ...(loadAt === undefined ? {} : { loadAt }) },
    },
    { now: Date.parse(saturday.anchor.time), band: false, advice: false },
  );
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.answer;
}
const early = ({ warnings }: PlanAnswer): string | undefined =>
  warnings.find(({ code }) => code === 'pizza-before-plate')?.message;

describe('a first pizza by the clock', () => {
  it('that meets a plate not ready is said, with what the plate lacks', () => {
    const answer = planned('20 min');
    const lacking = Math.round(answer.preheat.minutes - 20);
    expect(early(answer)).toContain(`goes in ${lacking} min before the plate is ready`);
    expect(early(answer)).toMatch(/then at 20\d °C and would settle at 266 °C/u);
  });

  it('that had room enough has none with a thicker plate', () => {
    expect(early(planned('45 min'))).toBeUndefined();
    expect(early(planned('45 min', '14 mm'))).toContain('before the plate is ready');
  });

  it('that comes when the plate is ready, or by less than a minute too soon, is no matter', () => {
    const ready = planned(undefined);
    expect(early(ready)).toBeUndefined();
    expect(early(planned(`${(ready.preheat.minutes - 0.5).toFixed(2)} min`))).toBeUndefined();
  });
});
