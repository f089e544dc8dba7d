/** What is typed into a cell, as figures in SI; and figures as the plan writes them. */
import { ouncePerSquareInch } from '../../physics/dough/area.ts';
import { refusalText } from '../words/refusal.ts';
import { readNumber } from '../../physics/quantities/number.ts';
import {
  readQuantity,
  toInches,
  toOunces,
  type QuantityKind,
  type UnitSystem,
} from '../../physics/quantities/index.ts';

export type Read =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string };

function refused(text: string, allowed: string): Read {
  const found = text.trim() === '' ? 'nothing' : JSON.stringify(text.trim());
  return { ok: false, reason: `Found ${found}; allowed ${allowed}.` };
}

/** A plain number, with what may stand behind it taken off. */
function plain(text: string, behind: RegExp, allowed: string): Read {
  const bare = text.trim().replace(behind, '').trim();
  const number = readNumber(bare, 0);
  if (number === undefined || number.ambiguous === true || number.end !== bare.length)
    return refused(text, allowed);
  return { ok: true, value: number.value };
}

export function readPercent(text: string): Read {
  return plain(text, /%$/u, 'a number of percent, such as 62');
}
export function readCount(text: string): Read {
  return plain(text, /$/u, 'a number, such as 4');
}

export function readIn(text: string, kind: QuantityKind, bareUnit: string): Read {
  const read = readQuantity(text.trim(), kind, { bareUnit });
  if (read.ok) return read;
  return { ok: false, reason: refusalText(read.problem) };
}

/** Dough, sauce or cheese by area, kg/m2: `0.35 g/cm2`, `0.08 oz/in2`; a bare number takes the unit shown. */
export function readPerArea(text: string, units: UnitSystem): Read {
  const trimmed = text.trim().replaceAll('²', '2');
  const american = /oz\s*\/\s*in2$/u.test(trimmed) || (units === 'us' && !/g\s*\/\s*cm2$/u.test(trimmed));
  const read = plain(
    trimmed,
    /(?:oz\s*\/\s*in2|g\s*\/\s*cm2)$/u,
    'a number with g/cm2 or oz/in2, such as 0.35 g/cm2',
  );
  if (!read.ok) return read;
  return { ok: true, value: read.value * (american ? ouncePerSquareInch : 10) };
}

export function perAreaText(kgPerM2: number, units: UnitSystem): string {
  return units === 'us'
    ? `${(kgPerM2 / ouncePerSquareInch).toFixed(3)} oz/in²`
    : `${(kgPerM2 / 10).toFixed(2)} g/cm²`;
}

export function massUnit(units: UnitSystem): string {
  return units === 'us' ? 'oz' : 'g';
}

/** Digits after the point of so many grams, as a scale and a cook tell them apart. */
function gramDigits(grams: number): number {
  if (grams >= 100) return 0;
  return grams < 1 ? 2 : 1;
}

/** A mass as a scale shows it: `312 g`, `1.4 g`, `11.01 oz`; never kilograms. */
export function massText(kg: number, units: UnitSystem): string {
  if (units === 'us') {
    const ounces = toOunces(kg);
    return `${Number(ounces.toFixed(ounces < 1 ? 3 : 2)).toString()} oz`;
  }
  const grams = 1000 * kg;
  return `${Number(grams.toFixed(gramDigits(grams))).toString()} g`;
}

/** As the plan writes what was worked out for it: finer than a scale, so that going back and forth moves nothing. */
export function writtenMass(kg: number, units: UnitSystem): string {
  return units === 'us'
    ? `${Number(toOunces(kg).toFixed(3)).toString()} oz`
    : `${Number((1000 * kg).toFixed(2)).toString()} g`;
}
export function writtenLength(metres: number, units: UnitSystem): string {
  return units === 'us'
    ? `${Number(toInches(metres).toFixed(2)).toString()} in`
    : `${Number((100 * metres).toFixed(1)).toString()} cm`;
}
