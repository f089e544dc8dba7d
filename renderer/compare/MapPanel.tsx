/** An answer over two fields, as a map of figures whose every point can be opened as the plan. */
import { Download, ImageDown } from 'lucide-react';
import { useId, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import { adopt } from './adopt.ts';
import { useCompare, type MapSide } from './compareStore.ts';
import { heat, heatColour } from './heat.ts';
import { mapPicture, type MapFigures } from './mapPicture.ts';
import {
  cellsOf,
  isTyped,
  mapPaths,
  mapSideName,
  shareOf,
  typedOf,
  valueName,
  valuesOf,
  type MapCell,
} from './mapModel.ts';
import { troubleOf } from './PlanList.tsx';
import { Progress } from './Progress.tsx';
import { TextEntry } from '../inputs/TextEntry.tsx';
import { downloadText, downloadUrl, fileName } from '../state/downloads.ts';
import { keyOf, useStudied, type Outcome } from '../state/studies.ts';
import { showView } from '../state/viewStore.ts';
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

function Side({
  name,
  side,
  other,
  units,
  onChange,
}: {
  readonly name: string;
  readonly side: MapSide;
  /** the path of the other side, which cannot be chosen twice */
  readonly other: string;
  readonly units: UnitSystem;
  readonly onChange: (side: MapSide) => void;
}) {
  const id = useId();
  const read = valuesOf(side, units);
  return (
    <div className={read.ok ? 'map-side' : 'map-side wrong'}>
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        className="entry"
        value={side.path}
        onChange={(event) => {
          onChange({ path: event.currentTarget.value, typed: undefined });
        }}
      >
        {mapPaths
          .filter((path) => path !== other)
          .map((path) => (
            <option key={path} value={path}>
              {mapSideName(path)}
            </option>
          ))}
      </select>
      {isTyped(side.path) && (
        <TextEntry
          id={`${id}-values`}
          label={`${name}: values of ${mapSideName(side.path).toLowerCase()}`}
          aria-describedby={`${id}-reason`}
          aria-invalid={read.ok ? undefined : true}
          shown={typedOf(side, units)}
          step={undefined}
          onTake={(typed) => {
            onChange({ ...side, typed });
          }}
          onBack={() => {
            onChange({ ...side, typed: undefined });
          }}
        />
      )}
      <p className="reason" id={`${id}-reason`} hidden={read.ok}>
        {read.ok ? '' : read.reason}
      </p>
    </div>
  );
}

interface GridProps {
  readonly figures: MapFigures;
  readonly cells: readonly (readonly MapCell[])[];
  readonly outcomes: ReadonlyMap<string, Outcome | undefined>;
  readonly planKey: string;
}

const moves: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Arrow keys walk the cells, Enter opens one; only one cell stands in the walk of the tab key. */
function Grid({ figures, cells, outcomes, planKey }: GridProps) {
  const [at, setAt] = useState<readonly [row: number, column: number]>([0, 0]);
  const table = useRef<HTMLTableElement>(null);
  const here = [Math.min(at[0], cells.length - 1), Math.min(at[1], (cells[0]?.length ?? 1) - 1)] as const;
  const walk = (event: KeyboardEvent): void => {
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    const row = Math.min(Math.max(here[0] + move[0], 0), cells.length - 1);
    const column = Math.min(Math.max(here[1] + move[1], 0), (cells[0]?.length ?? 1) - 1);
    setAt([row, column]);
    table.current?.querySelector<HTMLElement>(`[data-cell="${String(row)} ${String(column)}"]`)?.focus();
  };
  return (
    <table className="map" ref={table} onKeyDown={walk}>
      <caption>
        {figures.title}: across {figures.across.toLowerCase()}, down {figures.down.toLowerCase()}
      </caption>
      <thead>
        <tr>
          <td />
          {figures.columns.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {cells.map((row, j) => (
          <tr key={figures.rows[j]}>
            <th scope="row">{figures.rows[j]}</th>
            {row.map(({ differences, job }, i) => {
              const { text, share } = figures.cells[j]![i]!;
              const key = keyOf(job);
              const trouble = troubleOf(outcomes.get(key));
              const isPlan = key === planKey;
              return (
                <td key={figures.columns[i]} className={isPlan ? 'is-plan' : undefined}>
                  <button
                    type="button"
                    data-cell={`${String(j)} ${String(i)}`}
                    tabIndex={j === here[0] && i === here[1] ? 0 : -1}
                    aria-label={`${figures.columns[i]!}, ${figures.rows[j]!}: ${trouble[0] ?? text}${isPlan ? ', the plan' : ''}. Open as the plan`}
                    title={trouble[0] ?? 'Open as the plan'}
                    style={
                      share === undefined ? undefined : { background: heatColour(share), color: '#14110e' }
                    }
                    aria-disabled={share === undefined}
                    onFocus={() => {
                      setAt([j, i]);
                    }}
                    onClick={() => {
                      if (share !== undefined && adopt(differences)) showView('plan');
                    }}
                  >
                    {text}
                  </button>
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

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
    columns: columns.ok ? columns.values.map(valueName) : [],
    rows: rows.ok ? rows.values.map(valueName) : [],
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
            <button
              type="button"
              className="key"
              aria-label="Map: CSV"
              title="CSV"
              onClick={() => {
                downloadText(fileName('-map.csv'), 'text/csv', csv());
              }}
            >
              <Download aria-hidden="true" />
            </button>
            <button
              type="button"
              className="key"
              aria-label="Map: picture"
              title="Picture"
              onClick={() => {
                const { fontFamily } = getComputedStyle(document.body);
                downloadUrl(fileName('-map.png'), mapPicture(figures, heat, fontFamily));
              }}
            >
              <ImageDown aria-hidden="true" />
            </button>
          </div>
        )}
      </div>
      <div className="map-sides">
        <div className="map-side">
          <label htmlFor="map-measure">Answer</label>
          <select
            id="map-measure"
            className="entry"
            value={measure}
            onChange={(event) => {
              useCompare.setState({ measure: event.currentTarget.value as MeasureId });
            }}
          >
            {measureIds.map((id) => (
              <option key={id} value={id}>
                {measureWords[id].name}
              </option>
            ))}
          </select>
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
