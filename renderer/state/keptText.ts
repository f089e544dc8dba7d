/**
 * Work that is kept aside, as the shell keeps it: the plan with its wrong entries, and which saved document it grew
 * from. Ids of documents hold for one session only, so that one is named and compared by what it held.
 */
import { parsePlanText, writePlan } from '../../physics/evening/planText.ts';
import type { Draft } from './planStore.ts';
import { planOf } from './reading.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';

export interface KeptWork {
  readonly file: PlanFile;
  readonly drafts: Readonly<Record<string, Draft>>;
  /** the plan as it was when it was last safe; undefined when that was not kept */
  readonly base: PlanFile | undefined;
  /** name of the saved document it grew from */
  readonly name: string | undefined;
}

const keptFormat = 'hearthclock/unsaved';
/** The shell takes no longer text. */
const longest = 1_000_000;

export function writeKept({ file, drafts, base, name }: KeptWork): string {
  const text = JSON.stringify({ format: keptFormat, version: 1, name, plan: file, base, drafts });
  return text.length <= longest ? text : writePlan(file);
}

export type KeptRead =
  | { readonly ok: true; readonly kept: KeptWork }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function draftsOf(value: unknown): KeptWork['drafts'] {
  if (!isRecord(value)) return {};
  return Object.fromEntries(
    Object.entries(value).flatMap(([path, draft]) =>
      isRecord(draft) && typeof draft['text'] === 'string' && typeof draft['reason'] === 'string'
        ? [[path, { text: draft['text'], reason: draft['reason'], value: draft['value'] }]]
        : [],
    ),
  );
}

/** A plain plan is kept work too: older programs kept nothing else. */
export function readKept(text: string): KeptRead {
  const parsed = parsePlanText(text);
  if (!parsed.ok) return parsed;
  const held = parsed.file;
  if (!isRecord(held) || held['format'] !== keptFormat) {
    const plan = planOf(held);
    return plan.ok
      ? { ok: true, kept: { file: plan.file, drafts: {}, base: undefined, name: undefined } }
      : plan;
  }
  const plan = planOf(held['plan']);
  if (!plan.ok) return plan;
  const base = planOf(held['base']);
  const name = held['name'];
  return {
    ok: true,
    kept: {
      file: plan.file,
      drafts: draftsOf(held['drafts']),
      base: base.ok ? base.file : undefined,
      name: typeof name === 'string' ? name : undefined,
    },
  };
}
