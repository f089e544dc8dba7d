/** Handouts and settings from the window. */
import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { handoutIds } from '../../physics/handout/files.ts';
import { sharedWindow } from '../support/sharedWindow.ts';
import { violations } from '../support/windowAccess.ts';
import { enterInto, openWindow, settled, writtenPlan } from '../support/window.ts';

const { browser, open } = sharedWindow();

/** The window with a plan in place of the example. */
async function openPlan(file: string): Promise<Page> {
  const page = await open();
  const before = await page.locator('.window').getAttribute('data-opened');
  await page.getByLabel('Plan file').setInputFiles(file);
  await page.locator(`.window:not([data-opened="${before ?? ''}"])`).waitFor();
  await settled(page);
  return page;
}

async function handedOut(page: Page, choice: string): Promise<Download> {
  await page.getByRole('button', { name: 'Hand out' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('menuitem', { name: choice, exact: true }).click(),
  ]);
  return download;
}

describe('the menu of handouts', () => {
  it('makes each of them from the plan as it stands, in the units shown', async () => {
    const file = writtenPlan({ title: 'Pizza/Friday', pizzas: { count: 2 } });
    const page = await openPlan(file);
    const choices = [
      ['Page for the fridge', 'PizzaFriday-page.html', '250&nbsp;°C'],
      ['Calendar with alarms', 'PizzaFriday-evening.ics', 'BEGIN:VALARM'],
      ['The plan itself', 'PizzaFriday.hearthclock', '"title": "Pizza/Friday"'],
      ['Recipe block, HTML', 'PizzaFriday-recipe-block.html', '<caption>'],
      ['Recipe block, Markdown', 'PizzaFriday-recipe-block.md', '| --- |'],
      ['Recipe block, plain text', 'PizzaFriday-recipe-block.txt', '(as here)'],
      ['Recipe for other programs', 'PizzaFriday-recipe.jsonld', '"@type": "Recipe"'],
      ['Curves, CSV', 'PizzaFriday-curves.csv', 'time_s,instant,'],
      ['Curves, CSV with decimal commas', 'PizzaFriday-curves-for-spreadsheets.csv', 'time_s;clock;'],
    ] as const;
    expect(choices).toHaveLength(handoutIds.length);
    for (const [choice, name, holds] of choices) {
      const download = await handedOut(page, choice);
      expect(download.suggestedFilename()).toBe(name);
      expect(readFileSync(await download.path(), 'utf8')).toContain(holds);
    }
    await page.getByRole('radio', { name: '°F · US' }).click();
    const us = await handedOut(page, 'Page for the fridge');
    expect(readFileSync(await us.path(), 'utf8')).toContain('482&nbsp;°F');
    await page.getByRole('radio', { name: '°C · metric' }).click();
  });

  it('writes the calendar for the clock on the wall, across a change of summer time', async () => {
    const file = writtenPlan({
      anchor: { kind: 'eatAt', time: '2026-03-29T19:30:00+02:00' },
      pizzas: { count: 1 },
      dough: {
        phases: [
          { where: 'refrigerator', duration: '24 h', as: 'bulk' },
          { where: 'room', duration: '4 h', as: 'balls' },
        ],
      },
    });
    const page = await openPlan(file);
    const calendar = await handedOut(page, 'Calendar with alarms');
    const root = new ICAL.Component(ICAL.parse(readFileSync(await calendar.path(), 'utf8')) as unknown[]);
    const events = root.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component));
    const cut = events.find(({ summary }) => summary.includes('out'))!;
    expect(cut.endDate.toJSDate().toISOString()).toBe('2026-03-29T17:30:00.000Z');
    const paper = await handedOut(page, 'Page for the fridge');
    expect(readFileSync(await paper.path(), 'utf8')).toContain('The clocks go forward by 60&nbsp;min');
  });

  it('says why where the plan cannot be computed', async () => {
    const file = writtenPlan({
      oven: { preset: 'european', setpoint: '180 degC', power: { bottom: '400 W', top: '300 W' } },
      pizzas: { count: 1 },
    });
    const page = await openPlan(file);
    await enterInto(page, 'Set to', '450 °C');
    await page.getByRole('button', { name: 'Hand out' }).click();
    await page.getByRole('menuitem', { name: 'Curves, CSV', exact: true }).click();
    const notice = page.getByRole('alert').filter({ hasText: 'could not be made of this plan' });
    await notice.waitFor();
    expect(await notice.innerText()).toContain('oven.setpoint');
  });
});

describe('menu and sheet', () => {
  it('axe finds nothing in them in either theme', async () => {
    const page = await open();
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      await page.getByRole('button', { name: 'Hand out' }).click();
      await page.getByRole('menu', { name: 'Hand out' }).waitFor();
      expect(await violations(page, true)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+,');
      await page.getByRole('dialog', { name: 'Settings' }).waitFor();
      expect(await violations(page, true)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog', { name: 'Settings' }).waitFor({ state: 'hidden' });
      await page.getByRole('button', { name: 'More', exact: true }).click();
      await page.getByRole('menuitem', { name: 'About Hearthclock' }).click();
      const about = page.getByRole('dialog', { name: 'About Hearthclock' });
      await about.getByRole('button', { name: 'Show those licences' }).click();
      // One of those that the window is built from.
      await about.getByText('react-aria-components 1.22.1').waitFor();
      expect(await violations(page, true)).toEqual([]);
      await page.keyboard.press('Escape');
      await about.waitFor({ state: 'hidden' });
    }
  });
});

describe('the settings', () => {
  it('open by key, by the menu of the window and by that of the shell, and hold', async () => {
    const { page, served, errors, close } = await openWindow(browser());
    const sheet = page.getByRole('dialog', { name: 'Settings' });
    await page.keyboard.press('Control+,');
    await sheet.getByRole('radio', { name: '°F · US' }).check();
    await sheet.getByRole('radio', { name: 'Iron, dark' }).check();
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'hidden' });
    expect(await page.locator('html').getAttribute('data-theme')).toBe('iron');
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Settings' }).click();
    expect(await sheet.getByRole('radio', { name: '°F · US' }).isChecked()).toBe(true);
    await sheet.getByRole('checkbox', { name: 'Single letters work as keys' }).uncheck();
    await sheet.getByRole('button', { name: 'Close' }).click();
    await sheet.waitFor({ state: 'hidden' });
    served.push('command', 'settings');
    await sheet.waitFor();
    expect(await sheet.getByRole('checkbox', { name: 'Single letters work as keys' }).isChecked()).toBe(
      false,
    );
    expect(errors).toEqual([]);
    await close();
  });
});
