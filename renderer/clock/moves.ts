/**
 * What of dough and oven can be moved: what of the plan follows when it is, or why it stays. An earlier mix gives the
 * dough more time, so it takes less yeast; dividing sooner lets the balls rest longer; an oven that goes on sooner, or a
 * first pizza that goes in later, leaves the plate to soak; a later pizza put off waits longer.
 */
import { shortestRest } from '../../physics/evening/doughChanges.ts';
import { attempt } from '../../physics/evening/attempt.ts';
import { planDough, type DoughPlan } from '../../physics/evening/planDough.ts';
import { yeastForTime } from '../../physics/evening/yeastForTime.ts';
import { instantText, spanText } from '../words/clock.ts';
import type { LaneBar } from './model.ts';
import type { Evening } from '../../physics/evening/evening.ts';

export type MoveId = 'evening' | 'oven-on' | 'mix' | 'ball' | `bake-${number}`;

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
  /** s from oven on until the plate is ready */
  readonly ready: number;
  /** ms, the present */
  readonly now: number;
}

export type Moved =
  | { readonly ok: true; readonly fields: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly reason: string };

const refused = (reason: string): Moved => ({ ok: false, reason });

/** Which bars can be moved in this plan; the meal and the moment the oven goes on have handles of their own. */
export function movable({ anchor, dough }: Evening, taskId: string): BarMove | undefined {
  if (taskId === 'preheat') return { id: 'evening', name: 'Preheat: moves the evening' };
  if (taskId === 'mix')
    return anchor.kind === 'startAt'
      ? // Begun at a fixed time, the mix is what the evening is tied to.
        { id: 'evening', name: 'Mix: moves the evening' }
      : { id: 'mix', name: 'Mix: the yeast follows the time there is' };
  // Begun at a fixed time, it is the dough that says when the first one goes in.
  if (taskId === 'bake-1' && anchor.kind !== 'startAt')
    return { id: 'bake-1', name: 'Pizza 1: the plate soaks until then' };
  if (taskId === 'ball' && dough.phases.length === 0)
    return { id: 'ball', name: 'Divide and ball: the rest of the balls follows' };
  const pizza = Number(/^bake-(\d+)$/u.exec(taskId)?.[1]);
  if (pizza >= 2)
    return { id: `bake-${pizza}`, name: `Pizza ${String(pizza)}: the wait between two follows` };
  return undefined;
}

/** The bars as they stand; undefined for a dough that cannot be made. */
export function barStart(
  evening: Evening,
  { bars, ready, now }: Pick<BarStart, 'bars' | 'ready' | 'now'>,
): BarStart | undefined {
  const dough = attempt(() => planDough(evening));
  return dough === undefined ? undefined : { evening, dough, bars, ready, now };
}

/** The plan tied to a moment so much later. @param by ms */
export function anchorMoved({ anchor }: Evening, by: number): Readonly<Record<string, string>> {
  const { epochMilliseconds, offsetMinutes } = anchor.time;
  return { 'anchor.time': instantText(epochMilliseconds + by, offsetMinutes) };
}

/**
 * The plate left in the oven so much longer before the first pizza. One that is laid down when it is ready, to the
 * minute, says nothing of its own, and follows the plate.
 *
 * @param by ms
 */
function soaked({ evening, ready }: BarStart, by: number): Moved {
  const planned = evening.pizzas.loadAt ?? ready;
  const load = planned + by / 1000;
  if (load < Math.min(planned, ready - 30))
    return refused(
      `Not moved so far: the plate is ready ${spanText(ready / 60)} after the oven goes on. A colder one is had by "First one in", under Pizzas.`,
    );
  const soaks = Math.abs(load - ready) > 30;
  return {
    ok: true,
    fields: { 'pizzas.loadAt': soaks ? `${String(Math.round(load / 60))} min` : undefined },
  };
}

function ovenOnMoved(start: BarStart, by: number): Moved {
  const { evening, bars, now } = start;
  const beginOf = (id: string): number | undefined => bars.find(({ task }) => task.id === id)?.from;
  const [on, mix] = [beginOf('preheat'), beginOf('mix')];
  if (on !== undefined && by < 0 && on >= now && on + by < now)
    return refused('Not moved so far: the oven would have to go on before now.');
  const { kind } = evening.anchor;
  if (kind === 'startAt' && on !== undefined && mix !== undefined && on + by < mix)
    return refused('Not moved so far: the oven would have to go on before the evening begins.');
  const moved = soaked(start, -by);
  // Tied to the oven, the plan goes along, so that the pizzas stay where they are.
  return moved.ok && kind === 'ovenOnAt'
    ? { ok: true, fields: { ...moved.fields, ...anchorMoved(evening, by) } }
    : moved;
}

function firstBakeMoved(start: BarStart, by: number): Moved {
  const moved = soaked(start, by);
  // Tied to the meal, the plan goes along, so that the oven stays on when it was.
  return moved.ok && start.evening.anchor.kind === 'eatAt'
    ? { ok: true, fields: { ...moved.fields, ...anchorMoved(start.evening, by) } }
    : moved;
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
export function moveBar(start: BarStart, id: Exclude<MoveId, 'evening'>, by: number): Moved {
  if (id === 'oven-on') return ovenOnMoved(start, by);
  if (id === 'bake-1') return firstBakeMoved(start, by);
  if (id === 'mix') return mixMoved(start, by);
  if (id === 'ball') return ballMoved(start, by);
  return bakeMoved(start, Number(id.slice('bake-'.length)), by);
}
