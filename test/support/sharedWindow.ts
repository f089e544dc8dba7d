/** One window for all tests of a file that begin with the example: opening one takes longer than most of them. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { openBrowser } from './browser.ts';
import type { Served } from './serve.ts';
import { freshPlan, openWindow, type OpenedWindow } from './window.ts';

export interface SharedWindow {
  /** the example as if just opened: nothing to undo, folds as they were at first; the view stays the one it was */
  readonly open: () => Promise<Page>;
  /** what serves the window that `open` has opened */
  readonly served: () => Served;
  /** for windows of a test's own */
  readonly browser: () => Browser;
}

/** To be called where the tests of the file stand; after each of them the console has to be clean. */
export function sharedWindow(): SharedWindow {
  let browser: Browser;
  let shared: OpenedWindow | undefined;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await shared?.close();
    await browser.close();
  });
  afterEach(() => {
    expect(shared?.errors ?? []).toEqual([]);
  });
  return {
    browser: () => browser,
    served: () => {
      if (shared === undefined) throw new Error('served: found no window; allowed once it was opened');
      return shared.served;
    },
    open: async () => {
      if (shared === undefined) shared = await openWindow(browser);
      else await freshPlan(shared);
      return shared.page;
    },
  };
}
