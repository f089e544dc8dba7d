/** Ovens learned, in the view Calibrate: kept, used, renamed, forgotten, shared. The ovens and readings are invented. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { writeOven, type LearnedOven } from '../../physics/calibrate/learnedOven.ts';
import { tempFolder } from '../support/tempFolder.ts';
import { sharedWindow } from '../support/sharedWindow.ts';
import { answersOf, openWindow, settled } from '../support/window.ts';
import { violations } from '../support/windowAccess.ts';

const shared = sharedWindow();

const weak: LearnedOven = {
  format: 'hearthclock/oven',
  version: 1,
  name: 'Weak one',
  versions: [
    {
      learnedAt: '2026-02-01T20:00:00+01:00',
      oven: { preset: 'european', power: { bottom: '0.9 kW', top: '0.8 kW' }, thermostatOffset: '-12 K' },
      known: { power: 4 },
    },
    {
      learnedAt: '2026-01-10T20:00:00+01:00',
      oven: { preset: 'european', power: { bottom: '1.1 kW', top: '1 kW' }, thermostatOffset: '3 K' },
    },
  ],
};

async function ovensOf(page: Page): Promise<Page> {
  await page.getByRole('tab', { name: 'Calibrate' }).click();
  await page.getByRole('heading', { name: 'Ovens learned' }).waitFor();
  return page;
}

async function openOven(page: Page, text: string): Promise<void> {
  await page
    .getByLabel('Open an oven file')
    .setInputFiles({ name: 'weak.oven.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

function oven(page: Page, name: string) {
  return page.getByRole('listitem').filter({ has: page.getByRole('heading', { name, exact: true }) });
}
const press = (page: Page, does: string, name: string): Promise<void> =>
  page.getByRole('button', { name: `${does}: ${name}`, exact: true }).click();

describe('an oven from a file', () => {
  it('is used in one step that undo takes back, renamed, forgotten and brought back, saved as it was', async () => {
    const page = await ovensOf(await shared.open());
    await openOven(page, writeOven(weak));
    await oven(page, 'Weak one').waitFor();
    expect((await oven(page, 'Weak one').innerText()).replaceAll(/\s+/gu, ' ')).toContain(
      '900 W below, 800 W above, 12 degrees cooler than the dial',
    );
    expect(await violations(page)).toEqual([]);

    await page.getByRole('tab', { name: 'Plan' }).click();
    const before = await answersOf(page);
    await ovensOf(page);
    await press(page, 'Use', 'Weak one');
    await page.getByText('The plan now has “Weak one”').waitFor();
    await page.getByRole('tab', { name: 'Plan' }).click();
    await expect
      .poll(async () => (await answersOf(page)).ovenOn, { timeout: 20_000 })
      .not.toBe(before.ovenOn);
    await page.keyboard.press('Control+z');
    await settled(page);
    await expect.poll(() => answersOf(page), { timeout: 20_000 }).toEqual(before);

    await ovensOf(page);
    await press(page, 'Rename', 'Weak one');
    const focusIsOn = (name: string): Promise<void> =>
      expect
        .poll(() =>
          page.evaluate(() => {
            const here = document.activeElement;
            return here?.getAttribute('aria-label') ?? here?.textContent;
          }),
        )
        .toBe(name);
    await page.getByRole('button', { name: 'Cancel' }).click();
    await focusIsOn('Rename: Weak one');
    await press(page, 'Rename', 'Weak one');
    // The field has the focus and its text is chosen.
    await page.keyboard.type('Cabin');
    await page.keyboard.press('Enter');
    await oven(page, 'Cabin').waitFor();
    await focusIsOn('Rename: Cabin');
    await press(page, 'Forget', 'Cabin');
    await page.getByText('“Cabin” is forgotten.').waitFor();
    await expect.poll(() => oven(page, 'Cabin').count()).toBe(0);
    await focusIsOn('Ovens learned');
    await page.getByRole('button', { name: 'Bring it back' }).click();
    await oven(page, 'Cabin').waitFor();

    const [download] = await Promise.all([
      page.waitForEvent('download'),
      press(page, 'Save as file', 'Cabin'),
    ]);
    expect(download.suggestedFilename()).toBe('Cabin.oven.json');
    expect(readFileSync(await download.path(), 'utf8')).toBe(writeOven({ ...weak, name: 'Cabin' }));
  });

  it('goes back to what it was before, and is there when the window comes up again', async () => {
    const page = await ovensOf(await shared.open());
    await openOven(page, writeOven({ ...weak, name: 'Old friend' }));
    const friend = oven(page, 'Old friend');
    await friend.getByText('1 other version').click();
    expect(await violations(page)).toEqual([]);
    await friend.getByRole('button', { name: 'Go back to this one' }).click();
    await expect
      .poll(async () => (await friend.locator('p').first().innerText()).replaceAll(/\s+/gu, ' '))
      .toContain('1.1 kW below');
    await page.reload();
    await settled(page);
    await ovensOf(page);
    await friend.waitFor();
    expect(await friend.locator('p').first().innerText()).toMatch(/10 Jan 2026/u);
  });

  it('is refused by field, value and what is allowed; a newer one too', async () => {
    const page = await ovensOf(await shared.open());
    await openOven(page, writeOven({ ...weak, name: 'x'.repeat(61) }));
    await page.getByText('weak.oven.json was not opened.').waitFor();
    await page.getByText(/name: found .*; allowed one line of 1 to 60 characters/u).waitFor();
    await openOven(page, writeOven(weak).replace('"version": 1', '"version": 2'));
    await page.getByText('version: found 2, written by a newer program; allowed 1').waitFor();
  });
});

describe('an oven learned from readings', () => {
  it('is kept under a name; learned once more, it has a history', async () => {
    const page = await ovensOf(await shared.open());
    await page
      .getByLabel('Readings', { exact: true })
      .fill('time,place,temperature\n20 min,plateTop,152 degC\n40 min,plateTop,264 degC');
    await page.getByRole('button', { name: 'Learn', exact: true }).click();
    await page.getByLabel('Name of this oven').fill('At home', { timeout: 30_000 });
    await page.getByRole('button', { name: 'Keep this oven' }).click();
    await page.getByText('“At home” is kept under Ovens learned.').waitFor();
    expect(await oven(page, 'At home').innerText()).toMatch(/\d (k?W) below, /u);
    await page.getByRole('button', { name: 'Keep this oven' }).click();
    await oven(page, 'At home').getByText('1 other version').waitFor();
  });
});

describe('a list of ovens that cannot be read', () => {
  it('is left as it is, and says why', async () => {
    const data = tempFolder();
    writeFileSync(join(data, 'ovens.json'), '{"format":"hearthclock/ovens","version":7}');
    const { page, errors, close } = await openWindow(shared.browser(), { data });
    await ovensOf(page);
    await page.getByText('The ovens kept cannot be read and are left as they are.').waitFor();
    await page.getByText('version: found 7, written by a newer program; allowed 1').waitFor();
    await openOven(page, writeOven(weak));
    await page.getByText('Nothing was changed: the ovens kept cannot be read.').waitFor();
    expect(readFileSync(join(data, 'ovens.json'), 'utf8')).toBe('{"format":"hearthclock/ovens","version":7}');
    expect(errors).toEqual([]);
    await close();
  });
});
