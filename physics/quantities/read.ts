/** Text of a cook to SI. */
import { numberStart, readNumber } from './number.ts';
import { addsUp, kindExample, toSI, unitFor, type QuantityKind } from './units.ts';

export interface QuantityProblem {
  readonly found: string;
  readonly allowed: string;
}

export type QuantityRead =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly problem: QuantityProblem };

export interface ReadOptions {
  /** the unit that a bare number takes; without it a bare number is refused */
  readonly bareUnit?: string;
}

const longest = 60;
const clock = /(\d+):([0-5]\d)(?::([0-5]\d))?\s*([a-z]+)$/iuy;

function refuse(found: string, allowed: string): QuantityRead {
  return { ok: false, problem: { found, allowed } };
}

/** `1:30 h` = 1 h 30 min, `1:30:20 h`, `6:20 min` = 6 min 20 s; `undefined` when the text is nothing of the sort. */
function readClock(text: string): number | undefined {
  clock.lastIndex = 0;
  const match = clock.exec(text);
  if (match === null) return undefined;
  const unit = unitFor(match[4]!, 'duration');
  const [first, second, third] = [Number(match[1]), Number(match[2]), match[3]];
  if (unit === 'h') return first * 3600 + second * 60 + Number(third ?? 0);
  return unit === 'min' && third === undefined ? first * 60 + second : undefined;
}

/**
 * Reads a quantity into SI: metre, kilogram, kelvin (absolute for `temperature`, a difference for
 * `temperatureDifference`), watt, second, W/(m K), J/(kg K), kg/m3.
 *
 * Numbers: `9.5`, `12,7`, `3/8`, `1 1/2`, `½`, `1e3`; `1,234` can be read in two ways and is refused. Units with or
 * without a space before them. Lengths, masses and durations add up: `1 h 30 min`, `1 lb 4 oz`.
 * Refused with what was found and what is allowed: nothing, no number, no unit (unless `bareUnit`), a unit of
 * another dimension, anything not finite, a temperature below absolute zero.
 */
export function readQuantity(text: string, kind: QuantityKind, options: ReadOptions = {}): QuantityRead {
  const allowed = kindExample(kind);
  const trimmed = text.trim().replaceAll(/[\u00a0\u202f\u2009]/gu, ' ');
  const shown = JSON.stringify(trimmed.length > longest ? `${trimmed.slice(0, longest)}…` : trimmed);
  if (trimmed === '') return refuse('nothing', allowed);
  if (trimmed.length > longest) return refuse(shown, allowed);

  if (kind === 'duration') {
    const seconds = readClock(trimmed);
    if (seconds !== undefined) return { ok: true, value: seconds };
  }
  const sign = /^[+\-−]/u.exec(trimmed);
  const factor = sign !== null && sign[0] !== '+' ? -1 : 1;
  let rest = sign === null ? trimmed : trimmed.slice(1).trimStart();
  let sum = 0;
  let smallest = Infinity;
  for (let part = 0; rest !== ''; part += 1) {
    const number = readNumber(rest, 0);
    if (number === undefined) return refuse(shown, allowed);
    if (number.ambiguous === true)
      return refuse(
        `${shown}, which can be read in two ways`,
        `${rest.slice(0, number.end).replace(',', '')} or ${rest.slice(0, number.end).replace(',', '.')}, written without a comma`,
      );
    if (!Number.isFinite(number.value)) return refuse(`${shown}, which is not a finite number`, allowed);
    rest = rest.slice(number.end).trimStart();
    const next = addsUp(kind) ? rest.search(numberStart) : -1;
    let word = (next === -1 ? rest : rest.slice(0, next)).trim();
    rest = next === -1 ? '' : rest.slice(next);
    if (word === '' && part === 0 && rest === '') {
      if (options.bareUnit === undefined) return refuse(`${shown} without a unit`, allowed);
      word = options.bareUnit;
    }
    const unit = unitFor(word, kind);
    if (unit === undefined) return refuse(shown, allowed);
    const oneUnit = kind === 'temperature' ? 0 : toSI(1, unit, kind);
    // `30 min 1 h` and `5 min 5 min` are slips of the pen rather than durations.
    if (part > 0 && oneUnit >= smallest) return refuse(shown, allowed);
    smallest = oneUnit;
    sum += toSI(part === 0 && kind === 'temperature' ? factor * number.value : number.value, unit, kind);
  }
  if (!Number.isFinite(sum)) return refuse(`${shown}, which is not a finite number`, allowed);
  if (smallest === Infinity) return refuse(shown, allowed);
  if (kind !== 'temperature') return { ok: true, value: factor * sum };
  return sum < 0
    ? refuse(shown, 'a temperature above absolute zero, -273.15 degC')
    : { ok: true, value: sum };
}

/** SI of a text of ours, or of one that was read before. @throws RangeError when it is none of that kind */
export function quantityOf(text: string, kind: QuantityKind): number {
  const read = readQuantity(text, kind);
  if (!read.ok) throw new RangeError(`${kind}: found ${read.problem.found}; allowed ${read.problem.allowed}`);
  return read.value;
}
