/** Walks through the schema of a plan file and through what a file holds: the guards before any value is looked at. */
import * as v from 'valibot';
import type { Problem } from './problem.ts';
import { planSchema } from './schema.ts';

/** As much of a valibot schema as is needed to walk it. */
export type Node = v.GenericSchema & {
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly wrapped?: Node;
};

const forbidden = new Set(['__proto__', 'constructor', 'prototype']);
const deepest = 32;

/** The schema inside an optional one. */
export function open(node: Node): Node {
  return node.wrapped === undefined ? node : open(node.wrapped);
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A value in a message: short, on one line. */
export function describe(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.length > 60 ? `${value.slice(0, 60)}…` : value);
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  if (value === undefined) return 'nothing';
  return typeof value === 'number' ? String(value) : JSON.stringify(value);
}

/** A path in a message: keys of others may hold anything, line breaks included. */
export function join(path: string, key: string): string {
  const safe = /^[\w-]{1,60}$/u.test(key) ? key : describe(key);
  return path === '' ? safe : `${path}.${safe}`;
}

/** Nesting deeper than 32 and keys that could change a prototype, wherever they are. */
export function hostileProblems(file: unknown, what = 'plan'): readonly Problem[] {
  const problems: Problem[] = [];
  const walk = (value: unknown, path: string, depth: number): boolean => {
    if (typeof value !== 'object' || value === null) return true;
    if (depth > deepest) return false;
    return Object.entries(value).every(([key, inner]) => {
      if (!forbidden.has(key)) return walk(inner, join(path, key), depth + 1);
      problems.push({
        path: join(path, key),
        found: `a key that no ${what} may have`,
        allowed: `${what} fields`,
      });
      return true;
    });
  };
  if (walk(file, '', 1)) return problems;
  return [{ path: what, found: `nesting deeper than ${deepest}`, allowed: `at most ${deepest} levels` }];
}

/** Another format or a newer version makes every further complaint pointless. */
export function headProblem(file: object, wanted: string, known: number): Problem | undefined {
  const { format, version } = file as { format?: unknown; version?: unknown };
  if (format !== wanted) return { path: 'format', found: describe(format), allowed: `"${wanted}"` };
  if (version === known) return undefined;
  const newer = typeof version === 'number' && version > known;
  return {
    path: 'version',
    found: `${describe(version)}${newer ? ', written by a newer program' : ''}`,
    allowed: String(known),
  };
}

/** Unknown keys at any depth, and what is no object where one is wanted (valibot lets lists pass for objects). */
export function shapeProblems(file: unknown, schema: Node = planSchema, what = 'plan'): readonly Problem[] {
  const problems: Problem[] = [];
  const walk = (value: unknown, wrapped: Node, path: string): void => {
    const node = open(wrapped);
    if (value === undefined) return;
    if (node.item !== undefined && Array.isArray(value)) {
      for (const [index, item] of value.entries()) walk(item, node.item, join(path, String(index)));
    }
    const { entries } = node;
    if (entries === undefined) return;
    const names = Object.keys(entries).join(', ');
    if (!isPlain(value)) {
      problems.push({
        path: path === '' ? what : path,
        found: describe(value),
        allowed: `an object with ${names}`,
      });
      return;
    }
    for (const [key, inner] of Object.entries(value)) {
      if (Object.hasOwn(entries, key)) walk(inner, entries[key]!, join(path, key));
      else problems.push({ path: join(path, key), found: 'an unknown field', allowed: names });
    }
  };
  walk(file, schema, '');
  return problems;
}

function problemsOf(issues: readonly v.BaseIssue<unknown>[], path: string): readonly Problem[] {
  return issues.map((issue) => {
    const own = issue.type === 'raw_transform';
    const dots = (issue.path ?? []).reduce((whole, item) => join(whole, String(item.key)), path);
    const found = own ? issue.received : describe(issue.input);
    return { path: dots, found, allowed: issue.message };
  });
}

/** Checks a value against a schema; the problems name the place below `path`. */
export function check<S extends v.GenericSchema>(
  schema: S,
  value: unknown,
  path = '',
): { ok: true; output: v.InferOutput<S> } | { ok: false; problems: readonly Problem[] } {
  const parsed = v.safeParse(schema, value, { abortPipeEarly: true });
  return parsed.success
    ? { ok: true, output: parsed.output }
    : { ok: false, problems: problemsOf(parsed.issues, path) };
}
