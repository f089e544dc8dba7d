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

/** `At 267 °C the plate burns` as `At 513 °F the plate burns`. */
export function inUnits(sentence: string, units: UnitSystem): string {
  if (units === 'metric') return sentence;
  return sentence.replaceAll(
    /(\d+(?:\.\d+)?) (°C|mm|cm|kg|g)(?![\p{L}/])/gu,
    (whole, _number, unit: string) => {
      const kind = kinds[unit];
      const read = kind === undefined ? undefined : readQuantity(whole, kind);
      return kind !== undefined && read?.ok === true ? showQuantity(read.value, kind, units) : whole;
    },
  );
}
