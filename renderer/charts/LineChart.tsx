/** Lines drawn by Plotly, at most once a frame. */
import Plotly from 'plotly.js/lib/core';
import { useEffect, useRef } from 'react';
import { drawLines, type LineAsked } from './lineFigure.ts';
import { readLinePalette } from './linePalette.ts';
import { useSize } from './useSize.ts';
import type { Theme } from '../state/settingsStore.ts';

export type ChartAsked = Omit<LineAsked, 'size'>;

const config = { displayModeBar: false, staticPlot: true, responsive: false } as const;

export function LineChart({ asked, theme }: { readonly asked: ChartAsked; readonly theme: Theme }) {
  const [room, size] = useSize();
  const plot = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = plot.current;
    if (element === null || size.width < 100 || size.height < 100) return;
    const request = requestAnimationFrame(() => {
      const { data, layout } = drawLines({ ...asked, size }, readLinePalette(element));
      void Plotly.react(element, data, layout, config);
    });
    return () => {
      cancelAnimationFrame(request);
    };
  }, [asked, size, theme]);
  useEffect(() => {
    const element = plot.current;
    return () => {
      if (element !== null) Plotly.purge(element);
    };
  }, []);
  return (
    <div className="line-chart" ref={room}>
      <div className="plot" ref={plot} />
    </div>
  );
}
