/** What the clock shows: every curve, event and bar of the evening on one axis of instants (ms). */
import { clockText, epochOf, offsetOf } from '../words/clock.ts';
import { movable, type BarMove } from './moves.ts';
import { sampleAt } from '../../physics/numerics/samples.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { Task } from '../../physics/evening/answer.ts';
import type { Bake, OvenTrace } from '../../physics/evening/run.ts';

export type SeriesId = 'air' | 'top' | 'core' | 'base' | 'crumb';
export const seriesNames: Record<SeriesId, string> = {
  air: 'oven air',
  top: 'plate top',
  core: 'plate core',
  base: 'pizza base',
  crumb: 'crumb',
};

export interface Series {
  readonly id: SeriesId;
  /** number of the pizza, for base and crumb */
  readonly pizza: number | undefined;
  /** ms */
  readonly at: readonly number[];
  /** K */
  readonly kelvin: Float64Array;
}
export interface ClockEvent {
  readonly id: 'on' | 'signal' | 'ready' | 'eat' | 'now';
  readonly label: string;
  /** said too where there is room */
  readonly detail?: string;
  readonly at: number;
}
/** Two curves against the same instants. */
export interface PlateBand {
  /** ms */
  readonly at: readonly number[];
  /** K */
  readonly slow: readonly number[];
  readonly fast: readonly number[];
}
export interface LaneBar {
  readonly task: Task;
  readonly from: number;
  readonly to: number;
}
export interface Span {
  readonly from: number;
  readonly to: number;
}
export interface ClockModel {
  readonly offset: number;
  /** from the first flour to ten minutes after the last pizza */
  readonly whole: Span;
  /** from half an hour before the oven goes on */
  readonly usual: Span;
  readonly ovenOn: number;
  readonly series: readonly Series[];
  readonly events: readonly ClockEvent[];
  readonly bars: readonly LaneBar[];
  /** when the plate is ready, P10 to P90; undefined while it is being computed */
  readonly readyBand: Span | undefined;
  readonly bakes: readonly (Span & { readonly pizza: number })[];
  /** the plate's top while it warms up, as fast as P10 and as slow as P90; undefined while that is being computed */
  readonly plateBand: PlateBand | undefined;
  /** whether a bar can be moved, by its task */
  readonly movable: (taskId: string) => BarMove | undefined;
}

const minute = 60_000;

function traceSeries(id: SeriesId, trace: OvenTrace, kelvin: Float64Array, ovenOn: number): Series {
  return { id, pizza: undefined, at: Array.from(trace.seconds, (s) => ovenOn + s * 1000), kelvin };
}
function bakeSeries(bake: Bake, ovenOn: number): Series[] {
  const at = Array.from(bake.trace.seconds, (s) => ovenOn + s * 1000);
  return [
    { id: 'base', pizza: bake.pizza, at, kelvin: bake.trace.base },
    { id: 'crumb', pizza: bake.pizza, at, kelvin: bake.trace.crumb },
  ];
}

function readyBand({ answer }: Forecast): Span | undefined {
  if (answer.range === null) return undefined;
  const ready = epochOf(answer.plateReadyAt);
  const [short, long] = answer.range.preheatMinutes;
  return {
    from: ready - (answer.preheat.minutes - short) * minute,
    to: ready + (long - answer.preheat.minutes) * minute,
  };
}

/**
 * How far the plate may be ahead or behind while it warms up: the preheat's own curve run through in the time of P10 and
 * of P90, until the first pizza goes in. Later the range of the bakes says more.
 */
export function plateBandOf(
  { seconds, plateTop }: Pick<OvenTrace, 'seconds' | 'plateTop'>,
  minutes: { readonly middle: number; readonly short: number; readonly long: number },
  span: Span,
): PlateBand {
  const { middle, short, long } = minutes;
  const at: number[] = [];
  for (let moment = span.from; moment < span.to; moment += minute / 2) at.push(moment);
  at.push(span.to);
  const read = (moment: number, stretched: number): number =>
    sampleAt(seconds, plateTop, ((moment - span.from) / 1000) * (middle / stretched));
  return {
    at,
    slow: at.map((moment) => read(moment, long)),
    fast: at.map((moment) => read(moment, short)),
  };
}

export function clockModel(forecast: Forecast): ClockModel {
  const { answer, run, evening } = forecast;
  const offset = offsetOf(answer.ovenOnAt);
  const ovenOn = epochOf(answer.ovenOnAt);
  const bars = answer.tasks.map((task) => ({ task, from: epochOf(task.from), to: epochOf(task.to) }));
  const lastSecond = run.trace.seconds.at(-1) ?? 0;
  const end = Math.max(ovenOn + lastSecond * 1000, epochOf(answer.lastEatAt) + 5 * minute);
  const start = Math.min(ovenOn - 30 * minute, ...bars.map(({ from }) => from));
  const band = readyBand(forecast);
  const clock = (at: number): string => clockText(at, offset);
  const signal = epochOf(answer.airReadyAt);
  const ready = epochOf(answer.plateReadyAt);
  const eat = epochOf(answer.eatAt);
  return {
    offset,
    whole: { from: start, to: end },
    usual: { from: ovenOn - 30 * minute, to: end },
    ovenOn,
    series: [
      traceSeries('air', run.trace, run.trace.ovenAir, ovenOn),
      traceSeries('top', run.trace, run.trace.plateTop, ovenOn),
      traceSeries('core', run.trace, run.trace.plateCore, ovenOn),
      ...run.bakes.flatMap((bake) => bakeSeries(bake, ovenOn)),
    ],
    events: [
      { id: 'on', label: `oven on ${clock(ovenOn)}`, at: ovenOn },
      { id: 'signal', label: `oven signals ${clock(signal)}`, at: signal },
      {
        id: 'ready',
        label: `plate ready ${clock(ready)}`,
        at: ready,
        ...(band === undefined ? {} : { detail: `${clock(band.from)} to ${clock(band.to)}` }),
      },
      { id: 'eat', label: `eat ${clock(eat)}`, at: eat },
    ],
    bars,
    readyBand: band,
    plateBand:
      answer.range === null
        ? undefined
        : plateBandOf(
            run.preheat.trace,
            {
              middle: answer.preheat.minutes,
              short: answer.range.preheatMinutes[0],
              long: answer.range.preheatMinutes[1],
            },
            { from: ovenOn, to: ovenOn + (run.bakes[0]?.inAt ?? lastSecond) * 1000 },
          ),
    movable: (taskId) => movable(evening, taskId),
    bakes: run.bakes.map(({ pizza, inAt, outAt }) => ({
      pizza,
      from: ovenOn + inAt * 1000,
      to: ovenOn + outAt * 1000,
    })),
  };
}

/** The same with the present marked, while the evening runs. */
export function withNow(model: ClockModel, now: number): ClockModel {
  if (now < model.whole.from || now > model.whole.to) return model;
  const mark: ClockEvent = { id: 'now', label: `now ${clockText(now, model.offset)}`, at: now };
  return { ...model, events: [...model.events, mark].sort((a, b) => a.at - b.at) };
}

/** How far the oven's air swings between its signal and the ready plate, K. */
export function airRipple({ series, events }: ClockModel): number {
  const air = series.find(({ id }) => id === 'air');
  const [from, to] = (['signal', 'ready'] as const).map(
    (id) => events.find((one) => one.id === id)?.at ?? NaN,
  );
  const held =
    air === undefined ? [] : [...air.kelvin].filter((_, i) => air.at[i]! >= from! && air.at[i]! <= to!);
  return held.length === 0 ? 0 : Math.max(...held) - Math.min(...held);
}

/** Two thirds through the first bake: the moment shown until another is pointed at. */
export function restingMoment(model: ClockModel): number {
  const [first] = model.bakes;
  return first === undefined ? model.ovenOn : first.from + (first.to - first.from) * 0.67;
}
