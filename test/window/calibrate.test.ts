/** The view Calibrate: pasted readings, what they tell, the oven taken into the plan and back. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { answersOf, openWindow, settled } from '../support/window.ts';
import { violations } from '../support/windowAccess.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

/** A weaker, hotter oven than the example's: invented. */
const readings = [
  'time,place,temperature',
  '10 min,plateTop,72 degC',
  '20 min,plateTop,152 degC',
  '30 min,plateTop,217 degC',
  '40 min,plateTop,264 degC',
  '50 min,plateTop,272 degC',
  '60 min,chimney,275 degC',
  '62 min,pizza 1 in,',
  '64 min,plateTop pizza 1,236 degC',
  '68 min,pizza 1 out,golden',
].join('\n');

describe('readings of a preheat', () => {
  it('tell of the oven, move the plan when asked, and undo brings it back', async () => {
    const { page, errors, close } = await openWindow(browser);
    const before = await answersOf(page);
    await page.getByRole('tab', { name: 'Calibrate' }).click();
    expect(await violations(page)).toEqual([]);
    const text = page.getByLabel('Readings', { exact: true });
    await text.fill('nothing of the sort');
    await page.getByRole('button', { name: 'Learn', exact: true }).click();
    await page.getByText(/readings.*: found/u).waitFor({ timeout: 20_000 });
    await text.fill(readings);
    await page.getByRole('button', { name: 'Learn', exact: true }).click();
    await page.getByRole('button', { name: 'Plan with this oven' }).waitFor({ timeout: 30_000 });
    expect(await page.locator('.calibrate-column caption').innerText()).toBe(
      '6 readings, 1 bake, 1 left out',
    );
    expect(await page.locator('.calibrate-column').innerText()).toContain('Line 7: left out place "chimney"');
    const told = await page.locator('.calibrate-tables').innerText();
    expect(told).toMatch(/Power of the elements\s+1\.\d+ kW/u);
    expect(told.replaceAll(/\s+/gu, ' ')).toMatch(/As learned 1 6 min \d\d \d\d \d\d/u);
    await page.getByText('Pizza 1: in at 62').waitFor();
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await text.fill(`${readings}\n70 min,plateTop,250 degC`);
    await page.getByText('The readings have changed since').waitFor();
    await page.getByRole('button', { name: 'Plan with this oven' }).click();
    await page.getByRole('tab', { name: 'Plan' }).click();
    await expect
      .poll(async () => (await answersOf(page)).ovenOn, { timeout: 20_000 })
      .not.toBe(before.ovenOn);
    await page.keyboard.press('Control+z');
    await settled(page);
    await expect.poll(async () => (await answersOf(page)).ovenOn, { timeout: 20_000 }).toBe(before.ovenOn);
    expect(errors).toEqual([]);
    await close();
  });

  it('stop being worked out on Escape, and what was learned before stays', async () => {
    const { page, errors, close } = await openWindow(browser);
    await page.getByRole('tab', { name: 'Calibrate' }).click();
    await page.getByLabel('Readings', { exact: true }).fill(readings);
    const learn = page.getByRole('button', { name: 'Learn', exact: true });
    await learn.click();
    const keep = page.getByRole('button', { name: 'Plan with this oven' });
    await keep.waitFor({ timeout: 30_000 });
    await learn.click();
    await page.getByRole('button', { name: 'Stop (Escape)' }).waitFor();
    await page.keyboard.press('Escape');
    await learn.waitFor();
    // The key has kept the focus, and learns again.
    expect(await learn.evaluate((key) => key === document.activeElement)).toBe(true);
    expect(await keep.isVisible()).toBe(true);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Stop (Escape)' }).waitFor();
    await learn.waitFor({ timeout: 30_000 });
    expect(await keep.isVisible()).toBe(true);
    expect(errors).toEqual([]);
    await close();
  });
});
