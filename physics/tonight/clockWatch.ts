/** Tells a wall clock that was moved from a machine that slept, by the clock that only counts. */

export interface ClockLook {
  /** ms since 1970-01-01T00:00Z by the wall */
  readonly wall: number;
  /** ms of a clock that only goes forward and may stand still in sleep */
  readonly counted: number;
}

export type ClockFinding =
  | { readonly kind: 'steady' }
  /** the wall clock went back: everything that was noted moves with it */
  | { readonly kind: 'back'; readonly seconds: number }
  /** more time on the wall than was counted: the machine slept, or the clock was put forward. The wall is believed */
  | { readonly kind: 'jumped'; readonly seconds: number };

/** s by which the two may differ between two looks */
const tolerance = 2;

/** What happened to the clocks between two looks. */
export function compareClocks(before: ClockLook, after: ClockLook): ClockFinding {
  const seconds = (after.wall - before.wall - (after.counted - before.counted)) / 1000;
  if (Math.abs(seconds) <= tolerance) return { kind: 'steady' };
  return seconds < 0 ? { kind: 'back', seconds } : { kind: 'jumped', seconds };
}

/** The longest that `setTimeout` waits; more fires at once (measured). */
export const longestTimeout = 2 ** 31 - 1;

/** ms to wait until a look is due: at most an hour, so that sleep and moved clocks are noticed. */
export function waitFor(at: number, now: number): number {
  return Math.max(0, Math.min(at - now, 3_600_000, longestTimeout));
}
