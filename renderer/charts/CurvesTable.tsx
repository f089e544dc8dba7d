/** The figures of a chart of lines, read off at round steps. */
import type { Line } from './lineFigure.ts';

export interface CurveRow {
  readonly x: number;
  /** of each line; undefined outside of it */
  readonly y: readonly (number | undefined)[];
}

/** Linear between points; undefined outside of them. */
export function valueOn({ x, y }: Pick<Line, 'x' | 'y'>, at: number): number | undefined {
  const after = x.findIndex((one) => one >= at - 1e-9);
  if (after === -1 || x[0]! > at + 1e-9) return undefined;
  if (after === 0) return y[0];
  const share = (at - x[after - 1]!) / (x[after]! - x[after - 1]!);
  return y[after - 1]! + share * (y[after]! - y[after - 1]!);
}

export function curveTable(lines: readonly Line[], step: number): readonly CurveRow[] {
  const end = Math.max(0, ...lines.map(({ x }) => x.at(-1) ?? 0));
  return Array.from({ length: Math.floor(end / step) + 1 }, (_, i) => ({
    x: i * step,
    y: lines.map((line) => valueOn(line, i * step)),
  }));
}

interface CurvesTableProps {
  readonly caption: string;
  readonly head: string;
  readonly lines: readonly Line[];
  readonly rows: readonly CurveRow[];
  readonly decimals: number;
}

export function CurvesTable({ caption, head, lines, rows, decimals }: CurvesTableProps) {
  return (
    <table className="small-table">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{head}</th>
          {lines.map(({ index, name }) => (
            <th key={index} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ x, y }) => (
          <tr key={x}>
            <th scope="row">{x}</th>
            {y.map((value, i) => (
              <td key={lines[i]!.index}>{value === undefined ? '–' : value.toFixed(decimals)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
