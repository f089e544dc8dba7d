import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addMinutes,
  civilFromDays,
  dateOf,
  daysFromCivil,
  daysInMonth,
  instantOf,
  nextRound,
  readInstant,
  showClock,
  weekdayName,
  writeInstant,
} from '../../../physics/evening/clock.ts';

const at = instantOf;

describe('reading RFC 3339', () => {
  // RFC 3339, section 5.8, the examples that are not leap seconds, and what it says of them.
  it('reads the examples of the standard', () => {
    expect(at('1985-04-12T23:20:50.52Z').epochMilliseconds).toBe(Date.UTC(1985, 3, 12, 23, 20, 50, 520));
    expect(at('1996-12-19T16:39:57-08:00').epochMilliseconds).toBe(
      at('1996-12-20T00:39:57Z').epochMilliseconds,
    );
  });
  it('takes lower case, a space and unknown offsets (section 5.6, section 4.3)', () => {
    const same = ['2026-01-31T18:30:00Z', '2026-01-31t18:30:00z', '2026-01-31 18:30:00-00:00'];
    for (const text of same)
      expect(at(text)).toEqual({ epochMilliseconds: 1_769_884_200_000, offsetMinutes: 0 });
  });
  it.each([
    ['2026-02-29T10:00:00Z', 'a day from 01 to 28 in month 02 of 2026'],
    ['1900-02-29T10:00:00Z', 'a year from 1970 to 9999'],
    ['2100-02-29T10:00:00Z', 'a day from 01 to 28 in month 02 of 2100'],
    ['2026-04-31T10:00:00Z', 'a day from 01 to 30 in month 04 of 2026'],
    ['2026-13-01T10:00:00Z', 'a month from 01 to 12'],
    ['2026-00-10T10:00:00Z', 'a month from 01 to 12'],
    ['2026-01-00T10:00:00Z', 'a day from 01 to 31 in month 01 of 2026'],
    ['2026-01-31T24:00:00Z', 'an hour from 00 to 23'],
    ['2026-01-31T10:60:00Z', 'minutes from 00 to 59'],
    ['1990-12-31T23:59:60Z', 'seconds from 00 to 59'],
    ['2026-01-31T10:00:00+24:00', 'an offset from -23:59 to +23:59'],
    ['2026-01-31T10:00:00', 'an instant with its offset'],
    ['2026-01-31', 'an instant with its offset'],
    ['19:30', 'an instant with its offset'],
    ['2026-1-31T10:00:00Z', 'an instant with its offset'],
    ['', 'an instant with its offset'],
  ])('refuses %j', (text, allowed) => {
    const read = readInstant(text);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem.allowed).toContain(allowed);
  });
});

describe('the calendar', () => {
  it('counts leap years as ISO 8601 does', () => {
    expect([2000, 2024, 2100, 2400].map((year) => daysInMonth(year, 2))).toEqual([29, 29, 28, 29]);
    expect(daysFromCivil(1970, 1, 1)).toBe(0);
  });
  it('agrees with the engine on every day of 130 years and on what falls between', () => {
    for (let days = 0; days < 130 * 366; days += 1) {
      const date = new Date(days * 86_400_000);
      const civil = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
      if (days % 7 === 0) expect(civilFromDays(days)).toEqual(civil);
      if (daysFromCivil(civil.year, civil.month, civil.day) !== days) expect.fail(`day ${days}`);
    }
  });
  it('writes and reads back any second of any offset, agreeing with the engine', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 86_400, max: 200_000_000_000 }),
        fc.integer({ min: -1439, max: 1439 }),
        (seconds, offsetMinutes) => {
          const instant = { epochMilliseconds: seconds * 1000, offsetMinutes };
          const text = writeInstant(instant);
          expect(at(text)).toEqual(instant);
          expect(Date.parse(text)).toBe(instant.epochMilliseconds);
        },
      ),
      { seed: 20_260_131 },
    );
  });
});

describe('showing', () => {
  it('shows clocks of both kinds, weekdays and dates where the offset holds', () => {
    const supper = at('2026-01-31T19:30:00+01:00');
    expect(showClock(supper)).toBe('19:30');
    expect(showClock(supper, 12)).toBe('7:30 pm');
    expect(showClock(at('2026-01-31T00:05:00-05:00'), 12)).toBe('12:05 am');
    expect(showClock(at('2026-01-31T12:00:00-05:00'), 12)).toBe('12:00 pm');
    expect(showClock(at('2026-01-31T23:59:40Z'))).toBe('00:00');
    expect(weekdayName(supper)).toBe('Saturday');
    expect(weekdayName(at('2026-01-31T23:30:00-05:00'))).toBe('Saturday');
    expect(weekdayName({ ...at('2026-01-31T23:30:00-05:00'), offsetMinutes: 0 })).toBe('Sunday');
    expect(dateOf(at('2026-01-31T23:30:00-05:00'))).toBe('2026-01-31');
    expect(writeInstant(addMinutes(supper, 330))).toBe('2026-02-01T01:00:00+01:00');
  });
  it('shows the day of the minute that is shown: 20 s before midnight is 00:00 of the next day', () => {
    const almost = at('2026-01-31T23:59:40+01:00');
    expect([showClock(almost), weekdayName(almost), dateOf(almost)]).toEqual([
      '00:00',
      'Sunday',
      '2026-02-01',
    ]);
    const before = at('2026-01-31T23:59:20+01:00');
    expect([showClock(before), weekdayName(before), dateOf(before)]).toEqual([
      '23:59',
      'Saturday',
      '2026-01-31',
    ]);
  });
  it('finds the next time a clock comes round', () => {
    const clock = at('2026-01-31T19:30:00+01:00');
    const next = (now: string, offset: number): string =>
      writeInstant(nextRound(clock, at(now).epochMilliseconds, offset));
    expect(next('2026-11-25T09:00:00Z', 60)).toBe('2026-11-25T19:30:00+01:00');
    expect(next('2026-11-25T19:30:00+01:00', 60)).toBe('2026-11-26T19:30:00+01:00');
    expect(next('2026-11-25T23:00:00-05:00', -300)).toBe('2026-11-26T19:30:00-05:00');
    expect(next('2026-12-31T20:00:00Z', 0)).toBe('2027-01-01T19:30:00+00:00');
  });
});

describe('a clock that is put forward before the next round', () => {
  it('comes round at the time that it shows then', () => {
    // Put forward at 01:00Z on 29 March 2026 (Directive 2000/84/EC), asked the evening before.
    const change = Date.UTC(2026, 2, 29, 1);
    const clock = (epoch: number): number => (epoch >= change ? 120 : 60);
    const asked = at('2026-03-28T20:00:00+01:00').epochMilliseconds;
    const supper = at('2026-01-31T19:30:00+01:00');
    expect(writeInstant(nextRound(supper, asked, 60, clock))).toBe('2026-03-29T19:30:00+02:00');
    expect(writeInstant(nextRound(supper, asked, 60))).toBe('2026-03-29T19:30:00+01:00');
    // An hour that the clock leaves out that night, and one that it shows twice in October: it comes round once.
    const night = at('2026-01-31T02:30:00+01:00');
    const left = nextRound(night, asked, 60, clock).epochMilliseconds;
    expect(left).toBeGreaterThan(asked);
    expect(left - asked).toBeLessThan(24 * 3_600_000);
    const back = Date.UTC(2026, 9, 25, 1);
    const autumn = (epoch: number): number => (epoch >= back ? 60 : 120);
    const before = at('2026-10-24T20:00:00+02:00').epochMilliseconds;
    expect(writeInstant(nextRound(supper, before, 120, autumn))).toBe('2026-10-25T19:30:00+01:00');
    const twice = writeInstant(nextRound(night, before, 120, autumn));
    expect(['2026-10-25T02:30:00+02:00', '2026-10-25T02:30:00+01:00']).toContain(twice);
  });
});

it('a text of ours that is no instant is our fault', () => {
  expect(() => at('tomorrow')).toThrow(/^instant: found "tomorrow"; allowed /u);
});
