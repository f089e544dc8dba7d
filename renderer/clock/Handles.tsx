/**
 * What can be moved in the chart: the oven's start and the meal. Both move the anchor of the plan, and with it the
 * whole evening; one drag is one step of the history.
 */
import { useRef } from 'react';
import { timeOf, type ChartFrame } from './frame.ts';
import { movedTo, whyNot, type Handle } from './handles.ts';
import type { ClockModel } from './model.ts';
import { say } from '../state/documentStore.ts';
import { useMoment } from '../state/momentStore.ts';
import { beginDrag, change, dragTo, endDrag, usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { clockText, epochOf, instantText } from '../words/clock.ts';
import type { Forecast } from '../state/forecastStore.ts';

interface HandlesProps {
  readonly frame: ChartFrame;
  readonly handles: readonly Handle[];
  readonly model: ClockModel;
  readonly forecast: Forecast;
}

const minute = 60_000;

/** When the evening is tied, and when its first task begins, ms. */
interface Start {
  readonly anchor: number;
  readonly offset: number;
  readonly begin: number;
}

function startOf({ answer, evening }: Forecast): Start | undefined {
  const reading = readingOf(usePlan.getState().file);
  if (!reading.ok) return undefined;
  const { epochMilliseconds, offsetMinutes } = reading.evening.anchor.time;
  // The forecast may be of a step before: the whole evening moves with its anchor.
  const ahead = epochMilliseconds - evening.anchor.time.epochMilliseconds;
  const begin = Math.min(...answer.tasks.map(({ from }) => epochOf(from))) + ahead;
  return { anchor: epochMilliseconds, offset: offsetMinutes, begin };
}

/** The anchor moved, or why it is not. */
function moved({ anchor, offset, begin }: Start, by: number): { time: string } | { refusal: string } {
  const refusal = whyNot(begin, by, Date.now(), offset);
  return refusal === undefined ? { time: instantText(anchor + by, offset) } : { refusal };
}

interface Drag {
  readonly x: number;
  readonly frame: ChartFrame;
  readonly handle: Handle;
  readonly start: Start;
  /** as it was before the view was held still */
  readonly view: ReturnType<typeof useMoment.getState>['view'];
}

export function Handles({ frame, handles, model, forecast }: HandlesProps) {
  const drag = useRef<Drag>(undefined);
  const moveBy = (start: Start, by: number, take: (fields: Record<string, string>) => void): void => {
    const to = moved(start, by);
    if ('refusal' in to) say({ text: to.refusal });
    else {
      say(undefined);
      take({ 'anchor.time': to.time });
    }
  };
  const release = (): void => {
    if (drag.current === undefined) return;
    useMoment.setState({ view: drag.current.view });
    drag.current = undefined;
    endDrag();
  };
  return handles.map((handle) => (
    <div
      key={handle.id}
      className="handle"
      data-outside={handle.outside ? true : undefined}
      style={{ left: handle.x, top: handle.top, height: handle.height }}
      role="slider"
      tabIndex={0}
      aria-label={`${handle.name}: moves the evening`}
      aria-orientation="horizontal"
      aria-valuemin={Math.round((handle.at - 720 * minute) / minute)}
      aria-valuemax={Math.round((handle.at + 720 * minute) / minute)}
      aria-valuenow={Math.round(handle.at / minute)}
      aria-valuetext={clockText(handle.at, model.offset)}
      onPointerDown={(event) => {
        const start = startOf(forecast);
        if (start === undefined || event.button !== 0) return;
        event.stopPropagation();
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = { x: event.clientX, frame, handle, start, view: useMoment.getState().view };
        // Held still meanwhile: the part shown would else run along with the oven.
        useMoment.setState({ view: frame.view });
        beginDrag();
        // A handle that is dragged out of the part shown hears no more of the pointer itself.
        window.addEventListener('pointerup', release, { once: true });
        window.addEventListener('pointercancel', release, { once: true });
      }}
      onPointerMove={(event) => {
        const held = drag.current;
        if (held === undefined) return;
        const by = timeOf(held.frame, event.clientX) - timeOf(held.frame, held.x);
        moveBy(held.start, movedTo(held.handle.at, by) - movedTo(held.handle.at, 0), dragTo);
      }}
      onKeyDown={(event) => {
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
        const start = startOf(forecast);
        if (start !== undefined) moveBy(start, by, change);
      }}
    />
  ));
}
