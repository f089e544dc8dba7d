/**
 * Bars of dough and oven that can be moved: what of the plan follows when one is, or why it stays. An earlier mix gives
 * the dough more time, so it takes less yeast; dividing sooner lets the balls rest longer; a pizza put off waits longer.
 */
import { attempt } from '../../physics/evening/attempt.ts';
import { planDough, type DoughPlan } from '../../physics/evening/planDough.ts';
import { yeastForTime } from '../../physics/evening/yeastForTime.ts';
import { spanText } from '../words/clock.ts';
import type { LaneBar } from './model.ts';
import type { Evening } from '../../physics/evening/evening.ts';

export type MoveId = 'mix' | 'ball' | `bake-${number}`;

export interface BarMove {
  readonly id: MoveId;
  /** name of the handle, with what follows */
  readonly name: string;
}

/** What the bars were when one was taken hold of. */
export interface BarStart {
  readonly evening: Evening;
  readonly dough: DoughPlan;
  readonly bars: readonly LaneBar[];
  /** ms, the present */
  readonly now: number;
}

export type Moved =
  | { readonly ok: true; readonly fields: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly reason: string };

const refused = (reason: string): Moved => ({ ok: false, reason });

/** Which bars can be moved in this plan; the meal and the oven have handles of their own. */
export function movable({ anchor, dough }: Evening, taskId: string): BarMove | undefined {
  // Begun at a fixed time, the mix is what the evening is tied to.
  if (taskId === 'mix' && anchor.kind !== 'startAt')
    return { id: 'mix', name: 'Mix: the yeast follows the time there is' };
  if (taskId === 'ball' && dough.phases.length === 0)
    return { id: 'ball', name: 'Divide and ball: the rest of the balls follows' };
  const pizza = Number(/^bake-(\d+)$/u.exec(taskId)?.[1]);
  if (pizza >= 2)
    return { id: `bake-${pizza}`, name: `Pizza ${String(pizza)}: the wait between two follows` };
  return undefined;
}

/** The bars as they stand; undefined for a dough that cannot be made. */
export function barStart(evening: Evening, bars: readonly LaneBar[], now: number): BarStart | undefined {
  const dough = attempt(() => planDough(evening));
  return dough === undefined ? undefined : { evening, dough, bars, now };
}

function mixMoved({ evening, dough, bars, now }: BarStart, by: number): Moved {
  const mix = bars.find(({ task }) => task.id === 'mix');
  if (mix !== undefined && by < 0 && mix.from >= now && mix.from + by < now)
    return refused('Not moved so far: the dough would have to be mixed before now.');
  const seconds = dough.rise.seconds - by / 1000;
  const percent = seconds > 0 ? yeastForTime(evening, dough, seconds) : undefined;
  if (percent === undefined)
    return refused(
      `Not moved so far: no sane dose of yeast makes this dough ready in ${seconds > 0 ? spanText(seconds / 60) : 'no time'}. Another place to rise, or a longer one, would.`,
    );
  return { ok: true, fields: { 'dough.yeast.percent': Number(percent.toPrecision(3)) } };
}

/** Balls shaped sooner spring back (common practice, no source). s */
const shortestRest = 15 * 60;

function ballMoved({ evening, dough }: BarStart, by: number): Moved {
  const rest = evening.dough.restBeforeShaping - by / 1000;
  if (rest < shortestRest)
    return refused(
      `Not moved so far: balls that rest less than ${spanText(shortestRest / 60)} spring back when they are shaped.`,
    );
  if (rest >= dough.rise.seconds)
    return refused(
      `Not moved so far: the whole rise takes ${spanText(dough.rise.seconds / 60)}, and the dough is divided within it.`,
    );
  return { ok: true, fields: { 'dough.restBeforeShaping': `${String(Math.round(rest / 60))} min` } };
}

function bakeMoved({ bars }: BarStart, pizza: number, by: number): Moved {
  const bar = (n: number) => bars.find(({ task }) => task.id === `bake-${String(n)}`);
  const [own, before] = [bar(pizza), bar(pizza - 1)];
  if (own === undefined || before === undefined) return { ok: true, fields: {} };
  // All waits are alike: each gives its share.
  const wait = (own.from - before.to + by / (pizza - 1)) / 1000;
  if (wait < 0) return refused(`Not moved so far: pizza ${String(pizza - 1)} is still on the plate.`);
  return { ok: true, fields: { 'pizzas.wait': `${String(Math.round(wait))} s` } };
}

/** @param by ms, later above 0 */
export function moveBar(start: BarStart, id: MoveId, by: number): Moved {
  if (id === 'mix') return mixMoved(start, by);
  if (id === 'ball') return ballMoved(start, by);
  return bakeMoved(start, Number(id.slice('bake-'.length)), by);
}
