/** Wait longer, or bake longer: for each pizza after the first, what every wait before it makes of its bake. */
import { longestBake } from './bakeOne.ts';
import { withPizza } from './onePizza.ts';
import type { EveningRun } from './run.ts';
import { bakeAfter, bakeAhead, loadedAt, longestWait, shortestTurn } from './series.ts';
import { waitsOf } from './simulate.ts';

export interface WaitPoint {
  /** s that the plate is left bare, s of bake after that, and both */
  readonly wait: number;
  readonly bake: number;
  readonly total: number;
  /** K, top of the plate when the pizza is laid down */
  readonly plateTop: number;
}

export interface WaitCurve {
  readonly pizza: number;
  readonly points: readonly WaitPoint[];
}

/** s */
const usualWaits = [shortestTurn, 240, 480, longestWait];

/** A curve is for choosing: its bakes lie within 5 s of the evening's own and cost a third. */
const coarse = {
  bakeStep: 4,
  recoveryStep: 8,
  allowedStrain: 4,
  mesh: { dough: 16, rim: 10, sauce: 2, cheese: 3, firstCell: 0.12e-3 },
} as const;

/**
 * A curve for each pizza after the first, the pizzas before it as in the run. Empty for a run that was not simulated.
 *
 * @param waits s, in rising order
 */
export function waitCurves(run: EveningRun, waits: readonly number[] = usualWaits): readonly WaitCurve[] {
  const made = waitsOf(run);
  if (made === undefined) return [];
  const { preheat } = made;
  const model = { ...made.model, resolution: { ...made.model.resolution, ...coarse } };
  const oven = loadedAt(model, preheat, preheat.preheat.plateReady);
  return made.waits.map((start, k) => {
    const pizza = k + 2;
    oven.prepare(withPizza(model.evening, pizza), bakeAhead(model, preheat, pizza)?.kept);
    const points = waits.map((wait) => {
      const bake = bakeAfter(oven, start, wait, longestBake);
      return { wait, bake, total: wait + bake, plateTop: oven.plateTopAtLoad };
    });
    return { pizza, points };
  });
}
