/** A recipe in other ovens: preheat and bake against the highest setting, as curves and as the table to print. */
import { Copy } from 'lucide-react';
import { useMemo } from 'react';
import { ChartPanel } from '../charts/ChartPanel.tsx';
import { CurvesTable, type CurveRow } from '../charts/CurvesTable.tsx';
import { CsvKey } from '../charts/SaveKeys.tsx';
import { downloadText, fileName } from '../state/downloads.ts';
import { say } from '../state/documentStore.ts';
import { spanText } from '../words/clock.ts';
import { degreesOfK, degreeUnit, temperatureK } from '../words/figures.ts';
import { csvText } from '../../physics/handout/csv.ts';
import { readersHead, readersTable, type TableRow } from '../../physics/handout/readersTable.ts';
import { wordsFor } from '../../physics/handout/words.ts';
import type { ChartAsked } from '../charts/LineChart.tsx';
import type { Line } from '../charts/lineFigure.ts';
import type { Evening } from '../../physics/evening/evening.ts';
import type { ReadersRow } from '../../physics/evening/readersOven.ts';
import type { Theme } from '../state/settingsStore.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface ReadersProps {
  readonly rows: readonly ReadersRow[];
  /** K, of the recipe as it is planned */
  readonly own: number;
  readonly units: UnitSystem;
}

function lineOf(
  index: number,
  name: string,
  rows: readonly ReadersRow[],
  value: (row: ReadersRow) => number | null,
  units: UnitSystem,
): Line {
  const points = rows.flatMap((row) => {
    const y = value(row);
    return y === null ? [] : [{ x: degreesOfK(row.settingK, units), y }];
  });
  return { index, name, x: points.map(({ x }) => x), y: points.map(({ y }) => y) };
}

function rowsOf(lines: readonly Line[]): readonly CurveRow[] {
  const settings = [...new Set(lines.flatMap(({ x }) => x))].sort((a, b) => a - b);
  return settings.map((setting) => ({
    x: Math.round(setting),
    y: lines.map(({ x, y }) => y[x.indexOf(setting)]),
  }));
}

function csvFrom(lines: readonly Line[], units: UnitSystem): string {
  return csvText([
    ['line', `highest_setting_${units === 'us' ? 'degF' : 'degC'}`, 'minutes'],
    ...lines.flatMap(({ name, x, y }) => x.map((setting, i) => [name, setting.toFixed(0), y[i]!.toFixed(2)])),
  ]);
}

export function ReaderCurves({ rows, own, units, theme }: ReadersProps & { readonly theme: Theme }) {
  const common = useMemo(
    () => ({
      // Both charts have one axis.
      uprights: [{ x: degreesOfK(own, units), label: 'the plan' }],
      xStep: units === 'us' ? 50 : 25,
      dots: true,
      fromZero: true,
    }),
    [own, units],
  );
  const bakes = useMemo(
    (): ChartAsked => ({
      lines: [
        lineOf(0, 'bake', rows, (row) => row.firstBakeMinutes, units),
        lineOf(
          2,
          'with top heat',
          rows,
          ({ firstBakeMinutes, finishMinutes }) =>
            firstBakeMinutes === null || finishMinutes === null ? null : firstBakeMinutes + finishMinutes,
          units,
        ),
      ],
      ...common,
      xTitle: `highest setting, ${degreeUnit(units)}`,
      yTitle: 'First bake, min',
    }),
    [rows, units, common],
  );
  const preheats = useMemo(
    (): ChartAsked => ({
      lines: [lineOf(1, 'plate ready', rows, (row) => row.preheatMinutes, units)],
      ...common,
      xTitle: `highest setting, ${degreeUnit(units)}`,
      yTitle: 'Warming up, min',
    }),
    [rows, units, common],
  );
  const reached = rows.filter((row) => row.firstBakeMinutes !== null);
  const weakest = reached[0];
  const bakeSummary =
    weakest === undefined
      ? 'No oven of this list bakes it within 40 min.'
      : `At ${temperatureK(weakest.settingK, units)} the first pizza takes ${spanText(weakest.firstBakeMinutes!)}; the recipe is planned at ${temperatureK(own, units)}.`;
  const ready = rows.filter((row) => row.preheatMinutes !== null);
  const preheatSummary =
    ready.length === 0
      ? 'No oven of this list gets there.'
      : `The plate is ready after ${[ready[0]!, ready.at(-1)!]
          .map((row) => `${row.preheatMinutes!.toFixed(0)} min at ${temperatureK(row.settingK, units)}`)
          .join(', and after ')}.`;
  const chart = (asked: ChartAsked, title: string, summary: string, saveAs: string) => (
    <ChartPanel
      title={title}
      summary={summary}
      asked={asked}
      theme={theme}
      saveAs={saveAs}
      csv={() => csvFrom(asked.lines, units)}
      table={
        <CurvesTable
          caption={asked.yTitle}
          head={`Setting, ${degreeUnit(units)}`}
          lines={asked.lines}
          rows={rowsOf(asked.lines)}
          decimals={1}
        />
      }
    />
  );
  return (
    <div className="chart-row">
      {chart(bakes, 'Bake', bakeSummary, 'bake-by-setting')}
      {chart(preheats, 'Warming up', preheatSummary, 'preheat-by-setting')}
    </div>
  );
}

/** As a recipe prints it: columns kept apart by spaces. */
function asText(rows: readonly TableRow[]): string {
  const lines = [readersHead, ...rows.map(({ cells }) => cells)];
  const widths = readersHead.map((_, k) => Math.max(...lines.map((line) => line[k]!.length)));
  const texts = lines.map((line) =>
    line
      .map((text, k) => text.padEnd(widths[k]!))
      .join('  ')
      .trimEnd(),
  );
  return `${texts.join('\n')}\n`;
}

interface ReadersTableProps {
  readonly rows: readonly ReadersRow[];
  readonly evening: Evening;
  readonly units: UnitSystem;
}

export function ReadersTable({ rows, evening, units }: ReadersTableProps) {
  const table = readersTable(rows, evening, wordsFor(units));
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(asText(table));
      say({ text: 'The table is on the clipboard.' });
    } catch {
      downloadText(fileName('-ovens.txt'), 'text/plain', asText(table));
    }
  };
  const csv = (): string =>
    csvText([
      ['highest_setting_degC', 'preheat_min', 'plate_top_degC', 'first_bake_min', 'rim_finish_min'],
      ...rows.map((row) =>
        [
          row.settingK - 273.15,
          row.preheatMinutes,
          row.plateTopK === null ? null : row.plateTopK - 273.15,
          row.firstBakeMinutes,
          row.finishMinutes,
        ].map((value) => (value === null ? '' : String(Number(value.toFixed(2))))),
      ),
    ]);
  return (
    <section aria-labelledby="adjust-table">
      <div className="chart-head">
        <h2 id="adjust-table">For the recipe</h2>
        <div className="clock-keys">
          <button type="button" className="key" onClick={() => void copy()}>
            <Copy aria-hidden="true" /> Copy
          </button>
          <CsvKey of="For the recipe" saveAs="ovens" make={csv} />
        </div>
      </div>
      <div className="scroll-x">
        <table className="small-table readers">
          <caption className="hidden">The recipe by the highest setting of the oven</caption>
          <thead>
            <tr>
              {readersHead.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.map(({ cells: [setting, ...cells], own }) => (
              <tr key={setting} className={own ? 'chosen' : undefined}>
                <th scope="row">
                  {setting}
                  {own ? ', the plan' : ''}
                </th>
                {cells.map((text, i) => (
                  <td key={readersHead[i + 1]}>{text}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
