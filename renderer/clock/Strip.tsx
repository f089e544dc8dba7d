/** The whole evening as a thin strip; its frame is the part that the chart shows. */
import { memo, useRef } from 'react';
import { clockText } from '../words/clock.ts';
import { showPart, showUsualPart } from '../state/momentStore.ts';
import type { ClockModel, Span } from './model.ts';

interface StripProps {
  readonly model: ClockModel;
  readonly view: Span;
}
type Grip = 'from' | 'to' | 'both';

const minute = 60_000;
const shortest = 15 * minute;

/** The part after a grip has been moved by so much, kept within the evening and at least a quarter of an hour. */
export function movedPart(view: Span, whole: Span, grip: Grip, by: number): Span {
  const longest = Math.max(whole.to - whole.from, view.to - view.from);
  if (grip === 'both') {
    const length = Math.min(view.to - view.from, longest);
    const from = Math.min(Math.max(view.from + by, whole.from), Math.max(whole.from, whole.to - length));
    return { from, to: from + length };
  }
  if (grip === 'from') {
    return { ...view, from: Math.min(Math.max(view.from + by, whole.from), view.to - shortest) };
  }
  return { ...view, to: Math.max(Math.min(view.to + by, whole.to), view.from + shortest) };
}

const names: Record<Grip, string> = {
  from: 'Start of the part shown',
  both: 'Part of the evening shown',
  to: 'End of the part shown',
};

function GripHandle({ grip, model, view }: StripProps & { readonly grip: Grip }) {
  const drag = useRef<{ readonly x: number; readonly view: Span }>(undefined);
  const { whole, offset } = model;
  const at = grip === 'to' ? view.to : view.from;
  const left = shareOf(at, whole);
  const [from, to] = [clockText(view.from, offset), clockText(view.to, offset)];
  const move = (start: Span, by: number): void => {
    const next = movedPart(start, whole, grip, by);
    showPart(next.from, next.to);
  };
  const steps: Readonly<Record<string, number>> = {
    ArrowLeft: -1,
    ArrowDown: -1,
    ArrowRight: 1,
    ArrowUp: 1,
    PageDown: -6,
    PageUp: 6,
  };
  const width = grip === 'both' ? { width: `${String(shareOf(view.to, whole) - left)}%` } : {};
  const release = (): void => {
    drag.current = undefined;
  };
  return (
    <div
      className={`grip grip-${grip}`}
      style={{ left: `${String(left)}%`, ...width }}
      role="slider"
      tabIndex={0}
      aria-label={names[grip]}
      aria-orientation="horizontal"
      aria-valuemin={Math.round(whole.from / minute)}
      aria-valuemax={Math.round(whole.to / minute)}
      aria-valuenow={Math.round(at / minute)}
      aria-valuetext={grip === 'both' ? `${from} to ${to}` : clockText(at, offset)}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = { x: event.clientX, view };
      }}
      onPointerMove={(event) => {
        const rail = event.currentTarget.parentElement?.clientWidth ?? 0;
        if (drag.current === undefined || rail === 0) return;
        move(drag.current.view, ((event.clientX - drag.current.x) / rail) * (whole.to - whole.from));
      }}
      onPointerUp={release}
      onPointerCancel={release}
      onDoubleClick={showUsualPart}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const ends: Readonly<Record<string, number>> = { Home: whole.from - at, End: whole.to - at };
        const step = steps[event.key];
        const by = step === undefined ? ends[event.key] : step * (event.shiftKey ? 30 : 5) * minute;
        if (by === undefined) return;
        event.preventDefault();
        move(view, by);
      }}
    />
  );
}

/** Not drawn again while the pointer moves. */
export const Strip = memo(function Strip({ model, view }: StripProps) {
  const { whole, offset } = model;
  return (
    <div className="strip">
      <span className="small muted">{clockText(whole.from, offset)}</span>
      <div className="rail">
        {model.bars.map(({ task, from, to }) => {
          const left = shareOf(from, whole);
          const width = Math.max(shareOf(to, whole) - left, 0.2);
          const kind = task.id.startsWith('bake-') ? `rail-${task.lane} rail-bake` : `rail-${task.lane}`;
          return (
            <span
              key={task.id}
              className={`rail-bar ${kind}`}
              style={{ left: `${String(left)}%`, width: `${String(width)}%` }}
            />
          );
        })}
        {(['from', 'both', 'to'] as const).map((grip) => (
          <GripHandle key={grip} grip={grip} model={model} view={view} />
        ))}
      </div>
      <span className="small muted">{clockText(whole.to, offset)}</span>
    </div>
  );
});

/** Percent of the strip's length. */
function shareOf(at: number, whole: Span): number {
  return Math.min(Math.max((at - whole.from) / (whole.to - whole.from), 0), 1) * 100;
}
