/** What of the evening can be taken hold of in the chart, and when it may be moved to. */
import { margin, xOf, type ChartFrame } from './frame.ts';
import type { Lanes } from './lanes.ts';
import type { ClockModel } from './model.ts';
import { clockText, dayText } from '../words/clock.ts';

export interface Handle {
  readonly id: 'preheat' | 'eat';
  readonly name: string;
  /** ms, where it stands now */
  readonly at: number;
  /** px */
  readonly x: number;
  readonly top: number;
  readonly height: number;
  /** not in the part shown; it stays, since a drag may lead it there and back */
  readonly outside: boolean;
}

/** The oven's preheat by its start, and the meal by the head of its line. */
export function handlesOf(lanes: Lanes, model: ClockModel, frame: ChartFrame): readonly Handle[] {
  const rowHeight = frame.lanesHeight / lanes.rows;
  const handles: Handle[] = [];
  const preheat = lanes.bars.find(({ bar }) => bar.task.id === 'preheat');
  const outside = (at: number): boolean => at < frame.view.from || at > frame.view.to;
  if (preheat !== undefined) {
    handles.push({
      id: 'preheat',
      name: 'Oven on',
      at: preheat.bar.from,
      x: margin.left + preheat.left,
      top: frame.lanesTop + preheat.row * rowHeight,
      height: rowHeight,
      outside: outside(preheat.bar.from),
    });
  }
  const eat = model.events.find(({ id }) => id === 'eat');
  if (eat !== undefined) {
    handles.push({
      id: 'eat',
      name: 'Eat',
      at: eat.at,
      x: xOf(frame, eat.at),
      top: frame.top,
      height: 24,
      outside: outside(eat.at),
    });
  }
  return handles;
}

const minute = 60_000;

/** Where a handle goes for so many milliseconds, in whole minutes of the clock. */
export function movedTo(at: number, by: number): number {
  return Math.round((at + by) / minute) * minute;
}

/**
 * Why the evening may not be moved by so much; undefined when it may. What has to be begun cannot be begun in the past,
 * unless it lies there already.
 *
 * @param begin ms, the first thing of the evening
 */
export function whyNot(begin: number, by: number, now: number, offset: number): string | undefined {
  if (by >= 0 || begin < now || begin + by >= now) return undefined;
  const first = `${clockText(begin + by, offset)}, ${dayText(begin + by, offset)}`;
  return `Not moved so far: the evening would have to begin at ${first}, before now. At most ${String(Math.floor((begin - now) / minute))} min earlier.`;
}
