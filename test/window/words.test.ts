/** Words and places that need no page: clock times, spans, units in sentences, labels kept apart. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inUnits } from '../../physics/quantities/index.ts';
import { flagRows, spreadApart, stackRows } from '../../renderer/clock/placing.ts';
import { airRipple, type ClockModel } from '../../renderer/clock/model.ts';
import { whyNot } from '../../renderer/clock/handles.ts';
import { soldThickness } from '../../renderer/compare/differences.ts';
import { entryOf, shownQuantity, stepped, steppedEntry } from '../../renderer/inputs/shown.ts';
import { readKept, writeKept } from '../../renderer/state/keptText.ts';
import { valueAt, withValueAt } from '../../renderer/state/path.ts';
import {
  clockNear,
  clockText,
  instantText,
  offsetOf,
  pastClockText,
  spanRangeText,
  spanText,
  wallTimeOf,
} from '../../renderer/words/clock.ts';

const seeded = { seed: 20260131, numRuns: 300 };

describe('clock words', () => {
  it.each([
    [6.33, '6 min 20 s'],
    [0.5, '30 s'],
    [9.99, '10 min'],
    [48.3, '48 min'],
    [318, '5 h 18 min'],
    [120, '2 h'],
  ])('says %f minutes as %s', (minutes, said) => {
    expect(spanText(minutes)).toBe(said);
  });

  it('names the day of the minute that is shown', () => {
    const noon = Date.UTC(2026, 0, 31, 12);
    const utc = (): number => 0;
    expect(clockNear(Date.UTC(2026, 0, 31, 23, 59, 20), noon, utc)).toBe(
      clockText(Date.UTC(2026, 0, 31, 23, 59), 0),
    );
    const almost = Date.UTC(2026, 0, 31, 23, 59, 40);
    const midnight = Date.UTC(2026, 1, 1);
    expect(clockNear(almost, noon, utc)).toBe(clockNear(midnight, noon, utc));
    expect(clockNear(almost, noon, utc)).not.toBe(clockText(midnight, 0));
  });

  it('says a range in halves, and one figure where both ends are the same', () => {
    expect(spanRangeText(5.4, 8.1)).toBe('5½ to 8 min');
    expect(spanRangeText(30.2, 30.4)).toBe('about 30 min');
  });

  it.each([
    ['19:30', '19:30'],
    ['19.30', '19:30'],
    ['1930', '19:30'],
    ['7:30 pm', '19:30'],
    ['12 am', '00:00'],
    ['12 p.m.', '12:00'],
    ['24:00', undefined],
    ['13 pm', undefined],
    ['half seven', undefined],
  ])('reads %s as %s', (text, time) => {
    expect(wallTimeOf(text)).toBe(time);
  });

  it('writes instants that keep the instant and the offset (RFC 3339)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4e9 }),
        fc.integer({ min: -14 * 60, max: 14 * 60 }),
        (second, offset) => {
          const text = instantText(second * 1000, offset);
          expect(Date.parse(text)).toBe(second * 1000);
          expect(offsetOf(text)).toBe(offset);
        },
      ),
      seeded,
    );
  });
});

describe('units in sentences and fields', () => {
  it('turns the metric figures of a sentence, and nothing else', () => {
    // 267 x 9/5 + 32 = 512.6; 8.8 kg / 0.45359237 = 19.40 lb; 3 cm / 2.54 = 1.18 in, of which a whole centimetre tells one digit.
    expect(inUnits('At 267 °C the plate of 8.8 kg has 3 cm left for 46 min', 'us')).toBe(
      'At 513 °F the plate of 19.4 lb has 1.2 in left for 46 min',
    );
    expect(inUnits('At 267 °C', 'metric')).toBe('At 267 °C');
    // No finer than the figure was: 5 / 2.54 = 1.97, 11.3 / 0.45359 = 24.91, 70 / 28.35 = 2.469.
    expect(inUnits('5 cm of air, 11.3 kg in all, 70 g each', 'us')).toBe(
      '2 in of air, 24.9 lb in all, 2.47 oz each',
    );
    // Both ends of a range: 480 x 9/5 + 32 = 896, 500 x 9/5 + 32 = 932.
    expect(inUnits('from 480 to 500 °C for 2 to 4 h', 'us')).toBe('from 896 to 932 °F for 2 to 4 h');
    // A difference has no zero to add: 100 x 9/5 = 180, 5 x 9/5 = 9; the K of another unit stays.
    expect(inUnits('steps of 100 to 200 K', 'us')).toBe('steps of 180 to 360 F degrees');
    expect(inUnits('5.0 K warmer at 12 W/(m2 K)', 'us')).toBe('9 F degrees warmer at 12 W/(m2 K)');
  });

  it('shows a text as typed in its own units and converted in the others, and keeps what is stored', () => {
    expect(shownQuantity('3/8 in', 0.009525, 'plate.thickness', 'us')).toBe('3/8 in');
    expect(shownQuantity('3/8 in', 0.009525, 'plate.thickness', 'metric')).toBe('9.5 mm');
    expect(shownQuantity('250 degC', 523.15, 'oven.setpoint', 'metric')).toBe('250 °C');
    expect(entryOf('260', 'oven.setpoint', 'metric')).toEqual({ ok: true, value: '260 degC' });
    expect(entryOf('260', 'oven.setpoint', 'us')).toEqual({ ok: true, value: '260 degF' });
    expect(entryOf('2,2', 'dough.salt', 'metric')).toEqual({ ok: true, value: 2.2 });
    expect(entryOf('9.5 s', 'plate.thickness', 'metric').ok).toBe(false);
  });

  it('steps the number of a text and leaves its unit', () => {
    expect(stepped('250 °C', 5)).toBe('255 °C');
    expect(stepped('0.2 %', 0.05)).toBe('0.25 %');
    expect(stepped('L* 60', 1)).toBeUndefined();
    expect(stepped('3/8 in', 0.5)).toBeUndefined();
    expect(stepped('1 1/2 in', 0.5)).toBeUndefined();
  });
});

describe('an arrow key in a field', () => {
  it('moves what is written in the unit shown, with its digits', () => {
    expect(steppedEntry('8 mm', 0.5, 'plate.thickness', 'metric')).toBe('8.5 mm');
    expect(steppedEntry('90 min', -5, 'dough.restBeforeShaping', 'metric')).toBe('85 min');
    expect(steppedEntry('4', 1, 'pizzas.count', 'us')).toBe('5');
  });
  it('moves what is written otherwise by the same, and shows it as the field does', () => {
    // 3/8 in + 1/8 in = 1/2 in; 1 h 30 min is 90 min, and an hour is not five.
    expect(steppedEntry('3/8 in', 0.125, 'plate.thickness', 'us')).toBe('0.5 in');
    expect(steppedEntry('1 h 30 min', 5, 'dough.restBeforeShaping', 'metric')).toBe('1 h 35 min');
    expect(steppedEntry('100 s', 1, 'pizzas.wait', 'metric')).toBe('2 min 40 s');
    expect(steppedEntry('1800 W', 0.1, 'oven.power.bottom', 'metric')).toBe('1.9 kW');
    expect(steppedEntry('550 degF', 5, 'oven.setpoint', 'us')).toBe('555 °F');
    expect(steppedEntry('soon', 5, 'pizzas.wait', 'metric')).toBeUndefined();
  });
});

describe('a clock time', () => {
  it('is that of the nearest minute, as on the handouts; of what has happened that of the minute begun', () => {
    const at = Date.UTC(2040, 0, 13, 18, 47, 40);
    // Whether the hours are twelve or twenty-four is the habit of the machine.
    expect(clockText(at, 0)).toMatch(/:48/u);
    expect(pastClockText(at, 0)).toMatch(/:47/u);
  });
});

describe('a plate to buy', () => {
  it('is the next one up or down, by the inch in the sizes sold', () => {
    expect(soldThickness(0.008, 'thicker', 'metric')).toBe('12 mm');
    expect(soldThickness(0.008, 'thicker', 'us')).toBe('1/2 in');
    expect(soldThickness(0.008, 'thinner', 'us')).toBe('3/16 in');
    expect(soldThickness(0.006, 'thicker', 'us')).toBe('3/8 in');
  });
});

describe('labels', () => {
  it('are spread so that neighbours keep their distance, in their order and within their room', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 350, noNaN: true }), { minLength: 1, maxLength: 8 }),
        (wanted) => {
          const placed = spreadApart(wanted, 17, 0, 300);
          const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]!);
          order.forEach((index, i) => {
            expect(placed[index]).toBeGreaterThanOrEqual(-1e-9);
            expect(placed[index]).toBeLessThanOrEqual(300 + 1e-9);
            if (i > 0) expect(placed[index]! - placed[order[i - 1]!]!).toBeGreaterThanOrEqual(17 - 1e-9);
          });
        },
      ),
      seeded,
    );
  });

  it('stay where they are wanted when there is room', () => {
    expect(spreadApart([100, 40, 200], 17, 0, 300)).toEqual([100, 40, 200]);
  });

  it('of flags never lie on one another nor on a line that rises to a higher one', () => {
    const flag = fc.record({ x: fc.integer({ min: 0, max: 700 }), width: fc.integer({ min: 40, max: 180 }) });
    fc.assert(
      fc.property(fc.uniqueArray(flag, { minLength: 1, maxLength: 6, selector: ({ x }) => x }), (flags) => {
        const rows = flagRows(flags);
        flags.forEach((one, i) => {
          flags.forEach((later, j) => {
            if (later.x <= one.x || later.x >= one.x + one.width) return;
            expect(rows[i]).toBeGreaterThan(rows[j]!);
          });
        });
      }),
      seeded,
    );
  });

  it('of tasks that overlap in time stand in rows of their own', () => {
    const span = fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 1, max: 200 }));
    fc.assert(
      fc.property(fc.array(span, { minLength: 1, maxLength: 10 }), (spans) => {
        const tasks = spans.map(([from, length]) => ({ from, to: from + length }));
        const rows = stackRows(tasks);
        tasks.forEach((one, i) => {
          tasks.slice(i + 1).forEach((other, j) => {
            if (one.from < other.to && other.from < one.to) expect(rows[i]).not.toBe(rows[i + 1 + j]);
          });
        });
      }),
      seeded,
    );
  });
});

describe('paths into a plan', () => {
  it('set, take out and leave everything else alone, lists included', () => {
    const plan = { plate: { width: '40 cm' }, dough: { liquid: [{ kind: 'water', percent: 62 }] } };
    expect(withValueAt(plan, 'plate.width', undefined)).toEqual({ dough: plan.dough });
    expect(withValueAt(plan, 'oven.power.top', '1 kW')).toEqual({
      ...plan,
      oven: { power: { top: '1 kW' } },
    });
    const wetter = withValueAt(plan, 'dough.liquid.0.percent', 65);
    expect(valueAt(wetter, 'dough.liquid.0.percent')).toBe(65);
    expect(valueAt(plan, 'dough.liquid.0.percent')).toBe(62);
    expect(Object.keys(withValueAt(plan, 'plate.width', '38 cm'))).toEqual(['plate', 'dough']);
  });

  it('below a list leave room for what comes before, and none for what says nothing', () => {
    const plan = { pizzas: { count: 4 } };
    const third = withValueAt(plan, 'pizzas.each.2.diameter', '33 cm');
    expect(third).toEqual({ pizzas: { count: 4, each: [{}, {}, { diameter: '33 cm' }] } });
    const first = withValueAt(third, 'pizzas.each.0.shade', 'dark');
    expect(withValueAt(first, 'pizzas.each.2.diameter', undefined)).toEqual({
      pizzas: { count: 4, each: [{ shade: 'dark' }] },
    });
    expect(withValueAt(third, 'pizzas.each.2.diameter', undefined)).toEqual(plan);
  });
});

describe('moving the evening', () => {
  const minute = 60_000;
  const noon = Date.parse('2026-01-31T12:00:00Z');

  it('is refused where something would have to begin in the past, and says how far it may go', () => {
    const begin = noon + 30 * minute;
    expect(whyNot(begin, -30 * minute, noon, 60)).toBeUndefined();
    expect(whyNot(begin, -31 * minute, noon, 60)).toMatch(
      /begin at 12:59.*before now\. At most 30 min earlier\.$/,
    );
    expect(whyNot(begin, 600 * minute, noon, 60)).toBeUndefined();
    // What has begun already can be set back to when it did.
    expect(whyNot(noon - minute, -5 * minute, noon, 60)).toBeUndefined();
  });
});

describe('work kept aside', () => {
  const file = { format: 'hearthclock/evening', version: 1, title: 'Kept' } as const;
  const drafts = { 'plate.thickness': { text: 'thick', value: undefined, reason: 'Found "thick".' } };

  it('comes back with its wrong entries and with what it grew from', () => {
    const kept = { file, drafts, base: { ...file, title: 'Before' }, name: 'Friday' };
    expect(readKept(writeKept(kept))).toEqual({ ok: true, kept });
  });

  it('may be a plain plan, and is refused with reasons when it is none', () => {
    const plain = readKept(JSON.stringify(file));
    expect(plain.ok && plain.kept).toEqual({ file, drafts: {}, base: undefined, name: undefined });
    const broken = readKept(
      JSON.stringify({ format: 'hearthclock/unsaved', version: 1, plan: { title: 3 } }),
    );
    expect(broken.ok).toBe(false);
    expect(readKept('{').ok).toBe(false);
  });
});

describe('a chart', () => {
  it('knows how far the held air swings, between the signal and the ready plate only', () => {
    const at = [0, 1, 2, 3, 4, 5];
    const event = (id: 'signal' | 'ready', when: number) => ({ id, label: id, at: when });
    const model: ClockModel = {
      offset: 0,
      whole: { from: 0, to: 5 },
      usual: { from: 0, to: 5 },
      ovenOn: 0,
      series: [{ id: 'air', pizza: undefined, at, kelvin: Float64Array.of(300, 500, 560, 490, 530, 350) }],
      events: [event('signal', 1), event('ready', 4)],
      bars: [],
      readyBand: undefined,
      plateBand: undefined,
      movable: () => undefined,
      bakes: [],
    };
    expect(airRipple(model)).toBe(70);
    expect(airRipple({ ...model, series: [] })).toBe(0);
  });
});
