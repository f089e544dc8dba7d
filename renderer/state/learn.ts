/** Asks the worker that learns from readings; each question gets its own answer. */
import LearnWorker from '../learn.worker.ts?worker';
import { localOffset } from '../words/clock.ts';
import type { LearnAnswer, LearnRequest } from '../learn.worker.ts';

type Open<T> = T extends unknown ? Omit<T, 'id' | 'now' | 'offsetMinutes'> : never;
export type LearnQuestion = Open<LearnRequest>;

let worker: Worker | undefined;
let id = 0;
const waiting = new Map<number, (answer: LearnAnswer) => void>();

function hear(answer: LearnAnswer): void {
  waiting.get(answer.id)?.(answer);
  waiting.delete(answer.id);
}

function made(): Worker {
  const one = new LearnWorker();
  one.addEventListener('message', ({ data }: MessageEvent<LearnAnswer>) => {
    hear(data);
  });
  one.addEventListener('error', (event) => {
    event.preventDefault();
    for (const open of [...waiting.keys()])
      hear({ id: open, what: 'fault', fault: event.message || 'The computation stopped.' });
  });
  return one;
}

export function learn(question: LearnQuestion): Promise<LearnAnswer> {
  worker ??= made();
  id += 1;
  const now = Date.now();
  const request = { ...question, id, now, offsetMinutes: localOffset(now) };
  worker.postMessage(request satisfies LearnRequest);
  return new Promise((resolve) => {
    waiting.set(request.id, resolve);
  });
}
