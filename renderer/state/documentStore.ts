/** Which file the plan is, what it looked like when it was last safe, and how it is opened and saved. */
import { create } from 'zustand';
import { bridge } from '../bridgeClient.ts';
import { demoPlan, example, type DemoId } from './examples.ts';
import type { KeptWork } from './keptText.ts';
import { sameValue } from './path.ts';
import { replacePlan, usePlan } from './planStore.ts';
import { planOf } from './reading.ts';
import { useMoment } from './momentStore.ts';
import { eveningRuns } from '../tonight/tonightStore.ts';
import { wording } from '../../physics/evening/problem.ts';
import { parsePlanText, writePlan } from '../../physics/evening/planText.ts';
import type { Answer, PlanDocument } from '../../main/bridge.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

export interface Notice {
  readonly text: string;
  readonly lines?: readonly string[];
  readonly action?: { readonly name: string; readonly run: () => void };
}

export interface DocumentState {
  readonly document: { readonly id: string; readonly name: string } | undefined;
  /** the plan as it lies in its file, or as the example gave it: what a field is reset to */
  readonly base: PlanFile;
  readonly origin: 'example' | 'file';
  readonly savedAt: string | undefined;
  /** counts the plans opened: another plan is not a change of the one before */
  readonly opened: number;
  readonly greeting: Answer<'greet'> | undefined;
  /** the shell could not be reached at start: nothing can be saved but a copy */
  readonly alone: boolean;
  readonly notice: Notice | undefined;
  readonly recovered: { readonly kept: KeptWork; readonly keptAt: string } | undefined;
  /** the file changed on disk since it was opened here: what the shell says of it, until the cook has chosen */
  readonly conflict: string | undefined;
}

export const useDocument = create<DocumentState>()(() => ({
  document: undefined,
  base: demoPlan,
  origin: 'example',
  savedAt: undefined,
  opened: 0,
  greeting: undefined,
  alone: false,
  notice: undefined,
  recovered: undefined,
  conflict: undefined,
}));

export function say(notice: Notice | undefined): void {
  useDocument.setState({ notice });
}
export function sayFailure(error: unknown): void {
  say({ text: error instanceof Error ? error.message : String(error) });
}

export function unsaved(): boolean {
  return !sameValue(usePlan.getState().file, useDocument.getState().base);
}
/** Unsaved changes, or entries that are not taken yet: both are work. */
export function atRisk(): boolean {
  return unsaved() || Object.keys(usePlan.getState().drafts).length > 0;
}

export function show(file: PlanFile, state: Pick<DocumentState, 'document' | 'origin' | 'savedAt'>): void {
  const { opened } = useDocument.getState();
  useDocument.setState({ ...state, base: file, notice: undefined, opened: opened + 1 });
  useMoment.setState({ moment: undefined, view: undefined });
  replacePlan(file);
}

/** Reads a text as a plan, or says what is wrong with it and leaves everything as it is. */
function readText(name: string, text: string): PlanFile | undefined {
  const parsed = parsePlanText(text);
  const read = parsed.ok ? planOf(parsed.file) : parsed;
  if (read.ok) return read.file;
  say({ text: `${name} was not opened.`, lines: read.problems.map(wording) });
  return undefined;
}

/** Anything unsaved stays in reach: the notice offers the way back. */
function keepingTheOld(open: () => void): void {
  const { file: before, drafts } = usePlan.getState();
  const { document, base, origin, savedAt } = useDocument.getState();
  const running = eveningRuns();
  const changed = atRisk();
  open();
  if (!(changed || running) || usePlan.getState().file === before) return;
  say({
    text: running
      ? 'An evening runs in the plan before: its alarms are silent now.'
      : 'The plan before had changes that were not saved.',
    action: {
      name: 'Go back to it',
      run: () => {
        show(base, { document, origin, savedAt });
        usePlan.setState({ file: before, drafts });
        say(undefined);
      },
    },
  });
}

export function openDocument({ document, name, text }: PlanDocument): void {
  const file = readText(name, text);
  if (file === undefined) return;
  keepingTheOld(() => {
    show(file, { document: { id: document, name }, origin: 'file', savedAt: undefined });
  });
}

export function openExample(id: DemoId): void {
  keepingTheOld(() => {
    show(example(id), { document: undefined, origin: 'example', savedAt: undefined });
  });
}

/** A file that the browser handed over (picked or dropped): there is no way to write back to it. */
export async function openPicked(file: File): Promise<void> {
  if (file.size > 1_000_000) {
    say({ text: `${file.name} was not opened: found ${file.size} bytes; allowed 1,000,000 at most.` });
    return;
  }
  const plan = readText(file.name, await file.text());
  if (plan === undefined) return;
  keepingTheOld(() => {
    show(plan, { document: undefined, origin: 'file', savedAt: undefined });
  });
}

export async function choosePlan(): Promise<void> {
  try {
    const chosen = await bridge.call('choosePlan', null);
    if (chosen !== null) openDocument(chosen);
  } catch (error) {
    sayFailure(error);
  }
}
export async function openListed(document: string): Promise<void> {
  try {
    openDocument(await bridge.call('openPlan', { document }));
  } catch (error) {
    sayFailure(error);
  }
}
export async function listPlans(): Promise<Answer<'listPlans'>> {
  try {
    return await bridge.call('listPlans', null);
  } catch {
    // Without the shell there is no list; the examples and the file picker remain.
    return [];
  }
}

function saved(file: PlanFile, document: DocumentState['document'], savedAt: string): void {
  useDocument.setState({
    document,
    base: file,
    origin: 'file',
    savedAt,
    notice: undefined,
    conflict: undefined,
  });
}

/** The cook chose not to save over the file that another program changed. */
export function dropConflict(): void {
  useDocument.setState({ conflict: undefined });
}

export async function savePlanAs(): Promise<void> {
  const { file } = usePlan.getState();
  try {
    const name = file.title ?? 'Pizza evening';
    const answer = await bridge.call('savePlanAs', { name: name.slice(0, 120), text: writePlan(file) });
    if (answer !== null) saved(file, { id: answer.document, name: answer.name }, answer.savedAt);
  } catch (error) {
    sayFailure(error);
  }
}

export async function savePlan(evenIfChanged = false): Promise<void> {
  const { document } = useDocument.getState();
  const { file } = usePlan.getState();
  if (document === undefined) {
    await savePlanAs();
    return;
  }
  try {
    const text = writePlan(file);
    const answer = await bridge.call('savePlan', {
      document: document.id,
      text,
      ...(evenIfChanged ? { evenIfChanged } : {}),
    });
    saved(file, document, answer.savedAt);
  } catch (error) {
    const text = error instanceof Error ? error.message : String(error);
    // Hosts with dialogs of their own have asked already; elsewhere the shell refuses in these words.
    if (text.includes(' was changed by another program ') && !evenIfChanged) {
      useDocument.setState({ conflict: text, notice: undefined });
    } else {
      say({ text });
    }
  }
}
