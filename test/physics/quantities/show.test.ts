import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fromCelsius,
  fromFahrenheit,
  quantityKinds,
  readQuantity,
  showQuantity,
  toCelsius,
  toFahrenheit,
  toInches,
  toOunces,
  unitOf,
  type QuantityKind,
  type UnitSystem,
} from '../../../physics/quantities/index.ts';

describe('plain conversions', () => {
  // Exact by definition: NIST SP 811 (2008), appendix B.8.
  it('meets the fixed points', () => {
    expect(toCelsius(273.15)).toBe(0);
    expect(fromCelsius(100)).toBe(373.15);
    expect(toFahrenheit(273.15)).toBe(32);
    expect(toFahrenheit(373.15)).toBeCloseTo(212, 12);
    expect(fromFahrenheit(-40)).toBeCloseTo(233.15, 12);
    expect(toInches(0.0254)).toBe(1);
    expect(toOunces(0.45359237)).toBe(16);
  });
});

describe('showing', () => {
  it.each<[number, QuantityKind, string, string]>([
    [0.0095, 'length', '9.5 mm', '0.37 in'],
    [0.008, 'length', '8 mm', '0.31 in'],
    [0.46, 'length', '46 cm', '18.1 in'],
    [0.355, 'length', '35.5 cm', '14 in'],
    [120, 'length', '120 m', '394 ft'],
    [0.25, 'mass', '250 g', '8.82 oz'],
    [0.0021, 'mass', '2.1 g', '0.074 oz'],
    [8.79, 'mass', '8.79 kg', '19.4 lb'],
    [523.15, 'temperature', '250 °C', '482 °F'],
    [272.75, 'temperature', '0 °C', '31 °F'],
    [5, 'temperatureDifference', '5 K', '9 F degrees'],
    [1300, 'power', '1.3 kW', '1.3 kW'],
    [900, 'power', '900 W', '900 W'],
    [380, 'duration', '6 min 20 s', '6 min 20 s'],
    [2898, 'duration', '48 min', '48 min'],
    [5400, 'duration', '1 h 30 min', '1 h 30 min'],
    [3599, 'duration', '1 h', '1 h'],
    [59.7, 'duration', '1 min', '1 min'],
    [-0.2, 'duration', '0 s', '0 s'],
    [7850, 'density', '7850 kg/m3', '490.1 lb/ft3'],
  ])('%d of %s: %s, %s', (value, kind, metric, us) => {
    expect(showQuantity(value, kind, 'metric')).toBe(metric);
    expect(showQuantity(value, kind, 'us')).toBe(us);
  });
  it('takes another unit and other digits', () => {
    expect(showQuantity(0.0127, 'length', 'metric', { unit: 'in', decimals: 3 })).toBe('0.500 in');
    expect(showQuantity(380, 'duration', 'metric', { unit: 'min' })).toBe('6.3 min');
  });
  it('names the unit it would use', () => {
    expect(unitOf('temperature', 'us')).toBe('°F');
    expect(unitOf('length', 'metric')).toBe('cm');
    expect(unitOf('length', 'metric', 0.009)).toBe('mm');
    expect(unitOf('length', 'us')).toBe('in');
    expect(unitOf('mass', 'us')).toBe('oz');
    expect(unitOf('duration', 'us')).toBe('min');
  });
  it('refuses what cannot be shown', () => {
    expect(() => showQuantity(NaN, 'length', 'metric')).toThrow('allowed a finite number');
    expect(() => showQuantity(1, 'length', 'metric', { unit: 'kg' })).toThrow('allowed a unit of length');
  });
  it('shows what it can read again, within the digits shown, in both systems', () => {
    const spans: Record<QuantityKind, [number, number]> = {
      length: [0.0005, 5000],
      mass: [0.0005, 50],
      temperature: [233.15, 800],
      temperatureDifference: [-100, 100],
      power: [10, 20_000],
      duration: [10, 90_000],
      thermalConductivity: [0.5, 500],
      specificHeat: [100, 5000],
      density: [100, 9000],
      heatTransfer: [1, 80],
      conductance: [0.1, 10],
      heatCapacity: [300, 50_000],
      arealHeatCapacity: [1000, 50_000],
      heatFlux: [10_000, 120_000],
      flow: [1e-4, 1e-2],
    };
    fc.assert(
      fc.property(
        fc.constantFrom(...quantityKinds),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom<UnitSystem>('metric', 'us'),
        (kind, share, system) => {
          const [low, high] = spans[kind];
          const value = low + (high - low) * share ** 3;
          const read = readQuantity(showQuantity(value, kind, system), kind);
          if (!read.ok) return false;
          // Half of the last digit shown is at most 5 % (of a length of half a millimetre), or a degree.
          return (
            Math.abs(read.value - value) <=
            Math.max(0.06 * Math.abs(value), kind.startsWith('temp') ? 0.6 : 0)
          );
        },
      ),
      { seed: 20_260_131, numRuns: 2000 },
    );
  });
});
