/** An answer over two fields, as a map of figures whose every point can be opened as the plan. */
import { useMemo } from 'react';
import { useCompare } from './compareStore.ts';
import { Grid } from './MapGrid.tsx';
import { Side } from './MapSide.tsx';
import { heat } from './heat.ts';
import { mapPicture, type MapFigures } from './mapPicture.ts';
import { cellsOf, mapSideName, shareOf, valueName, valuesOf, type MapCell } from './mapModel.ts';
import { Progress } from './Progress.tsx';
import { CsvKey, PictureKey } from '../charts/SaveKeys.tsx';
import { Choice } from '../inputs/Choice.tsx';
import { keyOf, useStudied, type Outcome } from '../state/studies.ts';
import { measureIds, measureWords } from '../words/measures.ts';
import { measures, type MeasureId } from '../../physics/evening/comparison.ts';
import { csvText } from '../../physics/handout/csv.ts';
import type { StudyJob } from '../state/study.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

interface MapPanelProps {
  readonly file: PlanFile;
  readonly units: UnitSystem;
}

const none: readonly StudyJob[] = [];

function figuresOf(
  cells: readonly (readonly MapCell[])[],
  outcomes: ReadonlyMap<string, Outcome | undefined>,
  measure: MeasureId,
  units: UnitSystem,
): MapFigures['cells'] {
  const values = cells.map((row) =>
    row.map(({ job }) => {
      const outcome = outcomes.get(keyOf(job));
      return outcome?.ok === true && outcome.study.kind === 'evening'
        ? measures[measure](outcome.study.compared)
        : outcome;
    }),
  );
  const numbers = values.flat().filter((value) => typeof value === 'number');
  return values.map((row) =>
    row.map((value) =>
      typeof value === 'number'
        ? { text: measureWords[measure].text(value, units), share: shareOf(value, numbers) }
        : { text: value === undefined ? '…' : '–', share: undefined },
    ),
  );
}

/** The sides in the order shown: racks from the highest down, as they are in the oven. */
function topDown(values: ReturnType<typeof valuesOf>): ReturnType<typeof valuesOf> {
  return values.ok && values.values[0]?.path === 'plate.rackHeight'
    ? { ok: true, values: [...values.values].reverse() }
    : values;
}

export function MapPanel({ file, units }: MapPanelProps) {
  const { across, down, measure, mapAsked } = useCompare();
  const columns = useMemo(() => valuesOf(across, units), [across, units]);
  const rows = useMemo(() => topDown(valuesOf(down, units)), [down, units]);
  const cells = useMemo(
    () => (columns.ok && rows.ok ? cellsOf(file, columns.values, rows.values) : []),
    [file, columns, rows],
  );
  const jobs = useMemo(() => (mapAsked ? cells.flat().map(({ job }) => job) : none), [cells, mapAsked]);
  const studied = useStudied('map', jobs);
  const outcomes = useMemo(
    () => new Map(jobs.map((job, i) => [keyOf(job), studied.outcomes[i]])),
    [jobs, studied],
  );
  const planKey = useMemo(() => keyOf({ kind: 'evening', file }), [file]);
  const figures: MapFigures = {
    title: measureWords[measure].name,
    across: mapSideName(across.path),
    down: mapSideName(down.path),
    columns: columns.ok ? columns.values.map((one) => valueName(one, units)) : [],
    rows: rows.ok ? rows.values.map((one) => valueName(one, units)) : [],
    cells: figuresOf(cells, outcomes, measure, units),
  };
  const count = cells.flat().length;
  const csv = (): string =>
    csvText([
      [across.path, down.path, measure],
      ...cells.flat().map(({ differences: [row, column], job }) => {
        const outcome = outcomes.get(keyOf(job));
        const value =
          outcome?.ok === true && outcome.study.kind === 'evening'
            ? String(Number(measures[measure](outcome.study.compared).toFixed(3)))
            : '';
        return [String(column!.value), String(row!.value), value];
      }),
    ]);
  return (
    <section className="map-panel" aria-labelledby="compare-map">
      <div className="chart-head">
        <h2 id="compare-map">Map</h2>
        {mapAsked && count > 0 && (
          <div className="clock-keys">
            <CsvKey of="Map" saveAs="map" make={csv} />
            <PictureKey
              of="Map"
              saveAs="map"
              make={() => mapPicture(figures, heat, getComputedStyle(document.body).fontFamily)}
            />
          </div>
        )}
      </div>
      <div className="map-sides">
        <div className="map-side">
          <label htmlFor="map-measure">Answer</label>
          <Choice
            id="map-measure"
            options={measureIds.map((id) => [id, measureWords[id].name])}
            value={measure}
            onChoose={(id) => {
              useCompare.setState({ measure: id as MeasureId });
            }}
          />
        </div>
        <Side
          name="Across"
          side={across}
          other={down.path}
          units={units}
          onChange={(side) => {
            useCompare.setState({ across: side });
          }}
        />
        <Side
          name="Down"
          side={down}
          other={across.path}
          units={units}
          onChange={(side) => {
            useCompare.setState({ down: side });
          }}
        />
      </div>
      {!mapAsked && (
        <p>
          <button
            type="button"
            className="key main"
            disabled={count === 0}
            onClick={() => {
              useCompare.setState({ mapAsked: true });
            }}
          >
            Work out {count} evenings
          </button>
        </p>
      )}
      {mapAsked && count > 0 && (
        <>
          <Progress group="map" studied={studied} total={count} what="evenings of the map" />
          <div className="scroll-x">
            <Grid figures={figures} cells={cells} outcomes={outcomes} planKey={planKey} />
          </div>
          <p className="small muted">
            The deeper the colour, the larger the figure. Arrow keys go from point to point; Enter opens one
            as the plan.
          </p>
        </>
      )}
    </section>
  );
}
