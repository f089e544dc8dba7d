/** Runs the window in Electron: a child process that says when its window is up. */
import { spawn } from 'node:child_process';
import { electronReady } from '../ipc.ts';
import { isRoot } from './browsers.ts';
import { described, exitOf, type Ended } from './child.ts';

export function electronArguments(appRoot: string, file: string | undefined, root = isRoot()): string[] {
  // Chromium cannot build its sandbox as root and refuses to start.
  return [...(root ? ['--no-sandbox'] : []), appRoot, ...(file === undefined ? [] : [file])];
}

/** Until the window is closed. Ending badly before the window came up counts as failed: another host is tried then. */
export async function runElectron(
  binary: string,
  appRoot: string,
  file: string | undefined,
  env: NodeJS.ProcessEnv,
  stop: AbortSignal,
  comeMs = 60_000,
): Promise<Ended> {
  const child = spawn(binary, electronArguments(appRoot, file), {
    // Set by some editors' terminals, it would turn Electron into a plain Node.
    env: { ...env, ELECTRON_RUN_AS_NODE: undefined },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const seen = { up: false, last: '' };
  child.stdout.on('data', (part: Buffer) => {
    seen.last = (seen.last + part.toString('utf8')).slice(-1000);
    seen.up ||= seen.last.split('\n').includes(electronReady);
  });
  const giveUp = new AbortController();
  const limit = setTimeout(() => {
    if (!seen.up) giveUp.abort();
  }, comeMs);
  const exit = await exitOf(child, AbortSignal.any([stop, giveUp.signal]));
  clearTimeout(limit);
  if (giveUp.signal.aborted) return { failed: `its window did not come up within ${comeMs / 1000} s` };
  if (seen.up || stop.aborted || exit.status === 0) return 'closed';
  return { failed: `it ${described(exit)} before its window came up` };
}
