/** Lines over one plain axis, each with its name at its end, placed so that no name meets another. */
import { textWidth } from '../clock/measure.ts';
import { spreadApart } from '../clock/placing.ts';
import type { Size } from './useSize.ts';
import type { Annotation, Dash, Data, Layout, Shape } from 'plotly.js';

/** Colour is never alone: the n-th line has the n-th dash, in every theme and on paper. */
export const lineDashes = [
  'solid',
  '7px,4px',
  '2px,3px',
  '12px,3px,2px,3px',
  '5px,3px,1px,3px',
  '14px,6px',
] as const;

export interface Line {
  /** place in colours and dashes */
  readonly index: number;
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** what was seen: single points, no curve through them */
  readonly points?: boolean;
}
/** A value on the upright axis that stands out, with what it is. */
export interface Level {
  readonly y: number;
  readonly label: string;
}
/** A value on the level axis that stands out, with what it is. */
export interface Upright {
  readonly x: number;
  readonly label: string;
}
export interface LineAsked {
  readonly lines: readonly Line[];
  readonly levels?: readonly Level[];
  readonly uprights?: readonly Upright[];
  /** points are marked as well, for curves of few */
  readonly dots?: boolean;
  /** the upright axis begins at 0, so that small differences look small */
  readonly fromZero?: boolean;
  /** between marks of the level axis, where it is not left to the room there is */
  readonly xStep?: number;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly size: Size;
}
export interface LinePalette {
  readonly font: string;
  readonly ground: string;
  readonly ink: string;
  readonly muted: string;
  readonly rule: string;
  readonly lines: readonly string[];
}

const fontSize = 13;
const margin = { left: 48, top: 28, bottom: 44 } as const;
const gap = 17;

function plain(text: string): string {
  // Plotly reads < and & as markup; a name typed by the cook is text.
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}

/** As much of a name as has room, with an ellipsis. */
export function shortened(name: string, room: number, width: (text: string) => number): string {
  if (width(name) <= room) return name;
  let end = name.length - 1;
  while (end > 1 && width(`${name.slice(0, end).trimEnd()}…`) > room) end -= 1;
  return `${name.slice(0, end).trimEnd()}…`;
}

/** Round steps, so that an axis has about as many marks as asked for. */
export function niceStep(span: number, marks: number): number {
  const rough = span / Math.max(1, marks);
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 2.5, 5, 10].find((step) => step * power >= rough) ?? 10);
}

interface Extent {
  readonly low: number;
  readonly high: number;
}
function extentOf(values: readonly number[], around: number): Extent {
  if (values.length === 0) return { low: 0, high: 1 };
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max((high - low) * around, 1e-9);
  return { low: low - room, high: high + room };
}

export function drawLines(asked: LineAsked, palette: LinePalette): { data: Data[]; layout: Partial<Layout> } {
  const { lines, levels = [], uprights = [], size, xTitle, yTitle } = asked;
  const font = `${String(fontSize)}px ${palette.font}`;
  const width = (text: string): number => textWidth(text, font);
  const most = Math.max(80, size.width * 0.34);
  const labels = lines.map(({ name }) => shortened(name, most, width));
  const right = 34 + Math.max(0, ...labels.map(width));
  const plotWidth = Math.max(60, size.width - margin.left - right);
  const plotHeight = Math.max(60, size.height - margin.top - margin.bottom);
  // A dot at the edge is as whole as the others.
  const xs = extentOf(
    lines.flatMap(({ x }) => x),
    asked.dots === true ? 0.03 : 0,
  );
  const around = extentOf([...lines.flatMap(({ y }) => y), ...levels.map(({ y }) => y)], 0.04);
  const ys = asked.fromZero === true ? { low: 0, high: around.high } : around;
  const toX = (x: number): number => (x - xs.low) / (xs.high - xs.low);
  const toY = (y: number): number => (y - ys.low) / (ys.high - ys.low);

  const annotations: Partial<Annotation>[] = [];
  const shapes: Partial<Shape>[] = [];
  const paper = { xref: 'paper', yref: 'paper' } as const;
  const text = (x: number, y: number, label: string, more: Partial<Annotation> = {}): void => {
    annotations.push({
      ...paper,
      x,
      y,
      text: plain(label),
      showarrow: false,
      xanchor: 'left',
      yanchor: 'middle',
      borderpad: 0,
      font: { color: palette.ink, size: fontSize },
      ...more,
    });
  };
  const drawn = lines.filter(({ x }) => x.length > 0);
  const heights = spreadApart(
    // Of ends at one height the one furthest right is named highest: no leader then crosses another.
    drawn.map(({ x, y }) => (1 - toY(y.at(-1)!)) * plotHeight - 0.5 * toX(x.at(-1)!)),
    gap,
    0,
    plotHeight,
  );
  drawn.forEach((line, i) => {
    const color = palette.lines[line.index]!;
    const y = 1 - heights[i]! / plotHeight;
    const style = {
      color,
      dash: line.points === true ? 'dot' : lineDashes[line.index]!,
      width: line.points === true ? 4 : 2,
    };
    shapes.push(
      {
        ...paper,
        type: 'line',
        x0: toX(line.x.at(-1)!),
        y0: toY(line.y.at(-1)!),
        x1: 1 + 6 / plotWidth,
        y1: y,
        line: { color: palette.muted, width: 0.75 },
      },
      {
        ...paper,
        type: 'line',
        x0: 1 + 6 / plotWidth,
        y0: y,
        x1: 1 + 24 / plotWidth,
        y1: y,
        line: style as NonNullable<Shape['line']>,
      },
    );
    text(1 + 28 / plotWidth, y, labels[lines.indexOf(line)]!);
  });
  for (const { y, label } of levels) {
    shapes.push({
      ...paper,
      type: 'line',
      x0: 0,
      x1: 1,
      y0: toY(y),
      y1: toY(y),
      line: { color: palette.muted, width: 1, dash: 'dot' },
    });
    text(4 / plotWidth, toY(y), label, { yanchor: 'bottom', font: { color: palette.muted, size: fontSize } });
  }
  for (const { x, label } of uprights) {
    shapes.push({
      ...paper,
      type: 'line',
      x0: toX(x),
      x1: toX(x),
      y0: 0,
      y1: 1,
      line: { color: palette.muted, width: 1, dash: 'dot' },
    });
    // On the side of the line that has more room, at the foot of the plot.
    text(toX(x), 8 / plotHeight, label, {
      xanchor: toX(x) < 0.6 ? 'left' : 'right',
      xshift: toX(x) < 0.6 ? 5 : -5,
      font: { color: palette.muted, size: fontSize },
    });
  }
  text(0, 1 + 16 / plotHeight, yTitle, {
    xanchor: 'left',
    xshift: -margin.left + 8,
    font: { color: palette.muted, size: fontSize },
  });
  text(1, -32 / plotHeight, xTitle, { xanchor: 'right', font: { color: palette.muted, size: fontSize } });

  // Without a line there is nothing to read off.
  const axis = {
    visible: drawn.length > 0,
    gridcolor: palette.rule,
    zeroline: false,
    fixedrange: true,
    automargin: false,
  } as const;
  return {
    data: drawn.map((line) => ({
      type: 'scatter',
      mode: line.points === true ? 'markers' : asked.dots === true ? 'lines+markers' : 'lines',
      name: line.name,
      x: [...line.x],
      y: [...line.y],
      line: { color: palette.lines[line.index]!, width: 2.25, dash: lineDashes[line.index]! as Dash },
      marker: { color: palette.lines[line.index]!, size: 7 },
      hoverinfo: 'skip',
      showlegend: false,
    })),
    layout: {
      width: size.width,
      height: size.height,
      margin: { l: margin.left, r: right, t: margin.top, b: margin.bottom, pad: 0 },
      paper_bgcolor: palette.ground,
      plot_bgcolor: palette.ground,
      font: { family: palette.font, size: fontSize, color: palette.muted },
      showlegend: false,
      hovermode: false,
      dragmode: false,
      xaxis: {
        ...axis,
        range: [xs.low, xs.high],
        dtick: asked.xStep ?? niceStep(xs.high - xs.low, plotWidth / 56),
        showline: true,
        linecolor: palette.muted,
      },
      yaxis: { ...axis, range: [ys.low, ys.high], dtick: niceStep(ys.high - ys.low, plotHeight / 40) },
      shapes,
      annotations,
    },
  };
}
