/** The points of the map, as a table to walk through and to open from. */
import { useRef, useState, type KeyboardEvent } from 'react';
import { adopt } from './adopt.ts';
import { heatColour } from './heat.ts';
import type { MapCell } from './mapModel.ts';
import type { MapFigures } from './mapPicture.ts';
import { troubleOf } from './trouble.ts';
import { keyOf, type Outcome } from '../state/studies.ts';
import { showView } from '../state/viewStore.ts';

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
export function Grid({ figures, cells, outcomes, planKey }: GridProps) {
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
