/** When to end: Ctrl-C, a polite signal, a closed terminal, or npm gone without passing a signal on. */

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
  const parent = process.ppid;
  if (process.env['npm_lifecycle_event'] === 'start') {
    setInterval(() => {
      if (process.ppid !== parent) stop.abort();
    }, lookForParentMs).unref();
  }
  return stop.signal;
}
