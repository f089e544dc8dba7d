/** A child process that ends with us: asked first, then made to. */
import type { ChildProcess } from 'node:child_process';

/** How a host came to its end: the window was closed (or we were stopped), or it never opened. */
export type Ended = 'closed' | { readonly failed: string };

export interface Exit {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly error?: Error;
}

/** Resolves when the child is gone; `stop` ends it, after `patienceMs` without asking. */
export function exitOf(child: ChildProcess, stop: AbortSignal, patienceMs = 3000): Promise<Exit> {
  return new Promise((done) => {
    const end = (): void => {
      child.kill('SIGTERM');
      const last = setTimeout(() => child.kill('SIGKILL'), patienceMs);
      child.once('exit', () => {
        clearTimeout(last);
      });
    };
    if (stop.aborted) end();
    else stop.addEventListener('abort', end, { once: true });
    child.on('error', (error) => {
      stop.removeEventListener('abort', end);
      done({ status: null, signal: null, error });
    });
    child.on('exit', (status, signal) => {
      stop.removeEventListener('abort', end);
      done({ status, signal });
    });
  });
}

export function described({ status, signal, error }: Exit): string {
  if (error !== undefined) return error.message;
  return signal === null ? `ended with status ${String(status)}` : `was ended by ${signal}`;
}
