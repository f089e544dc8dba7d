/** Makes a handout of the plan as it stands and lets the cook save it. */
import SimulationWorker from '../simulation.worker.ts?worker';
import { downloadText, fileName } from '../state/downloads.ts';
import { say } from '../state/documentStore.ts';
import { usePlan } from '../state/planStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { wording } from '../../physics/evening/problem.ts';
import { handouts, type HandoutId } from '../../physics/handout/files.ts';
import { paperOf, type Paper } from '../../physics/handout/paper.ts';
import { localOffset } from '../words/clock.ts';
import type { HandoutAnswered, HandoutRequest } from '../simulation.worker.ts';
import type { HandoutAsked } from './make.ts';

/** The paper of the region that the browser is set to. */
function usualPaper(): Paper {
  return paperOf(new Intl.Locale(navigator.language).region);
}

/** Asks a worker of its own, so that it waits for nothing and nothing for it. */
function answerTo(asked: HandoutAsked): Promise<HandoutAnswered> {
  return new Promise((resolve) => {
    const worker = new SimulationWorker();
    const end = (answer: HandoutAnswered): void => {
      worker.terminate();
      resolve(answer);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<HandoutAnswered>) => {
      end(data);
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      end({ id: 1, fault: event.message || 'the simulation stopped' });
    });
    const now = Date.now();
    worker.postMessage({ id: 1, now, offsetMinutes: localOffset(now), asked } satisfies HandoutRequest);
  });
}

export async function handOut(handout: HandoutId): Promise<void> {
  const { file } = usePlan.getState();
  const { units } = useSettings.getState();
  const { name, type } = handouts[handout];
  const answer = await answerTo({ handout, file, units, paper: usualPaper() });
  if (answer.fault !== undefined)
    say({ text: `${name} could not be made, and this is our fault: ${answer.fault}` });
  else if (answer.made.ok) downloadText(fileName(`-${name}`), type, answer.made.text);
  else say({ text: `${name} could not be made of this plan.`, lines: answer.made.problems.map(wording) });
}
