/** Which view is open. Never part of the plan or its history. */
import { create } from 'zustand';
import { leaveField } from './leaveField.ts';

/** In the order of the tabs: their places are also the digits that open them, whether or not a view is there yet. */
export const viewIds = ['plan', 'compare', 'adjust', 'amounts', 'tonight', 'calibrate'] as const;
export type ViewId = (typeof viewIds)[number];

export const useView = create<{ readonly view: ViewId }>()(() => ({ view: 'plan' }));

export function showView(view: ViewId): void {
  // A field that goes with its view hears nothing of being left.
  leaveField();
  useView.setState({ view });
}

export function isViewId(id: string): id is ViewId {
  return (viewIds as readonly string[]).includes(id);
}
