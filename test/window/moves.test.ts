/** Bars that can be moved, what follows, and why they stay where they cannot; the band around the plate. */
import { describe, expect, it } from 'vitest';
import { plateBandOf, type LaneBar } from '../../renderer/clock/model.ts';
import { barStart, movable, moveBar, type BarStart } from '../../renderer/clock/moves.ts';
import { saturday } from '../../physics/evening/demos.ts';
import { planDough } from '../../physics/evening/planDough.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import type { Evening } from '../../physics/evening/evening.ts';

const minute = 60_000;

function evening(dough: object = {}): Evening {
  const read = readPlanObject({ ...saturday, dough: { ...saturday.dough, ...dough } }, { now: 0 });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.evening;
}
function bar(id: string, from: number, to: number): LaneBar {
  const task = {
    id,
    lane: 'oven',
    name: id,
    from: '',
    to: '',
    needs: [],
    waitsFor: [],
  } as unknown as LaneBar['task'];
  return { task, from: from * minute, to: to * minute };
}
const bars = [
  bar('mix', 100, 115),
  bar('bake-1', 400, 406),
  bar('bake-2', 408, 415),
  bar('bake-3', 417, 424),
];
function start(now = 0, plan = evening()): BarStart {
  return barStart(plan, bars, now * minute)!;
}

describe('the mix', () => {
  it('sooner takes less yeast, so much that the dough is ready when it was', () => {
    const held = start(-600);
    const moved = moveBar(held, 'mix', -120 * minute);
    if (!moved.ok) throw new Error(moved.reason);
    const percent = moved.fields['dough.yeast.percent'] as number;
    expect(percent).toBeLessThan(held.evening.dough.yeast.percent);
    const { dough } = held.evening;
    const then = planDough({ ...held.evening, dough: { ...dough, yeast: { ...dough.yeast, percent } } });
    // The dose has three digits.
    expect(Math.abs(then.rise.seconds - held.dough.rise.seconds - 7200)).toBeLessThan(180);
  });

  it('does not go before now, nor where no dose of yeast leads', () => {
    expect(moveBar(start(90), 'mix', -20 * minute)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('before now') as string,
    });
    expect(moveBar(start(), 'mix', 5.3 * 60 * minute)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('no sane dose') as string,
    });
  });
});

describe('dividing', () => {
  it('later leaves the balls less rest, down to a quarter of an hour', () => {
    const held = start();
    const rest = held.evening.dough.restBeforeShaping / 60;
    expect(moveBar(held, 'ball', 30 * minute)).toEqual({
      ok: true,
      fields: { 'dough.restBeforeShaping': `${String(rest - 30)} min` },
    });
    expect(moveBar(held, 'ball', (rest - 10) * minute)).toMatchObject({ ok: false });
    expect(moveBar(held, 'ball', -12 * 60 * minute)).toMatchObject({ ok: false });
  });

  it('has no handle where the stretches of the rise say when', () => {
    const phased = evening({
      phases: [
        { where: 'room', as: 'bulk' },
        { where: 'room', duration: '1 h', as: 'balls' },
      ],
    });
    expect(movable(phased, 'ball')).toBeUndefined();
    expect(movable(evening(), 'ball')?.id).toBe('ball');
    expect(movable(evening(), 'preheat')).toBeUndefined();
    expect(movable(evening(), 'bake-1')).toBeUndefined();
  });
});

describe('a later pizza', () => {
  it('waits longer, every wait giving its share; it never goes in before the one before is out', () => {
    expect(moveBar(start(), 'bake-2', 3 * minute)).toEqual({ ok: true, fields: { 'pizzas.wait': '300 s' } });
    expect(moveBar(start(), 'bake-3', 4 * minute)).toEqual({ ok: true, fields: { 'pizzas.wait': '240 s' } });
    expect(moveBar(start(), 'bake-2', -3 * minute)).toMatchObject({ ok: false });
  });
});

describe('the band around the plate', () => {
  it('runs through the same curve in the time of P10 and of P90', () => {
    const seconds = Float64Array.of(0, 1200, 2400, 7200);
    const plateTop = Float64Array.of(300, 400, 500, 500);
    const band = plateBandOf(
      { seconds, plateTop },
      { middle: 40, short: 30, long: 50 },
      { from: 0, to: 40 * minute },
    );
    const half = band.at.indexOf(15 * minute);
    // A quarter of an hour of half an hour is half way; of fifty minutes it is three tenths.
    expect(band.fast[half]).toBeCloseTo(400, 6);
    expect(band.slow[half]).toBeCloseTo(360, 6);
    expect(band.at.at(-1)).toBe(40 * minute);
  });
});
