/** The window as an app window of an installed browser; ends with the window. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
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
  readonly patience?: Patience;
  /** more switches for the browser, for tests */
  readonly more?: readonly string[];
}

export interface Patience {
  /** for the window to come up */
  readonly comeMs: number;
  /** for a window that is loaded again, and away meanwhile */
  readonly awayMs: number;
  /** for connections to come and go around the end of a process */
  readonly settleMs: number;
}

const usualPatience: Patience = { comeMs: 30_000, awayMs: 8000, settleMs: 500 };

export async function runBrowser(options: BrowserHostOptions): Promise<Ended> {
  const { browser, profile, address, presence, stop, env = process.env } = options;
  const { platform = process.platform, patience = usualPatience, more = [] } = options;
  // The browser keeps the size and place of the window in its profile; the switch would win over them.
  const firstTime = !existsSync(profile);
  await mkdir(profile, { recursive: true, mode: 0o700 });
  // What Chromium says on its outputs is for its own developers; the address of the window stays alone on ours.
  const words = [...appWindowArguments(address, profile, firstTime), ...more];
  const child = spawn(browser, words, { env, stdio: 'ignore' });
  const startedAt = performance.now();
  const giveUp = new AbortController();
  const over = new AbortController();
  const watch = AbortSignal.any([stop, over.signal]);
  void presence
    .until(({ entered }) => entered, watch, patience.comeMs)
    .then((came) => {
      if (!came) giveUp.abort();
      // On macOS a program outlives its last window: there the window's connection tells.
      else if (platform === 'darwin') return closedForGood(presence, watch, patience);
      return undefined;
    })
    .then(() => {
      if (platform === 'darwin') giveUp.abort();
    });
  const exit = await exitOf(child, AbortSignal.any([stop, giveUp.signal]));
  over.abort();
  if (stop.aborted) return 'closed';
  if (giveUp.signal.aborted && !presence.entered) {
    return { failed: `it did not show the window within ${patience.comeMs / 1000} s` };
  }
  return afterExit(exit, performance.now() - startedAt, presence, stop, patience);
}

async function closedForGood(presence: Presence, stop: AbortSignal, { awayMs }: Patience): Promise<void> {
  await presence.until(({ open }) => open > 0, stop);
  let back = true;
  while (back && !stop.aborted) {
    await presence.until(({ open }) => open === 0, stop);
    back = await presence.until(({ open }) => open > 0, stop, awayMs);
  }
}

/** The process started here is gone; was it the window's? */
async function afterExit(
  exit: Exit,
  livedMs: number,
  presence: Presence,
  stop: AbortSignal,
  patience: Patience,
): Promise<Ended> {
  if (presence.entered && livedMs > patience.comeMs) return 'closed';
  const ended = (): Ended =>
    presence.entered || stop.aborted
      ? 'closed'
      : { failed: `it ${described(exit)} before it showed the window` };
  if (exit.status !== 0) return ended();
  // A browser that runs with this profile already takes the window over, and the process started here ends at once.
  await pause(patience.settleMs);
  const limitMs = presence.entered ? patience.settleMs : patience.comeMs;
  if (await presence.until(({ open }) => open > 0, stop, limitMs)) {
    await closedForGood(presence, stop, patience);
  }
  return ended();
}
