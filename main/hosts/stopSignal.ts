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
export function ancestors(proc = '/proc'): string {
  return `${process.ppid} ${parentOf(process.ppid, proc)}`;
}

/** Known only where there is a /proc; elsewhere the shell alone is watched. */
function parentOf(pid: number, proc: string): string {
  try {
    // "pid (name) state parent ...": the name may hold anything, brackets too (proc(5)).
    return readFileSync(`${proc}/${pid}/stat`, 'utf8').replace(/^.*\) \S+ (\d+) .*$/su, '$1');
  } catch {
    return '';
  }
}
