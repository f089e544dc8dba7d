/** The words behind `plan`: read into a request, or refused with what is allowed. */
import { demoIds, type DemoId } from '../../physics/evening/demos.ts';
import type { Problem } from '../../physics/evening/problem.ts';
import type { UnitSystem } from '../../physics/quantities/index.ts';

export interface Request {
  readonly file: string | undefined;
  readonly example: DemoId | undefined;
  readonly sets: readonly { readonly path: string; readonly text: string }[];
  readonly units: UnitSystem;
  readonly json: boolean;
  readonly help: boolean;
}

export type RequestRead =
  | { readonly ok: true; readonly request: Request }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const help = `Usage: npm run --silent plan -- [FILE] [--set PATH=VALUE]... [--json]
       npm run --silent plan -- --example ${demoIds.join('|')}

Plans a pizza evening: when to switch the oven on, how long each pizza bakes,
when to eat. Without FILE a built-in evening is planned.

  FILE              a plan file; it is read, never written
  --example NAME    a built-in evening: ${demoIds.join(', ')}
  --set PATH=VALUE  one field instead of the file's, as often as you like:
                    --set plate.thickness="12.7 mm" --set pizzas.count=3
  --units SYSTEM    metric (the default) or us, for the printed plan
  --json            the whole answer as one JSON object (always degrees Celsius)
  --help            this text

The plan goes to standard output, everything else to standard error.
Exit status: 0 done, 2 something in the input is wrong, 1 our fault.
`;

const options = '--set, --example, --units, --json, --help';
const systems: readonly UnitSystem[] = ['metric', 'us'];

/** A list of words as it was typed to a request. */
export function readArguments(argv: readonly string[]): RequestRead {
  const problems: Problem[] = [];
  const files: string[] = [];
  const sets: { path: string; text: string }[] = [];
  const chosen: { example?: DemoId; units?: UnitSystem; json?: true; help?: true } = {};
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
  };
  const isTaking = (name: string): name is keyof typeof take => Object.hasOwn(take, name);

  for (let word = words.shift(); word !== undefined; word = words.shift()) {
    const [, name, glued] = /^(--[a-z-]+)=(.*)$/su.exec(word) ?? [undefined, word, undefined];
    if (word === '--') files.push(...words.splice(0));
    else if (name === '--json' && glued === undefined) chosen.json = true;
    else if ((name === '--help' || name === '-h') && glued === undefined) chosen.help = true;
    else if (isTaking(name)) {
      const value = glued ?? words.shift();
      if (value === undefined) refuse(name, 'nothing after it', 'a value');
      else take[name](value);
    } else if (word.startsWith('-')) refuse(JSON.stringify(word), 'an unknown option', options);
    else files.push(word);
  }
  if (files.length > 1) refuse('FILE', `${files.length} files`, 'one plan file');
  if (files.length > 0 && chosen.example !== undefined)
    refuse('--example', 'a plan file beside it', 'either FILE or --example');
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    request: {
      file: files[0],
      example: chosen.example,
      sets,
      units: chosen.units ?? 'metric',
      json: chosen.json ?? false,
      help: chosen.help ?? false,
    },
  };
}
