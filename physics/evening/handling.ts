/** What hands need for what: one table, common practice, no source. Seconds. */
import type { MixingId } from './ids.ts';

export const handling = {
  /** weigh, mix, knead */
  mix: { hand: 15 * 60, mixer: 12 * 60, 'food-processor': 6 * 60 } satisfies Record<MixingId, number>,
  /** carry the dough to its next place */
  move: 60,
  /** divide and ball: the bench, then each ball */
  ball: { once: 120, each: 60 },
  /** open and season the tomatoes, cut or grate the cheese, weigh portions */
  prepare: { once: 300, each: 60 },
  /** stretch, sauce, cheese */
  shape: 180,
  /** the pizza on the peel, door, plate */
  load: 20,
  turn: 20,
  look: 10,
  pull: 20,
  /** the knob of the top element, before a load or while a pizza bakes */
  'top-before': 10,
  top: 10,
  /** out of the oven, cut, on the table: the minute that the anchor `eatAt` counts */
  cut: 60,
} as const;

/** s, the shortest bake in which a turn at half time leaves hands free around it */
export const shortestTurnedBake = 2 * (handling.cut + handling.turn);
