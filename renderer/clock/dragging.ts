/** Taking hold of something in the chart: by pointer as one step of the history, or by keys step by step. */
import { useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { timeOf, type ChartFrame } from './frame.ts';
import { say } from '../state/documentStore.ts';
import { showPart, useMoment } from '../state/momentStore.ts';
import { beginDrag, change, dragTo, endDrag } from '../state/planStore.ts';
import { pathName } from '../words/assumed.ts';
import { wording } from '../../physics/evening/problem.ts';
import type { Moved } from './moves.ts';

/** What something is when it is taken hold of: where so many ms later or earlier leads to. */
export type Grip = (by: number) => Moved;

const minute = 60_000;

interface Drag {
  readonly x: number;
  readonly frame: ChartFrame;
  readonly grip: Grip;
  /** as it was before the view was held still */
  readonly view: ReturnType<typeof useMoment.getState>['view'];
}

type Take = (fields: Readonly<Record<string, unknown>>) => ReturnType<typeof change>;

function take(moved: Moved, into: Take): void {
  if (!moved.ok) {
    say({ text: moved.reason });
    return;
  }
  const problem = into(moved.fields);
  say(
    problem === undefined
      ? undefined
      : { text: `Not moved so far: ${wording({ ...problem, path: pathName(problem.path) })}.` },
  );
}

export interface GripHandlers {
  readonly onPointerDown: (event: PointerEvent) => void;
  readonly onPointerMove: (event: PointerEvent) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
}

/** What is moved by keys out of the part shown takes that part along, and so keeps the focus. */
function keepInView({ view }: ChartFrame, at: number, by: number): void {
  if (at + by < view.from || at + by > view.to) showPart(view.from + by, view.to + by);
}

/** The returned function takes how to take hold of a thing as it stands now, and where it stands, ms. */
export function useGrip(frame: ChartFrame): (hold: () => Grip | undefined, at: number) => GripHandlers {
  const drag = useRef<Drag>(undefined);
  const release = (): void => {
    if (drag.current === undefined) return;
    useMoment.setState({ view: drag.current.view });
    drag.current = undefined;
    endDrag();
  };
  return (hold, at) => ({
    onPointerDown: (event) => {
      const grip = event.button === 0 ? hold() : undefined;
      if (grip === undefined) return;
      event.stopPropagation();
      event.currentTarget.setPointerCapture(event.pointerId);
      drag.current = { x: event.clientX, frame, grip, view: useMoment.getState().view };
      // Held still meanwhile: the part shown would else run along with the oven.
      useMoment.setState({ view: frame.view });
      beginDrag();
      // What is dragged out of the part shown hears no more of the pointer itself.
      window.addEventListener('pointerup', release, { once: true });
      window.addEventListener('pointercancel', release, { once: true });
    },
    onPointerMove: (event) => {
      const held = drag.current;
      if (held === undefined) return;
      const by = timeOf(held.frame, event.clientX) - timeOf(held.frame, held.x);
      take(held.grip(Math.round(by / minute) * minute), dragTo);
    },
    onKeyDown: (event) => {
      const size = (event.shiftKey ? 15 : 1) * minute;
      const steps: Readonly<Record<string, number>> = {
        ArrowLeft: -size,
        ArrowDown: -size,
        ArrowRight: size,
        ArrowUp: size,
        PageDown: -15 * minute,
        PageUp: 15 * minute,
      };
      const by = steps[event.key];
      if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      const grip = hold();
      const moved = grip?.(by);
      if (moved === undefined) return;
      take(moved, change);
      if (moved.ok) keepInView(frame, at, by);
    },
  });
}
