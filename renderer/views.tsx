/** The views there are: each gets a tab, and the digit of its place in `viewIds` as a key. */
import type { ReactNode } from 'react';
import { PlanView } from './PlanView.tsx';
import { AdjustView } from './adjust/AdjustView.tsx';
import { AmountsView } from './amounts/AmountsView.tsx';
import { CalibrateView } from './calibrate/CalibrateView.tsx';
import { CompareView } from './compare/CompareView.tsx';
import { TonightView } from './tonight/TonightView.tsx';
import type { ViewId } from './state/viewStore.ts';
import type { Theme } from './state/settingsStore.ts';

export interface ViewProps {
  readonly theme: Theme;
  /** the inputs of the plan lie over it, in a window too narrow to have them beside it */
  readonly drawer: boolean;
  readonly onDrawerClose: () => void;
}

export interface View {
  readonly id: ViewId;
  readonly name: string;
  /** class of the panel, which is as large as the window below the tabs: `body` lays out the plan, `page` scrolls */
  readonly panel: 'body' | 'page';
  readonly draw: (props: ViewProps) => ReactNode;
}

export const views: readonly View[] = [
  { id: 'plan', name: 'Plan', panel: 'body', draw: (props) => <PlanView {...props} /> },
  { id: 'compare', name: 'Compare', panel: 'page', draw: ({ theme }) => <CompareView theme={theme} /> },
  { id: 'adjust', name: 'Adjust', panel: 'page', draw: ({ theme }) => <AdjustView theme={theme} /> },
  { id: 'amounts', name: 'Amounts', panel: 'page', draw: () => <AmountsView /> },
  { id: 'tonight', name: 'Tonight', panel: 'page', draw: () => <TonightView /> },
  {
    id: 'calibrate',
    name: 'Calibrate',
    panel: 'page',
    draw: ({ theme }) => <CalibrateView theme={theme} />,
  },
];
