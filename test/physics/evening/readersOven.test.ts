import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { planFromFile } from '../../../physics/evening/planEvening.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { readersOven, readersSettings } from '../../../physics/evening/readersOven.ts';

function demo(id: keyof typeof demos): Evening {
  const read = readPlanObject(demos[id], { now: 0 });
  if (!read.ok) throw new Error('the demo evening does not read');
  return read.evening;
}
const saturday = demo('saturday');
const at = (celsius: number): number => celsius + 273.15;

describe("a reader's oven", () => {
  const rows = readersOven(saturday, [220, 250, 275].map(at));

  it('is the same as an evening planned at that setting', () => {
    const file = { ...demos.saturday, oven: { ...demos.saturday.oven, setpoint: '220 degC' } };
    const planned = planFromFile(file, { now: 0, band: false });
    if (!planned.ok) throw new Error('not planned');
    const { preheat, bakes } = planned.answer;
    expect(rows[0]).toMatchObject({ settingK: at(220), reached: true });
    expect(rows[0]!.preheatMinutes).toBeCloseTo(preheat.minutes, 9);
    expect(rows[0]!.plateTopK).toBeCloseTo(at(preheat.plateTopC), 9);
    expect(rows[0]!.firstBakeMinutes).toBeCloseTo(bakes[0]!.minutes, 9);
    expect(rows[0]!.finishMinutes).toBeCloseTo(bakes[0]!.finishMinutes, 9);
  });

  it('bakes longer the earlier it stops, on a colder plate', () => {
    const [weak, own, strong] = rows;
    expect(weak!.firstBakeMinutes!).toBeGreaterThan(own!.firstBakeMinutes!);
    expect(own!.firstBakeMinutes!).toBeGreaterThan(strong!.firstBakeMinutes!);
    expect(weak!.plateTopK!).toBeLessThan(own!.plateTopK!);
    expect(own!.plateTopK!).toBeLessThan(strong!.plateTopK!);
  });

  it('says where an oven of this kind does not get', () => {
    const feeble = { ...saturday, oven: { ...saturday.oven, power: { bottom: 500, top: 400 } } };
    expect(readersOven(feeble, [at(300)])[0]).toEqual({
      settingK: at(300),
      reached: false,
      preheatMinutes: null,
      plateTopK: null,
      firstBakeMinutes: null,
      finishMinutes: null,
    });
  });

  it('says when the pizza does not get done', () => {
    const [row] = readersOven(saturday, [at(110)]);
    expect(row).toMatchObject({ reached: true, firstBakeMinutes: null, finishMinutes: null });
    expect(row!.preheatMinutes).toBeGreaterThan(0);
  });

  it('waits for the plate even where the evening does not', () => {
    const early = { ...saturday, pizzas: { ...saturday.pizzas, loadAt: 600 } };
    expect(readersOven(early, [at(250)])[0]!.firstBakeMinutes).toBeCloseTo(rows[1]!.firstBakeMinutes!, 9);
  });
});

describe('the settings of a table', () => {
  it('hold the own one once, rising', () => {
    const rounded = (settings: readonly number[]): number[] => settings.map((k) => Math.round(k - 273.15));
    expect(rounded(readersSettings(saturday, 'metric'))).toEqual([220, 230, 250, 275, 300]);
    const own = { ...saturday, oven: { ...saturday.oven, setpoint: at(265) } };
    expect(rounded(readersSettings(own, 'metric'))).toEqual([220, 230, 250, 265, 275, 300]);
    expect(rounded(readersSettings(demo('same-evening'), 'us'))).toEqual([232, 246, 260, 274, 288]);
  });
});
