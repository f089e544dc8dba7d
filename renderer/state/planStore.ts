/**
 * The plan as the cook wrote it, with undo and redo. Nothing computed is kept here: results live in `forecastStore.ts`.
 * `file` can always be read; an entry that cannot be taken stays beside it as a draft, as typed, with the reason.
 */
import { temporal } from 'zundo';
import { create, useStore } from 'zustand';
import { demoPlan } from './examples.ts';
import { sameValue, valueAt, withValueAt } from './path.ts';
import { problemsOf } from './reading.ts';
import { refusalText } from '../words/refusal.ts';
import { setPath } from '../../physics/evening/planPath.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';

export interface Draft {
  readonly text: string;
  /** what the plan would hold at this path if it could be taken; undefined when the text itself is unreadable */
  readonly value: unknown;
  readonly reason: string;
}

export interface PlanState {
  readonly file: PlanFile;
  readonly drafts: Readonly<Record<string, Draft>>;
}

export const usePlan = create<PlanState>()(
  temporal((): PlanState => ({ file: demoPlan, drafts: {} }), { limit: 300, equality: sameValue }),
);

/**
 * Takes a value into the plan if the plan can then be read; otherwise keeps it as a draft with the reason.
 *
 * @param along fields that change with it
 */
export function enter(
  path: string,
  text: string,
  value: unknown,
  along: Readonly<Record<string, unknown>> = {},
): void {
  const { file, drafts } = usePlan.getState();
  const candidate = Object.entries({ ...along, [path]: value }).reduce(
    (changed, [name, next]) => withValueAt(changed, name, next),
    file,
  );
  const problem = problemFor(path, problemsOf(candidate));
  if (problem !== undefined) {
    usePlan.setState({ drafts: { ...drafts, [path]: { text, value, reason: refusalText(problem) } } });
    return;
  }
  usePlan.setState(withDraftsRetried({ file: candidate, drafts: without(drafts, path) }));
}

/** Keeps a text that cannot even be read as a value of its kind. */
export function refuse(path: string, text: string, reason: string): void {
  const { drafts } = usePlan.getState();
  usePlan.setState({ drafts: { ...drafts, [path]: { text, value: undefined, reason } } });
}

/** Several fields at once, as one step of the history. Returns the problem that stood in the way, if one did. */
export function change(fields: Readonly<Record<string, unknown>>): Problem | undefined {
  const { file, drafts } = usePlan.getState();
  let candidate = file;
  let open = drafts;
  for (const [path, value] of Object.entries(fields)) {
    candidate = withValueAt(candidate, path, value);
    open = without(open, path);
  }
  const [problem] = problemsOf(candidate);
  if (problem === undefined) usePlan.setState(withDraftsRetried({ file: candidate, drafts: open }));
  return problem;
}

/** Fields as advice names them, path and text, as one step of the history. Returns the problem in the way, if any. */
export function changeByTexts(
  fields: readonly { readonly path: string; readonly value: string }[],
): Problem | undefined {
  const { file, drafts } = usePlan.getState();
  let candidate = file;
  let open = drafts;
  for (const { path, value } of fields) {
    const set = setPath(candidate, path, value);
    if (!set.ok) return set.problem;
    candidate = set.file;
    open = without(open, path);
  }
  const [problem] = problemsOf(candidate);
  if (problem === undefined) usePlan.setState(withDraftsRetried({ file: candidate, drafts: open }));
  return problem;
}

/** Forgets a wrong entry: the field shows the plan's value again. */
export function dropDraft(path: string): void {
  const { drafts } = usePlan.getState();
  usePlan.setState({ drafts: without(drafts, path) });
}

/** Another plan: undo does not reach back into the one before. */
export function replacePlan(file: PlanFile): void {
  usePlan.setState({ file, drafts: {} });
  usePlan.temporal.getState().clear();
}

// One drag is one step: its first change is recorded, the rest is not.
let dragChanges: number | undefined;
export function beginDrag(): void {
  dragChanges = 0;
}
export function dragTo(fields: Readonly<Record<string, unknown>>): Problem | undefined {
  const before = usePlan.getState().file;
  const problem = change(fields);
  if (dragChanges === undefined || usePlan.getState().file === before) return problem;
  dragChanges += 1;
  if (dragChanges === 1) usePlan.temporal.getState().pause();
  return problem;
}
export function endDrag(): void {
  dragChanges = undefined;
  usePlan.temporal.getState().resume();
}
export function dragging(): boolean {
  return dragChanges !== undefined;
}

export function undo(): void {
  usePlan.temporal.getState().undo();
}
export function redo(): void {
  usePlan.temporal.getState().redo();
}
export function useHistory(): { canUndo: boolean; canRedo: boolean } {
  const canUndo = useStore(usePlan.temporal, ({ pastStates }) => pastStates.length > 0);
  const canRedo = useStore(usePlan.temporal, ({ futureStates }) => futureStates.length > 0);
  return { canUndo, canRedo };
}

/** The field's own problem first; else the first one, which then names the other field it clashes with. */
function problemFor(path: string, problems: readonly Problem[]): Problem | undefined {
  const own = problems.find((problem) => problem.path === path);
  if (own !== undefined) return own;
  const [first] = problems;
  return first === undefined ? undefined : { ...first, found: `${first.path} ${first.found}` };
}

function without(drafts: PlanState['drafts'], path: string): PlanState['drafts'] {
  return Object.fromEntries(Object.entries(drafts).filter(([name]) => name !== path));
}

/** A mended field may make room for an entry that was refused before (a larger cavity for a larger plate). */
function withDraftsRetried(state: PlanState): PlanState {
  let { file, drafts } = state;
  for (const [path, draft] of Object.entries(drafts)) {
    if (draft.value === undefined || sameValue(valueAt(file, path), draft.value)) continue;
    const candidate = withValueAt(file, path, draft.value);
    if (problemsOf(candidate).length > 0) continue;
    file = candidate;
    drafts = without(drafts, path);
  }
  return { file, drafts };
}
