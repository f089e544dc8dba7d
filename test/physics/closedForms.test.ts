import { describe, expect, it } from 'vitest';
import { stefanBoltzmann } from '../../physics/materials/constants.ts';
import {
  constantFlux,
  contact,
  convectedSurface,
  effusivity,
  erfc,
  heldSurface,
  lumped,
  lumpedTime,
  planeWall,
  planeWallFactor,
  planeWallRoot,
  radiatingTime,
  scaledErfc,
} from '../support/closedForms.ts';

// "Worked out" marks values computed beforehand from the same equation: they check the code only. All others are
// printed in the book named; where a reprint is wrong, it is said.

describe('error function, Abramowitz and Stegun, tables 7.1 and 7.2 (from memory)', () => {
  it.each([
    [0, 1],
    [0.5, 1 - 0.5204998778],
    [1, 1 - 0.8427007929],
    [2, 1 - 0.995322265],
    [-1, 1 + 0.8427007929],
  ])('erfc(%d) = %d', (x, value) => {
    expect(Math.abs(erfc(x) - value)).toBeLessThan(6e-11);
  });
  it('is the same on both sides of the change from series to fraction, and tends to 1/(x sqrt pi)', () => {
    expect(Math.abs(scaledErfc(2.5) / scaledErfc(2.5 - 1e-12) - 1)).toBeLessThan(1e-10);
    expect(scaledErfc(1e6) * 1e6 * Math.sqrt(Math.PI)).toBeCloseTo(1, 10);
    expect(() => scaledErfc(-1)).toThrow(RangeError);
  });
});

describe('one lump', () => {
  it('Incropera Ex. 5.1: junction 0.706 mm, tau 1 s, 25 to 199 degC in 200: 5.2 s', () => {
    const diameter = (6 * 400 * 1) / (8500 * 400);
    expect(Math.abs(diameter - 7.06e-4)).toBeLessThan(6e-7);
    // tau = rho c D / (6 h) = 1 s. A reprint prints 5.16, having taken ln as 2.30 log10.
    expect(Math.abs(lumpedTime(25, 200, 1, 199) - 5.2)).toBeLessThan(0.05);
    expect(lumped(25, 200, 1, lumpedTime(25, 200, 1, 199))).toBeCloseTo(199, 10);
  });
  it('Holman Ex. 4.1: steel ball 50 mm, 450 to 150 degC in 100: 5818 s', () => {
    const timeConstant = (7800 * 460 * 0.025) / (3 * 10);
    expect(Math.abs(1 / timeConstant - 3.3445e-4)).toBeLessThan(6e-9);
    expect(Math.abs(lumpedTime(450, 100, timeConstant, 150) - 5818)).toBeLessThan(1);
  });
  it('Cengel Ex. 4-1: 1 mm junction, b 0.4632 1/s, 99 % after 9.94 s', () => {
    const timeConstant = (8500 * 320 * 1e-3) / (6 * 210);
    expect(Math.abs(1 / timeConstant - 0.4632)).toBeLessThan(6e-5);
    expect(Math.abs(lumpedTime(1, 0, timeConstant, 0.01) - 9.94)).toBeLessThan(0.006);
  });
  it('radiating only, 573.15 to 373.15 K in 293.15: 2463.54 s (worked out, agrees with integration)', () => {
    const time = radiatingTime(7850 * 500 * 4.75e-3, 0.8 * stefanBoltzmann, 573.15, 373.15, 293.15);
    expect(Math.abs(time - 2463.54)).toBeLessThan(0.006);
  });
});

describe('plane wall', () => {
  // Incropera table 5.1 prints the same to four digits (one row compared from memory); six digits worked out.
  it.each([
    [0.01, 0.099834, 1.001661],
    [0.05, 0.22176, 1.008189],
    [0.1, 0.311053, 1.016094],
    [0.2, 0.432841, 1.031088],
    [0.3, 0.521791, 1.045047],
    [0.4, 0.593242, 1.058039],
    [0.5, 0.653271, 1.070128],
    [1, 0.860334, 1.119132],
    [2, 1.076874, 1.178456],
    [5, 1.313838, 1.240249],
    [10, 1.42887, 1.261963],
    [100, 1.555245, 1.273088],
  ])('Bi %d: z1 %d, C1 %d', (biot, root, factor) => {
    const z = planeWallRoot(biot, 0);
    expect(Math.abs(z - root)).toBeLessThan(6e-7);
    expect(Math.abs(planeWallFactor(z) - factor)).toBeLessThan(6e-7);
  });
  it('has roots that solve z tan z = Bi, one in each half turn', () => {
    for (let index = 0; index < 20; index++) {
      const z = planeWallRoot(1, index);
      expect(z * Math.tan(z)).toBeCloseTo(1, 9);
      expect(Math.floor(z / Math.PI)).toBe(index);
    }
  });
  it.each([
    [0.05, 0.999751, 0.790377],
    [0.1, 0.993108, 0.723577],
    [0.2, 0.950642, 0.643391],
    [0.5, 0.772526, 0.504522],
    [1, 0.533859, 0.348177],
  ])('Bi 1, Fo %d: middle %d, face %d (worked out)', (fourier, middle, face) => {
    expect(Math.abs(planeWall(1, fourier, 0) - middle)).toBeLessThan(6e-7);
    expect(Math.abs(planeWall(1, fourier, 1) - face)).toBeLessThan(6e-7);
  });
  it('Incropera Ex. 5.4: pipe wall 40 mm: Bi 0.313, Fo 5.64, 42.9 and 45.2 degC, -7400 W/m2', () => {
    const biot = (500 * 0.04) / 63.9;
    const fourier = (18.8e-6 * 480) / 0.04 ** 2;
    expect(Math.abs(biot - 0.313)).toBeLessThan(5e-4);
    expect(Math.abs(fourier - 5.64)).toBeLessThan(5e-3);
    const insulated = 60 - 80 * planeWall(biot, fourier, 0);
    const heated = 60 - 80 * planeWall(biot, fourier, 1);
    // The book rounds Bi and its one term; the reprint gives 42.9, 45.28 and -7362.
    expect(Math.abs(insulated - 42.9)).toBeLessThan(0.15);
    expect(Math.abs(heated - 45.28)).toBeLessThan(0.1);
    expect(Math.abs(500 * (heated - 60) + 7362)).toBeLessThan(50);
  });
  it('Holman Ex. 4.6: aluminium plate 50 mm, 60 s, 12.5 mm deep: chart 147.7 degC, exact 150.44 (worked out)', () => {
    const T = 70 + 130 * planeWall((525 * 0.025) / 215, (8.4e-5 * 60) / 0.025 ** 2, 0.5);
    expect(Math.abs(T - 147.7)).toBeLessThan(3);
    expect(Math.abs(T - 150.44)).toBeLessThan(0.006);
  });
});

describe('half-space', () => {
  const steel = { conductivity: 45, diffusivity: 1.4e-5, initial: 35 };
  it('Holman Ex. 4.2: surface at 250 degC: 118.5; flux 3.2e5: 79.3, surface 199.4; 30 s, 25 mm', () => {
    expect(Math.abs(heldSurface(steel, 250, 0.025, 30) - 118.5)).toBeLessThan(0.05);
    expect(Math.abs(constantFlux(steel, 3.2e5, 0.025, 30) - 79.3)).toBeLessThan(0.05);
    expect(Math.abs(constantFlux(steel, 3.2e5, 0, 30) - 199.4)).toBeLessThan(0.05);
  });
  it('Incropera Ex. 5.10c: copper, 3e5 W/m2, 120 s: surface 120.0, 0.15 m deep 45.4', () => {
    // A reprint prints 25.6 for the surface.
    const copper = { conductivity: 401, diffusivity: 117e-6, initial: 20 };
    expect(Math.abs(constantFlux(copper, 3e5, 0, 120) - 120)).toBeLessThan(0.05);
    expect(Math.abs(constantFlux(copper, 3e5, 0.15, 120) - 45.4)).toBeLessThan(0.05);
  });
  it('Incropera Ex. 5.6: soil from 20 with its surface at -15 degC: frost at 0.68 m after 60 days', () => {
    // A reprint prints 0.92, having taken erfc for the inverse of erf.
    const soil = { conductivity: 0.52, diffusivity: 0.52 / (2050 * 1840), initial: 20 };
    const at = (depth: number) => heldSurface(soil, -15, depth, 60 * 86400);
    expect(at(0.675)).toBeLessThan(0);
    expect(at(0.685)).toBeGreaterThan(0);
  });
  it('Holman Ex. 4.5: aluminium, h 525, 40 mm deep, 200 to 120 degC in 70: 3561 s (worked out; chart 3000)', () => {
    const aluminium = { conductivity: 215, diffusivity: 8.4e-5, initial: 200 };
    expect(Math.abs(convectedSurface(aluminium, 70, 525, 0.04, 3561) - 120)).toBeLessThan(0.01);
  });
  it('convection without end is a held surface', () => {
    expect(convectedSurface(steel, 250, 1e12, 0.025, 30)).toBeCloseTo(heldSurface(steel, 250, 0.025, 30), 4);
  });
});

describe('two half-spaces, 280 and 20 degC, dough k 0.5, rho 700, c 2250 (worked out; form of Carslaw and Jaeger)', () => {
  const dough = effusivity(0.5, 700, 2250);
  const times = [1, 10, 60, 180];
  it.each([
    {
      plate: 'steel',
      e: effusivity(45, 7850, 550),
      ideal: 264.44,
      faces: [74.25, 141.25, 198.05, 223.39],
      fluxes: [40.46, 26.21, 14.12, 8.73],
      faces400: [111.33, 186.47, 228.52, 243.25],
    },
    {
      plate: 'cordierite',
      e: effusivity(2.5, 2000, 950),
      ideal: 204.77,
      faces: [71.19, 125.91, 165.21, 180.89],
      fluxes: [37.59, 22.19, 11.13, 6.72],
      faces400: [102.62, 157.69, 183.96, 192.6],
    },
    {
      plate: 'clay',
      e: effusivity(0.86, 2500, 860),
      ideal: 177.33,
      faces: [69.18, 117.0, 148.15, 159.9],
      fluxes: [35.75, 19.94, 9.64, 5.76],
      faces400: [97.28, 142.39, 162.16, 168.49],
    },
  ])('$plate', ({ e, ideal, faces, fluxes, faces400 }) => {
    times.forEach((time, index) => {
      const gentle = contact(e, 280, dough, 20, 200, time);
      expect(Math.abs(gentle.face2 - faces[index]!)).toBeLessThan(0.0051);
      expect(Math.abs(gentle.flux / 1e3 - fluxes[index]!)).toBeLessThan(0.0051);
      expect(Math.abs(contact(e, 280, dough, 20, 400, time).face2 - faces400[index]!)).toBeLessThan(0.0051);
      expect(gentle.flux).toBeCloseTo(200 * (gentle.face1 - gentle.face2), 6);
    });
    const perfect = contact(e, 280, dough, 20, 1e12, 1);
    expect(Math.abs(perfect.face2 - ideal)).toBeLessThan(0.0051);
    expect(perfect.face1).toBeCloseTo(perfect.face2, 6);
  });
  it.each([
    ['steel', effusivity(45, 7850, 560), 14065, 258.9],
    ['cordierite', effusivity(2, 2000, 900), 1897, 177.2],
    ['fireclay', effusivity(1.05, 2150, 956), 1469, 160.9],
  ] as const)('perfect contact with %s and dough of e 1241', (_, e, rounded, T) => {
    expect(Math.abs(e - rounded)).toBeLessThan(0.6);
    expect(Math.abs(contact(e, 280, effusivity(0.5, 1100, 2800), 20, 1e12, 1).face2 - T)).toBeLessThan(0.06);
  });
});
