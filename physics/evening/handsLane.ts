/** One pair of hands at the oven: loading, turning and cutting have their moments, shaping fits between. */
import { handling, shortestTurnedBake } from './handling.ts';

export interface HandsTask {
  readonly kind: 'mix' | 'move' | 'ball' | 'prepare' | 'shape' | 'load' | 'turn' | 'cut';
  /** 1 for the first; for `move` the phase it leads into; undefined for what is done once */
  readonly pizza: number | undefined;
  /** s */
  readonly from: number;
  readonly to: number;
}

/** The latest stretch of `duration` that ends by `deadline` and meets none of the busy ones. */
export function latestFree(
  busy: readonly HandsTask[],
  duration: number,
  deadline: number,
): { readonly from: number; readonly to: number } {
  let to = deadline;
  for (const task of [...busy].sort((a, b) => b.to - a.to)) {
    if (task.from >= to) continue;
    if (task.to <= to - duration) break;
    to = task.from;
  }
  return { from: to - duration, to };
}

/** The earliest stretch of `duration` from a moment on that meets none of the busy ones. */
function earliestFree(
  busy: readonly HandsTask[],
  duration: number,
  moment: number,
): { readonly from: number; readonly to: number } {
  let from = moment;
  for (const task of [...busy].sort((a, b) => a.from - b.from)) {
    if (task.to <= from) continue;
    if (task.from >= from + duration) break;
    from = task.to;
  }
  return { from, to: from + duration };
}

/**
 * Hands for a row of bakes. Pizza n is shaped as late as there is time: in the recovery before it, or else while an
 * earlier one bakes, or else before the first; always in order. A pizza is cut as it comes out, or after the next one
 * has gone in when that leaves no time.
 *
 * @param bakes in order, s from any one moment
 */
export function placeHands(
  bakes: readonly { readonly inAt: number; readonly outAt: number }[],
): readonly HandsTask[] {
  const busy: HandsTask[] = [];
  for (const [index, { inAt, outAt }] of bakes.entries()) {
    const pizza = index + 1;
    busy.push({ kind: 'load', pizza, from: inAt - handling.load, to: inAt });
    if (outAt - inAt < shortestTurnedBake) continue;
    const from = (inAt + outAt - handling.turn) / 2;
    busy.push({ kind: 'turn', pizza, from, to: from + handling.turn });
  }
  for (const [index, { outAt }] of bakes.entries())
    busy.push({ kind: 'cut', pizza: index + 1, ...earliestFree(busy, handling.cut, outAt) });
  let deadline = Infinity;
  for (let index = bakes.length - 1; index >= 0; index--) {
    const loadFrom = bakes[index]!.inAt - handling.load;
    const shape = latestFree(busy, handling.shape, Math.min(deadline, loadFrom));
    busy.push({ kind: 'shape', pizza: index + 1, ...shape });
    deadline = shape.from;
  }
  return busy.sort((a, b) => a.from - b.from);
}
