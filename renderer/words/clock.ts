/** Clock times and spans as a person says them. Instants are milliseconds; the evening's own offset shows them. */

const minute = 60_000;

/** An RFC 3339 instant as milliseconds; NaN never leaves: whoever sends an unreadable time hears of it. */
export function epochOf(instant: string): number {
  const epoch = Date.parse(instant);
  if (Number.isNaN(epoch)) throw new RangeError(`time: found ${instant}; allowed an RFC 3339 instant`);
  return epoch;
}

/** Minutes east of Greenwich that an RFC 3339 instant is written with. */
export function offsetOf(instant: string): number {
  const written = /([+-])(\d\d):(\d\d)$/.exec(instant);
  if (written === null) return 0;
  const size = Number(written[2]) * 60 + Number(written[3]);
  return written[1] === '-' ? -size : size;
}

/** The offset that this machine's zone has at an instant. */
export function localOffset(epoch: number): number {
  return -new Date(epoch).getTimezoneOffset();
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

/** RFC 3339 with an offset, to the second. */
export function instantText(epoch: number, offset: number): string {
  const wall = new Date(epoch + offset * minute).toISOString().slice(0, 19);
  const size = Math.abs(offset);
  return `${wall}${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

// The wall clock of the evening is that of its offset: shift the instant and show it as if it were UTC.
function shifted(epoch: number, offset: number): Date {
  return new Date(epoch + offset * minute);
}

const clockFormat = new Intl.DateTimeFormat(undefined, {
  timeZone: 'UTC',
  hour: 'numeric',
  minute: '2-digit',
});
const dayFormat = new Intl.DateTimeFormat(undefined, {
  timeZone: 'UTC',
  weekday: 'short',
  day: 'numeric',
  month: 'short',
});

/** Whether this machine's habit is twelve hours with a day period. */
export const twelveHours = clockFormat.resolvedOptions().hour12 === true;

/** To the nearest minute, as the handouts and the terminal show what is planned. */
function nearest(epoch: number): number {
  return Math.round(epoch / minute) * minute;
}

/** `17:42`, or `5:42 PM` where that is the habit. */
export function clockText(epoch: number, offset: number): string {
  return clockFormat.format(shifted(nearest(epoch), offset));
}

/** The same of what has happened: a clock on the wall never showed the minute after. */
export function pastClockText(epoch: number, offset: number): string {
  return clockFormat.format(shifted(epoch, offset));
}

/** The clock in two sizes: the figures large, the day period small. */
export function clockParts(epoch: number, offset: number): { figures: string; period: string } {
  const parts = clockFormat.formatToParts(shifted(nearest(epoch), offset));
  const period = parts.find(({ type }) => type === 'dayPeriod')?.value ?? '';
  const figures = parts
    .filter(({ type }) => type === 'hour' || type === 'minute' || type === 'literal')
    .map(({ value }) => value)
    .join('')
    .trim();
  return { figures, period };
}

/** `Sat 31 Jan` */
export function dayText(epoch: number, offset: number): string {
  return dayFormat.format(shifted(epoch, offset));
}

const weekdayFormat = new Intl.DateTimeFormat(undefined, { timeZone: 'UTC', weekday: 'short' });

/**
 * `17:42` on the day of `now`, `Sun 17:42` on any other: for what may lie on the other side of midnight.
 *
 * @param offsetAt minutes east of UTC that the clock on the wall keeps at a moment
 */
export function clockNear(epoch: number, now: number, offsetAt: (epoch: number) => number): string {
  const dayOf = (at: number): number => Math.floor((at + offsetAt(at) * minute) / 86_400_000);
  // Half a minute before midnight is shown as 00:00, which is the next day's.
  const minuteShown = nearest(epoch);
  const text = clockText(epoch, offsetAt(epoch));
  return dayOf(minuteShown) === dayOf(now)
    ? text
    : `${weekdayFormat.format(shifted(minuteShown, offsetAt(epoch)))} ${text}`;
}

/** `2026-01-31` and `19:30`, for the fields of day and time. */
export function wallFields(epoch: number, offset: number): { day: string; time: string } {
  const wall = shifted(epoch, offset).toISOString();
  return { day: wall.slice(0, 10), time: wall.slice(11, 16) };
}

/** The instant of a wall time in an offset; undefined when the text is no such time. */
export function epochOfWall(day: string, time: string, offset: number): number | undefined {
  const epoch = Date.parse(`${day}T${time}:00Z`);
  return Number.isNaN(epoch) ? undefined : epoch - offset * minute;
}

/** `19:30`, `19.30`, `1930`, `7:30 pm`, `7 pm` as hours and minutes; undefined for anything else. */
export function wallTimeOf(text: string): string | undefined {
  const match = /^(\d{1,2})(?:[:.h]?(\d{2}))?\s*([ap])?\.?(?:m\.?)?$/iu.exec(text.trim());
  if (match === null) return undefined;
  const half = match[3]?.toLowerCase();
  const said = Number(match[1]);
  if (half !== undefined && (said < 1 || said > 12)) return undefined;
  const hour = half === undefined ? said : (said % 12) + (half === 'p' ? 12 : 0);
  const minute = Number(match[2] ?? 0);
  if (hour > 23 || minute > 59) return undefined;
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}

export interface SpanPart {
  readonly figure: string;
  readonly unit: string;
}

/**
 * A span with as many figures as it deserves: tens of seconds below ten minutes, whole minutes below two hours, then
 * hours and minutes.
 */
export function spanParts(minutes: number): readonly SpanPart[] {
  if (minutes < 10) {
    const tens = Math.round(minutes * 6) * 10;
    const whole = Math.floor(tens / 60);
    const seconds = tens % 60;
    const parts: SpanPart[] = [];
    if (whole > 0 || seconds === 0) parts.push({ figure: String(whole), unit: 'min' });
    if (seconds > 0) parts.push({ figure: String(seconds), unit: 's' });
    return parts;
  }
  const rounded = Math.round(minutes);
  if (rounded < 120) return [{ figure: String(rounded), unit: 'min' }];
  const parts: SpanPart[] = [{ figure: String(Math.floor(rounded / 60)), unit: 'h' }];
  if (rounded % 60 > 0) parts.push({ figure: String(rounded % 60), unit: 'min' });
  return parts;
}

export function spanText(minutes: number): string {
  return spanParts(minutes)
    .map(({ figure, unit }) => `${figure} ${unit}`)
    .join(' ');
}

/** `5½ to 8 min`: halves below twenty minutes, whole minutes above. */
export function spanRangeText(low: number, high: number): string {
  const from = halvesText(low);
  const to = halvesText(high);
  return from === to ? `about ${to} min` : `${from} to ${to} min`;
}

/** `5½`: halves below twenty minutes, whole minutes above. */
export function halvesText(minutes: number): string {
  if (minutes >= 20) return String(Math.round(minutes));
  const doubled = Math.round(minutes * 2);
  const whole = Math.floor(doubled / 2);
  if (doubled % 2 === 0) return String(whole);
  return whole === 0 ? '½' : `${String(whole)}½`;
}
