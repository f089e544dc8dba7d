/** What a field shows: the text as typed where its unit is one of those shown, else the same quantity converted. */
import {
  readQuantity,
  showQuantity,
  type QuantityKind,
  type UnitSystem,
} from '../../physics/quantities/index.ts';
import { factsOf } from './fields.ts';
import { refusalText } from '../words/refusal.ts';

const american = /(?:°?F|F degrees|in|inch|inches|ft|feet|oz|lbs?|BTU\S*|["'″′”’½¼¾]|degF)$/u;
const metric = /(?:°?C|degC|mm|cm|m|g|kg|J\S*.*|W\/.*|kg\/m\S*|K)$/u;
/** Units that both habits share. */
const common: ReadonlySet<QuantityKind> = new Set(['duration', 'power']);

const pretty: Readonly<Record<string, string>> = { degC: '°C', degF: '°F' };

/** The unit that the field shows, and that a bare number takes. */
export function shownUnit(path: string, units: UnitSystem): string {
  const unit = factsOf(path).units?.[units] ?? '';
  return pretty[unit] ?? unit;
}

function belongs(text: string, kind: QuantityKind, units: UnitSystem): boolean {
  if (common.has(kind)) return true;
  const trimmed = text.trim();
  return units === 'us' ? american.test(trimmed) : metric.test(trimmed) && !american.test(trimmed);
}

/** A plan's text for the eye: `250 degC` as `250 °C`. */
function tidy(text: string): string {
  return text.trim().replace(/\s*deg\s*([CF])$/u, ' °$1');
}

export function shownQuantity(text: string | undefined, si: number, path: string, units: UnitSystem): string {
  const { kind } = factsOf(path);
  if (!isQuantity(kind)) return text ?? String(si);
  if (text !== undefined && belongs(text, kind, units)) return tidy(text);
  return kind === 'duration'
    ? showQuantity(si, kind, units)
    : showQuantity(si, kind, units, { unit: shownUnit(path, units) });
}

/** Whether a field holds a figure with a unit. */
export function isQuantity(kind: string): kind is QuantityKind {
  return !['number', 'choice', 'boolean', 'text', 'instant', 'shade', 'price'].includes(kind);
}

export type Entry =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string };

/** An entry as the plan keeps it: quantities as typed, a bare number with the unit shown; plain numbers as numbers. */
export function entryOf(text: string, path: string, units: UnitSystem): Entry {
  const { kind, allowed } = factsOf(path);
  const trimmed = text.trim();
  if (kind === 'price') return { ok: true, value: trimmed };
  if (!isQuantity(kind)) return plainEntry(trimmed, allowed);
  const bareUnit = shownUnit(path, units);
  const withUnit = readQuantity(trimmed, kind);
  if (withUnit.ok) return { ok: true, value: trimmed };
  const bare = readQuantity(trimmed, kind, { bareUnit });
  if (bare.ok) return { ok: true, value: `${trimmed} ${bareUnit.replace('°', 'deg')}` };
  return { ok: false, reason: refusalText(bare.problem) };
}

function plainEntry(text: string, allowed: string): Entry {
  const number = text.replace(/\s*%$/u, '').replace(',', '.');
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)$/u.test(number)) {
    const found = text === '' ? 'nothing' : JSON.stringify(text);
    return { ok: false, reason: `Found ${found}; allowed ${allowed}.` };
  }
  return { ok: true, value: Number(number) };
}

/** The text with its number moved by a step; undefined when it does not begin with a plain number. */
export function stepped(text: string, step: number): string | undefined {
  const match = /^\s*(-?\d+(?:\.\d+)?)((?![/\d.,]|\s*\d).*)$/u.exec(text);
  if (match === null) return undefined;
  const digits = Math.max(decimalsOf(match[1]!), decimalsOf(String(Math.abs(step))));
  return `${(Number(match[1]) + step).toFixed(digits)}${match[2]!}`;
}

/**
 * An entry of a field moved by a step of the unit shown. One written in that unit keeps its digits; any other (`3/8 in`,
 * `1 h 30 min`) becomes what the field would show. Undefined when it cannot be read.
 */
export function steppedEntry(
  text: string,
  step: number,
  path: string,
  units: UnitSystem,
): string | undefined {
  const { kind } = factsOf(path);
  if (!isQuantity(kind)) return stepped(text, step);
  const bareUnit = shownUnit(path, units);
  const [, word] = /^\s*-?\d+(?:\.\d+)?\s*(.*?)\s*$/u.exec(text) ?? [];
  if (word === '' || word === bareUnit) return stepped(text, step);
  const si = (entry: string): number | undefined => {
    const read = readQuantity(entry, kind, { bareUnit });
    return read.ok ? read.value : undefined;
  };
  const [from, zero, one] = [si(text.trim()), si('0'), si(String(Math.abs(step)))];
  if (from === undefined || zero === undefined || one === undefined) return undefined;
  return shownQuantity(undefined, from + Math.sign(step) * (one - zero), path, units);
}

function decimalsOf(number: string): number {
  return number.split('.')[1]?.length ?? 0;
}
