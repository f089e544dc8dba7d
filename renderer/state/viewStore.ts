/** Which view is open. Never part of the plan or its history. */
import { create } from 'zustand';

/** In the order of the tabs: their places are also the digits that open them, whether or not a view is there yet. */
export const viewIds = ['plan', 'compare', 'adjust', 'amounts', 'tonight', 'calibrate'] as const;
export type ViewId = (typeof viewIds)[number];

export const useView = create<{ readonly view: ViewId }>()(() => ({ view: 'plan' }));

export function showView(view: ViewId): void {
  useView.setState({ view });
}

export function isViewId(id: string): id is ViewId {
  return (viewIds as readonly string[]).includes(id);
}
