import { describe, expect, it } from 'vitest';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import {
  parallelRectangles,
  perpendicularAnywhere,
  perpendicularRectangles,
  type Rectangle,
} from '../../../physics/oven/viewFactors.ts';

const rectangle = (x0: number, x1: number, y0: number, y1: number): Rectangle => ({ x0, x1, y0, y1 });
const at = (x: number, y: number) => rectangle(0, x, 0, y);

describe('parallel rectangles, published', () => {
  // Tolerance: half of the last digit printed; charts are good to one per cent.
  it.each([
    { what: 'unit cube (many textbooks)', a: at(1, 1), b: at(1, 1), gap: 1, F: 0.2, within: 5e-3 },
    {
      what: '1 x 1.5, gap 0.5, Engineering Equation Solver documentation, hs201',
      a: at(1, 1.5),
      b: at(1, 1.5),
      gap: 0.5,
      F: 0.4756,
      within: 5e-5,
    },
    {
      what: 'general form, Engineering Equation Solver documentation, hs214',
      a: rectangle(0.1, 0.2, 0.1, 0.2),
      b: rectangle(0.1, 0.2, 0.1, 0.2),
      gap: 0.05,
      F: 0.4153,
      within: 5e-5,
    },
    {
      what: 'strips 10 x 1, Incropera Ex. 13.3, chart',
      a: at(10, 1),
      b: at(10, 1),
      gap: 1,
      F: 0.39,
      within: 5e-3,
    },
    {
      what: '0.5 x 1, gap 0.5, Holman Ex. 8-6, chart (from memory)',
      a: at(0.5, 1),
      b: at(0.5, 1),
      gap: 0.5,
      F: 0.285,
      within: 1e-3,
    },
  ])('$what: $F', ({ a, b, gap, F, within }) => {
    expect(Math.abs(parallelRectangles(a, b, gap) - F)).toBeLessThan(within);
  });
});

describe('parallel rectangles, worked out beforehand from the same closed form (a check of the code)', () => {
  const floor = at(0.6, 0.46);
  const plate = rectangle(0.097, 0.503, 0.052, 0.408);
  it.each([
    { what: 'unit cube', a: at(1, 1), b: at(1, 1), gap: 1, F: 0.199824895698 },
    { what: 'strips 10 x 1', a: at(10, 1), b: at(10, 1), gap: 1, F: 0.386382 },
    { what: 'plate to floor', a: plate, b: floor, gap: 0.33 * 0.42, F: 0.719474 },
    { what: 'floor to plate', a: floor, b: plate, gap: 0.33 * 0.42, F: 0.376775 },
    { what: 'plate to ceiling', a: plate, b: floor, gap: 0.67 * 0.42 - 0.0095, F: 0.460316 },
  ])('$what: $F', ({ a, b, gap, F }) => {
    expect(Math.abs(parallelRectangles(a, b, gap) - F)).toBeLessThan(6e-7);
  });
});

describe('perpendicular rectangles', () => {
  it.each([
    {
      what: 'edge 0.5, both 1 deep, Engineering Equation Solver documentation, hs202',
      edge: 0.5,
      F: 0.1493,
      within: 5e-5,
    },
    { what: 'unit cube (many textbooks)', edge: 1, F: 0.2, within: 5e-3 },
    { what: 'unit cube, worked out', edge: 1, F: 0.200043776075, within: 1e-11 },
  ])('$what: $F', ({ edge, F, within }) => {
    expect(Math.abs(perpendicularRectangles(edge, 1, 1) - F)).toBeLessThan(within);
  });
  it('close a cube with the opposite side', () => {
    const opposite = parallelRectangles(at(1, 1), at(1, 1), 1);
    expect(opposite + 4 * perpendicularRectangles(1, 1, 1)).toBeCloseTo(1, 13);
  });
  it('close a box of three different edges', () => {
    const up = parallelRectangles(at(0.6, 0.46), at(0.6, 0.46), 0.42);
    const back = perpendicularRectangles(0.6, 0.46, 0.42);
    const side = perpendicularRectangles(0.46, 0.6, 0.42);
    expect(up + 2 * back + 2 * side).toBeCloseTo(1, 13);
    expect(Math.abs(back - 0.210078)).toBeLessThan(6e-7);
    expect(Math.abs(side - 0.15935)).toBeLessThan(6e-7);
  });
  it('are the integral of the cosines over both (midpoint rule, 24 cells an edge)', () => {
    const from = { along0: 0.1, along1: 0.5, near: 0.1, far: 0.3 };
    const to = { along0: 0.3, along1: 0.9, near: 0.2, far: 0.5 };
    const n = 24;
    const mid = (low: number, high: number, i: number) => low + ((i + 0.5) / n) * (high - low);
    let sum = 0;
    for (let i = 0; i < n ** 4; i++) {
      const y1 = mid(from.along0, from.along1, i % n);
      const x = mid(from.near, from.far, Math.floor(i / n) % n);
      const y2 = mid(to.along0, to.along1, Math.floor(i / n ** 2) % n);
      const z = mid(to.near, to.far, Math.floor(i / n ** 3));
      sum += (x * z) / (x * x + z * z + (y1 - y2) ** 2) ** 2;
    }
    const area = (to.along1 - to.along0) * (to.far - to.near);
    const integral = (sum / n ** 4 / Math.PI) * area;
    expect(Math.abs(perpendicularAnywhere(from, to) / integral - 1)).toBeLessThan(1e-3);
  });
});

describe('limits and laws', () => {
  it('everything arrives across a small gap, and nothing beside', () => {
    expect(parallelRectangles(at(1, 1), at(1, 1), 1e-9)).toBeCloseTo(1, 8);
    expect(Math.abs(parallelRectangles(at(1, 1), rectangle(2, 3, 0, 1), 1e-9))).toBeLessThan(1e-8);
  });
  it('far apart it is area over pi distance squared', () => {
    const far = parallelRectangles(at(1, 1), at(0.5, 0.5), 300);
    expect(Math.abs((far * Math.PI * 300 ** 2) / 0.25 - 1)).toBeLessThan(1e-4);
  });
  it('goes both ways with the areas', () => {
    const a = rectangle(0, 0.4, 0.1, 0.3);
    const b = rectangle(0.2, 1.1, -0.4, 0.2);
    const there = 0.08 * parallelRectangles(a, b, 0.2);
    const back = 0.54 * parallelRectangles(b, a, 0.2);
    expect(there).toBeCloseTo(back, 13);
  });
  it('adds up over the pieces of what is seen', () => {
    const whole = parallelRectangles(at(1, 1), at(2, 1), 0.3);
    const pieces =
      parallelRectangles(at(1, 1), at(0.7, 1), 0.3) +
      parallelRectangles(at(1, 1), rectangle(0.7, 2, 0, 1), 0.3);
    expect(pieces).toBeCloseTo(whole, 13);
  });
});

describe('what is refused', () => {
  it('rectangles without area, no gap, no edge', () => {
    expect(() => parallelRectangles(rectangle(1, 1, 0, 1), at(1, 1), 1)).toThrow(
      'from.x: found 1 m to 1 m; allowed a length above 0 m',
    );
    expect(() => parallelRectangles(at(1, 1), at(1, Number.NaN), 1)).toThrow(/^to.y: found 0 m to NaN m/);
    expect(() => parallelRectangles(at(1, 1), at(1, 1), 0)).toThrow(OutOfRange);
    expect(() => perpendicularRectangles(0, 1, 1)).toThrow(/^from.along/);
    expect(() =>
      perpendicularAnywhere(
        { along0: 0, along1: 1, near: -1, far: 1 },
        { along0: 0, along1: 1, near: 0, far: 1 },
      ),
    ).toThrow('from.near: found -1 m; allowed 0 m or more');
  });
});
