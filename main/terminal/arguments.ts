/** The words behind `plan`, `compare`, `calibrate` and `handout`: read into a request, or refused with what is allowed. */
import { demoIds, type DemoId } from '../../physics/evening/demos.ts';
import { type GoalId, goalIds } from '../../physics/evening/ids.ts';
import { papers, type Paper } from '../../physics/handout/paper.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import { usualReadingSpread } from '../../physics/calibrate/fit.ts';
import { readQuantity, type UnitSystem } from '../../physics/quantities/index.ts';

export interface Request {
  readonly file: string | undefined;
  readonly example: DemoId | undefined;
  readonly sets: readonly { readonly path: string; readonly text: string }[];
  readonly units: UnitSystem;
  readonly json: boolean;
  readonly help: boolean;
  /** `compare` only: each path with the values it takes in turn */
  readonly varied: readonly { readonly path: string; readonly texts: readonly string[] }[];
  readonly csv: boolean;
  /** `plan` only: also what to do when base and top are not done together, and what a wait brings */
  readonly advice: boolean;
  /** `plan` only: what to advise for */
  readonly goal: GoalId | undefined;
  /** `handout` only: the folder to write into, and the paper of the page */
  readonly out: string | undefined;
  readonly paper: Paper;
  /** `calibrate` only: the file of readings, and one standard deviation of a reading, K */
  readonly readings: string | undefined;
  readonly readingSpread: number;
}

export type Command = 'plan' | 'compare' | 'calibrate' | 'handout';

export type RequestRead =
  | { readonly ok: true; readonly request: Request }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Rows of a comparison at most: some minutes of work. */
export const mostRows = 2000;

export const planHelp = `Usage: npm run --silent plan -- [FILE] [--set PATH=VALUE]... [--json]
       npm run --silent plan -- --example ${demoIds.join('|')}

Plans a pizza evening: when to switch the oven on, how long each pizza bakes,
when to eat. Without FILE a built-in evening is planned.

  FILE              a plan file; it is read, never written
  --example NAME    a built-in evening: ${demoIds.join(', ')}
  --set PATH=VALUE  one field instead of the file's, as often as you like:
                    --set plate.thickness="12.7 mm" --set pizzas.count=3
  --units SYSTEM    metric (the default) or us, for the printed plan
  --json            the whole answer as one JSON object (always degrees Celsius)
  --advice          with --json also bakeAdvice: what to do when base and top
                    are not done together, and what each wait brings
  --goal GOAL       also the few changes that bring most for it, each planned:
                    ${goalIds.join(', ')}
  --help            this text

The plan goes to standard output, everything else to standard error.
Exit status: 0 done, 2 something in the input is wrong, 1 our fault.
`;

export const compareHelp = `Usage: npm run --silent compare -- [FILE] --vary PATH=VALUE,VALUE,... [--vary ...]

Plans the same evening with other values of one or more fields, every
combination, and puts the answers side by side.

  FILE              a plan file; without it the built-in evening
  --example NAME    a built-in evening: ${demoIds.join(', ')}
  --vary PATH=A,B   the values one field takes in turn; commas separate values,
                    decimals take a point:
                    --vary oven.setpoint="230 degC,250 degC"
                    --vary plate.material=carbon-steel,cordierite
  --set PATH=VALUE  one field instead of the file's, in every row
  --units SYSTEM    metric (the default) or us, for the printed table
  --json            all rows as one JSON object, with the keys of plan
  --csv             a table for other programs (RFC 4180)
  --help            this text

At most ${mostRows} rows. Progress goes to standard error; Ctrl-C stops.
Exit status: 0 done, 2 something in the input is wrong, 1 our fault or stopped.
`;

export const calibrateHelp = `Usage: npm run --silent calibrate -- [FILE] --readings CSV [--json]

Learns an oven from thermometer readings: how strong it is, by how much its dial
lies, how fast the plate follows; and from the bakes how fast its pizzas brown.
Prints what was learned and the plan before and after.

  FILE              a plan file; it is read, never written
  --example NAME    a built-in evening: ${demoIds.join(', ')}
  --readings CSV    rows of time,place,temperature:
                    20 min,plateTop,212 degC
                    Times count from switching the oven on, or are clock times
                    (19:05) or instants (2026-01-31T19:05:00+01:00) of the
                    evening as it is planned. Places: ovenAir, plateTop,
                    plateCore, dough. The log of a thermometer is read as well.
                    A bake is two rows: 50 min,pizza 1 in,
                                        57 min,pizza 1 out,golden
                    Read under a pizza: 53 min,plateTop pizza 1,228 degC
                    While one lies there, plateTop alone is beside it.
  --spread DEGREES  how far off a reading may be, one standard deviation, such
                    as "5 K" for an infrared thermometer; ${usualReadingSpread} K without it
  --set PATH=VALUE  one field instead of the file's, as often as you like
  --units SYSTEM    metric (the default) or us, for the printed text and for
                    temperatures without a unit
  --json            the whole answer as one JSON object; "learned" in it is the
                    plan with what was learned
  --help            this text

Exit status: 0 done, 2 something in the input is wrong, 1 our fault.
`;

export const handoutHelp = `Usage: npm run --silent handout -- [FILE] --out FOLDER [--paper a4|letter]

Writes what leaves the kitchen: a page to print, the block for under a recipe
with the table for other ovens, the recipe for other programs, a calendar with
alarms, the curves, and the plan itself.

  FILE              a plan file; without it the built-in evening
  --example NAME    a built-in evening: ${demoIds.join(', ')}
  --out FOLDER      where to; made if it is not there. Files of these names in
                    it are replaced:
                    page.html                    one page to print
                    recipe-block.md .html .txt   for under a recipe
                    recipe.jsonld                schema.org/Recipe
                    evening.ics                  iCalendar with alarms
                    curves.csv                   RFC 4180
                    curves-for-spreadsheets.csv  semicolons, decimal commas
                    evening.hearthclock          the plan
  --set PATH=VALUE  one field instead of the file's, as often as you like
  --paper SIZE      ${papers.join(' or ')}, for the page; without it letter with
                    --units us, else a4
  --units SYSTEM    metric (the default) or us; curves are in degrees Celsius
  --help            this text

The names of the written files go to standard output.
Exit status: 0 done, 2 something in the input is wrong, 1 our fault.
`;

const options: Readonly<Record<Command, string>> = {
  plan: '--set, --example, --units, --json, --advice, --goal, --help',
  compare: '--vary, --set, --example, --units, --json, --csv, --help',
  calibrate: '--readings, --spread, --set, --example, --units, --json, --help',
  handout: '--out, --paper, --set, --example, --units, --help',
};
const systems: readonly UnitSystem[] = ['metric', 'us'];

/** A list of words as it was typed to a request. */
export function readArguments(argv: readonly string[], command: Command): RequestRead {
  const problems: Problem[] = [];
  const files: string[] = [];
  const sets: { path: string; text: string }[] = [];
  const varied: { path: string; texts: readonly string[] }[] = [];
  const chosen: {
    example?: DemoId;
    units?: UnitSystem;
    json?: true;
    csv?: true;
    advice?: true;
    goal?: GoalId;
    help?: true;
    out?: string;
    paper?: Paper;
    readings?: string;
    spread?: number;
  } = {};
  const refuse = (path: string, found: string, allowed: string): void => {
    problems.push({ path, found, allowed });
  };

  const words = [...argv];
  const take = {
    '--set': (value: string): void => {
      const equals = value.indexOf('=');
      if (equals < 1) refuse('--set', JSON.stringify(value), 'PATH=VALUE, such as plate.thickness="12.7 mm"');
      else sets.push({ path: value.slice(0, equals).trim(), text: value.slice(equals + 1) });
    },
    '--vary': (value: string): void => {
      const equals = value.indexOf('=');
      const texts = value.slice(equals + 1).split(',');
      if (equals < 1 || texts.some((text) => text.trim() === ''))
        refuse('--vary', JSON.stringify(value), 'PATH=VALUE,VALUE,..., such as plate.thickness="6 mm,8 mm"');
      else varied.push({ path: value.slice(0, equals).trim(), texts });
    },
    '--example': (value: string): void => {
      const id = demoIds.find((known) => known === value);
      if (id === undefined) refuse('--example', JSON.stringify(value), demoIds.join(', '));
      else chosen.example = id;
    },
    '--units': (value: string): void => {
      const system = systems.find((known) => known === value);
      if (system === undefined) refuse('--units', JSON.stringify(value), systems.join(', '));
      else chosen.units = system;
    },
    '--goal': (value: string): void => {
      const goal = goalIds.find((known) => known === value);
      if (goal === undefined) refuse('--goal', JSON.stringify(value), goalIds.join(', '));
      else chosen.goal = goal;
    },
    '--out': (value: string): void => {
      if (value === '') refuse('--out', 'nothing', 'a folder');
      else chosen.out = value;
    },
    '--readings': (value: string): void => {
      if (value === '') refuse('--readings', 'nothing', 'a file of readings');
      else chosen.readings = value;
    },
    '--spread': (value: string): void => {
      const read = readQuantity(value, 'temperatureDifference');
      if (read.ok && read.value >= 0.1 && read.value <= 50) chosen.spread = read.value;
      else refuse('--spread', JSON.stringify(value), '0.1 K to 50 K');
    },
    '--paper': (value: string): void => {
      const size = papers.find((known) => known === value);
      if (size === undefined) refuse('--paper', JSON.stringify(value), papers.join(', '));
      else chosen.paper = size;
    },
  };
  const isTaking = (name: string): name is keyof typeof take =>
    Object.hasOwn(take, name) && options[command].split(', ').includes(name);

  for (let word = words.shift(); word !== undefined; word = words.shift()) {
    const [, name, glued] = /^(--[a-z-]+)=(.*)$/su.exec(word) ?? [undefined, word, undefined];
    if (word === '--') files.push(...words.splice(0));
    else if (name === '--json' && glued === undefined && command !== 'handout') chosen.json = true;
    else if (name === '--advice' && glued === undefined && command === 'plan') chosen.advice = true;
    else if (name === '--csv' && glued === undefined && command === 'compare') chosen.csv = true;
    else if ((name === '--help' || name === '-h') && glued === undefined) chosen.help = true;
    else if (isTaking(name)) {
      const value = glued ?? words.shift();
      if (value === undefined) refuse(name, 'nothing after it', 'a value');
      else take[name](value);
    } else if (word.startsWith('-')) refuse(JSON.stringify(word), 'an unknown option', options[command]);
    else files.push(word);
  }
  if (files.length > 1) refuse('FILE', `${files.length} files`, 'one plan file');
  if (files.length > 0 && chosen.example !== undefined)
    refuse('--example', 'a plan file beside it', 'either FILE or --example');
  if (command === 'compare' && chosen.help !== true) {
    if (varied.length === 0) refuse('--vary', 'none', 'at least one');
    const rows = varied.reduce((product, { texts }) => product * texts.length, 1);
    if (rows > mostRows) refuse('--vary', `${rows} combinations`, `at most ${mostRows}`);
    if (chosen.json && chosen.csv) refuse('--csv', '--json beside it', 'either --json or --csv');
  }
  if (command === 'calibrate' && chosen.help !== true && chosen.readings === undefined)
    refuse('--readings', 'none', 'a file of readings');
  if (command === 'handout' && chosen.help !== true && chosen.out === undefined)
    refuse('--out', 'none', 'a folder to write into');
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    request: {
      file: files[0],
      example: chosen.example,
      sets,
      units: chosen.units ?? 'metric',
      varied,
      json: chosen.json ?? false,
      csv: chosen.csv ?? false,
      advice: chosen.advice ?? false,
      goal: chosen.goal,
      help: chosen.help ?? false,
      out: chosen.out,
      readings: chosen.readings,
      readingSpread: chosen.spread ?? usualReadingSpread,
      paper: chosen.paper ?? (chosen.units === 'us' ? 'letter' : 'a4'),
    },
  };
}
