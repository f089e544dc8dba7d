/**
 * What the cook does, as events of a calendar with alarms: iCalendar, RFC 5545. Every time is in UTC, so that no zone
 * has to be told and a change of summer time moves nothing.
 */
import { civilFromDays, dateOf, instantOf } from '../evening/clock.ts';
import type { HandoutFacts } from './facts.ts';
import { doneTasks, taskName } from './recipe.ts';
import type { Words } from './words.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** RFC 5545, 3.3.5, form 2: `20260131T183000Z`, to the nearest second. */
export function utcTime(epochMilliseconds: number): string {
  const seconds = Math.round(epochMilliseconds / 1000);
  const days = Math.floor(seconds / 86_400);
  const rest = seconds - 86_400 * days;
  const { year, month, day } = civilFromDays(days);
  const date = `${String(year).padStart(4, '0')}${two(month)}${two(day)}`;
  return `${date}T${two(Math.floor(rest / 3600))}${two(Math.floor(rest / 60) % 60)}${two(rest % 60)}Z`;
}

/** RFC 5545, 3.3.11. Control characters besides the line break have no place in a text. */
export function calendarText(text: string): string {
  return text
    .replaceAll(/\r\n?/gu, '\n')
    .replaceAll(/[\u0000-\u0009\u000b-\u001f\u007f]/gu, ' ')
    .replaceAll(/[\\;,]/gu, '\\$&')
    .replaceAll('\n', '\\n')
    .replaceAll('\u00a0', ' ');
}

function utf8Length(character: string): number {
  const code = character.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
}

/** RFC 5545, 3.1: lines of at most 75 octets, none broken inside a character. */
export function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const size = utf8Length(character);
    if (octets + size > 75) {
      out += '\r\n ';
      octets = 1;
    }
    out += character;
    octets += size;
  }
  return out;
}

/** FNV-1a in two lanes of 32 bits: no secret, only a name that stays the same. */
function hash(text: string): string {
  let [a, b] = [0x811c9dc5, 0xc9dc5118];
  for (const character of text) {
    const code = character.codePointAt(0)!;
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ (code + 0x9e37), 0x01000193);
  }
  return [a, b].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('');
}

/** The alarm at the moment itself, and one before for whoever is not in the kitchen yet. */
const warning = { minutes: 5, afterPause: 15 * 60_000 } as const;
/** 2020-01-01T00:00Z: from here a number of 31 bits lasts until 2088. */
const sequenceFrom = 1_577_836_800;

function alarm(uid: string, trigger: string, text: string): readonly string[] {
  return [
    'BEGIN:VALARM',
    // RFC 9074, 4: an alarm that can be told from the others, so that acknowledging it is remembered.
    `UID:${uid}`,
    'ACTION:DISPLAY',
    `TRIGGER:${trigger}`,
    `DESCRIPTION:${calendarText(text)}`,
    'END:VALARM',
  ];
}

/**
 * One event for each thing the cook does. The UIDs are made of the evening's title, its day and the task: an evening
 * that is planned anew and imported again moves its events. `SEQUENCE` rises with every export.
 */
export function calendar(facts: HandoutFacts, words: Words): string {
  const { answer, now } = facts;
  const name = hash(`${answer.title}\n${dateOf(instantOf(answer.eatAt))}`);
  const stamp = utcTime(now);
  const sequence = Math.max(0, Math.floor(now / 1000) - sequenceFrom);
  let busyUntil = -Infinity;
  const events = doneTasks(facts).flatMap(({ id, name: called, from, to, step, lane }) => {
    const [begin, end] = [from, to].map((text) => instantOf(text).epochMilliseconds) as [number, number];
    const uid = (of: string): string => `${name}-${of}@hearthclock`;
    const summary = taskName({ id, name: called, step });
    const away = begin - busyUntil > warning.afterPause;
    // The oven heats by itself: only handwork keeps the cook in the kitchen.
    busyUntil = Math.max(busyUntil, lane === 'hands' ? end : begin);
    return [
      'BEGIN:VEVENT',
      `UID:${uid(id)}`,
      `DTSTAMP:${stamp}`,
      `DTSTART:${utcTime(begin)}`,
      `DTEND:${utcTime(end)}`,
      `SEQUENCE:${sequence}`,
      `SUMMARY:${calendarText(summary)}`,
      `DESCRIPTION:${calendarText(`${words.sentence(step)}.\n${answer.title}`)}`,
      ...(away
        ? alarm(uid(`${id}-before`), `-PT${warning.minutes}M`, `In ${warning.minutes} min: ${summary}`)
        : []),
      ...alarm(uid(`${id}-now`), 'PT0S', summary),
      'END:VEVENT',
    ];
  });
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Hearthclock//Evening//EN',
    'CALSCALE:GREGORIAN',
    ...events,
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}
