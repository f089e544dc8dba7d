import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantityOf, readQuantity, type QuantityKind } from '../../../physics/quantities/index.ts';

function value(text: string, kind: QuantityKind, bareUnit?: string): number {
  const read = readQuantity(text, kind, bareUnit === undefined ? {} : { bareUnit });
  if (!read.ok) throw new Error(`${text}: found ${read.problem.found}; allowed ${read.problem.allowed}`);
  return read.value;
}

function refused(text: string, kind: QuantityKind): { found: string; allowed: string } {
  const read = readQuantity(text, kind);
  if (read.ok) throw new Error(`${text} was read as ${read.value}`);
  return read.problem;
}

describe('temperatures as cooks write them', () => {
  // t/degC = (t/degF - 32)/1.8, T/K = t/degC + 273.15: NIST SP 811 (2008), B.7 and appendix B.8, exact.
  it.each([
    '550F',
    '550 F',
    '550°F',
    '550 °F',
    '550 degF',
    '550 deg F',
    '550ºF',
    ' 550 f ',
    '550 Fahrenheit',
  ])('%s is 560.928 K, not a farad', (text) => {
    expect(value(text, 'temperature')).toBeCloseTo((550 - 32) / 1.8 + 273.15, 9);
  });
  it.each(['250C', '250 °C', '250 degC', '250 ℃', '250,0 C'])('%s is 523.15 K, not a coulomb', (text) => {
    expect(value(text, 'temperature')).toBeCloseTo(523.15, 9);
  });
  it('takes kelvin and temperatures below zero', () => {
    expect(value('300 K', 'temperature')).toBe(300);
    expect(value('-10 degC', 'temperature')).toBeCloseTo(263.15, 9);
    expect(value('−10 degC', 'temperature')).toBeCloseTo(263.15, 9);
    expect(value('-40 degF', 'temperature')).toBeCloseTo(233.15, 9);
  });
  it('refuses what is colder than absolute zero', () => {
    expect(refused('-300 degC', 'temperature').allowed).toContain('absolute zero');
  });
});

describe('a difference is not a temperature', () => {
  it.each([
    ['5 K', 5],
    ['9 F degrees', 5],
    ['9 degF', 5],
    ['5 degC', 5],
    ['-18 °F', -10],
    ['0 K', 0],
  ])('%s', (text, kelvin) => {
    expect(value(text, 'temperatureDifference')).toBeCloseTo(kelvin, 12);
  });
});

describe('lengths', () => {
  // 1 in = 25.4 mm exactly, 1 ft = 12 in: NIST SP 811 (2008), appendix B.6.
  it.each([
    ['9.5mm', 9.5],
    ['12,7 mm', 12.7],
    ['3/8"', 9.525],
    ['3/8 in', 9.525],
    ['3⁄8 in', 9.525],
    ['½ in', 12.7],
    ['1 1/2 in', 38.1],
    ['1-1/2 in', 38.1],
    ['1½"', 38.1],
    ['0.375 inches', 9.525],
    ['.375 in', 9.525],
    ['0,375 in', 9.525],
    ['1 ft 6 in', 457.2],
    [`1' 6"`, 457.2],
    ['40 cm', 400],
    ['1e-2 m', 10],
    ['1,234.5 mm', 1234.5],
    ['1.234,5 mm', 1234.5],
    ['1,234,567 mm', 1_234_567],
    ['14 INCH', 355.6],
  ])('%s', (text, millimetres) => {
    expect(value(text, 'length') * 1000).toBeCloseTo(millimetres, 9);
  });
  it('asks when a comma can be read in two ways', () => {
    expect(refused('1,234 mm', 'length')).toEqual({
      found: '"1,234 mm", which can be read in two ways',
      allowed: '1234 or 1.234, written without a comma',
    });
    expect(value('1234,567 mm', 'length')).toBeCloseTo(1.234567, 12);
  });
});

describe('masses, powers, durations, properties', () => {
  // Factors: NIST SP 811 (2008), appendix B.8; lb and oz exact, the Btu (IT) ones to the seven digits printed (from
  // memory, the first six seen again in manufacturers' tables).
  it.each<[string, QuantityKind, number]>([
    ['1 lb', 'mass', 0.45359237],
    ['1 oz', 'mass', 0.028349523125],
    ['1 lb 4 oz', 'mass', 0.56699046],
    ['1.3 kW', 'power', 1300],
    ['900 W', 'power', 900],
    ['1 BTU/h', 'power', 0.2930711],
    ['1 BTU/(h ft °F)', 'thermalConductivity', 1.730735],
    ['1 Btu/lb °F', 'specificHeat', 4186.8],
    ['1 lb/ft³', 'density', 16.01846],
    ['7.85 g/cm3', 'density', 7850],
    ['50 W/(m K)', 'thermalConductivity', 50],
    ['50 W/mK', 'thermalConductivity', 50],
    ['50 W/(m·K)', 'thermalConductivity', 50],
    ['0.47 kJ/(kg K)', 'specificHeat', 470],
    ['5 1/2 min', 'duration', 330],
    ['1:30 h', 'duration', 5400],
    ['6:20 min', 'duration', 380],
    ['1:30:20 h', 'duration', 5420],
    ['1 h 30 min', 'duration', 5400],
    ['1h30min', 'duration', 5400],
    ['6 min 20 s', 'duration', 380],
    ['1½ h', 'duration', 5400],
  ])('%s as %s', (text, kind, si) => {
    expect(Math.abs(value(text, kind) / si - 1)).toBeLessThan(5e-7);
  });
});

describe('what is refused', () => {
  it.each<[string, QuantityKind]>([
    ['', 'length'],
    ['   ', 'length'],
    ['9.5 s', 'length'],
    ['9.5 kg', 'length'],
    ['5 m', 'duration'],
    ['250 degC', 'length'],
    ['5 mm', 'temperature'],
    ['550 farad', 'temperature'],
    ['9.5', 'length'],
    ['mm', 'length'],
    ['--5 mm', 'length'],
    ['9.5.1 mm', 'length'],
    ['3/8/2 in', 'length'],
    ['1e400 mm', 'length'],
    ['3/0 in', 'length'],
    ['NaN mm', 'length'],
    ['Infinity mm', 'length'],
    ['0x10 mm', 'length'],
    ['9.5 mm mm', 'length'],
    ['5 mm 5 mm', 'length'],
    ['30 min 1 h', 'duration'],
    ['1 h 30', 'duration'],
    ['1:75 h', 'duration'],
    ['6:20:10 min', 'duration'],
    ['1:30 s', 'duration'],
    ['1,2,3 mm', 'length'],
    ['1e308 kW', 'power'],
    ['12 constructor', 'length'],
    ['12 __proto__', 'mass'],
    ['20 mW', 'power'],
    ['9.5 mm'.padEnd(80, ' x'), 'length'],
  ])('%j for a %s', (text, kind) => {
    const problem = refused(text, kind);
    expect(problem.found).not.toBe('');
    expect(problem.allowed).not.toBe('');
  });
  it('names a missing unit, and takes the unit of the field when it is told one', () => {
    expect(refused('9.5', 'length').found).toBe('"9.5" without a unit');
    expect(value('9.5', 'length', 'mm')).toBeCloseTo(0.0095, 12);
    expect(value('3/8', 'length', 'in')).toBeCloseTo(0.009525, 12);
    expect(value('500', 'temperature', '°F')).toBeCloseTo(533.15, 9);
    expect(value('9.5 cm', 'length', 'mm')).toBeCloseTo(0.095, 12);
  });
  it('throws where a text of ours is none', () => {
    expect(quantityOf('1:30 h', 'duration')).toBe(5400);
    expect(() => quantityOf('9.5 s', 'length')).toThrow('length: found "9.5 s"; allowed a length');
  });
  it('never throws and never gives a value that is not finite', () => {
    const kind = fc.constantFrom<QuantityKind>(
      'length',
      'mass',
      'temperature',
      'duration',
      'power',
      'density',
    );
    const text = fc.oneof(
      fc.string({ unit: 'grapheme', maxLength: 30 }),
      fc.string({ unit: fc.constantFrom(...'0123456789.,/ -+eE½"\'mcigK°FCh:'.split('')), maxLength: 14 }),
    );
    fc.assert(
      fc.property(text, kind, (t, k) => {
        const read = readQuantity(t, k);
        return read.ok ? Number.isFinite(read.value) : read.problem.found !== '';
      }),
      { seed: 20_260_131, numRuns: 2000 },
    );
  });
});
