/** Bars that can be moved, what follows, and why they stay where they cannot; the band around the plate. */
import { describe, expect, it } from 'vitest';
import { plateBandOf, type LaneBar } from '../../renderer/clock/model.ts';
import { barStart, movable, moveBar, type BarStart } from '../../renderer/clock/moves.ts';
import { saturday } from '../../physics/evening/demos.ts';
import { planDough } from '../../physics/evening/planDough.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import type { Evening } from '../../physics/evening/evening.ts';

const minute = 60_000;

function evening(dough: object = {}, more: object = {}): Evening {
  const file = { ...saturday, ...more, dough: { ...saturday.dough, ...dough } };
  const read = readPlanObject(file, { now: 0 });
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
  bar('preheat', 365, 400),
  bar('bake-1', 400, 406),
  bar('bake-2', 408, 415),
  bar('bake-3', 417, 424),
];
function start(now = 0, plan = evening()): BarStart {
  return barStart(plan, { bars, ready: 35 * 60, now: now * minute })!;
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
  });
});

const anchorAt = '2040-01-13T19:30:00+01:00';
const tied = (kind: string, pizzas: object = {}): Evening =>
  evening({}, { anchor: { kind, time: anchorAt }, pizzas: { ...saturday.pizzas, ...pizzas } });

describe('the oven', () => {
  it('goes on sooner while the pizzas stay, and the plate soaks as much longer', () => {
    expect(moveBar(start(0, tied('eatAt')), 'oven-on', -15 * minute)).toEqual({
      ok: true,
      fields: { 'pizzas.loadAt': '50 min' },
    });
    // Tied to the moment the oven goes on, the plan goes along.
    expect(moveBar(start(0, tied('ovenOnAt')), 'oven-on', -15 * minute)).toEqual({
      ok: true,
      fields: { 'pizzas.loadAt': '50 min', 'anchor.time': '2040-01-13T19:15:00+01:00' },
    });
  });

  it('says nothing of its own any more once the pizza goes in as the plate is ready', () => {
    expect(moveBar(start(0, tied('eatAt', { loadAt: '50 min' })), 'oven-on', 15 * minute)).toEqual({
      ok: true,
      fields: { 'pizzas.loadAt': undefined },
    });
  });

  it('does not go on so late that the plate is not ready, nor before now, nor before the evening begins', () => {
    const because = (text: string) => ({ ok: false, reason: expect.stringContaining(text) as string });
    expect(moveBar(start(0, tied('eatAt')), 'oven-on', 5 * minute)).toMatchObject(
      because('the plate is ready 35 min after the oven goes on'),
    );
    expect(moveBar(start(360, tied('eatAt')), 'oven-on', -10 * minute)).toMatchObject(because('before now'));
    expect(moveBar(start(0, tied('startAt')), 'oven-on', -270 * minute)).toMatchObject(
      because('before the evening begins'),
    );
  });

  it('moves the evening by its bar, as the mix does where that is fixed', () => {
    expect(movable(tied('eatAt'), 'preheat')?.id).toBe('evening');
    expect(movable(tied('eatAt'), 'mix')?.id).toBe('mix');
    expect(movable(tied('startAt'), 'mix')?.id).toBe('evening');
  });
});

describe('the first pizza', () => {
  it('goes in later while the oven goes on when it did: the meal is later where it was fixed', () => {
    expect(moveBar(start(0, tied('eatAt')), 'bake-1', 10 * minute)).toEqual({
      ok: true,
      fields: { 'pizzas.loadAt': '45 min', 'anchor.time': '2040-01-13T19:40:00+01:00' },
    });
    expect(moveBar(start(0, tied('ovenOnAt')), 'bake-1', 10 * minute)).toEqual({
      ok: true,
      fields: { 'pizzas.loadAt': '45 min' },
    });
  });

  it('does not go in before the plate is ready, unless the plan says so already; nor where the dough says when', () => {
    expect(moveBar(start(0, tied('eatAt')), 'bake-1', -5 * minute)).toMatchObject({ ok: false });
    const early = start(0, tied('ovenOnAt', { loadAt: '20 min' }));
    expect(moveBar(early, 'bake-1', -5 * minute)).toMatchObject({ ok: false });
    expect(moveBar(early, 'bake-1', 5 * minute)).toEqual({ ok: true, fields: { 'pizzas.loadAt': '25 min' } });
    expect(movable(tied('startAt'), 'bake-1')).toBeUndefined();
    expect(movable(tied('eatAt'), 'bake-1')?.id).toBe('bake-1');
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
