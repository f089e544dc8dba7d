/** A Chromium for tests: the one named by CHROME_PATH, an installed one, else the headless one that npm brings. */
import { chromium, type Browser, type LaunchOptions } from 'playwright-core';
import { findBrowser, isRoot } from '../../main/hosts/browsers.ts';

export interface TestBrowser {
  readonly executablePath: string;
  /** It can open a real window; the one that npm brings cannot. */
  readonly headed: boolean;
}

/** The switches every browser in tests gets. */
export const testSwitches: readonly string[] = [
  ...(isRoot() ? ['--no-sandbox', '--test-type'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** @throws Error where there is none: says what to install */
export async function testBrowser(): Promise<TestBrowser> {
  const installed = findBrowser(process.platform, process.env);
  if (installed !== undefined) return { executablePath: installed, headed: true };
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No Chromium-family browser was found: install one or name it in CHROME_PATH');
  }
  // It then unpacks the system libraries it needs beside itself; read when the module is loaded.
  process.env['AWS_LAMBDA_JS_RUNTIME'] ??= 'nodejs20.x';
  const { default: bundled } = await import('@sparticuz/chromium');
  return { executablePath: await bundled.executablePath(), headed: false };
}

/** Headless, with a profile of its own. Close it in the test. */
export async function openBrowser(options: LaunchOptions = {}): Promise<Browser> {
  const { executablePath } = await testBrowser();
  return chromium.launch({ executablePath, args: [...testSwitches], ...options });
}
