/**
 * The fields of a plan file by their dotted paths, taken from the schema itself: which there are, which a file may
 * not have, and how one is set. Arrays are walked by index: `dough.liquid.0.percent`.
 */
import * as v from 'valibot';
import { saturday } from './demos.ts';
import type { FieldFacts } from './field.ts';
import type { PlanFile } from './planFile.ts';
import { check, describe, join, open, type Node } from './planShape.ts';
import type { Problem } from './problem.ts';
import { planSchema } from './schema.ts';

/** What stands under a key of a block or at a place of a list; undefined when nothing does. */
function schemaOf(wrapped: Node, key: string): Node | undefined {
  const { item, entries } = open(wrapped);
  if (item !== undefined) return /^\d{1,2}$/u.test(key) ? item : undefined;
  return entries !== undefined && Object.hasOwn(entries, key) ? entries[key] : undefined;
}

/** A field of the file, or undefined when the path leads to none (or to a whole block). */
function schemaAt(path: string): Node | undefined {
  let node: Node | undefined = planSchema;
  for (const key of path.split('.')) {
    node = schemaOf(node, key);
    if (node === undefined) return undefined;
  }
  const leaf = open(node);
  return leaf.entries === undefined && leaf.item === undefined ? leaf : undefined;
}

/** Kind, allowed values and units of a field; undefined for a path that is no field. */
export function fieldAt(path: string): FieldFacts | undefined {
  const leaf = schemaAt(path);
  if (leaf === undefined) return undefined;
  const { field } = v.getMetadata(leaf) as { field?: FieldFacts };
  return field;
}

function leaves(wrapped: Node, path: string): readonly string[] {
  const node = open(wrapped);
  if (node.item !== undefined) return leaves(node.item, join(path, '0'));
  if (node.entries === undefined) return [path];
  return Object.entries(node.entries).flatMap(([key, inner]) => leaves(inner, join(path, key)));
}

/** Every field that can be set; lists with their first entry. */
export const allPlanPaths: readonly string[] = leaves(planSchema, '').filter((p) => fieldAt(p) !== undefined);

/** What may follow at the place where a path goes wrong. */
function namesAlong(path: string): string {
  const settable = (prefix: string): readonly string[] => [
    ...new Set(
      allPlanPaths
        .filter((known) => known.startsWith(prefix))
        .map((known) => prefix + known.slice(prefix.length).split('.', 1)[0]!),
    ),
  ];
  const keys = path.replaceAll(/\.\d+(?=\.|$)/gu, '.0').split('.');
  for (let length = keys.length; length > 0; length -= 1) {
    const prefix = keys.slice(0, length).join('.');
    if (allPlanPaths.includes(prefix)) return prefix;
    const names = settable(`${prefix}.`);
    if (names.length > 0) return names.join(', ');
  }
  return settable('').join(', ');
}

/** The text of a command line as the field wants it: a number, true or false, or the text itself. */
function parse(text: string, kind: FieldFacts['kind']): unknown {
  if (kind === 'number') return /^[+-]?(\d+\.?\d*|\.\d+)$/u.test(text.trim()) ? Number(text) : text;
  if (kind === 'boolean') return text === 'true' ? true : text === 'false' ? false : text;
  return text;
}

/** An object or a list, seen by its keys. */
type Container = Record<string, unknown>;

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null;
}

export type PathSet =
  { readonly ok: true; readonly file: PlanFile } | { readonly ok: false; readonly problem: Problem };

/**
 * A copy of an entry of a list, put in its place. A list whose entries may be empty, such as that of single pizzas, grows
 * to it; any other only has the entries it has.
 */
function lengthened(list: unknown[], index: number, schema: Node): Container | undefined {
  if (index >= list.length) {
    if (!check(schema, {}).ok) return undefined;
    while (list.length <= index) list.push({});
  }
  const entry = { ...(list[index] as Container) };
  list[index] = entry;
  return entry;
}

/**
 * Sets one field of a plan file from text, as `--set path=value` does, and gives a changed copy. The field itself is
 * checked here; whether it goes with the others (a plate with its oven) shows when the file is read.
 */
export function setPath(file: PlanFile, path: string, text: string): PathSet {
  const refuse = (found: string, allowed: string): PathSet => ({
    ok: false,
    problem: { path, found, allowed },
  });
  const leaf = schemaAt(path);
  const field = fieldAt(path);
  if (leaf === undefined || field === undefined)
    return {
      ok: false,
      problem: { path: describe(path), found: 'no such field', allowed: namesAlong(path) },
    };
  const value = parse(text, field.kind);
  const checked = check(leaf, value, path);
  if (!checked.ok) return { ok: false, problem: checked.problems[0]! };

  const keys = path.split('.');
  const last = keys.pop()!;
  const copy: Container = { ...file };
  let place: Container | unknown[] = copy;
  let node: Node = planSchema;
  // A list that the file leaves out is the demo's, entry by entry, before one of its entries is changed.
  let demo: unknown = saturday;
  for (const key of keys) {
    node = schemaOf(node, key)!;
    demo = isContainer(demo) ? demo[key] : undefined;
    if (Array.isArray(place)) {
      const entry = lengthened(place, Number(key), node);
      if (entry === undefined)
        return place.length === 0
          ? refuse('no such list', 'one that is written in the file')
          : refuse(
              `a list of ${place.length}`,
              `entries 0 to ${place.length - 1}; longer lists are written in the file`,
            );
      place = entry;
      continue;
    }
    const before: unknown = place[key];
    const list = [before, demo].find((one) => Array.isArray(one)) as unknown[] | undefined;
    const next: Container | unknown[] =
      open(node).item === undefined ? { ...(before as Container | undefined) } : [...(list ?? [])];
    place[key] = next;
    place = next;
  }
  (place as Container)[last] = value;
  return { ok: true, file: copy as unknown as PlanFile };
}
