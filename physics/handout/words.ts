/** Figures and moments of an answer in the words of whoever reads it: units, a clock of 12 or 24 hours, its own offset. */
import type { Range } from '../evening/answer.ts';
import { dateOf, instantOf, type OffsetAt, showClock, weekdayName } from '../evening/clock.ts';
import type { Instant } from '../evening/evening.ts';
import { durationText } from '../evening/steps.ts';
import {
  fromCelsius,
  heldTogether,
  inUnits,
  kept,
  showQuantity,
  type UnitSystem,
} from '../quantities/index.ts';

/** `19:30` in a sentence of the plan as `7:30 pm`. */
function twelveHours(text: string): string {
  return text.replaceAll(/\b([01]\d|2[0-3]):([0-5]\d)\b/gu, (_, hours: string, minutes: string) => {
    const epochMilliseconds = 60_000 * (60 * Number(hours) + Number(minutes));
    return showClock({ epochMilliseconds, offsetMinutes: 0 }, 12);
  });
}

/** Everything that depends on the units a cook reads. A no-break space holds a figure and its unit together. */
export interface Words {
  readonly at: (text: string) => Instant;
  readonly clock: (instant: Instant) => string;
  readonly clockOf: (text: string) => string;
  /** a sentence of the plan */
  readonly sentence: (text: string) => string;
  readonly minutes: (minutes: number) => string;
  readonly celsius: (celsius: number) => string;
  readonly kelvin: (kelvin: number) => string;
  readonly grams: (grams: number) => string;
  readonly length: (metres: number) => string;
}

/** @param offsetAt of the clock that is read; without it every moment keeps the offset it is written with */
export function wordsFor(units: UnitSystem, offsetAt?: OffsetAt): Words {
  const at = (text: string): Instant => {
    const instant = instantOf(text);
    return offsetAt === undefined
      ? instant
      : { ...instant, offsetMinutes: offsetAt(instant.epochMilliseconds) };
  };
  const clock = (instant: Instant): string => kept(showClock(instant, units === 'us' ? 12 : 24));
  const kelvin = (temperature: number): string => kept(showQuantity(temperature, 'temperature', units));
  return {
    at,
    clock,
    clockOf: (text) => clock(at(text)),
    sentence: (text) => heldTogether(inUnits(units === 'us' ? twelveHours(text) : text, units)),
    minutes: (minutes) => kept(durationText(60 * minutes)),
    celsius: (celsius) => kelvin(fromCelsius(celsius)),
    kelvin,
    grams: (grams) => kept(showQuantity(grams / 1000, 'mass', units)),
    length: (metres) => kept(showQuantity(metres, 'length', units)),
  };
}

/** `5 to 8 min`: whole minutes, since nobody knows them better. */
export function minutesRange([low, high]: Range): string {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? `about ${kept(`${from} min`)}` : `${from} to ${kept(`${to} min`)}`;
}

/** `6 min 20 s`, or from the shortest to the longest when they differ by more than a quarter of a minute. */
export function minutesSpan(minutes: readonly number[], words: Words): string {
  const [low, high] = [Math.min(...minutes), Math.max(...minutes)];
  if (high - low < 0.25) return words.minutes(minutes[0]!);
  const [from, to] = [words.minutes(low), words.minutes(high)];
  // `8 to 9 min` rather than `8 min to 9 min`.
  const bare = /^\d+(?=\u00a0min$)/u;
  return bare.test(to) ? `${bare.exec(from)?.[0] ?? from} to ${to}` : `${from} to ${to}`;
}

/**
 * The clock, with the day where it is not the day of the meal: a dough may be begun two days before, and with its date
 * where it is so long before that the same day of the week comes round.
 */
export function clockAround(eatAt: string, text: string, words: Words): string {
  const then = words.at(text);
  const eat = words.at(eatAt);
  const long = eat.epochMilliseconds - then.epochMilliseconds > 6 * 24 * 3.6e6;
  const day =
    dateOf(then) === dateOf(eat)
      ? ''
      : `${weekdayName(then).slice(0, 3)}\u00a0${long ? `${dateOf(then)}\u00a0` : ''}`;
  return `${day}${words.clock(then)}`;
}
