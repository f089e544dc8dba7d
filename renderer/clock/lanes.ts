/** The lanes of the clock: which bar stands in which row, and what is written in or beside it. */
import { stackRows } from './placing.ts';
import type { ClockModel, LaneBar, Span } from './model.ts';
import type { Task } from '../../physics/evening/answer.ts';

export const laneNames: Record<Task['lane'], string> = { dough: 'Dough', oven: 'Oven', hands: 'Hands' };
const laneOrder: readonly Task['lane'][] = ['dough', 'oven', 'hands'];

export interface PlacedBar {
  readonly bar: LaneBar;
  /** row from the top over all lanes */
  readonly row: number;
  /** px from the left edge of the plot, clipped to it */
  readonly left: number;
  readonly right: number;
  /** what is written, and from which px on; undefined where there is no room */
  readonly text: string | undefined;
  readonly textLeft: number;
  readonly beside: boolean;
}
export interface Lanes {
  readonly rows: number;
  readonly names: readonly { readonly name: string; readonly middle: number }[];
  readonly bars: readonly PlacedBar[];
}

const inset = 6;

/** The name in full, else its number ("Pizza 2" as "2"), else nothing. */
function namesOf(task: Task): readonly string[] {
  const number = /^bake-(\d+)$/.exec(task.id)?.[1];
  return number === undefined ? [task.name] : [task.name, number];
}

export function lanesOf(
  model: ClockModel,
  view: Span,
  width: number,
  widthOf: (text: string) => number,
): Lanes {
  const scale = width / (view.to - view.from);
  const px = (at: number): number => Math.min(Math.max((at - view.from) * scale, 0), width);
  const names: { name: string; middle: number }[] = [];
  const placed: PlacedBar[] = [];
  let rows = 0;
  for (const lane of laneOrder) {
    const bars = model.bars.filter(({ task }) => task.lane === lane);
    const stacked = stackRows(bars);
    const count = Math.max(1, ...stacked.map((row) => row + 1));
    names.push({ name: laneNames[lane], middle: rows + count / 2 });
    const shown = bars
      .map((bar, index) => ({ bar, row: rows + stacked[index]!, left: px(bar.from), right: px(bar.to) }))
      .filter(({ bar }) => bar.to > view.from && bar.from < view.to);
    for (const one of shown) {
      // A name beside its bar keeps clear of the next bar and of the lines of events.
      const next = Math.min(
        width,
        ...model.events.map(({ at }) => px(at)).filter((x) => x > one.right + 1),
        ...shown.filter(({ row, left }) => row === one.row && left > one.left).map(({ left }) => left),
      );
      placed.push({ ...one, ...written(one, next, widthOf) });
    }
    rows += count;
  }
  return { rows, names, bars: placed };
}

function written(
  { bar, left, right }: { readonly bar: LaneBar; readonly left: number; readonly right: number },
  next: number,
  widthOf: (text: string) => number,
): Pick<PlacedBar, 'text' | 'textLeft' | 'beside'> {
  const names = namesOf(bar.task);
  const inside = names.find((text) => widthOf(text) + 2 * inset <= right - left);
  if (inside !== undefined) return { text: inside, textLeft: left + inset, beside: false };
  const beside = names.find((text) => right + widthOf(text) + inset + 3 <= next);
  if (beside !== undefined) return { text: beside, textLeft: right + inset, beside: true };
  return { text: undefined, textLeft: left, beside: false };
}
