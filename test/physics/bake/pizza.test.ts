import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bakeParameters } from '../../../physics/bake/parameters.ts';
import {
  buildPizza,
  cheeseWater,
  crustCells,
  gradedCells,
  sauceWater,
  standardMesh,
} from '../../../physics/bake/pizza.ts';
import type { CellSpec } from '../../../physics/bake/columnFields.ts';
import { northAmerican } from '../../support/evenings.ts';

describe('cells graded from both faces', () => {
  it('fill the layer, begin with the asked-for cell, grow and shrink steadily (any layer, any count)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2e-3, max: 30e-3, noNaN: true }),
        fc.double({ min: 0.05e-3, max: 0.2e-3, noNaN: true }),
        fc.integer({ min: 8, max: 60 }),
        (thickness, first, n) => {
          const sizes = gradedCells(thickness, first, n);
          expect(sizes).toHaveLength(n);
          expect(Math.abs(sizes.reduce((sum, s) => sum + s, 0) / thickness - 1)).toBeLessThan(1e-9);
          expect(sizes.every((s) => s > 0)).toBe(true);
          const thickest = sizes.indexOf(Math.max(...sizes));
          for (let i = 1; i < n; i++)
            if (i <= thickest) expect(sizes[i]!).toBeGreaterThanOrEqual(sizes[i - 1]! * (1 - 1e-12));
            else expect(sizes[i]!).toBeLessThanOrEqual(sizes[i - 1]! * (1 + 1e-12));
        },
      ),
      { seed: 11 },
    );
  });
});

describe('cells of a base under topping', () => {
  it.each([
    [6e-3, 24],
    [6e-3, 48],
    [1e-3, 24],
    [20e-3, 12],
    [3e-3, 1],
  ])('fill a layer of %d m with %d, equal where the crust grows and never thinner above', (thickness, n) => {
    const sizes = crustCells(thickness, n);
    expect(sizes).toHaveLength(n);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeCloseTo(thickness, 12);
    for (let i = 1; i < n; i++) expect(sizes[i]!).toBeGreaterThanOrEqual(sizes[i - 1]! * (1 - 1e-12));
    for (const size of sizes) expect(size).toBeGreaterThan(0);
  });
});

describe('a pizza from what a cook says of it', () => {
  const evening = northAmerican();
  const pizza = buildPizza(evening, bakeParameters, standardMesh);
  const mass = (cells: readonly CellSpec[], area: number, name?: string): number =>
    area * cells.filter((c) => !name || c.material.name === name).reduce((m, c) => m + c.solids + c.water, 0);
  const water = (cells: readonly CellSpec[], area: number, name: string): number =>
    area * cells.filter((c) => c.material.name === name).reduce((m, c) => m + c.water, 0);
  const { centre, rim } = pizza;

  it('covers the disc of its diameter and weighs what went into it', () => {
    expect(Math.abs(centre.area + rim.area - (Math.PI / 4) * 0.305 ** 2)).toBeLessThan(1e-12);
    const dough = mass(centre.cells, centre.area, 'dough') + mass(rim.cells, rim.area);
    expect(Math.abs(dough - 0.3)).toBeLessThan(1e-9);
    expect(Math.abs(mass(centre.cells, centre.area, 'sauce') - 0.08)).toBeLessThan(1e-9);
    expect(Math.abs(mass(centre.cells, centre.area, 'cheese') - 0.12)).toBeLessThan(1e-9);
  });
  it('holds the water of the formula: 14 % of the flour and all of the liquid', () => {
    const { liquid, salt, sugar, oil, yeast } = evening.dough;
    expect(liquid).toHaveLength(1);
    const percent = liquid[0]!.percent;
    const share = (14 + percent) / (100 + percent + salt + sugar + oil + yeast.percent);
    const found = water(centre.cells, centre.area, 'dough') + water(rim.cells, rim.area, 'dough');
    expect(Math.abs(found / 0.3 - share)).toBeLessThan(1e-9);
    expect(Math.abs(water(centre.cells, centre.area, 'sauce') / 0.08 - sauceWater)).toBeLessThan(1e-9);
    const mozzarella = cheeseWater['low-moisture-mozzarella'];
    expect(Math.abs(water(centre.cells, centre.area, 'cheese') / 0.12 - mozzarella)).toBeLessThan(1e-9);
  });
  it('has a rim thicker and lighter than its middle, with the heat of its parts (Choi and Okos, dough 2.6 to 2.9)', () => {
    const thickness = (cells: readonly CellSpec[]): number => cells.reduce((sum, c) => sum + c.thickness, 0);
    expect(thickness(rim.cells)).toBeGreaterThan(thickness(centre.cells.slice(0, centre.doughCells)));
    const [cell] = centre.cells;
    expect(rim.cells[0]!.material.porosity).toBeGreaterThan(cell!.material.porosity);
    const heat =
      (cell!.solids * cell!.material.solidsHeat + cell!.water * 4186) / (cell!.solids + cell!.water);
    expect(heat).toBeGreaterThan(2500);
    expect(heat).toBeLessThan(3000);
    expect(rim.cells[0]!.thickness).toBeCloseTo(standardMesh.firstCell, 9);
  });
  it('without sauce and cheese is dough alone', () => {
    const bare = northAmerican({ toppings: { sauce: '0 g', cheese: [] } });
    const { centre: middle } = buildPizza(bare, bakeParameters, standardMesh);
    expect(middle.cells).toHaveLength(middle.doughCells);
  });
});
