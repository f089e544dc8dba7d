import ICAL from 'ical.js';
import ical from 'node-ical';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import { calendarText, folded, utcTime } from '../../../physics/handout/calendar.ts';
import {
  acrossSummerTime,
  facts,
  hostile,
  hostileTitle,
  made,
  madeAt,
  zoneOffset,
} from '../../support/handout.ts';

const saturday = facts(demos.saturday);
const spring = facts(acrossSummerTime, { readersClock: zoneOffset('Europe/Berlin') });

interface Event {
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly start: number;
  readonly end: number;
  /** s before (negative) the start, with the action and the text */
  readonly alarms: readonly (readonly [seconds: number, action: string, text: string])[];
}

const property = (component: ICAL.Component, name: string): string =>
  String(component.getFirstPropertyValue(name));

/** Read by ical.js, a parser of RFC 5545 that knows nothing of us. */
function byIcalJs(text: string): readonly Event[] {
  const root = new ICAL.Component(ICAL.parse(text) as unknown[]);
  return root.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      start: event.startDate.toJSDate().getTime(),
      end: event.endDate.toJSDate().getTime(),
      alarms: component
        .getAllSubcomponents('valarm')
        .map(
          (alarm) =>
            [
              (alarm.getFirstPropertyValue('trigger') as ICAL.Duration).toSeconds(),
              property(alarm, 'action'),
              property(alarm, 'description'),
            ] as const,
        ),
    };
  });
}

const durations: Readonly<Record<string, number>> = { PT0S: 0, '-PT5M': -300 };

/** A text with parameters comes as an object; ours have none. */
function plainText(value: unknown): string {
  if (typeof value !== 'string') throw new Error(`calendar: found ${JSON.stringify(value)}; allowed a text`);
  return value;
}

/** Read by node-ical, written independently of the other. */
function byNodeIcal(text: string): readonly Event[] {
  return Object.values(ical.sync.parseICS(text)).flatMap((entry) => {
    if (entry?.type !== 'VEVENT') return [];
    // Alarms with a UID stand under it in their event.
    const alarms = Object.values(entry as object).filter(
      (part: unknown): part is Readonly<Record<string, string>> =>
        typeof part === 'object' && part !== null && 'type' in part && part.type === 'VALARM',
    );
    return [
      {
        uid: entry.uid,
        summary: plainText(entry.summary),
        description: plainText(entry.description),
        start: entry.start.getTime(),
        end: entry.end!.getTime(),
        alarms: alarms.map(
          ({ trigger, action, description }) =>
            [durations[trigger!] ?? Number.NaN, String(action), String(description)] as const,
        ),
      },
    ];
  });
}

const readers = [
  ['ical.js', byIcalJs],
  ['node-ical', byNodeIcal],
] as const;

describe.each(readers)('the calendar as %s reads it', (_, read) => {
  it('holds each thing the cook does at the moment of the plan, with its words', () => {
    const events = read(made('calendar', saturday));
    const tasks = saturday.answer.tasks.filter(({ step }) => step !== undefined);
    expect(events).toHaveLength(tasks.length);
    for (const [index, { from, to, step }] of tasks.entries()) {
      const event = events[index]!;
      expect([event.start, event.end]).toEqual([Date.parse(from), Date.parse(to)]);
      expect(event.description).toBe(`${step!}.\n${demos.saturday.title}`);
      expect(event.uid).toMatch(/@hearthclock$/u);
    }
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  });

  it('keeps its alarms: one at the moment, one before where the cook may be elsewhere', () => {
    const events = read(made('calendar', saturday));
    for (const { alarms, summary } of events) expect(alarms.at(-1)).toEqual([0, 'DISPLAY', summary]);
    const warned = events.filter(({ alarms }) => alarms.length === 2);
    for (const { alarms, summary } of warned)
      expect(alarms[0]).toEqual([-300, 'DISPLAY', `In 5 min: ${summary}`]);
    expect(warned.map(({ summary }) => summary)).toEqual(
      expect.arrayContaining(['Mix the dough', 'Divide and ball the dough', 'Switch the oven on']),
    );
    // Between two pizzas nobody is elsewhere.
    expect(warned.some(({ summary }) => summary.startsWith('Pizza'))).toBe(false);
  });

  it('is right across a change of summer time', () => {
    const events = read(made('calendar', spring));
    const ball = events.find(({ summary }) => summary === 'Divide and ball the dough')!;
    const mix = events.find(({ summary }) => summary === 'Mix the dough')!;
    // 24 h in the refrigerator are 24 h, whatever the clock on the wall shows.
    expect(ball.start - mix.end).toBeGreaterThanOrEqual(24 * 3_600_000 - 600_000);
    const cut = events.find(({ summary }) => summary === 'Pizza 1 out, and cut it')!;
    expect(cut.end).toBe(Date.UTC(2026, 2, 29, 17, 30));
    expect(mix.start).toBeLessThan(Date.UTC(2026, 2, 29, 1));
  });

  it('takes hostile text for text', () => {
    const [first] = read(
      made('calendar', { ...saturday, answer: { ...saturday.answer, title: hostileTitle } }),
    );
    expect(first!.description.split('\n')[1]).toBe(hostile.title);
  });
});

describe('the calendar by RFC 5545', () => {
  const text = made('calendar', saturday);
  const lines = text.split('\r\n');

  it('ends every line with CRLF and has none beyond 75 octets (3.1)', () => {
    expect(lines.at(-1)).toBe('');
    for (const line of lines) {
      expect(line).not.toMatch(/[\r\n]/u);
      expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    }
    expect(lines.some((line) => line.startsWith(' '))).toBe(true);
  });

  it('has what is required of calendar, event and alarm (3.6, 3.6.1, 3.6.6; alarm UID: RFC 9074, 4)', () => {
    const unfolded = text.replaceAll('\r\n ', '').split('\r\n');
    expect(unfolded.slice(0, 3)).toEqual([
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:-//Hearthclock//Evening//EN',
    ]);
    const count = (start: string): number => unfolded.filter((line) => line.startsWith(start)).length;
    const [events, alarms] = [count('BEGIN:VEVENT'), count('BEGIN:VALARM')];
    for (const name of ['DTSTAMP:20260120T120000Z', 'DTSTART:2026', 'DTEND:2026', 'SEQUENCE:', 'SUMMARY:'])
      expect(count(name)).toBe(events);
    for (const name of ['ACTION:DISPLAY', 'TRIGGER:']) expect(count(name)).toBe(alarms);
    expect(count('DESCRIPTION:')).toBe(events + alarms);
    const uids = unfolded.filter((line) => line.startsWith('UID:'));
    expect(new Set(uids).size).toBe(events + alarms);
  });

  it('keeps the UIDs of an evening that is planned anew, and raises the sequence', () => {
    const later = {
      ...demos.saturday,
      anchor: { kind: 'eatAt', time: '2026-01-31T20:15:00+01:00' },
    } as const;
    const again = made('calendar', facts(later, { now: madeAt + 5000, rows: saturday.rows }));
    const of = (calendar: string, name: string): string[] =>
      calendar.replaceAll('\r\n ', '').match(new RegExp(`^${name}:.*$`, 'gmu')) ?? [];
    expect(of(again, 'UID').sort()).toEqual(of(text, 'UID').sort());
    expect(of(again, 'DTSTART')).not.toEqual(of(text, 'DTSTART'));
    const sequence = (calendar: string): number => Number(of(calendar, 'SEQUENCE')[0]!.slice(9));
    expect(sequence(again) - sequence(text)).toBe(5);
  });

  it('folds between characters, never inside one, and unfolds to the same', () => {
    for (const line of ['ü'.repeat(80), `${'a'.repeat(74)}😀😀`, `${'a'.repeat(75)}b`]) {
      const parts = folded(line).split('\r\n');
      expect(parts.length).toBeGreaterThan(1);
      for (const part of parts) expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
      expect(folded(line).replaceAll('\r\n ', '')).toBe(line);
    }
    expect(folded('a'.repeat(75))).toBe('a'.repeat(75));
  });

  it('escapes backslash, semicolon, comma and line break (3.3.11)', () => {
    expect(calendarText('a\\b;c,d\r\ne\u0007')).toBe('a\\\\b\\;c\\,d\\ne ');
  });

  it.each([
    [Date.UTC(1997, 6, 14, 17, 30), '19970714T173000Z', 'RFC 5545, 3.3.5, second example in UTC'],
    [Date.UTC(1998, 0, 19, 7), '19980119T070000Z', 'RFC 5545, 3.3.5, form 2'],
    [Date.UTC(2024, 1, 29, 23, 59, 59, 600), '20240301T000000Z', 'to the nearest second, over a leap day'],
  ])('writes %d as %s: %s', (epoch, expected) => {
    expect(utcTime(epoch)).toBe(expected);
  });
});
