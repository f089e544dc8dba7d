/** The kinds of field a plan file has, each a schema that gives SI and says in words what it allows. */
import * as v from 'valibot';
import { quantityOf, readQuantity, type QuantityKind } from '../quantities/index.ts';
import { kindExample } from '../quantities/units.ts';
import { readInstant } from './clock.ts';
import type { EnergyPrice } from './evening.ts';
import { readShade, shadeAllowed } from './shade.ts';

/** What the window and `setPath` need to know of a field; kept as metadata of its schema. */
export interface FieldFacts {
  readonly kind: QuantityKind | 'number' | 'choice' | 'boolean' | 'text' | 'instant' | 'shade' | 'price';
  /** in words, as a message says it */
  readonly allowed: string;
  /** the unit that a bare number takes in the window, by system; only for quantities */
  readonly units?: { readonly metric: string; readonly us: string };
  /** only for choices */
  readonly choices?: readonly string[];
}

const facts = <Input>(f: FieldFacts) => v.metadata<Input, { field: FieldFacts }>({ field: f });

/** A text with a unit, from `low` to `high`, both as a plan file would write them and both allowed. */
export function quantity(
  kind: QuantityKind,
  low: string,
  high: string,
  units: NonNullable<FieldFacts['units']>,
) {
  // Read when first asked for: most fields of most plans never are, and a start should be quick.
  let limits: { readonly least: number; readonly most: number } | undefined;
  const within = (value: number): boolean => {
    limits ??= { least: quantityOf(low, kind), most: quantityOf(high, kind) };
    // 140 degF is 60 degC but for the last bit of a double.
    const slack = 1e-9 * Math.max(Math.abs(limits.least), Math.abs(limits.most));
    return value >= limits.least - slack && value <= limits.most + slack;
  };
  const allowed = `${low} to ${high}`;
  return v.pipe(
    v.string(`text: ${kindExample(kind)}`),
    v.rawTransform<string, number>(({ dataset, addIssue, NEVER }) => {
      const read = readQuantity(dataset.value, kind);
      if (read.ok && within(read.value)) return read.value;
      addIssue(
        read.ok
          ? { message: allowed, received: JSON.stringify(dataset.value), expected: allowed }
          : { message: read.problem.allowed, received: read.problem.found, expected: read.problem.allowed },
      );
      return NEVER;
    }),
    facts<number>({ kind, allowed, units }),
  );
}

/** A plain number with both ends allowed; `whole` for counts. */
export function number(low: number, high: number, whole = false) {
  const allowed = `${whole ? 'a whole number' : 'a number'} from ${low} to ${high}`;
  return v.pipe(
    v.number(allowed),
    v.check((n) => n >= low && n <= high && (!whole || Number.isInteger(n)), allowed),
    facts<number>({ kind: 'number', allowed }),
  );
}

/** One of a list of names. */
export function choice<const Ids extends readonly string[]>(ids: Ids) {
  const allowed = ids.join(', ');
  return v.pipe(v.picklist(ids, allowed), facts<Ids[number]>({ kind: 'choice', allowed, choices: ids }));
}

/** true or false */
export function flag() {
  return v.pipe(v.boolean('true or false'), facts<boolean>({ kind: 'boolean', allowed: 'true or false' }));
}

/** One line of text for people. */
export function line(longest: number) {
  const allowed = `one line of 1 to ${longest} characters`;
  return v.pipe(
    v.string(allowed),
    v.check((s) => s.trim() !== '' && s.length <= longest && !/\p{Cc}/u.test(s), allowed),
    facts<string>({ kind: 'text', allowed }),
  );
}

/** An RFC 3339 instant. */
export function instant() {
  const allowed = 'an instant with its offset, such as "2026-01-31T19:30:00+01:00"';
  return v.pipe(
    v.string(allowed),
    v.rawTransform(({ dataset, addIssue, NEVER }) => {
      const read = readInstant(dataset.value);
      if (read.ok) return read.instant;
      addIssue({
        message: read.problem.allowed,
        received: read.problem.found,
        expected: read.problem.allowed,
      });
      return NEVER;
    }),
    facts({ kind: 'instant', allowed }),
  );
}

/** A shade by name or lightness. Gives L*. */
export function shade() {
  return v.pipe(
    v.string(shadeAllowed),
    v.rawTransform(({ dataset, addIssue, NEVER }) => {
      const lightness = readShade(dataset.value);
      if (lightness !== undefined) return lightness;
      addIssue({ message: shadeAllowed, received: JSON.stringify(dataset.value), expected: shadeAllowed });
      return NEVER;
    }),
    facts<number>({ kind: 'shade', allowed: shadeAllowed }),
  );
}

const amount = String.raw`(?<number>\d+(?:[.,]\d+)?)`;
const currencyWord = String.raw`(?<currency>[^\s\d/.,]{1,8})`;
const perKWh = String.raw`\s*\/\s*kWh\s*$`;
/** `0.32 EUR/kWh` or `$0.15/kWh` */
const priceWords = [
  new RegExp(String.raw`^\s*${amount}\s*${currencyWord}${perKWh}`, 'iu'),
  new RegExp(String.raw`^\s*${currencyWord}\s*${amount}${perKWh}`, 'iu'),
];
/** `1,234` is a thousand or a little more than one */
const ambiguous = /,\d{3}$/u;

/** A price of energy: a number, a currency as the cook writes it, and `/kWh`. */
export function energyPrice() {
  const allowed = 'a price a kWh, 0 to 1000000, such as "0.32 EUR/kWh"';
  return v.pipe(
    v.string(allowed),
    v.rawTransform<string, EnergyPrice>(({ dataset, addIssue, NEVER }) => {
      const found = priceWords.map((word) => word.exec(dataset.value)?.groups).find((groups) => groups);
      const { number: digits = '', currency = '' } = found ?? {};
      const price = digits === '' || ambiguous.test(digits) ? NaN : Number(digits.replace(',', '.'));
      if (price <= 1e6) return { perKWh: price, currency };
      addIssue({ message: allowed, received: JSON.stringify(dataset.value), expected: allowed });
      return NEVER;
    }),
    facts<EnergyPrice>({ kind: 'price', allowed }),
  );
}

/** A duration that may carry a minus sign: so much later, or sooner. Gives s. */
export function signedDuration(most: string) {
  const limit = quantityOf(most, 'duration');
  const allowed = `-${most} to ${most}`;
  return v.pipe(
    v.string(allowed),
    v.rawTransform<string, number>(({ dataset, addIssue, NEVER }) => {
      const text = dataset.value.trim();
      const read = readQuantity(text.replace(/^-/u, ''), 'duration');
      if (read.ok && read.value <= limit) return text.startsWith('-') ? -read.value : read.value;
      addIssue({ message: allowed, received: JSON.stringify(dataset.value), expected: allowed });
      return NEVER;
    }),
    facts<number>({ kind: 'text', allowed }),
  );
}
