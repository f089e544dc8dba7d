/** The ovens learned, as the shell keeps them: read anew before each change, since another window may have changed them. */
import { create } from 'zustand';
import { bridge } from '../bridgeClient.ts';
import { say, sayFailure } from '../state/documentStore.ts';
import { downloadText, fileName } from '../state/downloads.ts';
import { change, usePlan } from '../state/planStore.ts';
import {
  blocksWith,
  ovenEnding,
  readOven,
  versionOf,
  writeOven,
  type LearnedOven,
  type LearnedVersion,
} from '../../physics/calibrate/learnedOven.ts';
import {
  addOven,
  forgetOven,
  keepOven,
  readOvens,
  writeOvens,
  type Ovens,
  type OvensChanged,
} from '../../physics/calibrate/learnedOvens.ts';
import { wording } from '../../physics/evening/problem.ts';
import { largestPlan } from '../../physics/evening/planText.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';

export interface OvensState {
  readonly ovens: Ovens;
  /** why the list kept cannot be read; it is then left alone */
  readonly fault: readonly string[];
}

export const useOvens = create<OvensState>()(() => ({ ovens: [], fault: [] }));

async function readKept(): Promise<Ovens | undefined> {
  try {
    const read = readOvens(await bridge.call('readOvens', null));
    useOvens.setState(read.ok ? { ovens: read.value, fault: [] } : { fault: read.problems.map(wording) });
    return read.ok ? read.value : undefined;
  } catch (error) {
    useOvens.setState({ fault: [error instanceof Error ? error.message : String(error)] });
    return undefined;
  }
}

// One after the other: each change is made to what the one before left.
let last: Promise<unknown> = Promise.resolve();
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work);
  last = mine.catch(() => undefined);
  return mine;
}

export function loadOvens(): Promise<unknown> {
  return inTurn(readKept);
}

/** @returns whether the change was made; if not, the notice says why */
export function changeOvens(by: (ovens: Ovens) => OvensChanged): Promise<boolean> {
  return inTurn(async () => {
    const ovens = await readKept();
    if (ovens === undefined) {
      say({ text: 'Nothing was changed: the ovens kept cannot be read.', lines: useOvens.getState().fault });
      return false;
    }
    const changed = by(ovens);
    if (!changed.ok) {
      say({ text: `Not changed: ${wording(changed.problem)}.` });
      return false;
    }
    try {
      await bridge.call('saveOvens', { text: writeOvens(changed.ovens) });
    } catch (error) {
      sayFailure(error);
      return false;
    }
    useOvens.setState({ ovens: changed.ovens });
    return true;
  });
}

/** @param learned the plan with the numbers learned */
export async function keep(name: string, learned: PlanFile): Promise<void> {
  const version = versionOf(learned, new Date().toISOString());
  if (!(await changeOvens((ovens) => keepOven(ovens, name, version)))) return;
  const kept = useOvens.getState().ovens.find((oven) => oven.name === name.trim());
  const before = (kept?.versions.length ?? 0) > 1 ? '; what it was before is among its versions' : '';
  say({ text: `“${name.trim()}” is kept under Ovens learned${before}.` });
}

/** The oven as the plan's own, in one step that can be undone. */
export function planWith(name: string, version: LearnedVersion): void {
  const problem = change({ ...blocksWith(usePlan.getState().file, version) });
  say({
    text:
      problem === undefined
        ? `The plan now has “${name}”; Undo brings the oven before back.`
        : `Not changed: ${wording(problem)}.`,
  });
}

/** @returns whether it is gone */
export async function forget(oven: LearnedOven): Promise<boolean> {
  if (!(await changeOvens((ovens) => forgetOven(ovens, oven.name)))) return false;
  say({
    text: `“${oven.name}” is forgotten.`,
    action: {
      name: 'Bring it back',
      run: () => {
        say(undefined);
        void changeOvens((ovens) => addOven(ovens, oven));
      },
    },
  });
  return true;
}

export function saveAsFile(oven: LearnedOven): void {
  downloadText(fileName(ovenEnding, oven.name), 'application/json', writeOven(oven));
}

export async function openOvenFile(file: File): Promise<void> {
  if (file.size > largestPlan) {
    say({ text: `${file.name} was not opened: found ${file.size} bytes; allowed 1,000,000 at most.` });
    return;
  }
  const read = readOven(await file.text());
  if (!read.ok) {
    say({ text: `${file.name} was not opened.`, lines: read.problems.map(wording) });
    return;
  }
  await changeOvens((ovens) => addOven(ovens, read.value));
}
