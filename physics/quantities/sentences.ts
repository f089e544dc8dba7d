/** The plan's own sentences are metric; a cook who reads Fahrenheit and ounces gets the same figures in those. */
import { readQuantity } from './read.ts';
import { showQuantity, type UnitSystem } from './show.ts';
import type { QuantityKind } from './units.ts';

const kinds: Readonly<Record<string, QuantityKind>> = {
  '°C': 'temperature',
  g: 'mass',
  kg: 'mass',
  mm: 'length',
  cm: 'length',
  K: 'temperatureDifference',
};

/**
 * A figure with its unit: `250 g`, `5 K` as a difference; of temperatures and differences also two around `to` that
 * share one: `215 to 230 °C`. Not of lengths, where `shape pizza 1 to 30 cm` is no range; and not the `K` of `W/(m2 K)`.
 */
const figure =
  /(?<![\w^])(?:(-?\d+(?:\.\d+)?) to (?=-?[\d.]+ (?:°C|K)))?(-?\d+(?:\.\d+)?) (°C|kg|g|mm|cm|K)(?![\w/²³])/gu;
/** Figure and unit, which stay on one line. */
const together = /(\d) (?=(?:°C|°F|K|F degrees|kg|g|mm|cm|oz|lb|s|min|h|am|pm|%)(?!\w))/gu;

/** Digits after the point that tell no more apart than the figure as written did. */
function decimalsFor(written: string, size: number, shownSize: number): number {
  const step = 10 ** -(written.split('.')[1]?.length ?? 0);
  return Math.max(0, Math.ceil(-Math.log10((step * shownSize) / size)));
}

function shown(value: string, unit: string, units: UnitSystem): string {
  const kind = kinds[unit]!;
  const read = readQuantity(`${value} ${unit}`, kind);
  if (!read.ok) return `${value} ${unit}`;
  const usual = showQuantity(read.value, kind, units);
  if (kind !== 'length' && kind !== 'mass') return usual;
  const [number, word] = usual.split(' ') as [string, string];
  if (Number(number) === 0) return usual;
  const most = decimalsFor(value, Math.abs(Number(value)), Math.abs(Number(number)));
  const least = number.split('.')[1]?.length ?? 0;
  return most >= least
    ? usual
    : `${Number(showQuantity(read.value, kind, units, { unit: word, decimals: most }).split(' ')[0])} ${word}`;
}

/** `6 min 20 s` as something that is not broken over two lines. */
export function kept(text: string): string {
  return text.replaceAll(' ', '\u00a0');
}

/** A sentence in which no line ends between a figure and its unit. */
export function heldTogether(sentence: string): string {
  return sentence.replaceAll(together, '$1\u00a0');
}

/** A sentence with every metric figure in the units asked for. */
export function inUnits(sentence: string, units: UnitSystem): string {
  if (units === 'metric') return sentence;
  return sentence.replaceAll(figure, (_, low: string | undefined, high: string, unit: string) => {
    const upper = shown(high, unit, units);
    if (low === undefined) return upper;
    const lower = shown(low, unit, units);
    const word = upper.slice(upper.indexOf(' '));
    return `${lower.endsWith(word) ? lower.slice(0, -word.length) : lower} to ${upper}`;
  });
}
