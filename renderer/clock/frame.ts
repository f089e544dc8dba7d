/** The measures of the chart in pixels: both panels, the flags above and the labels at the right. */
import type { Span } from './model.ts';

export const fontSize = 13;
export const labelGap = 17;
export const margin = { left: 64, right: 104 } as const;
const flagHeight = 18;
const axisHeight = 28;

export interface ChartFrame {
  readonly width: number;
  readonly height: number;
  readonly plotWidth: number;
  /** px from the top: upper panel, then the time axis, then the lanes */
  readonly top: number;
  readonly panelHeight: number;
  readonly lanesTop: number;
  readonly lanesHeight: number;
  /** shown degrees at the bottom and top of the upper panel */
  readonly low: number;
  readonly high: number;
  readonly view: Span;
}

export function chartFrame(
  size: { readonly width: number; readonly height: number },
  rows: { readonly flags: number; readonly lanes: number },
  degrees: { readonly low: number; readonly high: number },
  view: Span,
): ChartFrame {
  const top = rows.flags * flagHeight + 10;
  const rowHeight = size.height > 460 ? 30 : size.height > 360 ? 26 : 24;
  const lanesHeight = rows.lanes * rowHeight;
  return {
    ...size,
    ...degrees,
    plotWidth: Math.max(80, size.width - margin.left - margin.right),
    top,
    panelHeight: Math.max(60, size.height - top - axisHeight - lanesHeight - 4),
    lanesTop: size.height - lanesHeight - 4,
    lanesHeight,
    view,
  };
}

export function xOf(frame: ChartFrame, at: number): number {
  return margin.left + ((at - frame.view.from) / (frame.view.to - frame.view.from)) * frame.plotWidth;
}
export function timeOf(frame: ChartFrame, x: number): number {
  return frame.view.from + ((x - margin.left) / frame.plotWidth) * (frame.view.to - frame.view.from);
}
export function yOf(frame: ChartFrame, degrees: number): number {
  return frame.top + ((frame.high - degrees) / (frame.high - frame.low)) * frame.panelHeight;
}
