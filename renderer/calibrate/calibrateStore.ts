/** What was typed or pasted in the view Calibrate, and what came of it; kept while the window is open. */
import { create } from 'zustand';
import { change, usePlan } from '../state/planStore.ts';
import { learn } from '../state/learn.ts';
import { useSettings } from '../state/settingsStore.ts';
import { infraredSpread, usualReadingSpread } from '../../physics/calibrate/fit.ts';
import { readLog, sinceBegun } from '../../physics/tonight/log.ts';
import { readingRows } from '../../physics/tonight/readingRows.ts';
import type { Calibration } from '../../physics/calibrate/calibrate.ts';
import { usualUnit, type ReadingGuesses, type ReadingsRead } from '../../physics/calibrate/readings.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import type { Problem } from '../../physics/evening/problem.ts';

export interface CalibrateState {
  readonly text: string;
  readonly infrared: boolean;
  readonly say: Partial<ReadingGuesses>;
  readonly busy: boolean;
  /** with the text and the plan it was learned from */
  readonly learned:
    { readonly text: string; readonly file: PlanFile; readonly calibration: Calibration } | undefined;
  readonly read: ReadingsRead | undefined;
  readonly problems: readonly Problem[];
  readonly fault: string;
}

export const useCalibrate = create<CalibrateState>()(() => ({
  text: '',
  infrared: false,
  say: {},
  busy: false,
  learned: undefined,
  read: undefined,
  problems: [],
  fault: '',
}));

/** A text of readings that is larger is none, and would only stop the window. */
export const longestFile = 2_000_000;

export function takeText(text: string): void {
  useCalibrate.setState({ text, problems: [], fault: '' });
}

let asked: AbortController | undefined;

/** Leaves what was learned before as it is. */
export function stopLearning(): void {
  asked?.abort();
}

/** @returns whether something was learned */
export async function learnNow(): Promise<boolean> {
  const { text, infrared, say } = useCalibrate.getState();
  const { file } = usePlan.getState();
  asked?.abort();
  const mine = new AbortController();
  asked = mine;
  useCalibrate.setState({ busy: true, problems: [], fault: '' });
  const readingSpread = infrared ? infraredSpread : usualReadingSpread;
  const answer = await learn(
    {
      what: 'calibrate',
      file: { ...file, tonight: {} },
      text,
      say,
      usualUnit: usualUnit(useSettings.getState().units),
      readingSpread,
    },
    mine.signal,
  );
  if (mine !== asked) return false;
  if (answer.what !== 'calibrate') {
    useCalibrate.setState({ busy: false, fault: answer.what === 'fault' ? answer.fault : '' });
    return false;
  }
  const { calibrated, read } = answer;
  useCalibrate.setState({
    busy: false,
    read,
    learned: calibrated.ok ? { text, file, calibration: calibrated.calibration } : undefined,
    problems: calibrated.ok ? [] : calibrated.problems,
  });
  return calibrated.ok;
}

/** What happened tonight, as rows. */
export function rowsOfTonight(): string {
  return readingRows(sinceBegun(readLog(usePlan.getState().file.tonight?.log ?? [])));
}

/** The learned oven, plate and browning as the plan's own, in one step that can be undone. */
export function adopt({ oven, plate, pizzas, known }: PlanFile): Problem | undefined {
  return change({ oven, plate, pizzas, known });
}
