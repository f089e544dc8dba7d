/**
 * Numbers as cooks write them: `9.5`, `12,7`, `3/8`, `1 1/2`, `½`, `1½`. A reader of our own, because the unit
 * library reads only the first of these.
 */
export interface NumberRead {
  readonly value: number;
  /** index of the first character after the number */
  readonly end: number;
  /** set when the text can be read in two ways */
  readonly ambiguous?: true;
}

const vulgar: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);

/** Characters that can begin an unsigned number. */
export const numberStart = /[\d.½¼¾⅓⅔⅛⅜⅝⅞]/u;

const mixed = /(\d+)(?:\s+|-)(\d+)\s*[/⁄]\s*(\d+)(?![\d.,])/uy;
const fraction = /(\d+)\s*[/⁄]\s*(\d+)(?![\d.,])/uy;
const wholeAndVulgar = /(\d*)\s*([½¼¾⅓⅔⅛⅜⅝⅞])/uy;
const decimal = /(\d[\d.,]*|\.\d+)(?:[eE]([+-]?\d+))?/uy;

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** Digits with `.` and `,` in them: which is the decimal sign? `undefined` when the text is no number at all. */
function readDigits(digits: string): { plain: string; ambiguous: boolean } | undefined {
  const commas = digits.split(',').length - 1;
  const points = digits.split('.').length - 1;
  if (commas === 0) return points <= 1 ? { plain: digits, ambiguous: false } : undefined;
  if (commas > 0 && points > 0) {
    // Both signs: the one that comes last, once, is the decimal sign, the other groups by three.
    const last = digits.lastIndexOf('.') > digits.lastIndexOf(',') ? '.' : ',';
    const grouped =
      last === '.' ? /^\d{1,3}(,\d{3})+\.\d+$/u.test(digits) : /^\d{1,3}(\.\d{3})+,\d+$/u.test(digits);
    if (!grouped) return undefined;
    return { plain: digits.replaceAll(last === '.' ? ',' : '.', '').replace(',', '.'), ambiguous: false };
  }
  if (commas > 1) {
    return /^\d{1,3}(,\d{3})+$/u.test(digits)
      ? { plain: digits.replaceAll(',', ''), ambiguous: false }
      : undefined;
  }
  if (!/^\d+,\d+$/u.test(digits)) return undefined;
  // `1,234` is 1234 to one reader and 1.234 to another; nobody groups `0,375` or `1234,567`.
  return { plain: digits.replace(',', '.'), ambiguous: /^[1-9]\d{0,2},\d{3}$/u.test(digits) };
}

/** Reads an unsigned number at `at`; `undefined` when there is none. A zero below a fraction gives Infinity. */
export function readNumber(text: string, at: number): NumberRead | undefined {
  const asMixed = matchAt(mixed, text, at);
  if (asMixed !== null) {
    const value = Number(asMixed[1]) + Number(asMixed[2]) / Number(asMixed[3]);
    return { value, end: mixed.lastIndex };
  }
  const asFraction = matchAt(fraction, text, at);
  if (asFraction !== null)
    return { value: Number(asFraction[1]) / Number(asFraction[2]), end: fraction.lastIndex };
  const asVulgar = matchAt(wholeAndVulgar, text, at);
  if (asVulgar !== null)
    return { value: Number(asVulgar[1]) + vulgar.get(asVulgar[2]!)!, end: wholeAndVulgar.lastIndex };
  const asDecimal = matchAt(decimal, text, at);
  if (asDecimal === null) return undefined;
  const digits = readDigits(asDecimal[1]!);
  if (digits === undefined) return undefined;
  const exponent = asDecimal[2] === undefined ? '' : `e${asDecimal[2]}`;
  const read = { value: Number(digits.plain + exponent), end: decimal.lastIndex };
  return digits.ambiguous ? { ...read, ambiguous: true } : read;
}
