/** A chart with its heading, one sentence that follows the data, its table one key away, and what can be saved. */
import Plotly from 'plotly.js/lib/core';
import { ChartLine, Table } from 'lucide-react';
import { useId, type ReactNode } from 'react';
import { LineChart, type ChartAsked } from './LineChart.tsx';
import { drawLines } from './lineFigure.ts';
import { paperLinePalette } from './linePalette.ts';
import { CsvKey, PictureKey } from './SaveKeys.tsx';
import { toggleTable, useMoment } from '../state/momentStore.ts';
import { unbroken } from '../words/unbroken.ts';
import type { Theme } from '../state/settingsStore.ts';

interface ChartPanelProps {
  readonly title: string;
  readonly summary: string;
  readonly asked: ChartAsked;
  readonly theme: Theme;
  /** the figures behind it */
  readonly table: ReactNode;
  readonly csv: () => string;
  /** behind the name of the plan, in the names of what is saved */
  readonly saveAs: string;
  /** what is chosen about it */
  readonly children?: ReactNode;
}

async function pictureOf(asked: ChartAsked): Promise<string> {
  const size = { width: 960, height: 540 };
  const { fontFamily } = getComputedStyle(document.body);
  const { data, layout } = drawLines({ ...asked, size }, paperLinePalette(fontFamily));
  return Plotly.toImage({ data, layout }, { format: 'png', ...size, scale: 2 });
}

export function ChartPanel({ title, summary, asked, theme, table, csv, saveAs, children }: ChartPanelProps) {
  const id = useId();
  const tableShown = useMoment((state) => state.tableShown);
  return (
    <section className="chart-panel" aria-labelledby={id}>
      <div className="chart-head">
        <h2 id={id}>{title}</h2>
        {children}
        <div className="clock-keys">
          <button
            type="button"
            className="key"
            aria-pressed={tableShown}
            aria-label={`${title}: table`}
            title={tableShown ? 'Chart' : 'Table'}
            aria-keyshortcuts="t"
            onClick={toggleTable}
          >
            {tableShown ? <ChartLine aria-hidden="true" /> : <Table aria-hidden="true" />}
          </button>
          <CsvKey of={title} saveAs={saveAs} make={csv} />
          <PictureKey of={title} saveAs={saveAs} make={() => pictureOf(asked)} />
        </div>
      </div>
      {tableShown ? (
        <div className="chart-table" tabIndex={0} role="region" aria-label={`${title}, as a table`}>
          {table}
        </div>
      ) : (
        <figure aria-label={summary}>
          <LineChart asked={asked} theme={theme} />
        </figure>
      )}
      <p className="small muted">{unbroken(summary)}</p>
    </section>
  );
}
