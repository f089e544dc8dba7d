/** The list of learned ovens that a cook keeps: its file, and every change of it. Names are what ovens go by. */
import * as v from 'valibot';
import { check } from '../evening/planShape.ts';
import { writeInOrder } from '../evening/planText.ts';
import type { Problem } from '../evening/problem.ts';
import {
  mostVersions,
  ovenFormat,
  ovenName,
  ovenSchema,
  ovenVersion,
  readOwnFormat,
  type LearnedOven,
  type LearnedVersion,
  type Read,
} from './learnedOven.ts';

const ovensFormat = 'hearthclock/ovens';
const ovensVersion = 1;
const mostOvens = 30;

const ovensSchema = v.object(
  {
    format: v.literal(ovensFormat, `"${ovensFormat}"`),
    version: v.literal(ovensVersion, String(ovensVersion)),
    ovens: v.pipe(
      v.array(ovenSchema, 'a list of ovens'),
      v.check((ovens) => ovens.length <= mostOvens, `at most ${mostOvens} ovens`),
      v.check((ovens) => new Set(ovens.map(({ name }) => name)).size === ovens.length, 'names that differ'),
    ),
  },
  'ovens',
);

export type Ovens = readonly LearnedOven[];

/** An empty text is an empty list. Never throws. */
export function readOvens(text: string): Read<Ovens> {
  if (text === '') return { ok: true, value: [] };
  const read = readOwnFormat(text, 'ovens', ovensSchema, ovensFormat, ovensVersion);
  // The schema has seen every field of it.
  return read.ok ? { ok: true, value: (read.value as { ovens: Ovens }).ovens } : read;
}

/** The text of the list that `readOvens` takes. */
export function writeOvens(ovens: Ovens): string {
  return writeInOrder({ format: ovensFormat, version: ovensVersion, ovens }, ovensSchema);
}

export type OvensChanged =
  { readonly ok: true; readonly ovens: Ovens } | { readonly ok: false; readonly problem: Problem };

const refuse = (path: string, found: string, allowed: string): OvensChanged => ({
  ok: false,
  problem: { path, found, allowed },
});

function withOven(ovens: Ovens, oven: LearnedOven): OvensChanged {
  const checked = check(ovenName, oven.name, 'name');
  if (!checked.ok) return { ok: false, problem: checked.problems[0]! };
  if (ovens.length >= mostOvens)
    return refuse('ovens', String(ovens.length + 1), `at most ${mostOvens} ovens`);
  return { ok: true, ovens: [...ovens, oven] };
}

/** Under a name that is there already, it becomes that oven's version in use; the others are its history. */
export function keepOven(ovens: Ovens, name: string, version: LearnedVersion): OvensChanged {
  const own = name.trim();
  if (ovens.some((oven) => oven.name === own))
    return {
      ok: true,
      ovens: ovens.map((oven) =>
        oven.name === own ? { ...oven, versions: [version, ...oven.versions].slice(0, mostVersions) } : oven,
      ),
    };
  return withOven(ovens, { format: ovenFormat, version: ovenVersion, name: own, versions: [version] });
}

/** An oven from a file; where its name is taken, a number makes it another one. */
export function addOven(ovens: Ovens, oven: LearnedOven): OvensChanged {
  const names = new Set(ovens.map(({ name }) => name));
  let { name } = oven;
  for (let n = 2; names.has(name); n += 1) name = `${oven.name.slice(0, 56)} ${n}`;
  return withOven(ovens, { ...oven, name });
}

/** The list with the oven under another name, unless that is none or another's. */
export function renameOven(ovens: Ovens, name: string, next: string): OvensChanged {
  const own = next.trim();
  const checked = check(ovenName, own, 'name');
  if (!checked.ok) return { ok: false, problem: checked.problems[0]! };
  if (own !== name && ovens.some((oven) => oven.name === own))
    return refuse('name', JSON.stringify(own), 'a name that no other oven has');
  return { ok: true, ovens: ovens.map((oven) => (oven.name === name ? { ...oven, name: own } : oven)) };
}

/** The list without the oven. */
export function forgetOven(ovens: Ovens, name: string): OvensChanged {
  return { ok: true, ovens: ovens.filter((oven) => oven.name !== name) };
}

/** Puts an earlier version in use; the one that was stays beside it. @param learnedAt of that version */
export function goBackTo(ovens: Ovens, name: string, learnedAt: string): OvensChanged {
  return {
    ok: true,
    ovens: ovens.map((oven) => {
      if (oven.name !== name) return oven;
      const chosen = oven.versions.filter((version) => version.learnedAt === learnedAt);
      return {
        ...oven,
        versions: [...chosen, ...oven.versions.filter((version) => !chosen.includes(version))],
      };
    }),
  };
}
