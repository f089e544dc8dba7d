/** SI to text for the cook. Showing never changes the stored value. */
import { fromSI, unitFor, type QuantityKind } from './units.ts';

export type UnitSystem = 'metric' | 'us';

export interface ShowOptions {
  /** a unit word of the kind instead of the usual one for the value's size */
  readonly unit?: string;
  /** digits after the decimal point instead of the usual ones; trailing zeros are kept */
  readonly decimals?: number;
}

interface Scale {
  /** used for values up to this size, SI */
  readonly upTo: number;
  readonly unit: string;
  /** most digits after the point; trailing zeros are dropped */
  readonly decimals: number;
  readonly label?: string;
}

const scales: Readonly<Record<Exclude<QuantityKind, 'duration'>, Record<UnitSystem, readonly Scale[]>>> = {
  length: {
    metric: [
      { upTo: 0.1, unit: 'mm', decimals: 1 },
      { upTo: 3, unit: 'cm', decimals: 1 },
      { upTo: Infinity, unit: 'm', decimals: 0 },
    ],
    us: [
      { upTo: 0.0405, unit: 'in', decimals: 2 },
      { upTo: 3, unit: 'in', decimals: 1 },
      { upTo: Infinity, unit: 'ft', decimals: 0 },
    ],
  },
  mass: {
    metric: [
      { upTo: 0.01, unit: 'g', decimals: 2 },
      { upTo: 0.0999, unit: 'g', decimals: 1 },
      { upTo: 0.9995, unit: 'g', decimals: 0 },
      { upTo: Infinity, unit: 'kg', decimals: 2 },
    ],
    us: [
      { upTo: 0.0283, unit: 'oz', decimals: 3 },
      { upTo: 0.2835, unit: 'oz', decimals: 2 },
      { upTo: 0.9, unit: 'oz', decimals: 1 },
      { upTo: 4.5, unit: 'lb', decimals: 2 },
      { upTo: Infinity, unit: 'lb', decimals: 1 },
    ],
  },
  temperature: {
    metric: [{ upTo: Infinity, unit: 'degC', decimals: 0, label: '°C' }],
    us: [{ upTo: Infinity, unit: 'degF', decimals: 0, label: '°F' }],
  },
  temperatureDifference: {
    metric: [{ upTo: Infinity, unit: 'K', decimals: 1 }],
    us: [{ upTo: Infinity, unit: 'degR', decimals: 1, label: 'F degrees' }],
  },
  power: {
    metric: [
      { upTo: 0.9995e3, unit: 'W', decimals: 0 },
      { upTo: Infinity, unit: 'kW', decimals: 2 },
    ],
    us: [
      { upTo: 0.9995e3, unit: 'W', decimals: 0 },
      { upTo: Infinity, unit: 'kW', decimals: 2 },
    ],
  },
  thermalConductivity: {
    metric: [{ upTo: Infinity, unit: 'W/(m K)', decimals: 2 }],
    us: [{ upTo: Infinity, unit: 'BTU/(h ft degR)', decimals: 2, label: 'BTU/(h ft °F)' }],
  },
  specificHeat: {
    metric: [{ upTo: Infinity, unit: 'J/(kg K)', decimals: 0 }],
    us: [{ upTo: Infinity, unit: 'BTU/(lb degR)', decimals: 3, label: 'BTU/(lb °F)' }],
  },
  density: {
    metric: [{ upTo: Infinity, unit: 'kg/m^3', decimals: 0, label: 'kg/m3' }],
    us: [{ upTo: Infinity, unit: 'lb/ft^3', decimals: 1, label: 'lb/ft3' }],
  },
  heatTransfer: {
    metric: [{ upTo: Infinity, unit: 'W/(m^2 K)', decimals: 2, label: 'W/(m2 K)' }],
    us: [{ upTo: Infinity, unit: 'BTU/(h ft^2 degR)', decimals: 2, label: 'BTU/(h ft2 °F)' }],
  },
  conductance: {
    metric: [{ upTo: Infinity, unit: 'W/K', decimals: 2 }],
    us: [{ upTo: Infinity, unit: 'BTU/(h degR)', decimals: 2, label: 'BTU/(h °F)' }],
  },
  heatCapacity: {
    metric: [{ upTo: Infinity, unit: 'J/K', decimals: 0 }],
    us: [{ upTo: Infinity, unit: 'BTU/degR', decimals: 2, label: 'BTU/°F' }],
  },
  arealHeatCapacity: {
    metric: [{ upTo: Infinity, unit: 'kJ/(m^2 K)', decimals: 2, label: 'kJ/(m2 K)' }],
    us: [{ upTo: Infinity, unit: 'BTU/(ft^2 degR)', decimals: 3, label: 'BTU/(ft2 °F)' }],
  },
  heatFlux: {
    metric: [{ upTo: Infinity, unit: 'W/cm^2', decimals: 2, label: 'W/cm2' }],
    us: [{ upTo: Infinity, unit: 'W/in^2', decimals: 1, label: 'W/in2' }],
  },
  flow: {
    metric: [{ upTo: Infinity, unit: 'l/s', decimals: 2 }],
    us: [{ upTo: Infinity, unit: 'ft^3/min', decimals: 2, label: 'ft3/min' }],
  },
};

/** Rounds for the eye; no `-0`, no trailing zeros beyond what was asked for. */
function digits(value: number, decimals: number, keepZeros: boolean): string {
  const fixed = value.toFixed(decimals);
  const text = keepZeros || !fixed.includes('.') ? fixed : fixed.replace(/\.?0+$/u, '');
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** `45 s`, `6 min 20 s`, `48 min`, `1 h 30 min`: seconds below twenty minutes, minutes above. */
function showDuration(seconds: number): string {
  const sign = seconds < 0 ? '-' : '';
  const size = Math.abs(seconds);
  if (size < 59.5) return `${size >= 0.5 ? sign : ''}${size.toFixed(0)} s`;
  if (size < 1200) {
    const whole = Math.round(size);
    const rest = whole % 60;
    return `${sign}${Math.floor(whole / 60)} min${rest === 0 ? '' : ` ${rest} s`}`;
  }
  const minutes = Math.round(size / 60);
  const rest = minutes % 60;
  if (minutes < 60) return `${sign}${minutes} min`;
  return `${sign}${Math.floor(minutes / 60)} h${rest === 0 ? '' : ` ${rest} min`}`;
}

function scaleFor(value: number, kind: Exclude<QuantityKind, 'duration'>, system: UnitSystem): Scale {
  const size = Math.abs(value);
  // The last scale of each list goes up to Infinity.
  return scales[kind][system].find(({ upTo }) => size <= upTo)!;
}

/** The value in an explicit unit, as a number; throws a RangeError when the kind has no such unit. */
function inUnit(value: number, kind: QuantityKind, word: string): number {
  const unit = unitFor(word, kind);
  if (unit === undefined)
    throw new RangeError(`unit: found ${JSON.stringify(word)}; allowed a unit of ${kind}`);
  return fromSI(value, unit, kind);
}

/**
 * An SI value as text with its unit, with as many digits as a kitchen deserves.
 *
 * @throws RangeError for a value that is not finite, or a unit that is not of this kind
 */
export function showQuantity(
  value: number,
  kind: QuantityKind,
  system: UnitSystem,
  options: ShowOptions = {},
): string {
  if (!Number.isFinite(value)) throw new RangeError(`value: found ${value}; allowed a finite number`);
  if (kind === 'duration') {
    if (options.unit === undefined) return showDuration(value);
    const asked = inUnit(value, kind, options.unit);
    return `${digits(asked, options.decimals ?? 1, options.decimals !== undefined)} ${options.unit}`;
  }
  const scale = scaleFor(value, kind, system);
  const word = options.unit ?? scale.unit;
  const label = options.unit ?? scale.label ?? scale.unit;
  const shown = digits(
    inUnit(value, kind, word),
    options.decimals ?? scale.decimals,
    options.decimals !== undefined,
  );
  return `${shown} ${label}`;
}

/** The unit that `showQuantity` would write for a value of this size (by default the kind's everyday size). */
export function unitOf(kind: QuantityKind, system: UnitSystem, value?: number): string {
  if (kind === 'duration') return 'min';
  const everyday = kind === 'length' || kind === 'mass' ? 0.3 : 1000;
  const scale = scaleFor(value ?? everyday, kind, system);
  return scale.label ?? scale.unit;
}
