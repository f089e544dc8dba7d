import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium } from 'playwright-core';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { runBrowser, type BrowserHostOptions } from '../../main/hosts/browserHost.ts';
import { Presence } from '../../main/window/presence.ts';
import { testBrowser, testSwitches } from '../support/browser.ts';
import { openDisplay } from '../support/display.ts';
import { writeFixtureWindow } from '../support/fixtureWindow.ts';
import { serveWindow, type Served } from '../support/serve.ts';
import { tempFolder } from '../support/tempFolder.ts';

interface Opened {
  readonly served: Served;
  readonly profile: string;
  readonly stop: AbortController;
  readonly ended: ReturnType<typeof runBrowser>;
  /** whether there is a display to open a real window on */
  readonly headed: boolean;
}

async function open(): Promise<Opened> {
  const { executablePath, headed: canOpenWindows } = await testBrowser();
  const display = canOpenWindows ? await openDisplay() : undefined;
  onTestFinished(() => display?.close());
  const headed = display !== undefined;
  const served = await serveWindow({ root: writeFixtureWindow(tempFolder()) });
  onTestFinished(() => served.close());
  const profile = tempFolder();
  const stop = new AbortController();
  const options: BrowserHostOptions = {
    browser: executablePath,
    profile,
    address: served.address,
    presence: served.presence,
    stop: stop.signal,
    env: { ...process.env, DISPLAY: display?.name },
    more: ['--remote-debugging-port=0', ...testSwitches, ...(headed ? [] : ['--headless=new'])],
  };
  const ended = runBrowser(options);
  onTestFinished(async () => {
    stop.abort();
    await ended;
  });
  await vi.waitFor(
    () => {
      expect(served.presence.open).toBe(1);
    },
    { timeout: 15_000 },
  );
  return { served, profile, stop, ended, headed };
}

describe('the window in an installed browser', () => {
  it('comes up without the token in its address, and its closing ends the host', async () => {
    const { served, profile, ended, headed } = await open();
    const port = readFileSync(join(profile, 'DevToolsActivePort'), 'utf8').split('\n')[0];
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port ?? ''}`);
    const page = browser.contexts()[0]!.pages()[0]!;
    expect(existsSync(join(profile, 'Default'))).toBe(true);
    expect(page.url()).toBe(`${served.origin}/`);
    expect(await page.evaluate(() => history.length)).toBe(1);
    await vi.waitFor(async () => {
      expect(await page.title()).toBe('serve');
    });
    expect(await page.evaluate(() => document.cookie)).toBe('');
    if (headed) {
      // An app window: no tabs, no address bar.
      expect(await page.evaluate(() => matchMedia('(display-mode: standalone)').matches)).toBe(true);
      await page.close();
    } else {
      // A headless browser outlives its last page.
      await (await browser.newBrowserCDPSession()).send('Browser.close').catch(() => undefined);
    }
    expect(await ended).toBe('closed');
    expect(served.presence.open).toBe(0);
    expect(served.warnings).toEqual([]);
  });

  it('is closed when the host is stopped', async () => {
    const { stop, ended, served } = await open();
    stop.abort();
    expect(await ended).toBe('closed');
    await vi.waitFor(() => {
      expect(served.presence.open).toBe(0);
    });
  });
});

describe('a browser that does not show the window', () => {
  it.each([
    ['/bin/false', 'it ended with status 1 before it showed the window'],
    ['/nowhere/chromium', 'it spawn /nowhere/chromium ENOENT before it showed the window'],
  ])('%s is reported', async (browser, failed) => {
    const options = {
      browser,
      profile: tempFolder(),
      address: 'http://127.0.0.1:1/',
      presence: new Presence(),
    };
    expect(await runBrowser({ ...options, stop: new AbortController().signal })).toEqual({ failed });
  });
});

describe('a browser whose process is not its window', () => {
  /** A program in the browser's place. */
  const standIn = (script: string): string => {
    const path = join(tempFolder(), 'browser');
    writeFileSync(path, `#!/bin/sh\n${script}\n`, { mode: 0o755 });
    return path;
  };
  const patience = { comeMs: 1000, awayMs: 800, settleMs: 100 };
  const run = (
    browser: string,
    platform: NodeJS.Platform,
    presence: Presence,
  ): ReturnType<typeof runBrowser> =>
    runBrowser({
      browser,
      platform,
      presence,
      patience,
      profile: tempFolder(),
      address: 'http://127.0.0.1:1/',
      stop: new AbortController().signal,
    });
  const soon = async (then: () => void): Promise<void> => {
    await pause(200);
    then();
  };

  it('is given up when it lives but never shows the window', async () => {
    const failed = 'it did not show the window within 1 s';
    expect(await run(standIn('exec sleep 60'), 'linux', new Presence())).toEqual({ failed });
  });

  it('is given up when it ends well and no other shows the window either', async () => {
    const failed = 'it ended with status 0 before it showed the window';
    expect(await run(standIn('exit 0'), 'linux', new Presence())).toEqual({ failed });
  });

  it('hands the window over to one that runs already: the end is the window’s, reloads apart', async () => {
    const presence = new Presence();
    const ended = run(standIn('exit 0'), 'linux', presence);
    const order: string[] = [];
    void ended.then(() => order.push('ended'));
    await soon(() => {
      presence.entered = true;
      presence.open = 1;
    });
    await soon(() => (presence.open = 0));
    await soon(() => (presence.open = 1));
    await soon(() => order.push('closed'));
    presence.open = 0;
    expect(await ended).toBe('closed');
    expect(order).toEqual(['closed', 'ended']);
  });

  it('outlives its window on macOS, and is ended then', async () => {
    const presence = new Presence();
    const ended = run(standIn('exec sleep 60'), 'darwin', presence);
    presence.entered = true;
    presence.open = 1;
    await soon(() => (presence.open = 0));
    expect(await ended).toBe('closed');
  });
});
