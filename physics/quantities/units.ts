/**
 * Which unit words belong to which kind of quantity, and what each is in SI. The factors come from mathjs; the words
 * are ours, because mathjs reads `550F` as farad and `250C` as coulomb.
 */
import { create, unitDependencies } from 'mathjs';

const math = create({ ...unitDependencies });

/** What a figure can be. */
export const quantityKinds = [
  'length',
  'mass',
  'temperature',
  'temperatureDifference',
  'power',
  'duration',
  'thermalConductivity',
  'specificHeat',
  'density',
  'heatTransfer',
  'conductance',
  'heatCapacity',
  'arealHeatCapacity',
  'heatFlux',
  'flow',
] as const;
export type QuantityKind = (typeof quantityKinds)[number];

interface KindOfQuantity {
  /** as mathjs writes it */
  readonly si: string;
  /** for messages, with a word what it is and examples */
  readonly example: string;
  /** normalised word to mathjs unit */
  readonly words: Readonly<Record<string, string>>;
  /** `1 h 30 min`, `1 lb 4 oz` */
  readonly addsUp: boolean;
}

function words(table: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const all: [string, string][] = [];
  for (const [unit, list] of Object.entries(table))
    for (const word of [unit, ...list.split(' ')].filter((w) => w !== '')) all.push([plain(word), unit]);
  return Object.fromEntries(all);
}

/** `W/(m·K)`, `W/m K` and `w/mK` are one word; so are `lb/ft³` and `lb/ft^3`. */
function plain(word: string): string {
  return word
    .replaceAll('º', '°') // the ordinal sign, which some keyboards offer; NFKC would make an `o` of it
    .normalize('NFKC')
    .replaceAll(/[\s·⋅*^()°.]|deg(?:rees?)?/gu, '')
    .toLowerCase();
}

const kinds: Readonly<Record<QuantityKind, KindOfQuantity>> = {
  length: {
    si: 'm',
    example: 'a length with its unit, such as "9.5 mm", "40 cm" or "3/8 in"',
    words: words({
      mm: 'millimetre millimetres millimeter millimeters',
      cm: 'centimetre centimetres centimeter centimeters',
      m: 'metre metres meter meters',
      in: `inch inches " ″ ” ''`,
      ft: `foot feet ' ′ ’`,
    }),
    addsUp: true,
  },
  mass: {
    si: 'kg',
    example: 'a mass with its unit, such as "250 g" or "9 oz"',
    words: words({
      g: 'gram grams gramme grammes',
      kg: 'kilogram kilograms kilo kilos',
      oz: 'ounce ounces',
      lb: 'lbs pound pounds',
    }),
    addsUp: true,
  },
  temperature: {
    si: 'K',
    example: 'a temperature with its unit, such as "250 degC" or "480 degF"',
    words: words({ degC: 'C celsius', degF: 'F fahrenheit', K: 'kelvin' }),
    addsUp: false,
  },
  temperatureDifference: {
    // Without the offsets: 5 degC of difference is 5 K, not 278.15 K. degR is the Fahrenheit degree without its zero.
    si: 'K',
    example: 'a temperature difference with its unit, such as "5 K" or "9 F degrees"',
    words: words({ K: 'kelvin C celsius Cdegrees', degR: 'F fahrenheit Fdegrees' }),
    addsUp: false,
  },
  power: {
    si: 'W',
    example: 'a power with its unit, such as "1.3 kW" or "16000 BTU/h"',
    words: words({ W: 'watt watts', kW: 'kilowatt kilowatts', 'BTU/h': 'BTU/hr BTUh', 'MJ/h': '' }),
    addsUp: false,
  },
  duration: {
    si: 's',
    example: 'a duration with its unit, such as "15 min" or "1:30 h"',
    words: words({
      s: 'sec second seconds',
      min: 'mins minute minutes',
      h: 'hr hrs hour hours',
    }),
    addsUp: true,
  },
  thermalConductivity: {
    si: 'W/(m K)',
    example: 'a thermal conductivity with its unit, such as "50 W/(m K)"',
    words: words({
      'W/(m K)': 'W/m/K W/mC W/m/C',
      'BTU/(h ft degR)': 'BTU/hftF BTU/fthF BTU/hrftF BTU/h/ft/F BTUft/hft2F',
      'BTU in/(h ft^2 degR)': 'BTUin/hft2F BTUin/ft2hF',
    }),
    addsUp: false,
  },
  specificHeat: {
    si: 'J/(kg K)',
    example: 'a specific heat with its unit, such as "470 J/(kg K)"',
    words: words({
      'J/(kg K)': 'J/kg/K J/kgC',
      'kJ/(kg K)': 'kJ/kg/K kJ/kgC J/gK J/g/K J/gC',
      'BTU/(lb degR)': 'BTU/lbF BTU/lb/F',
    }),
    addsUp: false,
  },
  density: {
    si: 'kg/m^3',
    example: 'a density with its unit, such as "7850 kg/m3" or "490 lb/ft3"',
    words: words({ 'kg/m^3': '', 'g/cm^3': 'g/cc g/ml kg/l kg/dm3', 'lb/ft^3': 'lbs/ft3 lb/cuft' }),
    addsUp: false,
  },
  heatTransfer: {
    si: 'W/(m^2 K)',
    example: 'a heat transfer coefficient with its unit, such as "5 W/(m2 K)"',
    words: words({ 'W/(m^2 K)': 'W/m2/K W/m2C', 'BTU/(h ft^2 degR)': 'BTU/hft2F BTU/ft2hF' }),
    addsUp: false,
  },
  conductance: {
    si: 'W/K',
    example: 'a conductance with its unit, such as "0.5 W/K"',
    words: words({ 'W/K': 'W/C', 'BTU/(h degR)': 'BTU/hF BTU/h/F' }),
    addsUp: false,
  },
  heatCapacity: {
    si: 'J/K',
    example: 'a heat capacity with its unit, such as "750 J/K"',
    words: words({ 'J/K': 'J/C', 'kJ/K': 'kJ/C', 'BTU/degR': 'BTU/F' }),
    addsUp: false,
  },
  arealHeatCapacity: {
    si: 'J/(m^2 K)',
    example: 'a heat capacity of an area with its unit, such as "4.2 kJ/(m2 K)"',
    words: words({
      'J/(m^2 K)': 'J/m2/K J/m2C',
      'kJ/(m^2 K)': 'kJ/m2/K kJ/m2C',
      'BTU/(ft^2 degR)': 'BTU/ft2F BTU/ft2/F',
    }),
    addsUp: false,
  },
  heatFlux: {
    si: 'W/m^2',
    example: 'a power of an area with its unit, such as "4.5 W/cm2"',
    words: words({ 'W/m^2': '', 'kW/m^2': '', 'W/cm^2': '', 'W/in^2': '' }),
    addsUp: false,
  },
  flow: {
    si: 'm^3/s',
    example: 'a flow of air with its unit, such as "0.5 l/s" or "1.8 m3/h"',
    words: words({ 'm^3/s': '', 'm^3/h': '', 'l/s': '', 'l/min': '', 'ft^3/min': 'cfm cuft/min' }),
    addsUp: false,
  },
};

/** `such as "9.5 mm", "40 cm" or "3/8 in"`: for messages. */
export function kindExample(kind: QuantityKind): string {
  return kinds[kind].example;
}

/** Whether figures of this kind may stand one after the other: `1 h 30 min`. */
export function addsUp(kind: QuantityKind): boolean {
  return kinds[kind].addsUp;
}

/** The mathjs unit that a word means for this kind; `undefined` when the kind has no such unit. */
export function unitFor(word: string, kind: QuantityKind): string | undefined {
  const table = kinds[kind].words;
  const key = plain(word);
  return key !== '' && Object.hasOwn(table, key) ? table[key] : undefined;
}

/** `value` of `unit` in SI. `unit` is a mathjs unit that `unitFor` gave. */
export function toSI(value: number, unit: string, kind: QuantityKind): number {
  return math.unit(value, unit).toNumber(kinds[kind].si);
}

/** An SI value in `unit`. */
export function fromSI(value: number, unit: string, kind: QuantityKind): number {
  return math.unit(value, kinds[kind].si).toNumber(unit);
}
