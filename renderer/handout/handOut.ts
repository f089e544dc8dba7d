/** Makes a handout of the plan as it stands and lets the cook save it. */
import HandoutWorker from './handout.worker.ts?worker';
import { downloadText, fileName } from '../state/downloads.ts';
import { say } from '../state/documentStore.ts';
import { usePlan } from '../state/planStore.ts';
import { useSettings } from '../state/settingsStore.ts';
import { wording } from '../../physics/evening/problem.ts';
import { handouts, type HandoutId } from '../../physics/handout/files.ts';
import { paperOf, type Paper } from '../../physics/handout/paper.ts';
import type { HandoutAnswer, HandoutRequest } from './handout.worker.ts';

/** The paper of the region that the browser is set to. */
function usualPaper(): Paper {
  return paperOf(new Intl.Locale(navigator.language).region);
}

function asked(request: HandoutRequest): Promise<HandoutAnswer> {
  return new Promise((resolve) => {
    const worker = new HandoutWorker();
    const end = (answer: HandoutAnswer): void => {
      worker.terminate();
      resolve(answer);
    };
    worker.addEventListener('message', ({ data }: MessageEvent<HandoutAnswer>) => {
      end(data);
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      end({ fault: event.message || 'the computation stopped' });
    });
    worker.postMessage(request);
  });
}

export async function handOut(id: HandoutId): Promise<void> {
  const { file } = usePlan.getState();
  const { units } = useSettings.getState();
  const { name, type } = handouts[id];
  const answer = await asked({ id, file, units, paper: usualPaper(), now: Date.now() });
  if ('text' in answer) downloadText(fileName(`-${name}`), type, answer.text);
  else if ('problems' in answer)
    say({ text: `${name} could not be made of this plan.`, lines: answer.problems.map(wording) });
  else say({ text: `${name} could not be made, and this is our fault: ${answer.fault}` });
}
