/**
 * Makes the pictures of the README from the built window: `npm run pictures`. Plain JavaScript, so that it runs
 * without a build of its own.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('../..', import.meta.url));
const data = mkdtempSync(join(tmpdir(), 'hearthclock-pictures-'));
const server = spawn(process.execPath, [join(root, 'dist/main/start.js'), '--host', 'serve'], {
  env: { ...process.env, HEARTHCLOCK_DATA: data },
  stdio: ['ignore', 'pipe', 'inherit'],
});
const address = await new Promise((found, failed) => {
  let text = '';
  server.stdout.on('data', (part) => {
    text += String(part);
    const line = /^http:\S+$/m.exec(text);
    if (line) found(line[0]);
  });
  server.on('exit', () => failed(new Error('the window was not served; run `npm run build` first')));
});

const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
  await page.goto(address);
  // The band is the last thing to arrive.
  await page
    .getByText(/^between /)
    .first()
    .waitFor();
  for (const [theme, colorScheme] of [
    ['flour', 'light'],
    ['iron', 'dark'],
  ]) {
    await page.emulateMedia({ colorScheme });
    await page.waitForTimeout(1500);
    await page.screenshot({ path: join(root, `test/pictures/plan-${theme}.png`) });
  }
} finally {
  await browser.close();
  server.kill('SIGINT');
  rmSync(data, { recursive: true, force: true });
}
