/** `compare`: the same evening with other values of one or more fields, every combination side by side. */
import type { PlanAnswer } from '../../physics/evening/answer.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { setPath } from '../../physics/evening/planPath.ts';
import { hostileProblems, shapeProblems } from '../../physics/evening/planShape.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import { compareHelp, readArguments, type Request } from './arguments.ts';
import { fileOf, guarded, refuse, type ExitStatus, type TerminalIo } from './plan.ts';

export interface CompareIo extends TerminalIo {
  /** lets the process take a signal between two rows; true when the cook has asked to stop */
  readonly pause: () => Promise<boolean>;
}

export interface CompareRow {
  /** what each varied field was set to, as it was typed */
  readonly values: Readonly<Record<string, string>>;
  readonly preheat: PlanAnswer['preheat'];
  readonly bakes: PlanAnswer['bakes'];
  /** from switching the oven on to the last pizza cut, and what it took */
  readonly evening: { readonly minutes: number; readonly energyKWh: number };
}

/** Every combination, the last field changing fastest. */
function combinations(varied: Request['varied']): readonly Readonly<Record<string, string>>[] {
  return varied.reduce<readonly Readonly<Record<string, string>>[]>(
    (rows, { path, texts }) => rows.flatMap((row) => texts.map((text) => ({ ...row, [path]: text.trim() }))),
    [{}],
  );
}

type Filled =
  { readonly ok: true; readonly file: PlanFile } | { readonly ok: false; readonly problems: Problem[] };

function filled(file: PlanFile, values: Readonly<Record<string, string>>): Filled {
  const problems: Problem[] = [];
  let result = file;
  for (const [path, text] of Object.entries(values)) {
    const set = setPath(result, path, text);
    if (set.ok) result = set.file;
    else problems.push(set.problem);
  }
  return problems.length === 0 ? { ok: true, file: result } : { ok: false, problems };
}

/** Says in which combination something was found, as far as that can make a difference. */
function inRow(problem: Problem, values: Readonly<Record<string, string>>): Problem {
  const where = Object.entries(values)
    .map(([path, text]) => `${path}=${text}`)
    .join(', ');
  return { ...problem, found: `${problem.found} (with ${where})` };
}

function rowOf(values: Readonly<Record<string, string>>, answer: PlanAnswer): CompareRow {
  const minutes = (instant: string): number => Date.parse(instant) / 60_000;
  return {
    values,
    preheat: answer.preheat,
    bakes: answer.bakes,
    evening: {
      minutes: minutes(answer.lastEatAt) - minutes(answer.ovenOnAt),
      energyKWh: answer.energyKWh,
    },
  };
}

const columns: readonly {
  readonly name: string;
  readonly head: string;
  readonly value: (row: CompareRow) => number;
}[] = [
  { name: 'preheat_min', head: 'preheat', value: (row) => row.preheat.minutes },
  { name: 'oven_signal_min', head: 'signal', value: (row) => row.preheat.airReadyMinutes },
  { name: 'plate_top_degC', head: 'plate', value: (row) => row.preheat.plateTopC },
  { name: 'first_bake_min', head: 'bake', value: (row) => row.bakes[0]!.minutes },
  { name: 'last_bake_min', head: 'last', value: (row) => row.bakes.at(-1)!.minutes },
  { name: 'evening_min', head: 'evening', value: (row) => row.evening.minutes },
  { name: 'energy_kWh', head: 'kWh', value: (row) => row.evening.energyKWh },
];

/** RFC 4180; what the cook typed is kept from being taken for a formula. */
function csv(paths: readonly string[], rows: readonly CompareRow[]): string {
  const cell = (text: string): string => {
    const safe = /^[=+\-@]/u.test(text) ? `'${text}` : text;
    return /[",\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
  };
  const lines = [
    [...paths, ...columns.map(({ name }) => name)].map(cell),
    ...rows.map((row) => [
      ...paths.map((path) => cell(row.values[path]!)),
      ...columns.map(({ value }) => String(Number(value(row).toFixed(3)))),
    ]),
  ];
  return lines.map((line) => `${line.join(',')}\r\n`).join('');
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
      ...columns.map(({ name, value }) => shown(name, value(row))),
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
  return guarded(io, async () => {
    const asked = readArguments(argv, 'compare');
    if (!asked.ok) return refuse(asked.problems, io);
    const { request } = asked;
    if (request.help) {
      io.stdout(compareHelp);
      return 0;
    }
    const parsed = await fileOf(request, io);
    if (!parsed.ok) return refuse(parsed.problems, io);
    const unfit = [...hostileProblems(parsed.file), ...shapeProblems(parsed.file)];
    if (unfit.length > 0) return refuse(unfit, io);
    const grid = combinations(request.varied).map((values) => ({
      values,
      made: filled(parsed.file as PlanFile, values),
    }));
    const wrong = new Map(
      grid
        .flatMap(({ made }) => (made.ok ? [] : made.problems))
        .map((problem) => [`${problem.path} ${problem.found}`, problem]),
    );
    if (wrong.size > 0) return refuse([...wrong.values()], io);
    const rows: CompareRow[] = [];
    for (const { values, made } of grid) {
      if (!made.ok) continue;
      const planned = io.planFromFile(made.file, {
        now: io.now,
        offsetMinutes: io.offsetMinutes,
        band: false,
      });
      if (!planned.ok)
        return refuse(
          planned.problems.map((problem) => inRow(problem, values)),
          io,
        );
      rows.push(rowOf(values, planned.answer));
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
