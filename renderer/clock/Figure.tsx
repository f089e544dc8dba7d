/** The chart itself. Plotly is asked at most once a frame; the newest wish wins. */
import Plotly from 'plotly.js/lib/core';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { drawClock, type Drawn } from './figure.ts';
import { timeOf, xOf } from './frame.ts';
import { readPalette } from './palette.ts';
import { useSize } from '../charts/useSize.ts';
import { pointAt, showPart, showUsualPart } from '../state/momentStore.ts';
import type { ClockModel, Span } from './model.ts';
import type { Theme } from '../state/settingsStore.ts';
import type { PlotRelayoutEvent, PlotlyHTMLElement } from 'plotly.js';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface FigureProps {
  readonly model: ClockModel;
  readonly view: Span;
  readonly units: UnitSystem;
  readonly theme: Theme;
  readonly children: (placed: Pick<Drawn, 'frame' | 'handles' | 'bars'>) => ReactNode;
}

const minute = 60_000;
const config = { displayModeBar: false, scrollZoom: true, doubleClick: false, responsive: false } as const;

export function Figure({ model, view, units, theme, children }: FigureProps) {
  const [room, size] = useSize();
  const plot = useRef<HTMLDivElement>(null);
  const [placed, setPlaced] = useState<Pick<Drawn, 'frame' | 'handles' | 'bars'>>();
  const frame = placed?.frame;
  const wish = useRef<() => void>(undefined);
  const frameRequest = useRef(0);

  useEffect(() => {
    const element = plot.current;
    if (element === null || size.width < 100 || size.height < 100) return;
    wish.current = () => {
      const drawn: Drawn = drawClock({ model, view, size, units, palette: readPalette(element) });
      setPlaced({ frame: drawn.frame, handles: drawn.handles, bars: drawn.bars });
      void Plotly.react(element, drawn.data, drawn.layout, config);
    };
    if (frameRequest.current === 0) {
      frameRequest.current = requestAnimationFrame(() => {
        frameRequest.current = 0;
        wish.current?.();
      });
    }
  }, [model, view, size, units, theme]);

  useEffect(() => {
    const element = plot.current as PlotlyHTMLElement | null;
    if (element === null || frame === undefined) return;
    const moved = (event: PlotRelayoutEvent): void => {
      const from = event['xaxis.range[0]'];
      const to = event['xaxis.range[1]'];
      if (typeof from === 'number' && typeof to === 'number') showPart(from * minute, to * minute);
    };
    element.on('plotly_relayout', moved);
    element.on('plotly_doubleclick', showUsualPart);
    return () => {
      element.removeAllListeners('plotly_doubleclick');
      element.removeAllListeners('plotly_relayout');
    };
  }, [frame]);

  useEffect(() => {
    // On paper the style sheet gives other colours: the chart is drawn again for it, and once more afterwards.
    const paper = window.matchMedia('print');
    const redraw = (): void => {
      wish.current?.();
    };
    paper.addEventListener('change', redraw);
    return () => {
      paper.removeEventListener('change', redraw);
    };
  }, []);

  useEffect(() => {
    const element = plot.current;
    return () => {
      cancelAnimationFrame(frameRequest.current);
      frameRequest.current = 0;
      if (element !== null) Plotly.purge(element);
    };
  }, []);

  return (
    <div
      className="figure"
      ref={room}
      onPointerMove={(event) => {
        if (frame === undefined || event.buttons !== 0) return;
        const box = event.currentTarget.getBoundingClientRect();
        const x = event.clientX - box.left;
        if (x < xOf(frame, frame.view.from) || x > xOf(frame, frame.view.to)) return;
        pointAt(timeOf(frame, x));
      }}
    >
      <div className="plot" ref={plot} />
      {placed === undefined ? null : children(placed)}
    </div>
  );
}
