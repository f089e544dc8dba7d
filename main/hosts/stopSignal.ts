/** When to end: Ctrl-C, a polite signal, a closed terminal, or npm gone without passing a signal on. */
import { readFileSync } from 'node:fs';

const lookForParentMs = 500;

/** A second signal ends at once. */
export function stopSignal(): AbortSignal {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      if (stop.signal.aborted) process.exit(130);
      stop.abort();
    });
  }
  // A killed npm leaves its children running; nobody would know of the window's server then.
  if (process.env['npm_lifecycle_event'] === 'start') {
    const startedBy = ancestors();
    setInterval(() => {
      if (ancestors() !== startedBy) stop.abort();
    }, lookForParentMs).unref();
  }
  return stop.signal;
}

/** Who started us and who started that: npm puts a shell between itself and us. */
function ancestors(): string {
  return `${process.ppid} ${parentOf(process.ppid)}`;
}

/** Known only where there is a /proc; elsewhere the shell alone is watched. */
function parentOf(pid: number): string {
  try {
    // The name before it is in brackets and may hold anything (proc(5)).
    const afterName = readFileSync(`/proc/${pid}/stat`, 'utf8').replace(/^.*\)/s, '');
    return afterName.trim().split(' ')[1] ?? '';
  } catch {
    return '';
  }
}
