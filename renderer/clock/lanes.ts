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
  readonly textRight: number;
  readonly beside: boolean;
}
export interface Lanes {
  readonly rows: number;
  readonly names: readonly { readonly name: string; readonly middle: number }[];
  readonly bars: readonly PlacedBar[];
}

const inset = 6;

/** The name in full, else short: "Sauce and cheese" as "Sauce"; bakes by their numbers once one is too narrow. */
function namesOf(task: Task, byNumber: boolean): readonly string[] {
  const number = /^bake-(\d+)$/.exec(task.id)?.[1];
  if (number !== undefined) return byNumber ? [number] : [task.name];
  return [task.name, task.name.split(' ')[0]!];
}
/** What is done for each pizza in turn stands too close together for names beside the bars. */
function isRepeated(task: Task): boolean {
  return /-\d+$/.test(task.id);
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
    // A name beside its bar keeps clear of the other bars, of the lines of events, and of names already placed.
    const lines = model.events.filter(({ at }) => at > view.from && at < view.to).map(({ at }) => px(at));
    const byNumber = shown.some(
      ({ bar, left, right }) =>
        bar.task.id.startsWith('bake-') && widthOf(bar.task.name) + 2 * inset > right - left,
    );
    for (const one of shown) {
      const others = shown.filter((other) => other !== one && other.row === one.row);
      const names = placed.filter(({ row, beside }) => row === one.row && beside);
      const ends = [
        ...others.map(({ right }) => right),
        ...names.map(({ textRight }) => textRight),
        ...lines,
      ];
      const starts = [...others.map(({ left }) => left), ...lines];
      const room = {
        from: Math.max(0, ...ends.filter((x) => x <= one.left + 1)),
        to: Math.min(width, ...starts.filter((x) => x >= one.right - 1)),
      };
      placed.push({ ...one, ...written(one, room, byNumber, widthOf) });
    }
    rows += count;
  }
  return { rows, names, bars: placed };
}

function written(
  { bar, left, right }: { readonly bar: LaneBar; readonly left: number; readonly right: number },
  room: { readonly from: number; readonly to: number },
  byNumber: boolean,
  widthOf: (text: string) => number,
): Pick<PlacedBar, 'text' | 'textLeft' | 'textRight' | 'beside'> {
  const names = namesOf(bar.task, byNumber);
  const short = isRepeated(bar.task) && bar.task.lane === 'hands' ? names.slice(0, 1) : names;
  const inside = short.find((text) => widthOf(text) + 2 * inset <= right - left);
  const at = (text: string | undefined, textLeft: number, beside: boolean) => ({
    text,
    textLeft,
    textRight: textLeft + (text === undefined ? 0 : widthOf(text)),
    beside,
  });
  if (inside !== undefined) return at(inside, left + inset, false);
  for (const text of isRepeated(bar.task) ? [] : names) {
    const needed = widthOf(text) + inset + 3;
    if (right + needed <= room.to) return at(text, right + inset, true);
    if (left - needed >= room.from) return at(text, left - needed + 3, true);
  }
  return at(undefined, left, false);
}
