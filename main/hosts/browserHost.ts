/** The window as an app window of an installed browser; ends with the window. */
import { spawn } from 'node:child_process';
import { mkdir } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import type { Presence } from '../window/presence.ts';
import { appWindowArguments } from './browsers.ts';
import { described, exitOf, type Ended, type Exit } from './child.ts';

export interface BrowserHostOptions {
  readonly browser: string;
  readonly profile: string;
  readonly address: string;
  readonly presence: Presence;
  readonly stop: AbortSignal;
  readonly env?: NodeJS.ProcessEnv;
  readonly platform?: NodeJS.Platform;
  /** more switches for the browser, for tests */
  readonly more?: readonly string[];
}

/** A window that is loaded again is away for a moment. */
const awayMs = 8000;
const handOverMs = 15_000;
/** For connections to come and go around the end of a process. */
const settleMs = 500;

export async function runBrowser(options: BrowserHostOptions): Promise<Ended> {
  const {
    browser,
    profile,
    address,
    presence,
    stop,
    env = process.env,
    platform = process.platform,
  } = options;
  await mkdir(profile, { recursive: true, mode: 0o700 });
  // What Chromium says on its outputs is for its own developers; the address of the window stays alone on ours.
  const child = spawn(browser, [...appWindowArguments(address, profile), ...(options.more ?? [])], {
    env,
    stdio: 'ignore',
  });
  const startedAt = performance.now();
  const closed = new AbortController();
  // On macOS a program outlives its last window: there the window's connection tells.
  if (platform === 'darwin')
    void closedForGood(presence, stop).then(() => {
      closed.abort();
    });
  const exit = await exitOf(child, AbortSignal.any([stop, closed.signal]));
  return afterExit(exit, performance.now() - startedAt, presence, stop);
}

async function closedForGood(presence: Presence, stop: AbortSignal): Promise<void> {
  await presence.until(({ open }) => open > 0, stop);
  let back = true;
  while (back && !stop.aborted) {
    await presence.until(({ open }) => open === 0, stop);
    back = await presence.until(({ open }) => open > 0, stop, awayMs);
  }
}

async function afterExit(exit: Exit, livedMs: number, presence: Presence, stop: AbortSignal): Promise<Ended> {
  if (stop.aborted || (presence.entered && livedMs > handOverMs)) return 'closed';
  const ended = (): Ended =>
    presence.entered || stop.aborted
      ? 'closed'
      : { failed: `it ${described(exit)} before it showed the window` };
  if (exit.status !== 0) return ended();
  // A browser that runs with this profile already takes the window over, and the process started here ends at once.
  await pause(settleMs);
  const limitMs = presence.entered ? settleMs : handOverMs;
  if (await presence.until(({ open }) => open > 0, stop, limitMs)) await closedForGood(presence, stop);
  return ended();
}
