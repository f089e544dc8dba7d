/** The clock: strip, readout, chart or table, and what can be saved of them. */
import Plotly from 'plotly.js/lib/core';
import { ChartLine, Download, ImageDown, Table } from 'lucide-react';
import { CurveTable } from './CurveTable.tsx';
import { Figure } from './Figure.tsx';
import { dashes } from './asked.ts';
import { drawClock } from './figure.ts';
import { Handles } from './Handles.tsx';
import { paperPalette, readPalette } from './palette.ts';
import { momentText, Pointer } from './Pointer.tsx';
import { Strip } from './Strip.tsx';
import { seriesNames, type ClockModel, type SeriesId, type Span } from './model.ts';
import { downloadText, downloadUrl, fileName } from '../state/downloads.ts';
import { toggleTable, useMoment } from '../state/momentStore.ts';
import { clockText } from '../words/clock.ts';
import { shortDegrees, temperatureK } from '../words/figures.ts';
import type { Moment } from './moment.ts';
import type { Forecast } from '../state/forecastStore.ts';
import type { Theme } from '../state/settingsStore.ts';
import { curvesCsv } from '../../physics/handout/curves.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface ClockProps {
  readonly forecast: Forecast;
  readonly model: ClockModel;
  readonly view: Span;
  readonly at: number;
  readonly moment: Moment;
  readonly units: UnitSystem;
  readonly theme: Theme;
}

/** A piece of the curve itself, so that figure and curve are matched by dash as well as by colour. */
function Sample({ id }: { id: SeriesId }) {
  const { dash, width } = dashes[id];
  return (
    <svg className="sample" aria-hidden="true" width={20} height={8}>
      <line
        x1={0}
        x2={20}
        y1={4}
        y2={4}
        stroke={`var(--${id === 'top' || id === 'core' ? 'plate' : id})`}
        strokeWidth={width}
        strokeDasharray={dash === 'solid' ? undefined : dash.replaceAll('px', '')}
      />
    </svg>
  );
}

const readoutNames: Record<SeriesId, string> = { ...seriesNames, base: 'base' };

function Readout({ model, at, moment, units }: Pick<ClockProps, 'model' | 'at' | 'moment' | 'units'>) {
  const figures: readonly (readonly [SeriesId, number])[] = [
    ['air', moment.air],
    ['top', moment.plateTop],
    // Steel is as hot inside as on top; a core that lags is worth its place.
    ...(Math.abs(moment.plateCore - moment.plateTop) < 1.5 ? [] : ([['core', moment.plateCore]] as const)),
    ...(moment.bake === undefined
      ? []
      : ([
          ['base', moment.bake.base],
          ['crumb', moment.bake.crumb],
        ] as const)),
  ];
  const tasks = model.bars.filter(({ from, to }) => from <= at && at < to).map(({ task }) => task.name);
  return (
    <p className="readout" title={momentText(at, model, moment, units)}>
      <b>{clockText(at, model.offset)}</b>
      {figures.map(([id, kelvin]) => (
        <span key={id}>
          <Sample id={id} />
          {readoutNames[id]} {shortDegrees(kelvin, units)}
        </span>
      ))}
      <span className="readout-tasks muted">{tasks.length === 0 ? 'nothing to do' : tasks.join(' · ')}</span>
    </p>
  );
}

/** One sentence that follows the data, for whoever cannot see the chart. */
export function clockSummary({ answer }: Forecast, model: ClockModel, units: UnitSystem): string {
  const events = model.events.map(({ label }) => label).join(', ');
  const coldest = Math.min(...answer.bakes.map(({ plateTopAtUnloadC }) => plateTopAtUnloadC));
  return `Temperatures and tasks on one clock: ${events}. The plate falls to ${temperatureK(coldest + 273.15, units)} at the lowest and the evening ends with pizza ${String(answer.bakes.length)}.`;
}

async function savePicture(props: ClockProps): Promise<void> {
  const { model, view, units } = props;
  const size = { width: 1280, height: 720 };
  const { font } = readPalette(document.body);
  const { data, layout } = drawClock({ model, view, size, units, palette: paperPalette(font) });
  const url = await Plotly.toImage({ data, layout }, { format: 'png', ...size, scale: 2 });
  downloadUrl(fileName('.png'), url);
}

export function Clock(props: ClockProps) {
  const { forecast, model, view, at, moment, units, theme } = props;
  const tableShown = useMoment((state) => state.tableShown);
  return (
    <section className="clock" aria-label="The clock">
      <div className="clock-head">
        <Readout model={model} at={at} moment={moment} units={units} />
        <div className="clock-keys">
          <button
            type="button"
            className="key"
            aria-pressed={tableShown}
            aria-keyshortcuts="t"
            onClick={toggleTable}
          >
            {tableShown ? <ChartLine aria-hidden="true" /> : <Table aria-hidden="true" />}
            <span className="clock-key-text">{tableShown ? 'Chart' : 'Table'}</span>
          </button>
          <button
            type="button"
            className="key"
            onClick={() => {
              downloadText(
                fileName('.csv'),
                'text/csv',
                curvesCsv(forecast.run, model.ovenOn, () => model.offset),
              );
            }}
          >
            <Download aria-hidden="true" /> <span className="clock-key-text">CSV</span>
          </button>
          <button type="button" className="key" onClick={() => void savePicture(props)}>
            <ImageDown aria-hidden="true" /> <span className="clock-key-text">Picture</span>
          </button>
        </div>
      </div>
      <Strip model={model} view={view} />
      {tableShown ? (
        <CurveTable forecast={forecast} model={model} view={view} units={units} />
      ) : (
        <figure className="figure-room" aria-label={clockSummary(forecast, model, units)}>
          <Figure model={model} view={view} units={units} theme={theme}>
            {({ frame, handles, bars }) => (
              <>
                <Pointer frame={frame} model={model} at={at} moment={moment} units={units} />
                <Handles frame={frame} handles={handles} bars={bars} model={model} forecast={forecast} />
              </>
            )}
          </Figure>
        </figure>
      )}
    </section>
  );
}
