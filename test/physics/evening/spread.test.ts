import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { quantile, spreadOf } from '../../../physics/evening/spread.ts';
import { spreadFrom, uncertainNames, usualSpread } from '../../../physics/evening/uncertain.ts';
import type { Known } from '../../../physics/evening/uncertain.ts';
import { northAmerican } from '../../support/evenings.ts';

describe('quantile', () => {
  it('is linear between the sorted values: 10 % of 0, 1, ..., 10 is 1, half of 1, 2, 4 is 2 (by hand)', () => {
    expect(quantile([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], 0.1)).toBe(1);
    expect(quantile([1, 2, 4], 0.5)).toBe(2);
    expect(quantile([1, 2, 4], 0.75)).toBe(3);
    expect(quantile([1, 2], 1)).toBe(2);
  });
});

describe('the range of an evening', () => {
  const evening = northAmerican();
  const run = simulateEvening(evening);
  const first = spreadOf(evening, run, { samples: 400, seed: 5 });

  it('is the same for the same seed, and another for another', () => {
    expect(spreadOf(evening, run, { samples: 400, seed: 5 })).toEqual(first);
    expect(spreadOf(evening, run, { samples: 400, seed: 6 })).not.toEqual(first);
  });
  it('is in order and holds the nominal answer', () => {
    const nominal = [run.preheat.plateReady / 60, (run.bakes[0]!.outAt - run.bakes[0]!.inAt) / 60] as const;
    [first.preheatMinutes, first.bakeMinutes].forEach(([low, high], i) => {
      expect(low).toBeLessThan(nominal[i]!);
      expect(high).toBeGreaterThan(nominal[i]!);
      expect(low).toBeGreaterThan(0.3 * nominal[i]!);
      expect(high).toBeLessThan(3 * nominal[i]!);
    });
  });
  it('says which inputs make it wide, the widest first', () => {
    for (const parts of [first.preheatFrom, first.bakeFrom]) {
      const shares = parts.map(({ share }) => share);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
      const sum = shares.reduce((a, b) => a + b, 0);
      expect(sum).toBeGreaterThan(0.7);
      expect(sum).toBeLessThanOrEqual(1 + 1e-12);
    }
    expect(first.preheatFrom.some(({ input }) => input === 'power')).toBe(true);
    // What only the bake knows makes no preheat uncertain.
    expect(first.preheatFrom.some(({ input }) => input === 'browning' || input === 'contact')).toBe(false);
    expect(first.bakeFrom.some(({ input }) => input === 'browning')).toBe(true);
    expect(spreadFrom(first.preheatFrom)).toMatch(/^.+ \(\d+ %\)( and .+ \(\d+ %\))?$/);
  });
  it('never widens with what is known better, and vanishes when all is known', () => {
    const widthOf = (known: Known): readonly [number, number] => {
      const { preheatMinutes, bakeMinutes } = spreadOf({ ...evening, known }, run, { samples: 400, seed: 5 });
      const width = ([low, high]: readonly [number, number]): number => Math.log(high / low);
      return [width(preheatMinutes), width(bakeMinutes)];
    };
    const ratio = fc.double({ min: 0, max: 1, noNaN: true });
    const ratios = fc.array(ratio, { minLength: uncertainNames.length, maxLength: uncertainNames.length });
    const known = (shares: readonly number[]): Known =>
      Object.fromEntries(uncertainNames.map((name, i) => [name, shares[i]! * usualSpread[name]]));
    fc.assert(
      fc.property(ratios, fc.nat(uncertainNames.length - 1), ratio, (shares, place, factor) => {
        const more = shares.map((share, i) => (i === place ? share * factor : share));
        const [preheat, bake] = widthOf(known(shares));
        const [preheatMore, bakeMore] = widthOf(known(more));
        expect(preheatMore).toBeLessThanOrEqual(preheat + 1e-12);
        expect(bakeMore).toBeLessThanOrEqual(bake + 1e-12);
      }),
      { numRuns: 12, seed: 7 },
    );
    expect(widthOf(known(uncertainNames.map(() => 0)))).toEqual([0, 0]);
  });
  it('is wider for the bake than for the preheat, in shares of them: what bakes is known less', () => {
    const width = ([low, high]: readonly [number, number]): number => Math.log(high / low);
    expect(width(first.bakeMinutes)).toBeGreaterThan(width(first.preheatMinutes));
  });
  it('hardly depends on how many draws are taken', () => {
    const more = spreadOf(evening, run, { samples: 4000, seed: 9 });
    for (const name of ['preheatMinutes', 'bakeMinutes'] as const)
      for (const end of [0, 1] as const)
        expect(Math.abs(first[name][end] / more[name][end] - 1)).toBeLessThan(0.08);
  });
});
