/** Builds the columns of a pizza from what the cook says of it: dough formula, ball, diameter, sauce and cheese. */
import type { CheesePart, Evening } from '../evening/evening.ts';
import type { CheeseId } from '../evening/ids.ts';
import { waterShareOf } from '../dough/ingredients.ts';
import { mixtureProperties } from '../materials/food.ts';
import type { Composition } from '../materials/food.ts';
import { findRoot } from '../numerics/root.ts';
import type { CellSpec } from './columnFields.ts';
import type { LayerMaterial } from './moistCell.ts';
import { allEffects } from './parameters.ts';
import type { BakeParameters, Effects } from './parameters.ts';

/** Cells of each layer. The mesh error is larger than the time error, so the cells are spent at the base first. */
export interface PizzaMesh {
  readonly dough: number;
  readonly rim: number;
  readonly sauce: number;
  readonly cheese: number;
  /** m, the lowest cell of dough that is bare on top, the rim's among it */
  readonly firstCell: number;
}

/** The cells of a planned bake; a test doubles them. */
export const standardMesh: PizzaMesh = { dough: 26, rim: 16, sauce: 2, cheese: 3, firstCell: 0.24e-3 };

/** Mass fractions of the dry matter. */
type Solids = Omit<Composition, 'water'>;

/** Wheat flour with salt and oil, dry: protein and fat of bread flour (USDA SR 20083), the rest starch, from memory. */
const doughSolids: Solids = { protein: 0.14, fat: 0.035, carbohydrate: 0.765, fibre: 0.03, ash: 0.03 };
/** Canned tomato, dry (USDA SR 11693, shares from memory). */
const sauceSolids: Solids = { protein: 0.15, fat: 0.03, carbohydrate: 0.6, fibre: 0.15, ash: 0.07 };
/** Low-moisture mozzarella, dry: 23.7 protein, 20.4 fat, 4.4 carbohydrate, 3.5 ash (USDA FoodData Central 329370). */
const cheeseSolids: Solids = { protein: 0.455, fat: 0.392, carbohydrate: 0.085, fibre: 0, ash: 0.068 };

/** Mass fraction of water: tomato USDA SR 11693; cheeses USDA FoodData Central 329370 and SR 1026, 1033. */
export const sauceWater = 0.894;
export const cheeseWater: Readonly<Record<Exclude<CheeseId, 'custom'>, number>> = {
  'low-moisture-mozzarella': 0.48,
  'fresh-mozzarella': 0.5,
  hard: 0.292,
};

function cheeseWaterOf(part: CheesePart): number {
  return part.kind === 'custom'
    ? (part.waterShare ?? cheeseWater['low-moisture-mozzarella'])
    : cheeseWater[part.kind];
}

function layerMaterial(
  name: LayerMaterial['name'],
  solids: Solids,
  rest: Omit<
    LayerMaterial,
    'name' | 'solidsHeat' | 'solidsDensity' | 'solidsConductivity' | 'solidsConductivitySlope'
  >,
): LayerMaterial {
  const at = (celsius: number) => mixtureProperties({ water: 0, ...solids }, 273.15 + celsius);
  const [cold, warm] = [at(0), at(100)];
  return {
    name,
    solidsHeat: at(60).specificHeat,
    solidsDensity: at(60).density,
    solidsConductivity: cold.conductivityParallel,
    solidsConductivitySlope: (warm.conductivityParallel - cold.conductivityParallel) / 100,
    ...rest,
  };
}

/**
 * Cell sizes that grow geometrically from both faces of a layer to its middle.
 *
 * @param first m, the lowest cell; the topmost is twice as thick
 */
export function gradedCells(thickness: number, first: number, n: number): number[] {
  const sizes = (ratio: number): number[] =>
    Array.from({ length: n }, (_, i) => Math.min(first * ratio ** i, 2 * first * ratio ** (n - 1 - i)));
  const excess = (ratio: number): number => sizes(ratio).reduce((sum, s) => sum + s, 0) - thickness;
  // A layer thinner than n equal cells of the first size gets equal cells.
  if (excess(1) >= 0) return new Array<number>(n).fill(thickness / n);
  // At this ratio the middle cell alone is as thick as the layer.
  return sizes(findRoot(excess, 1, (thickness / first) ** (2 / (n - 1)), 1e-12));
}

/** m from the plate that a base under topping dries in a bake, more or less: there the cells are spent */
const crustDepth = 2.4e-3;
const crustShare = 0.6;

/**
 * Cell sizes of a layer under topping: equal ones where the crust will be, then ever thicker ones, for under sauce
 * nothing is steep. So 26 cells come as near to a fine mesh as 40 that grow evenly.
 */
export function crustCells(thickness: number, n: number): number[] {
  const fine = Math.max(1, Math.round(crustShare * n));
  const depth = Math.min(crustDepth, crustShare * thickness);
  const size = depth / fine;
  const rest = thickness - depth;
  const coarse = n - fine;
  const sizes = (ratio: number): number[] =>
    Array.from({ length: coarse }, (_, i) => size * ratio ** (i + 1));
  const excess = (ratio: number): number => sizes(ratio).reduce((sum, s) => sum + s, 0) - rest;
  if (coarse < 1 || excess(1) >= 0) return new Array<number>(n).fill(thickness / n);
  // At this ratio the last cell alone is as thick as the rest.
  const ratio = findRoot(excess, 1, (rest / size) ** (1 / coarse), 1e-12);
  return [...new Array<number>(fine).fill(size), ...sizes(ratio)];
}

/** kg water per kg dry matter of the mixed dough, and the share of dry matter in it. */
function doughMoisture(evening: Evening): { readonly moisture: number; readonly solidsShare: number } {
  const { liquid, salt, sugar, oil, yeast, flourMoisture } = evening.dough;
  let water = 100 * flourMoisture;
  let total = 100 + salt + sugar + oil + yeast.percent;
  for (const part of liquid) {
    water += part.percent * waterShareOf(part);
    total += part.percent;
  }
  const solids = total - water;
  return { moisture: water / solids, solidsShare: solids / total };
}

/** A pizza as two columns of cells, each from the plate upwards, and the area (m2) it stands for. */
export interface PizzaColumns {
  readonly centre: {
    readonly cells: readonly CellSpec[];
    readonly area: number;
    readonly doughCells: number;
  };
  readonly rim: { readonly cells: readonly CellSpec[]; readonly area: number };
}

/** W_half of dough, kg/kg, and one so small that water counts as free until it is nearly gone. */
const doughHalfMoisture = 0.072;
const freeWater = 0.005;

/**
 * The pizza of an evening whose pizzas are alike, just before it is laid down: dough at the kitchen's temperature.
 *
 * @param mesh cells of each layer; @param effects what a test switches off
 */
export function buildPizza(
  evening: Evening,
  parameters: BakeParameters,
  mesh: PizzaMesh,
  effects: Effects = allEffects,
): PizzaColumns {
  const { diameter, ballMass } = evening.pizzas;
  const radius = diameter / 2;
  const inner = Math.max(radius - parameters.rimWidth, radius / 2);
  const centreArea = Math.PI * inner ** 2;
  const rimArea = Math.PI * (radius ** 2 - inner ** 2);
  const areal = ballMass / (centreArea + parameters.rimMassFactor * rimArea);
  const { moisture, solidsShare } = doughMoisture(evening);

  const dough = (
    mass: number,
    density: number,
    cellSizes: (thickness: number) => readonly number[],
  ): CellSpec[] => {
    const compact = compactDensity(doughSolids, moisture);
    const material = layerMaterial('dough', doughSolids, {
      porosity: Math.max(1 - density / compact, 0.05),
      halfMoisture: effects.sorption ? doughHalfMoisture : freeWater,
      vapourShare: parameters.doughVapourShare,
      dryConductivityFactor: parameters.crustConductivityFactor,
      neverSponge: !effects.dryCrust,
    });
    const thickness = mass / density;
    return cellSizes(thickness).map((size) => {
      const share = (mass * size) / thickness;
      const solids = share * solidsShare;
      return {
        material,
        thickness: size,
        solids,
        water: solids * moisture,
        temperature: evening.kitchen.roomTemperature,
      };
    });
  };
  const wet = (
    name: 'sauce' | 'cheese',
    solidsOf: Solids,
    mass: number,
    waterShare: number,
    n: number,
    halfMoisture: number,
    vapourShare: number,
  ): CellSpec[] => {
    if (mass <= 0) return [];
    const material = layerMaterial(name, solidsOf, {
      porosity: 0,
      halfMoisture: effects.sorption ? halfMoisture : freeWater,
      vapourShare,
      dryConductivityFactor: 1,
    });
    const areaMass = mass / centreArea;
    const thickness = areaMass / compactDensity(solidsOf, waterShare / (1 - waterShare));
    return Array.from({ length: n }, () => ({
      material,
      thickness: thickness / n,
      solids: (areaMass * (1 - waterShare)) / n,
      water: (areaMass * waterShare) / n,
      temperature: parameters.toppingTemperature,
    }));
  };
  const { sauce, cheese } = evening.toppings;
  const cheeseMass = cheese.reduce((sum, part) => sum + part.mass, 0);
  const cheeseShare =
    cheeseMass > 0 ? cheese.reduce((sum, part) => sum + part.mass * cheeseWaterOf(part), 0) / cheeseMass : 0;
  const covered = sauce > 0 || cheeseMass > 0;
  const base = dough(areal, parameters.baseDensity, (thickness) =>
    covered ? crustCells(thickness, mesh.dough) : gradedCells(thickness, mesh.firstCell, mesh.dough),
  );
  return {
    centre: {
      area: centreArea,
      doughCells: base.length,
      cells: [
        ...base,
        ...wet('sauce', sauceSolids, sauce, sauceWater, mesh.sauce, 0.12, parameters.sauceVapourShare),
        ...wet(
          'cheese',
          cheeseSolids,
          cheeseMass,
          cheeseShare,
          mesh.cheese,
          0.05,
          parameters.cheeseVapourShare,
        ),
      ],
    },
    rim: {
      area: rimArea,
      cells: dough(areal * parameters.rimMassFactor, parameters.rimDensity, (thickness) =>
        gradedCells(thickness, mesh.firstCell, mesh.rim),
      ),
    },
  };
}

/** kg/m3 of dry matter and water together without pores, at 60 degC (Choi and Okos 1986). */
function compactDensity(solids: Solids, moisture: number): number {
  const dry = mixtureProperties({ water: 0, ...solids }, 333.15).density;
  return (1 + moisture) / (1 / dry + moisture / 983);
}
