/** The chart as Plotly draws it: data and layout, with every label already placed so that none meets another. */
import { degreeUnit, degreesOfK } from '../words/figures.ts';
import { clockText } from '../words/clock.ts';
import { chartFrame, fontSize, margin, xOf, type ChartFrame } from './frame.ts';
import { barHandlesOf, handlesOf, type BarHandle, type Handle } from './handles.ts';
import { lanesOf } from './lanes.ts';
import { textWidth } from './measure.ts';
import { airRipple, seriesNames, type ClockModel, type Span } from './model.ts';
import { dashes, type Asked } from './asked.ts';
import { bandMark, endLabels, flagMarks, laneMarks, placeFlags, shares } from './marks.ts';
import type { Dash, Data, Layout } from 'plotly.js';
import type { UnitSystem } from '../../physics/quantities/index.ts';

const minute = 60_000;

export interface Drawn {
  readonly data: Data[];
  readonly layout: Partial<Layout>;
  readonly frame: ChartFrame;
  readonly handles: readonly Handle[];
  readonly bars: readonly BarHandle[];
}
function degreesShown(model: ClockModel, units: UnitSystem): { low: number; high: number } {
  const highest = Math.max(...model.series.map(({ kelvin }) => kelvin.reduce((a, b) => Math.max(a, b), 0)));
  const step = units === 'us' ? 100 : 50;
  return { low: 0, high: Math.ceil((degreesOfK(highest, units) + step / 10) / step) * step };
}

/** Round clock times, as dense as their labels allow. */
function timeTicks(view: Span, offset: number, width: number): readonly number[] {
  const most = Math.max(2, Math.floor(width / 88));
  const steps = [5, 10, 15, 30, 60, 120, 180, 360];
  const step = (steps.find((size) => (view.to - view.from) / (size * minute) <= most) ?? 720) * minute;
  const shift = offset * minute;
  const first = Math.ceil((view.from + shift) / step) * step - shift;
  const count = Math.max(0, Math.floor((view.to - first) / step) + 1);
  return Array.from({ length: count }, (_, index) => first + index * step);
}

/** K over which an air that is switched on and off crosses the other curves again and again: our own choice. */
const wideRipple = 60;

function curves({ model, units, palette }: Asked): Data[] {
  const thinAir = airRipple(model) > wideRipple;
  return model.series.map((series) => ({
    type: 'scatter',
    mode: 'lines',
    name:
      series.pizza === undefined
        ? seriesNames[series.id]
        : `${seriesNames[series.id]} ${String(series.pizza)}`,
    x: series.at.map((at) => at / minute),
    y: Array.from(series.kelvin, (kelvin) => degreesOfK(kelvin, units)),
    xaxis: 'x',
    yaxis: 'y',
    line: {
      color: palette.series[series.id],
      // An air that swings far would else bury the plate under its zigzag.
      width: series.id === 'air' && thinAir ? 1.25 : dashes[series.id].width,
      dash: dashes[series.id].dash as Dash,
    },
    hoverinfo: 'skip',
    showlegend: false,
  }));
}

/** `#d55e00` at a fifth of its strength. */
function faint(colour: string): string {
  return `${colour}33`;
}

/** From P10 to P90 around the plate, a fifth as strong as its curve, with an outline. */
function bandCurves({ model, units, palette }: Asked): Data[] {
  const band = model.plateBand;
  if (band === undefined) return [];
  const x = band.at.map((at) => at / minute);
  const edge = (kelvin: readonly number[], fill: boolean): Data => ({
    type: 'scatter',
    mode: 'lines',
    name: fill ? 'plate top, P10' : 'plate top, P90',
    x,
    y: kelvin.map((one) => degreesOfK(one, units)),
    line: { color: palette.series.top, width: 0.75 },
    ...(fill ? { fill: 'tonexty', fillcolor: faint(palette.series.top) } : {}),
    hoverinfo: 'skip',
    showlegend: false,
  });
  return [edge(band.slow, false), edge(band.fast, true)];
}

export function drawClock(asked: Asked): Drawn {
  const { model, view, size, units, palette } = asked;
  const font = `${String(fontSize)}px ${palette.font}`;
  const plotWidth = Math.max(80, size.width - margin.left - margin.right);
  const placedFlags = placeFlags(asked, plotWidth);
  const lanes = lanesOf(model, view, plotWidth, (label) => textWidth(label, font));
  const flagCount = 1 + Math.max(0, ...placedFlags.map(({ row }) => row));
  const frame = chartFrame(size, { flags: flagCount, lanes: lanes.rows }, degreesShown(model, units), view);
  const marks = [
    flagMarks(placedFlags, frame, palette),
    endLabels(asked, frame),
    laneMarks(lanes, frame, palette),
  ];
  const at = shares(frame);
  const ticks = timeTicks(view, model.offset, plotWidth);
  const unit = degreeUnit(units);
  const layout: Partial<Layout> = {
    width: size.width,
    height: size.height,
    margin: {
      l: margin.left,
      r: margin.right,
      t: frame.top,
      b: size.height - frame.lanesTop - frame.lanesHeight,
      pad: 0,
    },
    paper_bgcolor: palette.paper,
    plot_bgcolor: palette.paper,
    font: { family: palette.font, size: fontSize, color: palette.muted },
    showlegend: false,
    hovermode: false,
    dragmode: 'pan',
    // Minutes since 1970 on a plain axis with our own ticks: Plotly's date axis would show this machine's zone, not
    // the evening's.
    xaxis: {
      type: 'linear',
      range: [view.from / minute, view.to / minute],
      anchor: 'y',
      tickmode: 'array',
      tickvals: ticks.map((at) => at / minute),
      // The first label would meet the lowest one of the temperatures.
      ticktext: ticks.map((at) => (xOf(frame, at) < margin.left + 24 ? '' : clockText(at, model.offset))),
      gridcolor: palette.rule,
      zeroline: false,
      showline: true,
      linecolor: palette.muted,
      automargin: false,
    },
    yaxis: {
      range: [frame.low, frame.high],
      domain: [at.y(frame.top + frame.panelHeight), 1],
      fixedrange: true,
      gridcolor: palette.rule,
      zeroline: false,
      ticksuffix: ` ${unit}`,
      showticksuffix: 'last',
      dtick: units === 'us' ? 100 : frame.panelHeight < 160 ? 100 : 50,
      automargin: false,
    },
    shapes: [...bandMark(asked, frame), ...marks.flatMap(({ shapes }) => shapes)],
    annotations: marks.flatMap(({ annotations }) => annotations),
  };
  return {
    data: [...curves(asked), ...bandCurves(asked)],
    layout,
    frame,
    handles: handlesOf(lanes, model, frame),
    bars: barHandlesOf(lanes, frame, model.movable),
  };
}
