/** `compare`: the same evening with other values of one or more fields, every combination side by side. */
import {
  combinations,
  comparedOf,
  filled,
  measures,
  type Compared,
  type MeasureId,
} from '../../physics/evening/comparison.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { hostileProblems, shapeProblems } from '../../physics/evening/planShape.ts';
import { csvText } from '../../physics/handout/csv.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import { compareHelp } from './arguments.ts';
import { commanded, nothingMore, refuse, type ExitStatus, type TerminalIo } from './plan.ts';

export interface CompareIo extends TerminalIo {
  /** lets the process take a signal between two rows; true when the cook has asked to stop */
  readonly pause: () => Promise<boolean>;
}

export interface CompareRow extends Compared {
  /** what each varied field was set to, as it was typed */
  readonly values: Readonly<Record<string, string>>;
}

/** Says in which combination something was found, as far as that can make a difference. */
function inRow(problem: Problem, values: Readonly<Record<string, string>>): Problem {
  const where = Object.entries(values)
    .map(([path, text]) => `${path}=${text}`)
    .join(', ');
  return { ...problem, found: `${problem.found} (with ${where})` };
}

const columns: readonly { readonly name: MeasureId; readonly head: string }[] = [
  { name: 'preheat_min', head: 'preheat' },
  { name: 'oven_signal_min', head: 'signal' },
  { name: 'plate_top_degC', head: 'plate' },
  { name: 'first_bake_min', head: 'bake' },
  { name: 'last_bake_min', head: 'last' },
  { name: 'evening_min', head: 'evening' },
  { name: 'energy_kWh', head: 'kWh' },
];

function csv(paths: readonly string[], rows: readonly CompareRow[]): string {
  return csvText([
    [...paths, ...columns.map(({ name }) => name)],
    ...rows.map((row) => [
      ...paths.map((path) => row.values[path]!),
      ...columns.map(({ name }) => String(Number(measures[name](row).toFixed(3)))),
    ]),
  ]);
}

/** A table for a reader: minutes, the plate at the first load, kWh. */
function table(paths: readonly string[], rows: readonly CompareRow[], units: UnitSystem): string {
  const shown = (name: string, value: number): string => {
    if (name === 'plate_top_degC') return showQuantity(value + 273.15, 'temperature', units);
    return value.toFixed(name === 'energy_kWh' ? 2 : name.includes('bake') ? 1 : 0);
  };
  const lines = [
    [...paths, ...columns.map(({ head }) => head)],
    ...rows.map((row) => [
      ...paths.map((path) => row.values[path]!),
      ...columns.map(({ name }) => shown(name, measures[name](row))),
    ]),
  ];
  const widths = lines[0]!.map((_, k) => Math.max(...lines.map((line) => line[k]!.length)));
  const body = lines
    .map((line) =>
      line
        .map((text, k) => (k < paths.length ? text.padEnd(widths[k]!) : text.padStart(widths[k]!)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
  const note =
    'Minutes from switching on: preheat until the plate is ready, signal when the oven says so, bake of the\n' +
    'first and the last pizza, evening until the last is cut. Plate: its top when it is ready. Estimates:\n' +
    'the makers of oven and plate have the last word.';
  return `${body}\n\n${note}\n`;
}

/** Runs the command. Rows are computed one by one; nothing is printed before all are there. */
export function runCompare(argv: readonly string[], io: CompareIo): Promise<ExitStatus> {
  const about = { command: 'compare', help: compareHelp } as const;
  return commanded(argv, io, about, nothingMore, async ({ request, file: plan }) => {
    const unfit = [...hostileProblems(plan), ...shapeProblems(plan)];
    if (unfit.length > 0) return refuse(unfit, io);
    const grid: { readonly values: Readonly<Record<string, string>>; readonly file: PlanFile }[] = [];
    const wrong = new Map<string, Problem>();
    for (const values of combinations(request.varied)) {
      const made = filled(plan as PlanFile, values);
      if (made.ok) grid.push({ values, file: made.file });
      else for (const problem of made.problems) wrong.set(`${problem.path} ${problem.found}`, problem);
    }
    if (wrong.size > 0) return refuse([...wrong.values()], io);
    const rows: CompareRow[] = [];
    for (const { values, file } of grid) {
      const planned = io.planFromFile(file, {
        now: io.now,
        offsetMinutes: io.offsetMinutes,
        ...(io.readersClock && { readersClock: io.readersClock }),
        band: false,
      });
      if (!planned.ok)
        return refuse(
          planned.problems.map((problem) => inRow(problem, values)),
          io,
        );
      rows.push({ values, ...comparedOf(planned.answer) });
      if (grid.length > 4) io.stderr(`${rows.length} of ${grid.length}\n`);
      if (rows.length < grid.length && (await io.pause())) {
        io.stderr(`stopped after ${rows.length} of ${grid.length} rows\n`);
        return 1;
      }
    }
    const paths = request.varied.map(({ path }) => path);
    if (request.json) io.stdout(`${JSON.stringify({ rows })}\n`);
    else io.stdout(request.csv ? csv(paths, rows) : table(paths, rows, request.units));
    return 0;
  });
}
