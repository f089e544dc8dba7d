import { parse, type DefaultTreeAdapterTypes } from 'parse5';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import type { HandoutFacts } from '../../../physics/handout/facts.ts';
import { paperOf } from '../../../physics/handout/paper.ts';
import { wallClock } from '../../../physics/evening/clock.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import { parsePlanText } from '../../../physics/evening/planText.ts';
import { acrossSummerTime, facts, hostileTitle, made, madeAt, zoneOffset } from '../../support/handout.ts';
import { textOf, within } from '../../support/markup.ts';

const saturday = facts(demos.saturday);

const read = (from: HandoutFacts): DefaultTreeAdapterTypes.Document => parse(made('page', from));
const text = (from: HandoutFacts): string => textOf(within(read(from), 'body')[0]!).replaceAll(/\s+/gu, ' ');
const captions = (from: HandoutFacts): readonly string[] => within(read(from), 'caption').map(textOf);

describe('the page to print', () => {
  it('holds the clock, the amounts, the table for other ovens and the cautions', () => {
    expect(captions(saturday)).toEqual([
      'By the clock',
      'The pizzas',
      'Amounts',
      'In other ovens of this kind',
    ]);
    const page = text(saturday);
    const clock = (instant: string): string =>
      new Intl.DateTimeFormat('en-GB', {
        timeZone: 'Europe/Berlin',
        hour: '2-digit',
        minute: '2-digit',
      }).format(Date.parse(instant) + 30_000);
    expect(page).toContain(`Switch the oven on, 250 °C${clock(saturday.answer.ovenOnAt)}`);
    expect(page).toContain('Eat19:30');
    expect(page).toContain('Saturday 2026-01-31');
    for (const { inAt, outAt } of saturday.answer.bakes) {
      expect(page).toContain(clock(inAt));
      expect(page).toContain(clock(outAt));
    }
    for (const { code, message } of saturday.answer.warnings)
      if (code !== 'figures-are-estimates') expect(page).toContain(message);
    expect(page).toContain(
      "The instructions of the oven's and the plate's makers and local rules come before",
    );
    expect(page).toContain('All figures are estimates');
  });

  it('is read with the units asked for, and with twelve hours', () => {
    const page = text({ ...saturday, units: 'us' });
    expect(page).toContain('482 °F');
    expect(page).toContain('Eat7:30 pm');
    expect(page).not.toMatch(/\d °C|\d (?:g|kg|cm|mm)\b|\b1[3-9]:\d\d(?! pm)/u);
  });

  it('says what is uncertain: the switching on for a fixed supper, else when the plate is ready', () => {
    expect(text(saturday)).toMatch(/18:4\dbetween 18:\d\d and 18:\d\d; the plate needs/u);
    const begun = facts(demos['same-evening'], { rows: [] });
    expect(text(begun)).toMatch(/plate ready between 1\d:\d\d and 19:\d\d; the plate needs/u);
  });

  it('asks for its paper and loads nothing', () => {
    const page = made('page', saturday);
    expect(page).toContain('@page { size: A4;');
    expect(made('page', { ...saturday, paper: 'letter' })).toContain('@page { size: Letter;');
    expect(page).not.toMatch(/<script|https?:|url\(|@import|src=|href=/u);
    expect(page).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
  });

  it('takes the title for text', () => {
    const root = read({ ...saturday, answer: { ...saturday.answer, title: hostileTitle } });
    expect(textOf(within(root, 'h1')[0]!)).toBe(hostileTitle);
    expect(textOf(within(root, 'title')[0]!)).toBe(hostileTitle);
    expect([within(root, 'b'), within(root, 'script')]).toEqual([[], []]);
  });

  it('names every cell of its tables', () => {
    const root = read(saturday);
    for (const cell of within(root, 'th')) expect(cell.attrs.map(({ name }) => name)).toContain('scope');
    expect(within(root, 'html')[0]!.attrs).toContainEqual({ name: 'lang', value: 'en' });
  });
});

describe('the clock on the wall', () => {
  it('is put forward in the night before supper', () => {
    const spring = facts(acrossSummerTime, {
      rows: saturday.rows,
      readersClock: zoneOffset('Europe/Berlin'),
    });
    const mix = spring.answer.tasks.find(({ id }) => id === 'mix')!;
    const wall = new Intl.DateTimeFormat('en-GB', {
      timeZone: 'Europe/Berlin',
      weekday: 'short',
      hour: '2-digit',
      minute: '2-digit',
    });
    const shown = wall.format(Math.round(Date.parse(mix.from) / 60_000) * 60_000);
    expect(shown).toMatch(/^Sat/u);
    expect(text(spring)).toContain(shown);
    expect(text(spring)).toContain('The clocks go forward by 60 min on the way');
    expect(text(saturday)).not.toContain('The clocks go');
  });

  it("is the plan's where the reader is elsewhere", () => {
    const eat = { epochMilliseconds: Date.UTC(2026, 2, 29, 17, 30), offsetMinutes: 120 };
    expect(wallClock(eat, zoneOffset('America/New_York'))(Date.UTC(2026, 2, 28))).toBe(120);
    expect(wallClock(eat, zoneOffset('Europe/Berlin'))(Date.UTC(2026, 2, 28))).toBe(60);
    expect(wallClock(eat, undefined)(Date.UTC(2026, 2, 28))).toBe(120);
  });
});

describe('the plan to send', () => {
  it('is read as the same evening', () => {
    const parsed = parsePlanText(made('plan', saturday));
    if (!parsed.ok) throw new Error('the plan does not read');
    const plan = readPlanObject(parsed.file, { now: madeAt });
    expect(plan.ok && plan.evening).toEqual(saturday.evening);
  });
});

describe('paper', () => {
  it.each([
    ['US', 'letter'],
    ['ca', 'letter'],
    ['DE', 'a4'],
    [undefined, 'a4'],
  ])('of %s is %s', (region, paper) => {
    expect(paperOf(region)).toBe(paper);
  });
});
