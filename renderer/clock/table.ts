/** The chart as figures: rows for the table on screen, and the CSV of the whole evening. */
import { instantText } from '../words/clock.ts';
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

/** RFC 4180: a header line, CRLF, a full stop for decimals whatever the locale. One row each quarter of a minute. */
export function curvesCsv(forecast: Forecast, model: ClockModel): string {
  const end = model.ovenOn + (forecast.run.trace.seconds.at(-1) ?? 0) * 1000;
  const celsius = (kelvin: number | undefined): string =>
    kelvin === undefined ? '' : (kelvin - 273.15).toFixed(1);
  const lines = ['time_s,instant,oven_air_degC,plate_top_degC,plate_core_degC,pizza,base_degC,crumb_degC'];
  for (let at = model.ovenOn; at <= end; at += minute / 4) {
    const row = rowAt(forecast, at);
    lines.push(
      [
        ((at - model.ovenOn) / 1000).toFixed(0),
        instantText(at, model.offset),
        celsius(row.air),
        celsius(row.plateTop),
        celsius(row.plateCore),
        row.pizza === undefined ? '' : String(row.pizza),
        celsius(row.base),
        celsius(row.crumb),
      ].join(','),
    );
  }
  return `${lines.join('\r\n')}\r\n`;
}
