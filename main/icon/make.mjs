/** Draws the icon of every system from `icon.svg`: `npm run icons`. Needs a Chromium, no network. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { icns, ico } from './containers.mjs';

const here = import.meta.dirname;
const svg = readFileSync(join(here, 'icon.svg'), 'utf8');
const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--no-first-run'],
});
try {
  const drawn = async (size) => {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const picture = svg.replace('<svg ', `<svg width="${size}" height="${size}" style="display:block" `);
    await page.setContent(`<style>body{margin:0}</style>${picture}`);
    const png = await page.screenshot({ omitBackground: true });
    await page.close();
    return { size, png };
  };
  const images = [];
  for (const size of [16, 24, 32, 48, 64, 128, 256, 512, 1024]) images.push(await drawn(size));
  const upTo = (most) => images.filter(({ size }) => size <= most);
  writeFileSync(join(here, 'icon.png'), images.find(({ size }) => size === 512).png);
  writeFileSync(join(here, 'icon.ico'), ico(upTo(256)));
  writeFileSync(join(here, 'icon.icns'), icns(images));
} finally {
  await browser.close();
}
