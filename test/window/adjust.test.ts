/** The view Adjust: the recipe in a reader's oven, and what gets a weak one back. */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { tabStops, violations } from '../support/windowAccess.ts';
import { answersOf, openWindow, secondsOf, settled, textsOf } from '../support/window.ts';

const { open, browser } = sharedWindow();
let page: Page;

beforeEach(async () => {
  page = await open();
  await page.keyboard.press('Control+3');
});

const reader = () => page.getByLabel("The highest setting of the reader's oven");
/** Until everything is tried. */
async function tried(): Promise<void> {
  await page.locator('.helps li').first().waitFor({ timeout: 30_000 });
  await expect.poll(() => page.locator('.progress').count(), { timeout: 40_000 }).toBe(0);
}

describe('my reader has a weaker oven', () => {
  it('is told also by a window that was at Compare before', async () => {
    const other = await openWindow(browser());
    await other.page.keyboard.press('Control+2');
    await other.page.getByRole('heading', { name: 'In figures' }).waitFor();
    await other.page.keyboard.press('Control+3');
    await expect.poll(() => other.page.locator('.readers tbody tr').count(), { timeout: 30_000 }).toBe(5);
    await other.close();
  });

  it('is told for every setting how long it takes, the plan among them', async () => {
    await expect.poll(() => page.locator('.readers tbody tr').count(), { timeout: 30_000 }).toBe(5);
    const rows = await textsOf(page.locator('.readers tbody tr'));
    expect(rows.filter((row) => row.includes('the plan'))).toHaveLength(1);
    // Column by column: the hotter, the shorter the bake.
    const bakes = (await textsOf(page.locator('.readers tbody td:nth-of-type(2)'))).map((text) =>
      Number.parseFloat(text.replace('½', '.5')),
    );
    expect(bakes).toEqual([...bakes].sort((a, b) => b - a));
    expect(bakes[0]).toBeGreaterThan(1.5 * bakes.at(-1)!);
    expect(await page.locator('.chart-panel .scatterlayer .trace').count()).toBe(3);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'For the recipe: CSV' }).click(),
    ]);
    const lines = readFileSync(await download.path(), 'utf8').split('\r\n');
    expect(lines[0]).toBe('highest_setting_degC,preheat_min,plate_top_degC,first_bake_min,rim_finish_min');
    expect(lines).toHaveLength(7);
  });

  it('gets another row for an oven of its own, and what helps there, the best first', async () => {
    await reader().fill('215');
    await reader().press('Enter');
    expect(await reader().inputValue()).toBe('215 °C');
    await expect.poll(() => page.locator('.readers tbody tr').count(), { timeout: 30_000 }).toBe(6);
    await tried();
    const helps = await textsOf(page.locator('.helps li .source'));
    const gains = helps.map((text) => {
      const match = /^done (?:(no) sooner|(.*?) (sooner|later))/.exec(text);
      expect(match, text).not.toBeNull();
      return match![1] === 'no' ? 0 : secondsOf(match![2]!) * (match![3] === 'sooner' ? 1 : -1);
    });
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    expect(gains[0]).toBeGreaterThan(0);
  });

  it('opens as a plan what helps most, with the bake that was promised, as one step', async () => {
    await tried();
    const best = page.locator('.helps li').first();
    const promised = /bake ((?:\d+ min)?(?: ?\d+ s)?)[,.]/.exec((await textsOf(best)).join())![1]!;
    await best.getByRole('button', { name: /^Open as a plan: / }).click();
    await settled(page);
    expect(await page.getByRole('tab', { name: 'Plan' }).getAttribute('aria-selected')).toBe('true');
    expect(secondsOf((await answersOf(page)).bake)).toBeCloseTo(secondsOf(promised), -1);
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toMatch(/^2[13]\d °C$/);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toBe('250 °C');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('keeps an entry that cannot be taken, with its reason', async () => {
    await reader().fill('9 min');
    await reader().press('Enter');
    expect(await reader().getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.reader-ask .reason').innerText()).toMatch(
      /Found "9 min"; allowed a temperature/,
    );
    await page.keyboard.press('Control+1');
    await reader().waitFor({ state: 'detached' });
    await page.keyboard.press('Control+3');
    expect(await reader().inputValue()).toBe('9 min');
    expect(await reader().getAttribute('aria-invalid')).toBe('true');
    await reader().fill('700 °C');
    await reader().press('Enter');
    expect(await page.locator('.reader-ask .reason').innerText()).toMatch(/allowed 60 °C to 500 °C/);
    await reader().press('Escape');
    expect(await reader().getAttribute('aria-invalid')).toBeNull();
  });
});

describe('for everyone', () => {
  it('axe finds nothing in either theme, and every stop of the tab key has a name and a visible focus', async () => {
    await tried();
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    await page.getByRole('tab', { name: 'Adjust' }).focus();
    const stops = await tabStops(page, 80);
    expect(stops.filter(({ name, ring }) => name === '' || !ring)).toEqual([]);
    expect(stops.length).toBeLessThan(80);
  });
});
