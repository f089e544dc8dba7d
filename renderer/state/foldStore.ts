/** What is folded open. It outlasts the view it stands in; another plan begins with its folds as they were at first. */
import { create } from 'zustand';
import { useDocument } from './documentStore.ts';

interface Folds {
  /** of which opened plan they are */
  readonly opened: number;
  readonly open: Readonly<Record<string, boolean>>;
}

const useFolds = create<Folds>()(() => ({ opened: 0, open: {} }));

/** @param name tells the fold from all others of the window */
export function useFold(name: string, startsOpen = false): readonly [boolean, () => void] {
  const opened = useDocument((state) => state.opened);
  const open = useFolds((state) => (state.opened === opened ? state.open[name] : undefined)) ?? startsOpen;
  const toggle = (): void => {
    const known = useFolds.getState();
    useFolds.setState({
      opened,
      open: { ...(known.opened === opened ? known.open : {}), [name]: !open },
    });
  };
  return [open, toggle];
}
