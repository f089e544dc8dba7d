import { describe, expect, it } from 'vitest';
import { fridgeText } from '../../main/terminal/fridge.ts';
import { columns, wrap } from '../../main/terminal/page.ts';
import { listed } from '../../physics/evening/steps.ts';
import { fixture } from './planFixture.ts';

describe('the page for the fridge', () => {
  it('reads like this', () => {
    expect(fridgeText(fixture, 'metric')).toBe(`Four pizzas for friends
Saturday 2026-01-31

Switch the oven on at 18:34 (between 18:24 and 18:42).
  The plate needs 48 min and is then at 250 °C; the oven itself signals after
  17 min.
Bake 6 min 20 s to 7 min (likely 5 to 8 min), then 8 to 9 min until the next one
can go in.
  The top decides: the base is ready before it. 31 g of water left on top. Then
  1 min 30 s under the top element.
Eat at 19:30, the last pizza at 19:57.
  The plate sets the pace, to begin by 18:34; the dough has 12 min and your
  hands have 20 min to spare.
The oven takes 2.1 kWh this evening, 1.4 of it before the first pizza.

By the clock
  13:00  Mix the dough.
  18:34  Switch the oven on at 250 °C, the plate on the second position from the
         bottom, nothing else in it.

What must not be late
- Preheat, then pizza after pizza: each waits for the one before it, none may be
  late.
- Mix may take 12 min longer.

If guests are 20 min late
- Leave the oven on, the plate is then at 252 °C.
- Leave the balls covered.

Dough
  601 g  flour
  373 g  water
   15 g  salt
    9 g  oil
  1.2 g  instant yeast
  Liquid at 27 °C (26 °C by the bakers' rule), for a dough of 25 °C. Ready after
  6 h 2 min (4 h 30 min to 8 h), from 18:50 to 20:40.

To buy
  641 g  wheat flour (40 g of it for the bench)
  400 g  crushed tomatoes (1 can of 400 g; 120 g are left)

Assumed, because the plan does not say
  From the built-in evening: plate rack height 0.3.
  As the kitchen: oven start temperature 21 degC; dough rise temperature
  21 degC.

Cautions
- The plate stays too hot to touch for 3 h after the last pizza.
  Source: ISO 13732-1: 43 °C.
`);
  });
  it('speaks of Fahrenheit, ounces and a twelve-hour clock when asked', () => {
    const text = fridgeText(fixture, 'us');
    expect(text).toContain('Switch the oven on at 6:34 pm (between 6:24 pm and 6:42 pm).');
    expect(text).toContain('is then at 482 °F');
    expect(text).toContain('Liquid at 81 °F');
    expect(text).toMatch(/0\.042 oz {2}instant yeast/u);
    expect(text).toContain('Switch the oven on at 482 °F, the plate');
    expect(text).not.toMatch(/\d g |°C/u);
  });
  it('leaves out what there is not: a range, a second pizza, spare time, assumptions', () => {
    const text = fridgeText(
      {
        ...fixture,
        range: null,
        bakes: fixture.bakes.slice(0, 1).map((bake) => ({ ...bake, decidedBy: 'base', finishMinutes: 0 })),
        limitedBy: 'hands',
        slackMinutes: { plate: 0, dough: 0, hands: 0 },
        assumed: [],
        warnings: [],
      },
      'metric',
    );
    expect(text).toContain('on at 18:34.\n');
    expect(text).toContain('Bake 6 min 20 s.\n  The colour of the base decides. 31 g');
    expect(text).toContain('Eat at 19:30.\n  Your hands set the pace, to begin by 18:54.\n');
    expect(text).not.toContain('Assumed');
    expect(text).not.toContain('Cautions');
  });
  it('says when the plate is ready where the oven comes first, pizzas that follow at once, and the price', () => {
    const { bakes, warnings } = fixture;
    const text = fridgeText(
      {
        ...fixture,
        anchor: { kind: 'ovenOnAt', at: fixture.ovenOnAt },
        bakes: bakes.map((bake) => ({ ...bake, decidedBy: 'crumb', waitBeforeMinutes: 0.1 })),
        cost: { preheat: 0.42, evening: 0.634, perKWh: 0.3, currency: 'EUR' },
        warnings: warnings.map(({ code, message }) => ({ code, message })),
      },
      'metric',
    ).replaceAll(/\s+/gu, ' ');
    expect(text).toContain('on at 18:34; the plate is ready between 19:14 and 19:32.');
    expect(text).toContain('7 min (likely 5 to 8 min), the next one straight after it. The crumb decides');
    expect(text).toContain('before the first pizza: 0.63 EUR at 0.3 EUR/kWh.');
    expect(text).not.toContain('Source:');
  });
  it('names the day of what is done before the day of the meal, and three changes that meet at most', () => {
    const one = { id: 'yeast', message: 'Take 3 g more.', change: [], gainsMinutes: 9, meets: true } as const;
    const text = fridgeText(
      {
        ...fixture,
        suggestions: [one, one, one, one, { ...one, message: 'Too little.', meets: false }],
        tasks: [
          {
            id: 'hands-mix',
            lane: 'hands',
            needs: ['hands'],
            waitsFor: [],
            name: 'Mix',
            from: '2026-01-30T20:15:00+01:00',
            to: '2026-01-30T20:30:00+01:00',
            step: 'Mix the dough.',
          },
        ],
      },
      'metric',
    );
    expect(text).toContain('  Fri 20:15  Mix the dough.');
    expect(text.split('To make dough and plate meet\n')[1]).toMatch(/^(- Take 3 g more\.\n){3}\nIf guests/u);
    const near = { ...fixture, suggestions: [{ ...one, message: 'Too little.', meets: false }] };
    expect(fridgeText(near, 'metric')).toContain('- Too little.');
  });
  it('says of an evening in time only what makes it surer', () => {
    const inTime = {
      id: 'in-time',
      message: 'All meets.',
      change: [],
      gainsMinutes: 9,
      meets: true,
    } as const;
    const sooner = { ...inTime, id: 'oven-earlier', message: 'Sooner.' } as const;
    const text = fridgeText({ ...fixture, suggestions: [inTime, sooner] }, 'metric');
    expect(text).toContain('To be surer\n- Sooner.\n\nIf guests');
    expect(text).not.toContain('meet');
    expect(fridgeText({ ...fixture, suggestions: [inTime] }, 'metric')).not.toContain('surer');
  });
  it('tells advice for a goal under its name, or that there is none', () => {
    const outcome = {
      preheatMinutes: 40,
      bakeMinutes: 6,
      eveningMinutes: 80,
      energyKWh: 2,
      baseLightness: 60,
      finishMinutes: 0,
      waterLeftOnTopG: 30,
    };
    const item = { what: 'hotter', message: 'Hotter: 5 min shorter.', change: [], after: outcome, gain: 5 };
    const told = (items: readonly (typeof item)[]): string =>
      fridgeText({ ...fixture, advice: { goal: 'sooner', before: outcome, items } }, 'metric');
    expect(told([item])).toContain('To be done sooner\n- Hotter: 5 min shorter.\n\nIf guests');
    expect(told([])).toContain('To be done sooner\n- Nothing that was tried');
    const based = { goal: 'sooner', before: outcome, basis: item, items: [item] } as const;
    expect(fridgeText({ ...fixture, advice: based }, 'metric')).toContain(
      '- Hotter: 5 min shorter.\n- Hotter: 5 min shorter.\n',
    );
  });
  it('stays within 80 columns, ends with one line break and has no blanks at line ends', () => {
    for (const units of ['metric', 'us'] as const) {
      const lines = fridgeText(fixture, units).split('\n');
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
      expect(lines.filter((line) => line !== line.trimEnd())).toEqual([]);
      expect(lines.at(-1)).toBe('');
      expect(lines.at(-2)).not.toBe('');
    }
  });
});

describe('the page', () => {
  it('breaks between words and lets a long word stand', () => {
    expect(wrap('a '.repeat(50)).map((line) => line.length)).toEqual([79, 19]);
    expect(wrap(`x ${'y'.repeat(90)}`, '- ')).toEqual(['- x', `  ${'y'.repeat(90)}`]);
    expect(wrap('   ')).toEqual([]);
  });
  it('lists and aligns', () => {
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
    expect(
      columns(
        [
          ['1 g', 'a'],
          ['10 g', 'b'],
        ],
        'right',
      ),
    ).toEqual(['   1 g  a', '  10 g  b']);
    expect(
      columns(
        [
          ['1 g', 'a'],
          ['10 g', 'b'],
        ],
        'left',
      ),
    ).toEqual(['  1 g   a', '  10 g  b']);
  });
});
