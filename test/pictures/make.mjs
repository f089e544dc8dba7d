/**
 * Makes the pictures of the README from the built window: `npm run pictures`. Plain JavaScript, so that it runs
 * without a build of its own.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
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

const handouts = join(data, 'handouts');
spawnSync(process.execPath, [join(root, 'dist/main/handout.js'), '--out', handouts], { stdio: 'inherit' });

const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
});
try {
  const page = await browser.newPage({
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
  });
  // A Saturday morning, whenever they are made: the evening lies ahead, and no line says "now".
  await page.clock.install({ time: new Date('2026-01-31T09:00:00+01:00') });
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
  await page.emulateMedia({ colorScheme: 'light' });
  for (const [key, name] of [
    ['3', 'adjust'],
    ['2', 'compare'],
  ]) {
    await page.keyboard.press(`Control+${key}`);
    // Long work says how far it is.
    await page.waitForTimeout(1500);
    await page
      .locator('progress, [role=progressbar]')
      .first()
      .waitFor({ state: 'detached', timeout: 120_000 });
    await page.screenshot({ path: join(root, `test/pictures/${name}.png`) });
  }
  await page.setViewportSize({ width: 794, height: 1123 });
  await page.goto(pathToFileURL(join(handouts, 'page.html')).href);
  await page.screenshot({ path: join(root, 'test/pictures/page.png') });
} finally {
  await browser.close();
  server.kill('SIGINT');
  rmSync(data, { recursive: true, force: true });
}
