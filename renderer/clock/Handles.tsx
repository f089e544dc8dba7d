/**
 * What can be moved in the chart: the meal and the preheat as a whole, which move the anchor of the plan and with it the
 * whole evening; the moment the oven goes on; and the bars that something in the plan follows.
 */
import { useGrip, type Grip } from './dragging.ts';
import { whyNot, type BarHandle, type Handle } from './handles.ts';
import { anchorMoved, barStart, moveBar, type MoveId } from './moves.ts';
import type { ChartFrame } from './frame.ts';
import type { ClockModel } from './model.ts';
import { usePlan } from '../state/planStore.ts';
import { readingOf } from '../state/reading.ts';
import { clockText, epochOf } from '../words/clock.ts';
import type { Forecast } from '../state/forecastStore.ts';

interface HandlesProps {
  readonly frame: ChartFrame;
  readonly handles: readonly Handle[];
  readonly bars: readonly BarHandle[];
  readonly model: ClockModel;
  readonly forecast: Forecast;
}

const minute = 60_000;

/** The whole evening in hand, by its anchor. */
function eveningGrip({ answer, evening }: Forecast): Grip | undefined {
  const reading = readingOf(usePlan.getState().file);
  if (!reading.ok) return undefined;
  const { epochMilliseconds: anchor, offsetMinutes: offset } = reading.evening.anchor.time;
  // The forecast may be of a step before: the whole evening moves with its anchor.
  const ahead = anchor - evening.anchor.time.epochMilliseconds;
  const begin = Math.min(...answer.tasks.map(({ from }) => epochOf(from))) + ahead;
  return (by) => {
    const reason = whyNot(begin, by, Date.now(), offset);
    return reason === undefined
      ? { ok: true, fields: anchorMoved(reading.evening, by) }
      : { ok: false, reason };
  };
}

/** What one thing in hand moves. */
function gripOf(id: MoveId, { bars }: ClockModel, forecast: Forecast): Grip | undefined {
  if (id === 'evening') return eveningGrip(forecast);
  const reading = readingOf(usePlan.getState().file);
  const ready = forecast.run.preheat.plateReady;
  const start = reading.ok ? barStart(reading.evening, { bars, ready, now: Date.now() }) : undefined;
  return start === undefined ? undefined : (by) => moveBar(start, id, by);
}

function range(at: number): {
  readonly 'aria-valuemin': number;
  readonly 'aria-valuemax': number;
  readonly 'aria-valuenow': number;
} {
  return {
    'aria-valuemin': Math.round((at - 720 * minute) / minute),
    'aria-valuemax': Math.round((at + 720 * minute) / minute),
    'aria-valuenow': Math.round(at / minute),
  };
}

export function Handles({ frame, handles, bars, model, forecast }: HandlesProps) {
  const grip = useGrip(frame);
  return (
    <>
      {bars.map((handle) => (
        <div
          key={handle.task}
          className="handle bar-handle"
          data-moves={handle.move.id}
          data-outside={handle.outside ? true : undefined}
          style={{ left: handle.x, top: handle.top, width: handle.width, height: handle.height }}
          role="slider"
          tabIndex={0}
          title={handle.move.name}
          aria-label={handle.move.name}
          aria-orientation="horizontal"
          {...range(handle.at)}
          aria-valuetext={clockText(handle.at, model.offset)}
          {...grip(() => gripOf(handle.move.id, model, forecast), handle.at)}
        />
      ))}
      {handles.map((handle) => (
        <div
          key={handle.id}
          className="handle"
          data-outside={handle.outside ? true : undefined}
          style={{ left: handle.x, top: handle.top, height: handle.height }}
          role="slider"
          tabIndex={0}
          title={handle.name}
          aria-label={handle.name}
          aria-orientation="horizontal"
          {...range(handle.at)}
          aria-valuetext={clockText(handle.at, model.offset)}
          {...grip(() => gripOf(handle.moves, model, forecast), handle.at)}
        />
      ))}
    </>
  );
}
