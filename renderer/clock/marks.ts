/** Everything on the chart that is not a curve: flags, labels at the ends, the band, the lanes. Each has its place. */
import { degreesOfK } from '../words/figures.ts';
import { dashes, order, type Asked, type Palette } from './asked.ts';
import { fontSize, labelGap, margin, xOf, yOf, type ChartFrame } from './frame.ts';
import { textWidth } from './measure.ts';
import { flagRows, spreadApart } from './placing.ts';
import { seriesNames, type Series, type Span } from './model.ts';
import type { Lanes } from './lanes.ts';
import type { Annotation, Shape } from 'plotly.js';

export interface Marks {
  readonly annotations: Partial<Annotation>[];
  readonly shapes: Partial<Shape>[];
}

function plain(text: string): string {
  // Plotly reads < and & as markup; a title typed by the cook is text.
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

/** Where a curve leaves the view: its last point inside it. */
function endOf(series: Series, view: Span): { at: number; kelvin: number } | undefined {
  for (let i = series.at.length - 1; i >= 0; i -= 1) {
    const at = series.at[i]!;
    if (at < view.from) return undefined;
    if (at <= view.to) return { at, kelvin: series.kelvin[i]! };
  }
  return undefined;
}

const paper = { xref: 'paper', yref: 'paper' } as const;

/** Positions in pixels, written in Plotly's shares of the plot area. */
export function shares(frame: ChartFrame): { x: (px: number) => number; y: (px: number) => number } {
  const height = frame.lanesTop + frame.lanesHeight - frame.top;
  return {
    x: (px) => (px - margin.left) / frame.plotWidth,
    y: (px) => 1 - (px - frame.top) / height,
  };
}

function text(frame: ChartFrame, x: number, y: number, label: string, color: string): Partial<Annotation> {
  const at = shares(frame);
  return {
    ...paper,
    x: at.x(x),
    y: at.y(y),
    text: plain(label),
    showarrow: false,
    xanchor: 'left',
    yanchor: 'middle',
    align: 'left',
    borderpad: 0,
    font: { color, size: fontSize },
  };
}

function line(
  frame: ChartFrame,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  style: { color: string; dash?: string; width: number },
): Partial<Shape> {
  const at = shares(frame);
  return {
    ...paper,
    type: 'line',
    x0: at.x(x0),
    x1: at.x(x1),
    y0: at.y(y0),
    y1: at.y(y1),
    line: style as NonNullable<Shape['line']>,
  };
}

export function endLabels({ model, view, units, palette }: Asked, frame: ChartFrame): Marks {
  const ends = order.flatMap((id) => {
    const last = model.series.filter((series) => series.id === id).map((series) => endOf(series, view));
    const end = last.findLast((one) => one !== undefined);
    return end === undefined
      ? []
      : [{ id, x: xOf(frame, end.at), y: yOf(frame, degreesOfK(end.kelvin, units)) }];
  });
  const placed = spreadApart(
    ends.map(({ y }) => y),
    labelGap,
    frame.top + 6,
    frame.top + frame.panelHeight - 8,
  );
  const edge = margin.left + frame.plotWidth;
  const annotations: Partial<Annotation>[] = [];
  const shapes: Partial<Shape>[] = [];
  ends.forEach(({ id, x, y }, index) => {
    const height = placed[index]!;
    shapes.push(
      line(frame, [x, y, edge + 6, height], { color: palette.muted, width: 0.75 }),
      line(frame, [edge + 6, height, edge + 26, height], { color: palette.series[id], ...dashes[id] }),
    );
    annotations.push(text(frame, edge + 30, height, seriesNames[id], palette.ink));
  });
  return { annotations, shapes };
}

export interface PlacedFlag {
  readonly label: string;
  readonly x: number;
  readonly row: number;
  readonly dash: string;
  /** the text ends at the line instead of beginning there */
  readonly before: boolean;
}

export function placeFlags({ model, view, palette }: Asked, plotWidth: number): readonly PlacedFlag[] {
  const font = `${String(fontSize)}px ${palette.font}`;
  const shown = model.events
    .filter(({ at }) => at >= view.from && at <= view.to)
    .map(({ label, detail, at, id }) => ({
      // The range beside it is said in the first answer too: where the chart is narrow the clock time must do.
      label: detail === undefined || plotWidth < 640 ? label : `${label} (${detail})`,
      x: margin.left + ((at - view.from) / (view.to - view.from)) * plotWidth,
      dash: id === 'signal' || id === 'ready' ? '3px,3px' : 'solid',
    }));
  const widths = shown.map(({ label }) => textWidth(label, font) + 10);
  // Nothing stands to the left of the first line: its text may, and then reaches over no other.
  const before = shown.map(({ x }, i) => i === 0 && x - widths[i]! > margin.left);
  const rows = flagRows(shown.map(({ x }, i) => ({ x, width: before[i] === true ? 0 : widths[i]! })));
  return shown.map((flag, i) => ({ ...flag, row: rows[i]!, before: before[i]! }));
}

export function flagMarks(placed: readonly PlacedFlag[], frame: ChartFrame, palette: Palette): Marks {
  const annotations: Partial<Annotation>[] = [];
  const shapes: Partial<Shape>[] = [];
  const panelEnd = frame.top + frame.panelHeight;
  for (const { label, x, row, dash, before } of placed) {
    const height = frame.top - 12 - row * 18;
    const style = { color: palette.muted, width: 1, dash };
    // Two pieces: the row of clock times between the panels stays readable.
    shapes.push(
      line(frame, [x, height - 7, x, panelEnd], style),
      line(frame, [x, frame.lanesTop, x, frame.lanesTop + frame.lanesHeight], style),
    );
    const placedText = text(frame, before ? x - 5 : x + 5, height, label, palette.ink);
    annotations.push(before ? { ...placedText, xanchor: 'right' } : placedText);
  }
  return { annotations, shapes };
}

export function bandMark({ model, palette }: Asked, frame: ChartFrame): Partial<Shape>[] {
  const band = model.readyBand;
  if (band === undefined) return [];
  const clip = (at: number): number => Math.min(Math.max(at, frame.view.from), frame.view.to);
  const [from, to] = [clip(band.from), clip(band.to)];
  if (to <= from) return [];
  const at = shares(frame);
  return [
    {
      ...paper,
      type: 'rect',
      x0: at.x(xOf(frame, from)),
      x1: at.x(xOf(frame, to)),
      y0: at.y(frame.top),
      y1: at.y(frame.top + frame.panelHeight),
      fillcolor: palette.series.top,
      opacity: 0.16,
      line: { width: 1, color: palette.series.top },
      layer: 'below',
    },
  ];
}

export function laneMarks(lanes: Lanes, frame: ChartFrame, palette: Palette): Marks {
  const at = shares(frame);
  const rowHeight = frame.lanesHeight / lanes.rows;
  const annotations: Partial<Annotation>[] = [];
  const shapes: Partial<Shape>[] = [];
  for (const { bar, row, left, right, text: label, textLeft, beside } of lanes.bars) {
    const top = frame.lanesTop + row * rowHeight;
    const bake = bar.task.id.startsWith('bake-');
    shapes.push({
      ...paper,
      type: 'rect',
      x0: at.x(margin.left + left),
      x1: at.x(margin.left + Math.max(right, left + 2)),
      y0: at.y(top + 3),
      y1: at.y(top + rowHeight - 3),
      fillcolor: bake ? palette.bake : palette.bar,
      line: { width: 1, color: palette.muted },
    });
    if (label !== undefined) {
      const ink = beside ? palette.ink : bake ? palette.bakeInk : palette.barInk;
      annotations.push(text(frame, margin.left + textLeft, top + rowHeight / 2, label, ink));
    }
  }
  for (const { name, middle } of lanes.names) {
    annotations.push({
      ...text(frame, margin.left - 10, frame.lanesTop + middle * rowHeight, name, palette.muted),
      xanchor: 'right',
    });
  }
  return { annotations, shapes };
}
