/** The plan file as text: reading JSON with a size limit and a place for every fault, writing it in one order. */
import { planSchema } from './schema.ts';
import type { PlanFile } from './planFile.ts';
import { open, type Node } from './planShape.ts';
import type { Problem } from './problem.ts';

/** bytes */
export const largestPlan = 1_000_000;

export type TextParsed =
  | { readonly ok: true; readonly file: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Bytes of a text in UTF-8, without making them. */
function utf8Length(text: string): number {
  let bytes = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x1_0000 ? 3 : 4;
  }
  return bytes;
}

const token =
  /[ \t\n\r]+|"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null|[[\]{},:]/uy;

/**
 * Where text stops being JSON: the index of the first token that cannot stand there, the text's length when it ends
 * too early. The engine's own messages give no place in some cases, and differ between versions.
 */
function jsonFault(text: string): number {
  const stack: ('[' | '{')[] = [];
  /** value, key or end of an object, key, colon, comma or end, nothing more; an empty list may end at once */
  let want: 'value' | 'valueOrEnd' | 'keyOrEnd' | 'key' | 'colon' | 'next' | 'nothing' = 'value';
  const afterValue = (): 'next' | 'nothing' => (stack.length === 0 ? 'nothing' : 'next');
  token.lastIndex = 0;
  for (let at = 0; at < text.length; at = token.lastIndex) {
    token.lastIndex = at;
    const found = token.exec(text)?.[0];
    if (found === undefined) return at;
    const first = found[0]!;
    if (' \t\n\r'.includes(first)) continue;
    const inside = stack.at(-1);
    if (want === 'value' || want === 'valueOrEnd') {
      if (first === '[' || first === '{') {
        stack.push(first);
        want = first === '[' ? 'valueOrEnd' : 'keyOrEnd';
      } else if (first === ']' && want === 'valueOrEnd') {
        stack.pop();
        want = afterValue();
      } else if (':,}]'.includes(first)) return at;
      else want = afterValue();
    } else if (want === 'key' || want === 'keyOrEnd') {
      if (first === '"') want = 'colon';
      else if (first === '}' && want === 'keyOrEnd') {
        stack.pop();
        want = afterValue();
      } else return at;
    } else if (want === 'colon') {
      if (first !== ':') return at;
      want = 'value';
    } else if (want === 'next') {
      if (first === ',') want = inside === '[' ? 'value' : 'key';
      else if ((first === ']' && inside === '[') || (first === '}' && inside === '{')) {
        stack.pop();
        want = afterValue();
      } else return at;
    } else return at;
  }
  return text.length;
}

/** `line 3, column 7` and what stands there. */
function placeOf(text: string, at: number): string {
  const lines = text.slice(0, at).split('\n');
  const place = `line ${lines.length}, column ${lines.at(-1)!.length + 1}`;
  if (at >= text.length) return `text that ends too early, at ${place}`;
  return `${JSON.stringify(text.slice(at, at + 12).split(/[\r\n]/u, 1)[0])} at ${place}`;
}

/** Text to the value it holds, or why not. A byte order mark at the start is allowed. */
export function parsePlanText(text: string, what = 'plan'): TextParsed {
  const refuse = (found: string, allowed: string): TextParsed => ({
    ok: false,
    problems: [{ path: what, found, allowed }],
  });
  if (text.length > largestPlan || utf8Length(text) > largestPlan)
    return refuse('more than 1 MB', 'at most 1 MB');
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (body.trim() === '') return refuse('nothing', `${/^[aeiou]/u.test(what) ? 'an' : 'a'} ${what} in JSON`);
  try {
    return { ok: true, file: JSON.parse(body) as unknown };
  } catch {
    return refuse(placeOf(body, jsonFault(body)), 'JSON');
  }
}

/** The same value with the keys of every block in the order of the schema; keys it does not know come last. */
function inOrder(value: unknown, wrapped: Node | undefined): unknown {
  const node = wrapped === undefined ? undefined : open(wrapped);
  if (Array.isArray(value)) return value.map((item) => inOrder(item, node?.item));
  if (typeof value !== 'object' || value === null) return value;
  const entries = node?.entries ?? {};
  const known = Object.keys(entries).filter((key) => Object.hasOwn(value, key));
  const others = Object.keys(value).filter((key) => !Object.hasOwn(entries, key));
  const object = value as Readonly<Record<string, unknown>>;
  return Object.fromEntries([...known, ...others].map((key) => [key, inOrder(object[key], entries[key])]));
}

/** Keys in the order of the schema, two spaces, LF, a final newline, so that differences read well. */
export function writeInOrder(value: unknown, schema: Node): string {
  return `${JSON.stringify(inOrder(value, schema), undefined, 2)}\n`;
}

/** The text of a plan file. */
export function writePlan(file: PlanFile): string {
  return writeInOrder(file, planSchema);
}
