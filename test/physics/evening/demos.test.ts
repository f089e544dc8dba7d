import { describe, expect, it } from 'vitest';
import { readInstant, weekdayName, writeInstant } from '../../../physics/evening/clock.ts';
import { demoIds, demos, saturday, upcoming } from '../../../physics/evening/demos.ts';
import { ovenPresetIds } from '../../../physics/evening/ids.ts';
import { ovenPresets } from '../../../physics/oven/presets.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';

const at = (text: string): number => {
  const read = readInstant(text);
  return read.ok ? read.instant.epochMilliseconds : NaN;
};

describe('the built-in evenings', () => {
  it.each(demoIds)('%s is a plan without fault or warning', (id) => {
    const plan = readPlanObject(demos[id], { now: 0 });
    expect(plan.ok ? plan.warnings : plan.problems.map(wording)).toEqual([]);
  });
  it('the first is a Saturday, half past seven, on the European preset', () => {
    const plan = readPlanObject(saturday, { now: 0 });
    if (!plan.ok) throw new Error('demo');
    expect(weekdayName(plan.evening.anchor.time)).toBe('Saturday');
    expect(writeInstant(plan.evening.anchor.time)).toBe('2026-01-31T19:30:00+01:00');
    // What an absent oven block takes is what the demo says.
    expect({ preset: 'european', ...ovenPresets.european.typePlate }).toEqual(saturday.oven);
  });
  it('move to a day that is still to come', () => {
    expect(upcoming('saturday', at('2026-01-30T12:00:00Z'), 0)).toEqual(saturday);
    expect(upcoming('saturday', at('2026-11-25T12:00:00Z'), 60).anchor).toEqual({
      kind: 'eatAt',
      time: '2026-11-25T19:30:00+01:00',
    });
    expect(upcoming('same-evening', at('2026-11-25T23:30:00Z'), -300).anchor).toEqual({
      kind: 'startAt',
      time: '2026-11-26T18:00:00-05:00',
    });
    expect(saturday.anchor.time).toBe('2026-01-31T19:30:00+01:00');
  });
});

describe('the presets', () => {
  it.each(ovenPresetIds)('%s is a plan of its own, at its highest setting', (preset) => {
    const plan = readPlanObject({ format: 'hearthclock/evening', version: 1, oven: { preset } }, { now: 0 });
    expect(plan.ok ? plan.warnings : plan.problems.map(wording)).toEqual([]);
    if (plan.ok) expect(plan.evening.oven.setpoint).toBe(plan.evening.oven.highestSetting);
  });
});
