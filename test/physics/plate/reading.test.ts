import { describe, expect, it } from 'vitest';
import { blackBodyShare, shownByInfrared } from '../../../physics/plate/infrared.ts';
import type { InfraredReading } from '../../../physics/plate/infrared.ts';

const kelvin = (celsius: number): number => celsius + 273.15;
const shown = (change: Partial<InfraredReading>): number =>
  shownByInfrared({
    surface: kelvin(280),
    emissivity: 0.9,
    setTo: 0.9,
    around: kelvin(21),
    instrument: kelvin(21),
    ...change,
  }) - 273.15;

describe('share of black radiation below a wavelength', () => {
  // Incropera and DeWitt, table 12.1 (from memory); the table stands on a radiation constant 2e-5 larger.
  it.each([
    [2000, 0.066728],
    [4000, 0.480877],
    [6000, 0.737818],
  ])('%d um K: %d', (product, share) => {
    expect(Math.abs(blackBodyShare(product * 1e-6, 1) - share)).toBeLessThan(3e-5);
  });
  it('a quarter lies below the wavelength of the crest (Wien, 2897.8 um K: 0.2501, from memory)', () => {
    expect(Math.abs(blackBodyShare(2.897772e-3, 1) - 0.2501)).toBeLessThan(1e-4);
  });
});

describe('what an infrared thermometer shows', () => {
  it('is right when it is set right and nothing hot is reflected', () => {
    for (const emissivity of [0.1, 0.5, 0.95, 1])
      expect(shown({ emissivity, setTo: emissivity })).toBeCloseTo(280, 3);
  });
  it('is too low when set too high, and more so the brighter the plate', () => {
    const missed = [0.85, 0.6, 0.25].map((emissivity) => 280 - shown({ emissivity, setTo: 0.95 }));
    expect(missed[0]).toBeGreaterThan(5);
    for (let k = 1; k < missed.length; k++) expect(missed[k]).toBeGreaterThan(missed[k - 1]!);
    // A bright steel of 280 degC seems less than halfway there.
    expect(280 - missed[2]!).toBeLessThan(140);
  });
  it('is too high when set too low', () => {
    expect(shown({ emissivity: 0.95, setTo: 0.8 })).toBeGreaterThan(300);
  });
  it('takes a plate among walls as hot for a black body, whatever its own emissivity (cavity)', () => {
    for (const emissivity of [0.05, 0.4, 0.9])
      expect(shown({ emissivity, setTo: 1, around: kelvin(280) })).toBeCloseTo(280, 3);
  });
  it('shows the walls in a bright plate more than the plate', () => {
    const bright = shown({ surface: kelvin(220), emissivity: 0.1, setTo: 1, around: kelvin(280) });
    expect(bright).toBeGreaterThan(270);
  });
  it('over the whole band, by quadrature of Planck’s law', () => {
    // Independent of the series: radiance in 8 to 14 um by the midpoint rule.
    const band = (T: number): number => {
      let sum = 0;
      const n = 4000;
      for (let i = 0; i < n; i++) {
        const lambda = 8e-6 + ((i + 0.5) * 6e-6) / n;
        sum += 1 / (lambda ** 5 * Math.expm1(1.438776877e-2 / (lambda * T)));
      }
      return sum;
    };
    const at = kelvin(shown({ emissivity: 0.7, setTo: 0.95, around: kelvin(200) }));
    const sent = 0.7 * band(kelvin(280)) + 0.3 * band(kelvin(200));
    const taken = 0.95 * band(at) + 0.05 * band(kelvin(21));
    expect(Math.abs(taken / sent - 1)).toBeLessThan(1e-5);
  });
  it('refuses what no thermometer meets, by name', () => {
    expect(() => shown({ setTo: 0 })).toThrow('infrared setTo: found 0; allowed a number from 0.02 to 1');
    expect(() => shown({ emissivity: NaN })).toThrow('infrared emissivity');
    expect(() => shown({ surface: 5000 })).toThrow('infrared surface');
    expect(() =>
      shown({ surface: 210, emissivity: 0.02, setTo: 0.02, around: 200, instrument: 320 }),
    ).toThrow('one that sends more');
  });
});
