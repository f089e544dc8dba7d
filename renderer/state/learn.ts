/** Asks the worker that learns from readings; each question gets its own answer. */
import LearnWorker from '../learn.worker.ts?worker';
import { localOffset } from '../words/clock.ts';
import type { LearnAnswer, LearnRequest } from '../learn.worker.ts';

type Open<T> = T extends unknown ? Omit<T, 'id' | 'now' | 'offsetMinutes'> : never;
export type LearnQuestion = Open<LearnRequest>;
/** `stopped`: whoever asked no longer wants to know. */
export type Learnt = LearnAnswer | { readonly what: 'stopped' };

interface Waiting {
  readonly request: LearnRequest;
  readonly answer: (answer: Learnt) => void;
}

let worker: Worker | undefined;
let id = 0;
const waiting = new Map<number, Waiting>();

function hear(answer: LearnAnswer): void {
  waiting.get(answer.id)?.answer(answer);
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

/** A computation hears nothing before it is done: the worker goes with it, and what else was asked is asked anew. */
function stop(which: number): void {
  const stopped = waiting.get(which);
  if (stopped === undefined) return;
  waiting.delete(which);
  worker?.terminate();
  worker = made();
  for (const { request } of waiting.values()) worker.postMessage(request);
  stopped.answer({ what: 'stopped' });
}

/** @param signal stops the work */
export function learn(question: LearnQuestion, signal?: AbortSignal): Promise<Learnt> {
  worker ??= made();
  id += 1;
  const now = Date.now();
  const request: LearnRequest = { ...question, id, now, offsetMinutes: localOffset(now) };
  worker.postMessage(request);
  signal?.addEventListener('abort', () => {
    stop(request.id);
  });
  return new Promise((resolve) => {
    waiting.set(request.id, { request, answer: resolve });
  });
}
