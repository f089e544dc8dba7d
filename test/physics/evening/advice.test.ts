/** Advice for every goal, replayed: what a change promises is what the plan gives with it. */
import { describe, expect, it } from 'vitest';
import { outcomeOf } from '../../../physics/evening/advice.ts';
import type { Advised, AdviceOutcome, PlanAnswer } from '../../../physics/evening/answer.ts';
import { filled } from '../../../physics/evening/comparison.ts';
import { demos } from '../../../physics/evening/demos.ts';
import { type GoalId, goalIds } from '../../../physics/evening/ids.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';

const now = Date.parse('2026-01-30T08:00:00+01:00');
/** Fewer pizzas than the demo has: each costs time. An oven that could be set higher. */
const file: PlanFile = {
  ...demos.saturday,
  oven: { ...demos.saturday.oven, setpoint: '235 degC' },
  pizzas: { ...demos.saturday.pizzas, count: 2 },
};

function plan(of: PlanFile, goal?: GoalId): PlanAnswer {
  const planned = planFromFile(of, { now, band: false, ...(goal && { goal }) });
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  return planned.answer;
}
function replayed({ change }: Advised, of: PlanFile = file): PlanAnswer {
  const set = filled(of, Object.fromEntries(change.map(({ path, value }) => [path, value])));
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  return plan(set.file);
}
const inSeconds = ({ preheatMinutes, bakeMinutes, eveningMinutes }: AdviceOutcome): readonly number[] =>
  [preheatMinutes, bakeMinutes, eveningMinutes].map((minutes) => Math.round(60 * minutes));
const codes = ({ warnings }: PlanAnswer): readonly string[] => warnings.map(({ code }) => code);

const answers = new Map(goalIds.map((goal) => [goal, plan(file, goal)]));

describe.each(goalIds)('advice for the goal %s', (goal) => {
  const answer = answers.get(goal)!;
  const advice = answer.advice!;
  const all = [...(advice.basis ? [advice.basis] : []), ...advice.items];
  const after = all.map((one) => replayed(one));

  it('is a few changes, the best first, of different kinds', () => {
    expect(advice.items.length).toBeGreaterThan(0);
    expect(advice.items.length).toBeLessThanOrEqual(4);
    const gains = advice.items.map(({ gain }) => gain);
    expect([...gains].sort((a, b) => b - a)).toEqual(gains);
    expect(gains.at(-1)).toBeGreaterThan(0);
    expect(new Set(advice.items.map(({ what }) => what)).size).toBe(gains.length);
  });

  it('replayed gives what it promised, to the second, the gram and the hundredth of a kWh', () => {
    expect(advice.before).toEqual(outcomeOf(answer));
    for (const [i, one] of all.entries()) {
      const got = outcomeOf(after[i]!);
      expect(inSeconds(got)).toEqual(inSeconds(one.after));
      expect(got.energyKWh).toBeCloseTo(one.after.energyKWh, 2);
      expect(got.waterLeftOnTopG).toBeCloseTo(one.after.waterLeftOnTopG, 0);
      expect(got.baseLightness).toBeCloseTo(one.after.baseLightness, 1);
    }
  });

  it('goes against no caution', () => {
    // That a pizza which goes in sooner meets a colder plate is the price, which its message names.
    const price = 'pizza-before-plate';
    const known = (code: string): boolean => code === price || codes(answer).includes(code);
    for (const plan of after) expect(codes(plan).filter((code) => !known(code))).toEqual([]);
  });

  it('names its price: no message without a figure that changed', () => {
    for (const { message } of all) expect(message).toMatch(/: .*\d.*\.$/u);
  });
});

describe('the goals', () => {
  it('mean what they say', () => {
    const of = (goal: GoalId) => answers.get(goal)!.advice!;
    const sooner = of('sooner');
    expect(sooner.items[0]!.after.eveningMinutes).toBeLessThan(sooner.before.eveningMinutes);
    expect(of('darker-base').basis!.after.baseLightness).toBeCloseTo(50, 0);
    const dry = of('drier-top');
    expect(dry.items[0]!.after.waterLeftOnTopG).toBeLessThan(dry.before.waterLeftOnTopG - 5);
    const weaker = of('weaker-oven');
    expect(weaker.basis!.change[0]).toEqual({ path: 'oven.highestSetting', value: '210 degC' });
    expect(weaker.items[0]!.after.bakeMinutes).toBeLessThan(weaker.basis!.after.bakeMinutes);
  });

  it('darker than dark ends at the darkest shade that a plan can name', () => {
    const dark: PlanFile = { ...file, pizzas: { ...file.pizzas, count: 1, shade: 'dark' } };
    const { basis, items } = plan(dark, 'darker-base').advice!;
    expect(basis!.change).toEqual([{ path: 'pizzas.shade', value: 'lightness 42' }]);
    expect(basis!.after.baseLightness).toBeCloseTo(42, 0);
    expect(items.length).toBeGreaterThan(0);
  });

  it('with paper above its rating no more heat is advised', () => {
    const paper: PlanFile = { ...file, pizzas: { ...file.pizzas, count: 1, bench: 'parchment' } };
    const paths = plan(paper, 'sooner').advice!.items.flatMap(({ change }) => change.map(({ path }) => path));
    expect(paths).not.toContain('oven.setpoint');
  });

  it('an evening that begins now with a slow dough is sooner done with a quicker one', () => {
    const begun: PlanFile = { ...file, anchor: { kind: 'startAt', time: '2026-01-31T12:00:00+01:00' } };
    const { items, before } = plan(begun, 'sooner').advice!;
    expect(items[0]!.change.every(({ path }) => path.startsWith('dough.'))).toBe(true);
    const got = outcomeOf(replayed(items[0]!, begun));
    expect(inSeconds(got)).toEqual(inSeconds(items[0]!.after));
    expect(got.eveningMinutes).toBeLessThan(before.eveningMinutes - 60);
  });
});
