/** Bases baked ahead: how far they are baked, what keeping does to them, and what they are like on the evening. */
import type { PizzaColumns } from '../bake/pizza.ts';
import type { CellSpec } from '../bake/columnFields.ts';
import type { Evening } from './evening.ts';
import type { KeepId } from './ids.ts';

/** L* of a base baked ahead unless the plan says another: set, hardly coloured; our own choice */
export const parBakedLightness = 78;

/** s that bases are kept unless the plan says how long; common practice, no source */
export const usualKept: Readonly<Record<KeepId, number>> = {
  room: 4 * 3600,
  refrigerator: 24 * 3600,
  freezer: 7 * 24 * 3600,
};

/** K of a base as it comes to the evening; refrigerator and freezer as they are set, common practice, no source */
function keptAt(keep: KeepId, room: number): number {
  if (keep === 'room') return room;
  return keep === 'refrigerator' ? 277.15 : 255.15;
}

/** A base that was baked ahead. */
export interface KeptBase {
  /** integrals of the browning rate that base and rim bring along */
  readonly base: number;
  readonly rim: number;
  /** kg water per kg dry matter left under the topping and in the rim */
  readonly centreMoisture: number;
  readonly rimMoisture: number;
  /** K */
  readonly temperature: number;
}

/** What is baked ahead: the n-th pizza's dough without topping, to the shade that the plan asks of it. */
export function bareBase(evening: Evening): Evening {
  return {
    ...evening,
    pizzas: {
      ...evening.pizzas,
      shadeLightness: evening.pizzas.parBake?.shadeLightness ?? parBakedLightness,
      steps: undefined,
    },
    toppings: { ...evening.toppings, sauce: 0, cheese: [] },
  };
}

/** As it comes out of where it was kept, well wrapped: no water is lost, and what is left has spread evenly. */
export function afterKeeping(
  evening: Evening,
  out: Pick<KeptBase, 'base' | 'rim' | 'centreMoisture' | 'rimMoisture'>,
): KeptBase {
  const keep = evening.pizzas.parBake?.keep ?? 'room';
  return { ...out, temperature: keptAt(keep, evening.kitchen.roomTemperature) };
}

/** The pizza with its dough as it was kept; sauce and cheese are fresh. */
export function asKept({ centre, rim }: PizzaColumns, kept: KeptBase): PizzaColumns {
  const dough = (cell: CellSpec, moisture: number): CellSpec =>
    cell.material.name === 'dough'
      ? { ...cell, water: cell.solids * moisture, temperature: kept.temperature }
      : cell;
  return {
    centre: { ...centre, cells: centre.cells.map((cell) => dough(cell, kept.centreMoisture)) },
    rim: { ...rim, cells: rim.cells.map((cell) => dough(cell, kept.rimMoisture)) },
  };
}
