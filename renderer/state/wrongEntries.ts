/**
 * Entries of cells that were not taken, as typed, with the reason. They outlast the view, so that leaving it loses
 * nothing; those of another plan are gone once that one is opened.
 */
import { create } from 'zustand';
import { useDocument } from './documentStore.ts';

export interface WrongEntry {
  readonly text: string;
  readonly reason: string;
}

interface WrongEntries {
  /** of which opened plan they are */
  readonly opened: number;
  readonly entries: Readonly<Record<string, WrongEntry>>;
}

const useEntries = create<WrongEntries>()(() => ({ opened: 0, entries: {} }));

/** @param cell names the cell among all cells of the window */
export function useWrongEntry(
  cell: string,
): readonly [WrongEntry | undefined, (next: WrongEntry | undefined) => void] {
  const opened = useDocument((state) => state.opened);
  const wrong = useEntries((state) => (state.opened === opened ? state.entries[cell] : undefined));
  const setWrong = (next: WrongEntry | undefined): void => {
    const now = useEntries.getState();
    const kept = now.opened === opened ? Object.entries(now.entries) : [];
    const others = Object.fromEntries(kept.filter(([name]) => name !== cell));
    useEntries.setState({ opened, entries: next === undefined ? others : { ...others, [cell]: next } });
  };
  return [wrong, setWrong];
}
