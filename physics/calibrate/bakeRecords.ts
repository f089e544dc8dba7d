/** Rows that say when a pizza went in and came out, put together to bakes. */
import { longestBake } from '../evening/bakeOne.ts';
import type { DroppedRow } from './readings.ts';

/** A pizza laid down and taken out. */
export interface BakeRecord {
  readonly pizza: number;
  /** s since the oven was switched on */
  readonly inAt: number;
  /** undefined: it lies there still when the rows end */
  readonly outAt: number | undefined;
  /** L* of the base, where the cook judged it */
  readonly lightness: number | undefined;
}

/** One row of it. */
export interface BakeEvent {
  readonly line: number;
  readonly pizza: number;
  readonly what: 'in' | 'out';
  /** s since the oven was switched on */
  readonly seconds: number;
  readonly lightness: number | undefined;
}

export interface BakesRead {
  /** one after another */
  readonly bakes: readonly BakeRecord[];
  readonly dropped: readonly DroppedRow[];
  /** s until which it is known what lay on the plate; Infinity when it always is */
  readonly knownUntil: number;
}

const pair = '50 min,pizza 1 in, and 57 min,pizza 1 out,golden';

/** Pairs each "out" with the "in" before it. What cannot be paired is named, and nothing after it is taken as known. */
export function bakesOf(events: readonly BakeEvent[]): BakesRead {
  const ordered = [...events].sort((a, b) => a.seconds - b.seconds || (a.what === 'out' ? -1 : 1));
  const bakes: BakeRecord[] = [];
  const dropped: DroppedRow[] = [];
  let knownUntil = Infinity;
  let lies: BakeEvent | undefined;
  const refuse = ({ line, seconds }: BakeEvent, found: string, allowed = pair): void => {
    dropped.push({ line, found, allowed });
    knownUntil = Math.min(knownUntil, seconds);
  };
  for (const event of ordered) {
    const { pizza, what, seconds, lightness } = event;
    if (what === 'in') {
      if (lies !== undefined)
        refuse(
          lies,
          `pizza ${lies.pizza} in, and pizza ${pizza} in before it came out`,
          'one pizza at a time',
        );
      lies = event;
    } else if (lies?.pizza !== pizza) {
      refuse(event, `pizza ${pizza} out, which never went in`);
    } else {
      if (seconds - lies.seconds > longestBake)
        refuse(
          lies,
          `pizza ${pizza} in the oven for ${((seconds - lies.seconds) / 60).toFixed(0)} min`,
          `at most ${longestBake / 60} min`,
        );
      else if (seconds - lies.seconds < 1)
        refuse(lies, `pizza ${pizza} out the moment it went in`, 'some minutes');
      else bakes.push({ pizza, inAt: Math.max(0, lies.seconds), outAt: seconds, lightness });
      lies = undefined;
    }
  }
  if (lies)
    bakes.push({
      pizza: lies.pizza,
      inAt: Math.max(0, lies.seconds),
      outAt: undefined,
      lightness: undefined,
    });
  return { bakes: bakes.filter(({ inAt }) => inAt < knownUntil), dropped, knownUntil };
}
