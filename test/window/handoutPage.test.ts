/** The page for the fridge as a printer gets it: a Chromium lays it out and writes the PDF. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demos } from '../../physics/evening/demos.ts';
import type { PlanFile } from '../../physics/evening/planFile.ts';
import { openBrowser } from '../support/browser.ts';
import { facts, made } from '../support/handout.ts';

/** Twenty pizzas, every caution there is, the longest title: all that a page can be asked to hold. */
const crowd: PlanFile = {
  ...demos['same-evening'],
  title:
    'Pizza for the whole street, with the neighbours from both sides and their children, in the garden behind the house '.slice(
      0,
      120,
    ),
  anchor: { kind: 'eatAt', time: '2026-03-29T19:30:00+02:00' },
  oven: { preset: 'north-american-gas', setpoint: '280 degC', highestSetting: '290 degC' },
  plate: { material: 'cordierite', width: '50 cm', depth: '40 cm', thickness: '20 mm', rackHeight: 0.4 },
  pizzas: { count: 20, diameter: '28 cm', ballMass: '230 g', shade: 'dark', bench: 'parchment' },
  dough: {
    liquid: [
      { kind: 'milk', percent: 30 },
      { kind: 'water', percent: 32 },
    ],
    salt: 2.2,
    sugar: 2,
    oil: 3,
    yeast: { kind: 'active-dry', percent: 0.1 },
    phases: [
      { where: 'room', duration: '2 h', as: 'bulk' },
      { where: 'refrigerator', duration: '24 h', as: 'bulk' },
      { where: 'room', duration: '3 h', as: 'balls' },
    ],
  },
};

/** pt (1/72 in): ISO 216 A4 is 210 by 297 mm, Letter 8 1/2 by 11 in */
const sheets = {
  a4: [(210 / 25.4) * 72, (297 / 25.4) * 72],
  letter: [612, 792],
} as const;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe.each([
  ['four pizzas', demos.saturday],
  ['a stone in a gas oven', demos['same-evening']],
  ['twenty pizzas with every caution', crowd],
])('%s', (_, file) => {
  const evening = facts(file);
  it.each([
    ['a4', 'metric'],
    ['a4', 'us'],
    ['letter', 'metric'],
    ['letter', 'us'],
  ] as const)('are one page of %s, in %s units', async (paper, units) => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const errors: string[] = [];
    page.on('console', (message) => errors.push(message.text()));
    await page.setContent(made('page', { ...evening, paper, units }));
    // ISO 32000-1, 7.7.3.3: a page object, and its size.
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b/gu)).toHaveLength(1);
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/u.exec(pdf)!.map(Number);
    expect(Math.abs(width! - sheets[paper][0])).toBeLessThan(1);
    expect(Math.abs(height! - sheets[paper][1])).toBeLessThan(1);
    // 8 pt at 96 px to the inch: what can be read on a door without going near.
    const smallest = await page.evaluate(
      "Math.min(...[...document.querySelectorAll('body *')].map((e) => parseFloat(getComputedStyle(e).fontSize)))",
    );
    expect(smallest).toBeGreaterThan((8 / 72) * 96 - 0.1);
    // Nothing sticks out to the side, on paper or on a telephone.
    for (const viewport of [720, 390]) {
      await page.setViewportSize({ width: viewport, height: 900 });
      const wide = await page.evaluate('document.documentElement.scrollWidth');
      expect(wide, `at ${viewport} px`).toBeLessThanOrEqual(viewport);
    }
    expect(errors).toEqual([]);
    await context.close();
  });
});
