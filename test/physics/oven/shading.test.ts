import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { cavityViewFactors, type CavityGeometry, type CavitySurface } from '../../../physics/oven/shading.ts';

const oven = { width: 0.6, depth: 0.46, height: 0.42 } as const;
const plate = { width: 0.406, depth: 0.356, thickness: 0.0095, underside: 0.33 * 0.42 } as const;

function factor(g: CavityGeometry, from: CavitySurface, to: CavitySurface): number {
  const { names, factors } = cavityViewFactors(g);
  return factors[names.indexOf(from) * names.length + names.indexOf(to)]!;
}

/** The worst breach of closure, reciprocity (over the larger area) and sign. */
function faults(g: CavityGeometry): { closure: number; reciprocity: number; least: number } {
  const { names, areas, factors } = cavityViewFactors(g);
  const n = names.length;
  let closure = 0;
  let reciprocity = 0;
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) {
      sum += factors[i * n + j]!;
      const pair = areas[i]! * factors[i * n + j]! - areas[j]! * factors[j * n + i]!;
      reciprocity = Math.max(reciprocity, Math.abs(pair) / Math.max(areas[i]!, areas[j]!));
    }
    closure = Math.max(closure, Math.abs(sum - 1));
  }
  return { closure, reciprocity, least: Math.min(...factors) };
}

describe('the empty cavity', () => {
  const empty = { ...oven, plate: undefined };
  // Howell's catalogue C-11 and C-14, worked out to six digits for this oven.
  it.each([
    ['floor', 'ceiling', 0.261144],
    ['floor', 'door', 0.210078],
    ['floor', 'sides', 0.210078 + 2 * 0.15935],
  ] as const)('%s to %s: %d', (from, to, published) => {
    expect(Math.abs(factor(empty, from, to) - published)).toBeLessThan(3e-6);
  });
  it('has four surfaces, and only the sides see themselves', () => {
    expect(cavityViewFactors(empty).names).toEqual(['floor', 'ceiling', 'sides', 'door']);
    expect(factor(empty, 'floor', 'floor')).toBe(0);
    expect(factor(empty, 'door', 'door')).toBe(0);
    expect(factor(empty, 'sides', 'sides')).toBeGreaterThan(0.1);
  });
  it('is the unit cube of the textbooks when it is a cube: 0.2 each (0.199825 and 0.200044)', () => {
    const cube = { width: 1, depth: 1, height: 1, plate: undefined };
    expect(Math.abs(factor(cube, 'floor', 'ceiling') - 0.199824895698)).toBeLessThan(1e-11);
    expect(Math.abs(factor(cube, 'door', 'floor') - 0.200043776075)).toBeLessThan(1e-11);
  });
});

describe('a plate in the cavity', () => {
  const g = { ...oven, plate };
  // Closed forms of Howell's catalogue (C-13), worked out to six digits.
  it.each([
    ['plateUnder', 'floor', 0.719474],
    ['plateTop', 'ceiling', 0.460316],
    ['floor', 'plateUnder', 0.376775],
    ['ceiling', 'plateTop', 0.241059],
  ] as const)('%s to %s: %d', (from, to, exact) => {
    expect(Math.abs(factor(g, from, to) - exact)).toBeLessThan(1e-6);
  });

  // From an independent quasi-random integration (4 x 2^20 points, spread 3e-6) and a count of 4e6 rays; not
  // published. Tolerance for the first 1 %; for the others half of the last digit and 1 %.
  it.each([
    ['floor', 'ceiling', 0.05458, 5.5e-4],
    ['floor', 'plateEdge', 0.0026, 5e-5],
  ] as const)('%s to %s past the plate: %d', (from, to, integrated, within) => {
    expect(Math.abs(factor(g, from, to) - integrated)).toBeLessThan(within);
  });
  it('leaves 0.566 of the floor view to sides and door', () => {
    expect(Math.abs(factor(g, 'floor', 'sides') + factor(g, 'floor', 'door') - 0.566)).toBeLessThan(1e-3);
  });
  it('lets through 0.0565 when it has no thickness, and never the 0.1244 of an area share', () => {
    const thin = { ...oven, plate: { ...plate, thickness: 1e-6 } };
    expect(Math.abs(factor(thin, 'floor', 'ceiling') - 0.0565)).toBeLessThan(5.6e-4);
  });
  it('is seen by no surface that it turns its back on', () => {
    expect(factor(g, 'floor', 'plateTop')).toBe(0);
    expect(factor(g, 'plateUnder', 'ceiling')).toBe(0);
    expect(factor(g, 'plateUnder', 'plateTop')).toBe(0);
  });
  it('shades less the smaller it is, down to the empty cavity', () => {
    const shares = [0.4, 0.2, 0.1, 0.01, 0.001].map((width) =>
      factor(
        { ...oven, plate: { ...plate, width, depth: width, thickness: width / 50 } },
        'floor',
        'ceiling',
      ),
    );
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(Math.abs(shares.at(-1)! - 0.261144)).toBeLessThan(1e-5);
  });
  it('shades all when it nearly fills the cavity', () => {
    const full = { ...oven, plate: { ...plate, width: 0.5999, depth: 0.4599 } };
    expect(factor(full, 'floor', 'ceiling')).toBeLessThan(1e-4);
    expect(faults(full).closure).toBeLessThan(1e-12);
  });
  it('is the same upside down', () => {
    const turned = {
      ...oven,
      plate: { ...plate, underside: oven.height - plate.underside - plate.thickness },
    };
    expect(factor(turned, 'ceiling', 'plateTop')).toBeCloseTo(factor(g, 'floor', 'plateUnder'), 12);
    expect(Math.abs(factor(turned, 'ceiling', 'sides') - factor(g, 'floor', 'sides'))).toBeLessThan(1e-3);
  });
});

describe('what holds for every plate that fits', () => {
  const share = fc.double({ min: 0.001, max: 0.9999, noNaN: true });
  const length = fc.double({ min: 0.2, max: 0.8, noNaN: true });
  const thickness = fc.double({ min: 0.01, max: 0.3, noNaN: true });
  it('rows close and pairs agree within 1e-12, no factor is negative', () => {
    fc.assert(
      fc.property(
        fc.tuple(length, length, length),
        fc.tuple(share, share, share, thickness),
        ([w, d, h], [a, b, c, t]) => {
          const found = faults({
            width: w,
            depth: d,
            height: h,
            plate: { width: a * w, depth: b * d, thickness: t * (1 - c) * h, underside: c * h },
          });
          expect(found.closure).toBeLessThan(1e-12);
          expect(found.reciprocity).toBeLessThan(1e-12);
          expect(found.least).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 20260131, numRuns: 300 },
    );
  });
});

describe('what the cavity refuses', () => {
  it.each([
    [{ width: 0.6 }, 'plate.width: found 0.6 m; allowed above 0 m and below 0.6 m of the cavity'],
    [{ depth: Number.NaN }, /^plate.depth: found NaN m/],
    [{ underside: 0 }, /^plate.underside: found 0 m/],
    [{ underside: 0.415 }, /^plate.thickness: found 0.0095 m; allowed above 0 m and below 0.00/],
  ] as const)('a plate with %o', (change, message) => {
    expect(() => cavityViewFactors({ ...oven, plate: { ...plate, ...change } })).toThrow(message);
    expect(() => cavityViewFactors({ ...oven, plate: { ...plate, ...change } })).toThrow(OutOfRange);
  });
  it('a cavity without height', () => {
    expect(() => cavityViewFactors({ ...oven, height: 0, plate: undefined })).toThrow(
      'cavity.height: found 0 m; allowed above 0 m',
    );
  });
});
