/** One pair of hands at the oven: loading, turning and cutting have their moments, shaping fits between. */
import { handling, shortestTurnedBake } from './handling.ts';

/** What hands do; `ahead`: shape, bake and wrap the bases of an evening to come. `turn`, `look`, `pull` (the paper) and `top` (the element) are what a plan asks for while it bakes. */
export type HandsKind =
  | 'mix'
  | 'move'
  | 'ball'
  | 'prepare'
  | 'ahead'
  | 'shape'
  | 'load'
  | 'turn'
  | 'look'
  | 'pull'
  | 'top-before'
  | 'top'
  | 'cut';

export interface HandsTask {
  readonly kind: HandsKind;
  /** 1 for the first; for `move` the phase it leads into; undefined for what is done once */
  readonly pizza: number | undefined;
  /** s */
  readonly from: number;
  readonly to: number;
  /** where hands were busy at its own time: s later (or less than 0, sooner) than that, and what they were busy with */
  readonly moved?: { readonly by: number; readonly for: Pick<HandsTask, 'kind' | 'pizza'> };
}

/** A bake, and what the cook does to it at set moments. */
export interface HandledBake {
  /** s from any one moment */
  readonly inAt: number;
  readonly outAt: number;
  readonly steps?: readonly {
    readonly what: 'turn' | 'look' | 'pull' | 'top-before' | 'top';
    readonly at: number;
  }[];
}

interface Free {
  readonly from: number;
  readonly to: number;
  readonly moved?: NonNullable<HandsTask['moved']>;
}

/** The latest stretch of `duration` that ends by `deadline` and meets none of the busy ones. */
export function latestFree(busy: readonly HandsTask[], duration: number, deadline: number): Free {
  let to = deadline;
  let behind: HandsTask | undefined;
  for (const task of [...busy].sort((a, b) => b.to - a.to)) {
    if (task.from >= to) continue;
    if (task.to <= to - duration) break;
    to = task.from;
    behind = task;
  }
  return { from: to - duration, to, ...movedFor(to - deadline, behind) };
}

/** The earliest stretch of `duration` from a moment on that meets none of the busy ones. */
function earliestFree(busy: readonly HandsTask[], duration: number, moment: number): Free {
  let from = moment;
  let behind: HandsTask | undefined;
  for (const task of [...busy].sort((a, b) => a.from - b.from)) {
    if (task.to <= from) continue;
    if (task.from >= from + duration) break;
    from = task.to;
    behind = task;
  }
  return { from, to: from + duration, ...movedFor(from - moment, behind) };
}

function movedFor(by: number, behind: Pick<HandsTask, 'kind' | 'pizza'> | undefined): Pick<Free, 'moved'> {
  return behind === undefined ? {} : { moved: { by, for: { kind: behind.kind, pizza: behind.pizza } } };
}

/** A look at half time, or as near to it as hands are free while the pizza bakes; none where they never are. */
function lookAt({ inAt, outAt }: HandledBake, busy: readonly HandsTask[]): Free | undefined {
  if (outAt - inAt < shortestTurnedBake) return undefined;
  const half = (inAt + outAt - handling.turn) / 2;
  const later = earliestFree(busy, handling.turn, half);
  if (later.to <= outAt) return later;
  const sooner = latestFree(busy, handling.turn, half + handling.turn);
  return sooner.from >= inAt ? sooner : undefined;
}

/** The top element turned up before a load: at its moment, or else as soon before it as hands are free. */
export function turnUpTop(bakes: readonly HandledBake[], busy: readonly HandsTask[]): readonly HandsTask[] {
  const all = [...busy];
  for (const [index, { steps = [] }] of bakes.entries())
    for (const { what, at } of steps) {
      if (what !== 'top-before') continue;
      const duration = handling[what];
      all.push({ kind: what, pizza: index + 1, ...latestFree(all, duration, at + duration) });
    }
  return all.slice(busy.length);
}

/**
 * Hands for a row of bakes, but for the top element before a load, which gives way to everything else. Pizza n is
 * shaped as late as there is time: in the recovery before it, or else while an earlier one bakes, or else before the
 * first; always in order. A pizza is cut as it comes out, or after the next one has gone in when that leaves no time.
 * Where the plan asks for neither turn nor look, one look is fitted in. What meets a load, or each other, is moved and
 * says so.
 *
 * @param bakes in order
 */
export function placeHands(bakes: readonly HandledBake[]): readonly HandsTask[] {
  const busy: HandsTask[] = [];
  for (const [index, { inAt }] of bakes.entries())
    busy.push({ kind: 'load', pizza: index + 1, from: inAt - handling.load, to: inAt });
  for (const [index, bake] of bakes.entries())
    for (const { what, at } of bake.steps ?? [])
      if (what !== 'top-before')
        busy.push({ kind: what, pizza: index + 1, ...earliestFree(busy, handling[what], at) });
  for (const [index, { outAt }] of bakes.entries())
    busy.push({ kind: 'cut', pizza: index + 1, ...earliestFree(busy, handling.cut, outAt) });
  let next: HandsTask | undefined;
  for (let index = bakes.length - 1; index >= 0; index--) {
    const own = bakes[index]!.inAt - handling.load;
    const { from, to, moved } = latestFree(busy, handling.shape, Math.min(next?.from ?? Infinity, own));
    const behind = moved?.for ?? (to < own ? next : undefined);
    next = { kind: 'shape', pizza: index + 1, from, to, ...movedFor(to - own, behind) };
    busy.push(next);
  }
  for (const [index, bake] of bakes.entries()) {
    if (bake.steps?.some(({ what }) => what === 'turn' || what === 'look') === true) continue;
    const look = lookAt(bake, busy);
    if (look !== undefined) busy.push({ kind: 'turn', pizza: index + 1, ...look });
  }
  return busy.sort((a, b) => a.from - b.from);
}
