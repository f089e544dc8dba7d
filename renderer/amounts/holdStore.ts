/** Which mass is held, and what a weight typed in means: the window's, not the plan's. */
import { create } from 'zustand';
import type { Gives } from './held.ts';
import type { Scale } from '../../physics/dough/amounts.ts';

export interface HoldState {
  /** undefined holds the ball, as the plan does */
  readonly scale: Scale | undefined;
  readonly means: 'recipe' | 'have';
  readonly gives: Gives;
}

export const useHold = create<HoldState>()(() => ({
  scale: undefined,
  means: 'recipe',
  gives: 'ball',
}));
