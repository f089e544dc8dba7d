/** The view Tonight, against a clock that the test moves: alarms, sleep, a clock set back, a reload; a rehearsal. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { minutesOf, openWindow, settled, writtenPlan, type OpenedWindow } from '../support/window.ts';
import { violations } from '../support/windowAccess.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const minute = 60_000;

/** The built-in evening at an hour of its own day, on a clock that stands still until it is moved. */
async function openAt(at: string): Promise<OpenedWindow> {
  const opened = await openWindow(browser, { at });
  await opened.page.getByRole('tab', { name: 'Tonight' }).click();
  return opened;
}

const title = (page: Page): Promise<string> => page.locator('.tonight-title').innerText();
const alarms = async (page: Page): Promise<string> =>
  (await page.locator('.ringing').innerText()).replaceAll(/\s+/gu, ' ');

/** Lets the clock run, and the window draw. */
async function pass(page: Page, milliseconds: number): Promise<void> {
  await page.clock.runFor(milliseconds);
}

/** A long while: timers fire once at its end, as after sleep, and then run. */
async function skip(page: Page, milliseconds: number): Promise<void> {
  await page.clock.fastForward(milliseconds - 2000);
  await pass(page, 2000);
}

/** Says of whatever stands in large type that it is done, until a title comes up. */
async function doUntil(page: Page, wanted: RegExp): Promise<void> {
  for (let i = 0; i < 20 && !wanted.test(await title(page)); i++) {
    await page.keyboard.press('d');
    await pass(page, 1000);
  }
  expect(await title(page)).toMatch(wanted);
}

/** In mid-bake of the first pizza, every alarm before it heard. */
async function midBake(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Begin the evening' }).click();
  await pass(page, 1000);
  await skip(page, 5 * minute);
  await doUntil(page, /Oven on/u);
  await page.keyboard.press('d');
  await skip(page, 40 * minute);
  await doUntil(page, /Pizza 1 bakes|Turn pizza 1|Shape pizza 2/u);
  const heard = page.locator('.ringing-one button');
  while ((await heard.count()) > 0) await heard.first().click();
  await pass(page, 1000);
}

describe('an evening that runs', () => {
  it('rings at its instant until it is heard, once; one more minute moves what follows', async () => {
    const { page, errors, close } = await openAt('2026-01-31T18:30:00+01:00');
    expect(await title(page)).toMatch(/^Oven on, /u);
    // What has gone by is said, and what still comes is listed.
    expect(await page.locator('.tonight-how').innerText()).toMatch(/^The plan began 5 h 4 min ago/u);
    expect(await page.locator('.small-table').innerText()).not.toContain('Mix');
    await page.getByRole('button', { name: 'Begin the evening' }).click();
    await pass(page, 1000);
    // Mixed and balled as planned: nothing of that rings.
    expect(await alarms(page)).toBe('');
    expect(await title(page)).toBe('Rest as balls');
    await skip(page, 18 * minute);
    expect(await alarms(page)).toContain('Oven on');
    await pass(page, 20_000);
    // In another view it rings as well; another plan silences it, and that is said, with the way back.
    await page.keyboard.press('Control+4');
    const notice = page.getByRole('alert').filter({ hasText: 'Show Tonight' });
    expect(await notice.innerText()).toContain('Oven on');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: /^New/u }).click();
    await settled(page);
    await pass(page, 1000);
    expect(await notice.count()).toBe(0);
    await page.getByText('An evening runs in the plan before').waitFor();
    await page.getByRole('button', { name: 'Go back to it' }).click();
    await settled(page);
    await pass(page, 1000);
    await notice.getByRole('button', { name: 'Show Tonight' }).click();
    await page.locator('.ringing-one button').first().click();
    await skip(page, 2 * minute);
    expect(await alarms(page)).not.toContain('Oven on');
    await page.keyboard.press('g');
    await pass(page, 1000);
    expect(await page.locator('.tonight-moved').innerText()).toMatch(/later/u);
    // Large type and large keys.
    const size = await page
      .locator('.tonight-title')
      .evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
    expect(size).toBeGreaterThanOrEqual(40);
    for (const key of await page.locator('.tonight-page button').all())
      expect((await key.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    expect(errors).toEqual([]);
    await close();
  });

  it('three hours of sleep in mid-bake: missed, with its hour, and not rung again', async () => {
    const { page, close } = await openAt('2026-01-31T18:45:00+01:00');
    await midBake(page);
    await page.clock.fastForward(180 * minute);
    await pass(page, 1000);
    expect(await alarms(page)).toMatch(
      /Pizza 1 out missed at \d\d:\d\d, 2 h \d+ min ago|Pizza 1 out missed/u,
    );
    const ringing = await page.locator('.ringing-one').count();
    await page.locator('.ringing-one button').first().click();
    await pass(page, 10_000);
    expect(await page.locator('.ringing-one').count()).toBe(ringing - 1);
    await close();
  });

  it('a clock set back an hour in mid-bake: said, and the bake goes on as it was', async () => {
    const { page, close } = await openAt('2026-01-31T18:45:00+01:00');
    await midBake(page);
    const left = (): Promise<string> =>
      page.locator('[data-step="bake-1"] .timer-count, .tonight-count').last().innerText();
    const seconds = async (): Promise<number> => {
      const [m, s] = (await left()).replace(/ min$/u, '').split(':').map(Number);
      return 60 * m! + s!;
    };
    const before = await seconds();
    const now = await page.evaluate(() => Date.now());
    await page.clock.setSystemTime(now - 60 * minute);
    await pass(page, 1000);
    await expect.poll(() => page.locator('.tonight-moved').innerText()).toMatch(/clock went back by 60 min/u);
    expect(Math.abs((await seconds()) - before)).toBeLessThan(10);
    expect(await alarms(page)).not.toContain('Pizza 1 out');
    await close();
  });

  it('a reload in mid-bake: the evening goes on where it was', async () => {
    const { page, close } = await openAt('2026-01-31T18:45:00+01:00');
    await midBake(page);
    const before = await title(page);
    await pass(page, 5000);
    page.once('dialog', (dialog) => void dialog.accept());
    await page.reload();
    await pass(page, 2000);
    expect(await page.getByRole('alertdialog').innerText()).toContain('its alarms ring when you go on');
    await page.getByRole('button', { name: 'Go on with them' }).click();
    await settled(page);
    await page.getByRole('tab', { name: 'Tonight' }).click();
    await pass(page, 2000);
    expect(await title(page)).toBe(before);
    await close();
  });
});

describe('an evening and its end', () => {
  it('confirms once however the hand slips, takes back, leaves out, ends, and is put on another day', async () => {
    const { page, errors, close } = await openAt('2026-01-31T18:50:00+01:00');
    await page.getByRole('button', { name: 'Begin the evening' }).click();
    await pass(page, 1000);
    await page.getByRole('button', { name: 'The oven is on' }).dblclick();
    await pass(page, 1000);
    expect(await title(page)).toBe('The plate heats up');
    await page.getByRole('button', { name: 'Take back' }).click();
    await pass(page, 1000);
    expect(await title(page)).toBe('Oven on');
    await page.keyboard.press('d');
    await skip(page, 40 * minute);
    await doUntil(page, /Pizza 1 in/u);
    await page.getByRole('button', { name: 'Leave pizza 1 out' }).click();
    await pass(page, 1000);
    expect(await page.locator('.tonight').innerText()).not.toMatch(/[Pp]izza 1/u);
    await page.getByRole('button', { name: 'End the evening' }).click();
    await pass(page, 1000);
    expect(await title(page)).toBe('The evening is over');
    expect(await alarms(page)).toBe('');
    await page.getByRole('button', { name: 'Take back' }).click();
    await pass(page, 1000);
    expect(await title(page)).not.toBe('The evening is over');
    await page.getByRole('button', { name: 'End the evening' }).click();
    await pass(page, 1000);
    await page.getByRole('button', { name: 'Plan the next one' }).click();
    await settled(page);
    expect(await page.getByRole('tab', { name: 'Plan' }).getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Control+5');
    await pass(page, 1000);
    expect(await title(page)).toBe('Mix, Sat 13:26');
    expect(await page.locator('.tonight-how').innerText()).toContain('7 Feb');
    expect(errors).toEqual([]);
    await close();
  });

  it('of a plan that names no hour stays the evening that was begun, after its supper too', async () => {
    const { page, close } = await openWindow(browser, {
      at: '2026-01-31T19:10:00+01:00',
      file: writtenPlan({ title: 'At no hour' }),
    });
    await page.keyboard.press('Control+5');
    await page.getByRole('button', { name: 'Begin the evening' }).click();
    await pass(page, 1000);
    await skip(page, 30 * minute);
    await page.getByRole('button', { name: 'Guests 10 min late' }).click();
    await settled(page);
    await pass(page, 1000);
    // Another evening would stand there with its day.
    expect(await page.locator('.small-table').innerText()).not.toContain('Sun');
    await close();
  });
});

describe('a rehearsal', () => {
  it('finds out that its oven is weaker, says by how much, and leaves nothing behind', async () => {
    const { page, errors, close } = await openWindow(browser);
    await page.getByRole('tab', { name: 'Tonight' }).click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: /^Rehearse/u }).click();
    await expect.poll(() => title(page), { timeout: 20_000 }).toBe('Oven on');
    await expect.poll(() => alarms(page), { timeout: 20_000 }).toContain('Oven on');
    await page.keyboard.press('d');
    const figure = page.getByLabel('Reading, °C');
    for (const from of [80, 130]) {
      const shown = async (): Promise<number> =>
        Number(/(\d+) °C on the plate/u.exec(await page.locator('.reading').innerText())?.[1] ?? 0);
      await expect.poll(shown, { timeout: 30_000 }).toBeGreaterThan(from);
      await figure.fill(String(await shown()));
      // Two keystrokes: the figure stands, the place is one letter.
      await figure.press('p');
      expect(await figure.inputValue()).toBe('');
    }
    await expect
      .poll(() => page.locator('section:has(.plate-ready)').innerText(), { timeout: 20_000 })
      .toContain('before the readings');
    await expect
      .poll(() => page.locator('.tonight-moved').innerText(), { timeout: 20_000 })
      .toMatch(/Plate ready .*, \d\d:\d\d|where it was/u);
    const clocks = await page
      .locator('.small-table tr')
      .filter({ hasText: 'Pizza 4 in' })
      .locator('td')
      .allInnerTexts();
    expect(minutesOf(clocks[0]!)).toBeGreaterThan(minutesOf(clocks[1]!) + 3);
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'End it' }).click();
    expect(await page.getByRole('button', { name: 'Begin the evening' }).count()).toBe(1);
    expect(errors).toEqual([]);
    await close();
  });
});
