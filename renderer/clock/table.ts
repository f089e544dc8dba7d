/** The chart as figures: rows for the table on screen. */
import { momentAt } from './moment.ts';
import type { ClockModel, Span } from './model.ts';
import type { Forecast } from '../state/forecastStore.ts';

const minute = 60_000;

export interface CurveRow {
  readonly at: number;
  /** K */
  readonly air: number;
  readonly plateTop: number;
  readonly plateCore: number;
  readonly pizza: number | undefined;
  readonly base: number | undefined;
  readonly crumb: number | undefined;
}

function rowAt(forecast: Forecast, at: number): CurveRow {
  const { air, plateTop, plateCore, bake } = momentAt(forecast, at);
  return { at, air, plateTop, plateCore, pizza: bake?.pizza, base: bake?.base, crumb: bake?.crumb };
}

/** Every five minutes of the part shown, and each load and unload of a pizza. */
export function curveRows(forecast: Forecast, model: ClockModel, view: Span): readonly CurveRow[] {
  const end = Math.min(view.to, model.whole.to);
  const start = Math.max(view.from, model.ovenOn);
  const moments = new Set<number>();
  for (let at = Math.ceil(start / (5 * minute)) * 5 * minute; at <= end; at += 5 * minute) moments.add(at);
  for (const bake of model.bakes) {
    for (const at of [bake.from, bake.to]) if (at >= start && at <= end) moments.add(at);
  }
  return [...moments].sort((a, b) => a - b).map((at) => rowAt(forecast, at));
}
