/**
 * Points on the clock without the engine's date object: plain arithmetic on milliseconds since 1970-01-01T00:00Z in
 * the proleptic Gregorian calendar (ISO 8601), which RFC 3339 prescribes. No time zone rules, only offsets.
 */
import type { Instant } from './evening.ts';

export type InstantRead =
  | { readonly ok: true; readonly instant: Instant }
  | { readonly ok: false; readonly problem: { readonly found: string; readonly allowed: string } };

const minute = 60_000;
const day = 86_400_000;
const form = 'an instant with its offset, such as "2026-01-31T19:30:00+01:00"';
const rfc3339 =
  /^(\d{4})-(\d{2})-(\d{2})[Tt ](\d{2}):(\d{2}):(\d{2})(\.\d+)?(?:([Zz])|([+-])(\d{2}):(\d{2}))$/u;

/**
 * Days from 1970-01-01 to a civil date. The year is taken to begin in March, so that the leap day is its last one;
 * 400 years have 146,097 days.
 */
export function daysFromCivil(year: number, month: number, dayOfMonth: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The civil date of a day counted from 1970-01-01: the inverse of `daysFromCivil`. */
export function civilFromDays(days: number): { year: number; month: number; day: number } {
  const shifted = days + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/** 28 to 31. @param month 1 to 12 */
export function daysInMonth(year: number, month: number): number {
  const [nextYear, nextMonth] = month === 12 ? [year + 1, 1] : [year, month + 1];
  return daysFromCivil(nextYear, nextMonth, 1) - daysFromCivil(year, month, 1);
}

/**
 * Reads an RFC 3339 instant (section 5.6): `T` and `Z` in either case, a space for the `T`, any number of fractional
 * digits (kept to the millisecond). Refused: other forms, dates that do not exist, years before 1970, leap seconds
 * (a plan has no use for them), offsets beyond a day.
 */
export function readInstant(text: string): InstantRead {
  const shown = JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text);
  const refuse = (allowed: string): InstantRead => ({ ok: false, problem: { found: shown, allowed } });
  const match = rfc3339.exec(text.trim());
  if (match === null) return refuse(form);
  const [year, month, dayOfMonth, hour, minutes, seconds] = match.slice(1, 7).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  if (year < 1970) return refuse('a year from 1970 to 9999');
  if (month < 1 || month > 12) return refuse('a month from 01 to 12');
  const last = daysInMonth(year, month);
  if (dayOfMonth < 1 || dayOfMonth > last)
    return refuse(`a day from 01 to ${last} in month ${match[2]!} of ${year}`);
  if (hour > 23) return refuse('an hour from 00 to 23');
  if (minutes > 59) return refuse('minutes from 00 to 59');
  if (seconds > 59) return refuse('seconds from 00 to 59');
  const [offsetHours, offsetRest] = [Number(match[10] ?? 0), Number(match[11] ?? 0)];
  if (offsetHours > 23 || offsetRest > 59) return refuse('an offset from -23:59 to +23:59');
  const size = offsetHours * 60 + offsetRest;
  const offsetMinutes = size === 0 ? 0 : match[9] === '-' ? -size : size;
  const fraction = Math.floor(Number(`0${match[7] ?? ''}`) * 1000);
  const local = daysFromCivil(year, month, dayOfMonth) * day + ((hour * 60 + minutes) * 60 + seconds) * 1000;
  return {
    ok: true,
    instant: { epochMilliseconds: local + fraction - offsetMinutes * minute, offsetMinutes },
  };
}

const two = (n: number): string => String(n).padStart(2, '0');

function local(instant: Instant): number {
  return instant.epochMilliseconds + instant.offsetMinutes * minute;
}

/** The instant of a text that this program wrote. @throws RangeError when it is none */
export function instantOf(text: string): Instant {
  const read = readInstant(text);
  if (!read.ok) throw new RangeError(`instant: found ${read.problem.found}; allowed ${read.problem.allowed}`);
  return read.instant;
}

/** min from one such text to the other. */
export function minutesBetween(from: string, to: string): number {
  return (instantOf(to).epochMilliseconds - instantOf(from).epochMilliseconds) / minute;
}

/** Writes RFC 3339 with the instant's own offset, to the nearest second: `2026-01-31T19:30:00+01:00`. */
export function writeInstant(instant: Instant): string {
  const seconds = Math.round(local(instant) / 1000);
  const days = Math.floor(seconds / 86_400);
  const rest = seconds - days * 86_400;
  const date = civilFromDays(days);
  const size = Math.abs(instant.offsetMinutes);
  const offset = `${instant.offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
  const time = `${two(Math.floor(rest / 3600))}:${two(Math.floor(rest / 60) % 60)}:${two(rest % 60)}`;
  return `${String(date.year).padStart(4, '0')}-${two(date.month)}-${two(date.day)}T${time}${offset}`;
}

/** Minutes since 1970 by the clock where the offset holds, to the nearest. */
function wallMinutes(instant: Instant): number {
  return Math.round(local(instant) / minute);
}

/** The time on a kitchen clock, to the nearest minute: `19:30`, or `7:30 pm` with twelve hours. */
export function showClock(instant: Instant, hours: 12 | 24 = 24): string {
  const ofDay = ((wallMinutes(instant) % 1440) + 1440) % 1440;
  const [hour, rest] = [Math.floor(ofDay / 60), two(ofDay % 60)];
  if (hours === 24) return `${two(hour)}:${rest}`;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${rest} ${hour < 12 ? 'am' : 'pm'}`;
}

const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

/** The day of the minute that `showClock` shows: half a minute before midnight is 00:00 of the next. 1970-01-01 was a Thursday. */
export function weekdayName(instant: Instant): (typeof weekdays)[number] {
  const days = Math.floor(wallMinutes(instant) / 1440);
  return weekdays[(((days + 4) % 7) + 7) % 7]!;
}

/** The calendar date of that minute: `2026-01-31`. */
export function dateOf(instant: Instant): string {
  const date = civilFromDays(Math.floor(wallMinutes(instant) / 1440));
  return `${String(date.year).padStart(4, '0')}-${two(date.month)}-${two(date.day)}`;
}

/** Minutes east of UTC that a wall clock keeps at a moment, ms since 1970-01-01T00:00Z. */
export type OffsetAt = (epochMilliseconds: number) => number;

/**
 * The clock on the wall through an evening whose plan knows one offset only: where the reader's clock keeps that offset
 * at the moment the plan names, it is taken to be the clock meant, and it may have been put forward or back since the
 * dough was begun.
 */
export function wallClock(named: Instant, readersClock: OffsetAt | undefined): OffsetAt {
  return readersClock?.(named.epochMilliseconds) === named.offsetMinutes
    ? readersClock
    : () => named.offsetMinutes;
}

/** The instant so many minutes later, shown with the same offset. */
export function addMinutes(instant: Instant, minutes: number): Instant {
  return { ...instant, epochMilliseconds: instant.epochMilliseconds + minutes * minute };
}

/**
 * The next time after `now` at which a clock that keeps `offsetMinutes` shows the time of day that `clock` shows
 * under its own offset.
 *
 * @param readersClock where it is put forward or back before that time, the time that it shows then
 */
export function nextRound(
  clock: Instant,
  now: number,
  offsetMinutes: number,
  readersClock?: OffsetAt,
): Instant {
  const timeOfDay = ((local(clock) % day) + day) % day;
  const today = Math.floor((now + offsetMinutes * minute) / day);
  const candidate = today * day + timeOfDay - offsetMinutes * minute;
  const epochMilliseconds = candidate > now ? candidate : candidate + day;
  const then = readersClock?.(epochMilliseconds) ?? offsetMinutes;
  return {
    epochMilliseconds: epochMilliseconds - (then - offsetMinutes) * minute,
    offsetMinutes: then,
  };
}
