/**
 * How the cook has set up what is looked at: what is folded open, what a chart shows. It outlasts the view it stands in,
 * and another plan begins as all plans do. Never part of the plan or its history.
 */
import { create } from 'zustand';
import { useDocument } from './documentStore.ts';

type Look = string | number | boolean;

interface Looks {
  /** of which opened plan they are */
  readonly opened: number;
  readonly looks: Readonly<Record<string, Look>>;
}

const useLooks = create<Looks>()(() => ({ opened: 0, looks: {} }));

/**
 * @param name tells it from all others of the window, and always stands for values of one kind
 * @param start until it is set
 */
export function useLook<T extends Look>(name: string, start: T): readonly [T, (next: T) => void] {
  const opened = useDocument((state) => state.opened);
  const look = useLooks((state) => (state.opened === opened ? state.looks[name] : undefined));
  const set = (next: T): void => {
    const known = useLooks.getState();
    useLooks.setState({ opened, looks: { ...(known.opened === opened ? known.looks : {}), [name]: next } });
  };
  return [(look as T | undefined) ?? start, set];
}

export function useFold(name: string, startsOpen = false): readonly [boolean, () => void] {
  const [open, setOpen] = useLook<boolean>(`fold ${name}`, startsOpen);
  return [
    open,
    () => {
      setOpen(!open);
    },
  ];
}
