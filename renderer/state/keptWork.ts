/** Keeps unsaved work aside while it is done, and offers at the next start what was left of the last time. */
import { bridge } from '../bridgeClient.ts';
import { atRisk, openDocument, say, sayFailure, show, useDocument } from './documentStore.ts';
import { leaveField } from './leaveField.ts';
import { readKept, writeKept, type KeptWork } from './keptText.ts';
import { usePlan } from './planStore.ts';
import { planOf } from './reading.ts';
import { wording } from '../../physics/evening/problem.ts';
import { parsePlanText, writePlan } from '../../physics/evening/planText.ts';
import type { Answer, Ask, PlanDocument } from '../../main/bridge.ts';

/** What would be lost if the window closed now, as a text; empty when nothing would. */
function textAtRisk(): string {
  if (!atRisk()) return '';
  const { file, drafts } = usePlan.getState();
  const { base, document } = useDocument.getState();
  return writeKept({ file, drafts, base, name: document?.name });
}

function keep(offer?: Ask<'keepUnsaved'>['offer']): void {
  const text = textAtRisk();
  void bridge.call('keepUnsaved', { text, ...(offer === undefined ? {} : { offer }) }).catch(() => {
    useDocument.setState({ alone: true });
  });
}

/** Keeps unsaved work aside one second after the last change, and holds the page while there is any. */
export function keepWork(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const keepNow = (): void => {
    clearTimeout(timer);
    timer = undefined;
    // While the cook has not decided, what is offered stays as it is.
    if (useDocument.getState().recovered === undefined) keep();
  };
  usePlan.subscribe((state, before) => {
    if (state.file === before.file && state.drafts === before.drafts) return;
    clearTimeout(timer);
    timer = setTimeout(keepNow, 1000);
  });
  useDocument.subscribe((state, before) => {
    // Saved: nothing is left to keep, or only what was changed meanwhile.
    if (state.savedAt !== before.savedAt && state.savedAt !== undefined) keepNow();
  });
  window.addEventListener('blur', () => {
    if (timer !== undefined) keepNow();
  });
  window.addEventListener('beforeunload', (event) => {
    leaveField();
    if (atRisk()) event.preventDefault();
  });
}

/** The saved document that kept work grew from, if it still is what it was then. */
async function documentOf({ name, base }: KeptWork): Promise<PlanDocument | undefined> {
  if (name === undefined || base === undefined) return undefined;
  const holdsBase = ({ text }: PlanDocument): boolean => {
    const parsed = parsePlanText(text);
    const plan = parsed.ok ? planOf(parsed.file) : parsed;
    // A file has its keys in the order of the schema.
    return plan.ok && writePlan(plan.file) === writePlan(base);
  };
  const opened = useDocument.getState().greeting?.opened;
  if (opened?.name === name && holdsBase(opened)) return opened;
  for (const listed of await bridge.call('listPlans', null)) {
    if (listed.name !== name) continue;
    try {
      const plan = await bridge.call('openPlan', { document: listed.document });
      if (holdsBase(plan)) return plan;
    } catch {
      // One that cannot be read is not the one.
    }
  }
  return undefined;
}

export async function takeRecovered(): Promise<void> {
  const { recovered } = useDocument.getState();
  if (recovered === undefined) return;
  const { file, drafts, base, name } = recovered.kept;
  let document: PlanDocument | undefined;
  try {
    document = await documentOf(recovered.kept);
  } catch (error) {
    sayFailure(error);
  }
  const { document: before, origin, base: shown } = useDocument.getState();
  if (document !== undefined) {
    show(base ?? shown, {
      document: { id: document.document, name: document.name },
      origin: 'file',
      savedAt: undefined,
    });
  } else if (name !== undefined) {
    show(base ?? shown, { document: undefined, origin: 'file', savedAt: undefined });
    say({ text: `“${name}” is gone or was changed since: these changes will be saved as another file.` });
  } else {
    show(base ?? shown, { document: before, origin, savedAt: undefined });
  }
  useDocument.setState({ recovered: undefined });
  usePlan.setState({ file, drafts });
  keep('settled');
}

export function dropRecovered(): void {
  useDocument.setState({ recovered: undefined });
  keep('settled');
}

/** The first words with the shell: settings, the file that was asked for, work that was not saved last time. */
export async function greet(take: (answer: Answer<'greet'>) => void): Promise<void> {
  try {
    const greeting = await bridge.call('greet', null);
    useDocument.setState({ greeting });
    take(greeting);
    if (greeting.opened !== null) openDocument(greeting.opened);
    if (greeting.recovered === null) return;
    const { text, keptAt } = greeting.recovered;
    const read = readKept(text);
    if (read.ok) useDocument.setState({ recovered: { kept: read.kept, keptAt } });
    else say({ text: 'The work kept aside last time was not opened.', lines: read.problems.map(wording) });
  } catch {
    useDocument.setState({ alone: true });
  }
}
