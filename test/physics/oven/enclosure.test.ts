import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import { absorptionFactors, totalExchangeAreas } from '../../../physics/oven/enclosure.ts';
import { cavityViewFactors } from '../../../physics/oven/shading.ts';

/** The books take this rounded constant. */
const sigma = 5.67e-8;

/** Net heat into each surface, W. */
function gains(factors: number[], areas: number[], emissivities: number[], temperatures: number[]): number[] {
  const exchange = totalExchangeAreas(
    Float64Array.from(factors),
    Float64Array.from(areas),
    Float64Array.from(emissivities),
  );
  const n = areas.length;
  return areas.map((_, i) =>
    areas.reduce((sum, __, j) => {
      const drive = temperatures[j]! ** 4 - temperatures[i]! ** 4;
      return sum + exchange[i * n + j]! * sigma * drive;
    }, 0),
  );
}

/** Temperature at which the surface `free` neither gains nor loses, by its linear balance in T^4. */
function floating(
  factors: number[],
  areas: number[],
  emissivities: number[],
  temperatures: number[],
  free: number,
) {
  const G = totalExchangeAreas(
    Float64Array.from(factors),
    Float64Array.from(areas),
    Float64Array.from(emissivities),
  );
  const n = areas.length;
  let top = 0;
  let bottom = 0;
  for (let j = 0; j < n; j++) {
    if (j === free) continue;
    top += G[free * n + j]! * temperatures[j]! ** 4;
    bottom += G[free * n + j]!;
  }
  return Math.sqrt(Math.sqrt(top / bottom));
}

describe('two surfaces', () => {
  it('Cengel Ex. 13-7: parallel plates 800 and 500 K, 0.2 and 0.7: 3625 W/m2', () => {
    const [cold] = gains([0, 1, 1, 0], [1, 1], [0.7, 0.2], [500, 800]);
    expect(Math.abs(cold! - 3625)).toBeLessThan(0.5);
  });
  it('Cengel Ex. 13-11: the same with a shield of 0.1 on both sides: 806 W/m2', () => {
    // Each gap is an enclosure of its own; the shield floats between them.
    const flow = (shield: number) => ({
      hot: gains([0, 1, 1, 0], [1, 1], [0.1, 0.2], [shield, 800])[0]!,
      cold: gains([0, 1, 1, 0], [1, 1], [0.7, 0.1], [500, shield])[0]!,
    });
    let low = 500;
    let high = 800;
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      const { hot, cold } = flow(middle);
      if (hot > cold) low = middle;
      else high = middle;
    }
    expect(Math.abs(flow(low).cold - 806)).toBeLessThan(0.5);
  });
  it.each([
    ['without', [0.3, 0.8], 0.279],
    ['with half of', [0.3, 0.04], undefined],
  ] as const)('Holman Ex. 8-10 %s the shield: emissivity factor', (_, [first, second], factor) => {
    const G = totalExchangeAreas(
      Float64Array.of(0, 1, 1, 0),
      Float64Array.of(1, 1),
      Float64Array.of(first, second),
    );
    const behind = totalExchangeAreas(
      Float64Array.of(0, 1, 1, 0),
      Float64Array.of(1, 1),
      Float64Array.of(0.04, 0.8),
    );
    if (factor !== undefined) expect(Math.abs(G[1]! - factor)).toBeLessThan(5e-4);
    // 0.01902 for both gaps in series.
    else expect(Math.abs(1 / (1 / G[1]! + 1 / behind[1]!) - 0.01902)).toBeLessThan(5e-6);
  });
});

describe('Cengel Ex. 13-8: cylinder r = h = 1 m, F12 0.38 (inputs from the book)', () => {
  const end = Math.PI;
  const F = [0, 0.38, 0.62, 0.38, 0, 0.62, 0.31, 0.31, 0.38];
  it('net 27.60, -2.13, -25.47 kW (worked out beforehand from the inputs; sum 0)', () => {
    const [top, base, side] = gains(F, [end, end, 2 * end], [0.8, 0.4, 1], [700, 500, 400]);
    expect(Math.abs(top! / -1e3 - 27.6)).toBeLessThan(0.01);
    expect(Math.abs(base! / -1e3 + 2.13)).toBeLessThan(0.01);
    expect(Math.abs(side! / -1e3 + 25.47)).toBeLessThan(0.01);
    expect(Math.abs(top! + base! + side!)).toBeLessThan(1e-9);
  });
});

describe('triangular ducts, 1 m a side, all views 1/2', () => {
  const F = [0, 0.5, 0.5, 0.5, 0, 0.5, 0.5, 0.5, 0];
  const one = [1, 1, 1];
  it('Cengel Ex. 13-9: 600 K at 0.7, 1000 K black, third insulated: 28.01 kW/m', () => {
    const third = floating(F, one, [0.7, 1, 0.5], [600, 1000, 0], 2);
    const [cold] = gains(F, one, [0.7, 1, 0.5], [600, 1000, third]);
    expect(Math.abs(cold! / 1e3 - 28.01)).toBeLessThan(0.006);
  });
  it.each([0.8, 0.3, 1])(
    'Incropera Ex. 13.6: 1200 K at 0.8, 500 K at 0.4: 36.98 kW/m and 1102 K whatever the third emits (%d)',
    (third) => {
      const emissivities = [0.8, 0.4, third];
      const T = floating(F, one, emissivities, [1200, 500, 0], 2);
      const [hot] = gains(F, one, emissivities, [1200, 500, T]);
      expect(Math.abs(hot! / -1e3 - 36.98)).toBeLessThan(0.006);
      expect(Math.abs(T - 1102)).toBeLessThan(0.5);
    },
  );
  it('gives the same with the third re-radiating as emissivity 0', () => {
    const [hot, , third] = gains(F, one, [0.8, 0.4, 0], [1200, 500, 300]);
    expect(Math.abs(hot! / -1e3 - 36.98)).toBeLessThan(0.006);
    expect(third).toBeCloseTo(0, 9);
  });
});

describe('open to a room', () => {
  it('Incropera Ex. 13.3: heater 10 x 1 m, absorber 15 m2, room 300 K: absorber -78.2 kW with F 0.39', () => {
    // The room is the hypothetical black surface that closes the duct: both openings, 10 m2 as seen from the
    // absorber's chord, with what the absorber does not send to the heater or to itself; its own area is free.
    const room = 1e4;
    const F12 = 0.39;
    const F21 = (10 * F12) / 15;
    // The absorber's view of the room equals that of its 10 x 1 m chord: 1 - 0.39 of ten of its fifteen m2.
    const F23 = (10 * (1 - F12)) / 15;
    const F = [
      ...[0, F12, 1 - F12],
      ...[F21, 1 - F21 - F23, F23],
      ...[(10 * (1 - F12)) / room, (15 * F23) / room, 1 - (10 * (1 - F12) + 15 * F23) / room],
    ];
    const [, absorber] = gains(F, [10, 15, room], [0.9, 0.5, 1], [1000, 600, 300]);
    expect(Math.abs(absorber! / 1e3 - 78.2)).toBeLessThan(0.06);
  });
  it('Holman Ex. 8-7: squares 0.5 m, 1000 K at 0.6, the other insulated, room 300 K, F 0.2: 8.229 kW, 599.4 K', () => {
    const room = 1e4;
    const away = (0.25 * 0.8) / room;
    const F = [0, 0.2, 0.8, 0.2, 0, 0.8, away, away, 1 - 2 * away];
    const areas = [0.25, 0.25, room];
    const T = floating(F, areas, [0.6, 0.5, 1], [1000, 0, 300], 1);
    const [hot] = gains(F, areas, [0.6, 0.5, 1], [1000, T, 300]);
    // The book takes 5.669e-8.
    expect(Math.abs(hot! / -1e3 - 8.229)).toBeLessThan(0.003);
    expect(Math.abs(T - 599.4)).toBeLessThan(0.1);
  });
  it('Holman Ex. 8-6 (from memory): 14.425 and 2.594 kW', () => {
    const room = 1e4;
    const away = (0.5 * 0.715) / room;
    const F = [0, 0.285, 0.715, 0.285, 0, 0.715, away, away, 1 - 2 * away];
    const [hot, warm] = gains(F, [0.5, 0.5, room], [0.2, 0.5, 1], [1273, 773, 300]);
    expect(Math.abs(hot! / -1e3 - 14.425)).toBeLessThan(0.006);
    expect(Math.abs(warm! / -1e3 - 2.594)).toBeLessThan(0.003);
  });
});

describe('Cengel Ex. 13-6: black cube 5 m, base 800, top 1500, sides 500 K, F 0.2', () => {
  it('base to sides 394, to top -1319, net -925 kW', () => {
    const F = [0, 0.2, 0.8, 0.2, 0, 0.8, 0.2, 0.2, 0.6];
    const G = totalExchangeAreas(
      Float64Array.from(F),
      Float64Array.of(25, 25, 100),
      Float64Array.of(1, 1, 1),
    );
    const toSides = G[2]! * sigma * (800 ** 4 - 500 ** 4);
    const toTop = G[1]! * sigma * (800 ** 4 - 1500 ** 4);
    expect(Math.abs(toSides / 1e3 - 394)).toBeLessThan(0.6);
    expect(Math.abs(toTop / 1e3 + 1319)).toBeLessThan(0.6);
    expect(Math.abs((toSides + toTop) / 1e3 + 925)).toBeLessThan(1);
  });
});

describe('what holds for every enclosure', () => {
  const oven = cavityViewFactors({
    width: 0.6,
    depth: 0.46,
    height: 0.42,
    plate: { width: 0.406, depth: 0.356, thickness: 0.0095, underside: 0.1386 },
  });
  const n = oven.areas.length;
  it('G is symmetric, its rows add up to eps A, no entry is negative', () => {
    const emissivity = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(emissivity, { minLength: n, maxLength: n }), (emissivities) => {
        const G = totalExchangeAreas(oven.factors, oven.areas, Float64Array.from(emissivities));
        for (let i = 0; i < n; i++) {
          let sum = 0;
          for (let j = 0; j < n; j++) {
            sum += G[i * n + j]!;
            expect(G[i * n + j]! - G[j * n + i]!).toBe(0);
            expect(G[i * n + j]!).toBeGreaterThanOrEqual(0);
          }
          expect(Math.abs(sum - emissivities[i]! * oven.areas[i]!)).toBeLessThan(1e-12);
        }
      }),
      { seed: 20260131, numRuns: 100 },
    );
  });
  it('between black surfaces is the view factor itself', () => {
    const B = absorptionFactors(oven.factors, oven.areas, new Float64Array(n).fill(1));
    B.forEach((value, index) => {
      expect(value).toBeCloseTo(oven.factors[index]!, 14);
    });
  });
});

describe('what an enclosure refuses', () => {
  const areas = Float64Array.of(1, 1);
  const eps = Float64Array.of(0.5, 0.5);
  const open = Float64Array.of(0, 0.9, 1, 0);
  it('rows that do not close, pairs that do not agree, impossible emissivities, mirrors', () => {
    expect(() => totalExchangeAreas(open, areas, eps)).toThrow(OutOfRange);
    expect(() => totalExchangeAreas(Float64Array.of(0, 0.9, 0.9, 0), areas, eps)).toThrow(
      'factors[0]: found a row adding up to 0.9; allowed a row adding up to 1',
    );
    expect(() => totalExchangeAreas(Float64Array.of(0, 1, 1, 0), areas, Float64Array.of(0.5, 1.1))).toThrow(
      'emissivities[1]: found 1.1; allowed 0 to 1',
    );
    expect(() => totalExchangeAreas(Float64Array.of(0, 1, 1, 0), areas, Float64Array.of(0, 0))).toThrow(
      /^emissivities: found surfaces that see only mirrors/,
    );
    expect(() => totalExchangeAreas(Float64Array.of(0, 1), areas, eps)).toThrow(/^factors: found 2 entries/);
    expect(() => totalExchangeAreas(Float64Array.of(0, 1, 1, 0), Float64Array.of(1, 0), eps)).toThrow(
      /^areas\[1\]/,
    );
    expect(() => totalExchangeAreas(Float64Array.of(0, 1, 1, 0), areas, Float64Array.of(1))).toThrow(
      /^emissivities: found 1 entries/,
    );
  });
});
