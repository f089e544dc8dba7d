import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import { planEvening, planFromFile } from '../../../physics/evening/planEvening.ts';
import { sampleEngine } from '../../support/sampleRun.ts';

const now = Date.UTC(2026, 0, 31, 8);

describe('planning a file', () => {
  it('gives the plan with what was assumed and what the reading warned of', () => {
    const { format, version, title, anchor, oven, pizzas } = demos.saturday;
    const file = { format, version, title, anchor, pizzas, oven: { ...oven, setpoint: '280 degC' } };
    const planned = planFromFile(file, { now }, sampleEngine());
    if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
    expect(planned.answer.title).toBe(demos.saturday.title);
    expect(planned.answer.assumed.map(({ path }) => path)).toContain('kitchen.roomTemperature');
    expect(planned.answer.warnings.map(({ code }) => code)).toContain('setpoint-above-highest');
    expect(planned.answer.range).toMatchObject({ preheatMinutes: [40, 58], bakeMinutes: [4.8, 8.4] });
    expect(planned.run.bakes).toHaveLength(planned.evening.pizzas.count);
  });

  it('hands back the problems of a file that does not read', () => {
    const planned = planFromFile({ ...demos.saturday, version: 7 }, { now }, sampleEngine());
    expect(planned).toMatchObject({ ok: false, problems: [{ path: 'version' }] });
    expect(planFromFile('soup', { now }, sampleEngine()).ok).toBe(false);
  });

  it('warns of a start in the past only by a clock that is later', () => {
    const codesAt = (time: number): readonly string[] => {
      const planned = planFromFile(demos.saturday, { now: time, band: false }, sampleEngine());
      return planned.ok ? planned.answer.warnings.map(({ code }) => code) : [];
    };
    expect(codesAt(now)).not.toContain('starts-in-the-past');
    expect(codesAt(now + 9 * 3_600_000)).toContain('starts-in-the-past');
  });
});

describe('planning with the simulation', () => {
  const file = { ...demos.saturday, pizzas: { ...demos.saturday.pizzas, count: 1 } };
  const planned = planFromFile(file, { now, band: false });
  if (!planned.ok) throw new Error(JSON.stringify(planned.problems));
  const { answer, evening, run } = planned;

  it('meets the anchor, with the plate ready no later than the first pizza goes in', () => {
    expect(answer.eatAt).toBe('2026-01-31T19:30:00+01:00');
    expect(Date.parse(answer.plateReadyAt)).toBeLessThanOrEqual(Date.parse(answer.bakes[0]!.inAt));
    expect(Date.parse(answer.airReadyAt)).toBeLessThan(Date.parse(answer.plateReadyAt));
    expect(answer.preheat.minutes).toBeCloseTo(run.preheat.plateReady / 60, 9);
    expect(answer.curves.minutes.at(-1)! * 60).toBeGreaterThan(run.bakes[0]!.outAt);
    expect(answer.preheatCurve.minutes.at(-1)).toBeGreaterThanOrEqual(120);
  });

  it('gives the same answer for the same evening', () => {
    const again = planEvening(evening, { assumed: answer.assumed, warnings: [], band: false, now });
    expect(again.ok && { ...again.answer, warnings: [] }).toEqual({ ...answer, warnings: [] });
  });

  it('charges a late start in degrees and bake time', () => {
    expect(answer.lateStart.length).toBeGreaterThan(0);
    for (const late of answer.lateStart) {
      expect(late.plateTopC).toBeLessThan(answer.bakes[0]!.plateTopAtLoadC + 1);
      expect(late.bakeMinutes).toBeGreaterThanOrEqual(answer.bakes[0]!.minutes - 0.1);
    }
  });
});
