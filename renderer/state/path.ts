/** Fields of a plan are named by dotted paths (`plate.thickness`), as problems and assumptions name them too. */

type Held = Record<string, unknown> | unknown[];

function isHeld(value: unknown): value is Held {
  return typeof value === 'object' && value !== null;
}

function member(here: unknown, key: string): unknown {
  if (Array.isArray(here)) return here[Number(key)];
  return isHeld(here) ? (here as Record<string, unknown>)[key] : undefined;
}

export function valueAt(root: unknown, path: string): unknown {
  return path.split('.').reduce(member, root);
}

/**
 * A copy of `root` with one field replaced; `undefined` takes the field out, and a block that it leaves empty too, so
 * that the presets speak again. Below a list the entries before the one named are there, empty ones at the end are
 * not: the third pizza may differ where the first two do not. The copy is a candidate: whoever takes it into the plan
 * has it read first.
 */
export function withValueAt<T extends object>(root: T, path: string, value: unknown): T {
  return replaced(root, path.split('.'), value) as T;
}

function replaced(here: unknown, [key, ...rest]: readonly string[], value: unknown): unknown {
  if (key === undefined) return value;
  const next = replaced(member(here, key), rest, value);
  if (Array.isArray(here) || (here === undefined && /^\d+$/u.test(key))) {
    return listWith(here ?? [], Number(key), next);
  }
  const others = Object.entries(isHeld(here) ? here : {}).filter(([name]) => name !== key);
  if (next === undefined || isEmptied(next, rest, value)) return Object.fromEntries(others);
  // The place of a field among the others stays, so that files differ only where plans do.
  return isHeld(here) && key in here
    ? Object.fromEntries(Object.entries(here).map(([name, old]) => [name, name === key ? next : old]))
    : { ...Object.fromEntries(others), [key]: next };
}

function isEmpty(entry: unknown): boolean {
  return entry === undefined || (isHeld(entry) && Object.keys(entry).length === 0);
}

function listWith(list: readonly unknown[], index: number, next: unknown): unknown[] | undefined {
  const length = Math.max(list.length, index + 1);
  const entries = Array.from({ length }, (_, i) => (i === index ? next : list[i]) ?? {});
  const last = entries.findLastIndex((entry) => !isEmpty(entry));
  return last === -1 ? undefined : entries.slice(0, last + 1);
}

function isEmptied(next: unknown, rest: readonly string[], value: unknown): boolean {
  return (
    rest.length > 0 &&
    value === undefined &&
    isHeld(next) &&
    !Array.isArray(next) &&
    Object.keys(next).length === 0
  );
}

/** Whether two plan values say the same: they are JSON, so their text decides. */
export function sameValue(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
