/** Sentences that the computation writes in metric units, for whoever reads the other ones. */
import {
  readQuantity,
  showQuantity,
  type QuantityKind,
  type UnitSystem,
} from '../../physics/quantities/index.ts';

const kinds: Readonly<Record<string, QuantityKind>> = {
  '°C': 'temperature',
  mm: 'length',
  cm: 'length',
  kg: 'mass',
  g: 'mass',
};

function converted(number: string, unit: string, units: UnitSystem): string | undefined {
  const kind = kinds[unit];
  const read = kind === undefined ? undefined : readQuantity(`${number} ${unit}`, kind);
  return kind !== undefined && read?.ok === true ? showQuantity(read.value, kind, units) : undefined;
}

/** `At 267 °C the plate burns` as `At 513 °F the plate burns`. */
export function inUnits(sentence: string, units: UnitSystem): string {
  if (units === 'metric') return sentence;
  return sentence.replaceAll(
    /(?:(\d+(?:\.\d+)?) to )?(\d+(?:\.\d+)?) (°C|mm|cm|kg|g)(?![\p{L}/])/gu,
    (whole, low: string | undefined, high: string, unit: string) => {
      const shown = [low, high].map((number) => (number === undefined ? '' : converted(number, unit, units)));
      if (shown.includes(undefined)) return whole;
      const [from, to] = shown as [string, string];
      // One unit for both ends of a range, as the sentence had it.
      const [, unitShown] = /(\D+)$/u.exec(to) ?? [];
      return from === '' ? to : `${from.replace(unitShown ?? '', '')} to ${to}`;
    },
  );
}
