import { describe, expect, it } from 'vitest';
import { stefanBoltzmann } from '../../../physics/materials/constants.ts';
import { partExchange } from '../../../physics/oven/radiation.ts';
import type { RadiatingPart } from '../../../physics/oven/radiation.ts';

/** Two parallel plates that see only each other. */
const facing = { factors: Float64Array.of(0, 1, 1, 0), areas: Float64Array.of(1, 1) };

function emitted(parts: readonly RadiatingPart[], factors: Float64Array, areas: Float64Array) {
  const { links } = partExchange(factors, areas, parts);
  return parts.map(({ node }) =>
    links.area.reduce((sum, g, k) => sum + (links.a[k] === node || links.b[k] === node ? g : 0), 0),
  );
}

describe('exchange between parts of surfaces', () => {
  it('parallel plates 800 / 500 K, eps 0.2 / 0.7: 3625 W/m2 (Cengel Ex. 13-7)', () => {
    const parts = [
      { node: 0, surface: 0, share: 1, emissivity: 0.2 },
      { node: 1, surface: 1, share: 1, emissivity: 0.7 },
    ];
    const { links } = partExchange(facing.factors, facing.areas, parts);
    expect(links.area).toHaveLength(1);
    const flux = links.area[0]! * stefanBoltzmann * (800 ** 4 - 500 ** 4);
    expect(Math.abs(flux - 3625)).toBeLessThan(1);
    // 1/(1/e1 + 1/e2 - 1), the closed form
    expect(Math.abs(links.area[0]! - 1 / (1 / 0.2 + 1 / 0.7 - 1))).toBeLessThan(1e-12);
  });

  it('black parts exchange by their view factors and shares alone', () => {
    const parts = [
      { node: 0, surface: 0, share: 0.25, emissivity: 1 },
      { node: 1, surface: 0, share: 0.75, emissivity: 1 },
      { node: 2, surface: 1, share: 1, emissivity: 1 },
    ];
    const { links } = partExchange(facing.factors, facing.areas, parts);
    const between = (i: number, j: number): number =>
      links.area.find((_, k) => links.a[k] === i && links.b[k] === j) ?? 0;
    expect(Math.abs(between(0, 2) - 0.25)).toBeLessThan(1e-12);
    expect(Math.abs(between(1, 2) - 0.75)).toBeLessThan(1e-12);
    expect(between(0, 1)).toBe(0);
  });

  it('does not change when a surface is cut into parts of the same temperature and emissivity', () => {
    const whole = partExchange(facing.factors, facing.areas, [
      { node: 0, surface: 0, share: 1, emissivity: 0.4 },
      { node: 1, surface: 1, share: 1, emissivity: 0.7 },
    ]).links.area[0]!;
    const { links } = partExchange(facing.factors, facing.areas, [
      { node: 0, surface: 0, share: 0.3, emissivity: 0.4 },
      { node: 1, surface: 0, share: 0.7, emissivity: 0.4 },
      { node: 2, surface: 1, share: 1, emissivity: 0.7 },
    ]);
    const cut = links.area.reduce((sum, g, k) => sum + (links.b[k] === 2 ? g : 0), 0);
    expect(Math.abs(cut - whole)).toBeLessThan(1e-12);
  });

  it('in a closed cavity each part gives what its emissivity and area allow, less what comes back to itself', () => {
    // A cube: a face sees each of the others alike within the published 0.2 (exactly 0.19982 and 0.20004).
    const n = 6;
    const factors = Float64Array.from({ length: n * n }, (_, k) => (k % (n + 1) === 0 ? 0 : 0.2));
    const areas = new Float64Array(n).fill(1);
    const parts = Array.from({ length: n }, (_, i) => ({
      node: i,
      surface: i,
      share: 1,
      emissivity: 0.3 + 0.1 * i,
    }));
    const { absorbed } = partExchange(factors, areas, parts);
    const given = emitted(parts, factors, areas);
    for (let i = 0; i < n; i++) {
      const shares = absorbed(i);
      expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(1e-12);
      expect(Math.abs(given[i]! - parts[i]!.emissivity * (1 - shares[i]!))).toBeLessThan(1e-12);
    }
  });
});
