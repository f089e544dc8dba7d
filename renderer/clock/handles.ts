/** What of the evening can be taken hold of in the chart, and when it may be moved to. */
import { margin, xOf, type ChartFrame } from './frame.ts';
import type { Lanes } from './lanes.ts';
import type { ClockModel } from './model.ts';
import type { BarMove, MoveId } from './moves.ts';
import { clockText, dayText } from '../words/clock.ts';

export interface Handle {
  readonly id: 'oven-on' | 'eat';
  readonly name: string;
  readonly moves: MoveId;
  /** ms, where it stands now */
  readonly at: number;
  /** px */
  readonly x: number;
  readonly top: number;
  readonly height: number;
  /** not in the part shown; it stays, since a drag may lead it there and back */
  readonly outside: boolean;
}

/** The moment the oven goes on, at the edge of its preheat, and the meal by the head of its line. */
export function handlesOf(lanes: Lanes, model: ClockModel, frame: ChartFrame): readonly Handle[] {
  const rowHeight = frame.lanesHeight / lanes.rows;
  const handles: Handle[] = [];
  const preheat = lanes.bars.find(({ bar }) => bar.task.id === 'preheat');
  const outside = (at: number): boolean => at < frame.view.from || at > frame.view.to;
  if (preheat !== undefined) {
    handles.push({
      id: 'oven-on',
      name: 'Oven on: the plate soaks longer, the pizzas stay',
      moves: 'oven-on',
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
      name: 'Eat: moves the evening',
      moves: 'evening',
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

/** A bar that can be taken hold of. */
export interface BarHandle {
  /** id of its task */
  readonly task: string;
  readonly move: BarMove;
  /** ms, its begin */
  readonly at: number;
  /** px */
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly height: number;
  readonly outside: boolean;
}

/** px: a target that a finger meets (WCAG 2.2, 2.5.8) */
const narrowest = 24;

export function barHandlesOf(
  lanes: Lanes,
  frame: ChartFrame,
  movable: (taskId: string) => BarMove | undefined,
): readonly BarHandle[] {
  const rowHeight = frame.lanesHeight / lanes.rows;
  return lanes.bars.flatMap(({ bar, row, left, right }): readonly BarHandle[] => {
    const move = movable(bar.task.id);
    if (move === undefined) return [];
    const width = Math.max(narrowest, right - left);
    return [
      {
        task: bar.task.id,
        move,
        at: bar.from,
        x: margin.left + (left + right - width) / 2,
        width,
        top: frame.lanesTop + row * rowHeight,
        height: rowHeight,
        outside: false,
      },
    ];
  });
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
