/** Which mass is held, what a weight typed in means, and what is ticked on the list: the window's, not the plan's. */
import { create } from 'zustand';
import type { Gives } from './held.ts';
import type { Scale } from '../../physics/dough/amounts.ts';

export interface HoldState {
  /** undefined holds the ball, as the plan does */
  readonly scale: Scale | undefined;
  readonly means: 'recipe' | 'have';
  readonly gives: Gives;
  /** of which opened plan the ticks are */
  readonly opened: number;
  readonly ticked: ReadonlySet<string>;
}

export const useHold = create<HoldState>()(() => ({
  scale: undefined,
  means: 'recipe',
  gives: 'ball',
  opened: 0,
  ticked: new Set<string>(),
}));

/** What is ticked in the plan that is open; nothing once another was opened. */
export function tickedOf({ opened, ticked }: HoldState, open: number): ReadonlySet<string> {
  return opened === open ? ticked : new Set();
}

export function tick(item: string, on: boolean, open: number): void {
  const ticked = new Set(tickedOf(useHold.getState(), open));
  if (on) ticked.add(item);
  else ticked.delete(item);
  useHold.setState({ opened: open, ticked });
}
