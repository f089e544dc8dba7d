/** The view Amounts: every figure can be typed in, what follows is worked out, and undo takes it back. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { tabStops, violations } from '../support/windowAccess.ts';
import { tempFolder } from '../support/tempFolder.ts';
import { openWindow, settled } from '../support/window.ts';

const { browser, open } = sharedWindow();
let page: Page;

beforeEach(async () => {
  page = await open();
  await page.keyboard.press('Control+4');
});

/** A cell by its name, whether it is held or not. */
function cell(name: string) {
  return page.getByRole('textbox', { name: new RegExp(`^${name}(, held)?$`) });
}
async function enter(name: string, text: string): Promise<void> {
  await cell(name).fill(text);
  await cell(name).press('Enter');
}
async function figure(name: string): Promise<number> {
  return Number.parseFloat(await cell(name).inputValue());
}
async function isHeld(name: string): Promise<boolean> {
  return (await cell(name).getAttribute('aria-label'))!.endsWith(', held');
}

describe('the dough', () => {
  it('follows from one pizza more, and is taken back as one step', async () => {
    expect(await cell('All the dough').inputValue()).toBe('1000 g');
    await enter('Pizzas', '5');
    expect(await cell('All the dough').inputValue()).toBe('1250 g');
    // 1250 g x 100 / (100 + 62 + 0.2 + 2.5 + 1.5).
    expect(await figure('Flour, weight')).toBeCloseTo(752.1, -0.5);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await cell('All the dough').inputValue()).toBe('1000 g');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('shows what is held, and holds it', async () => {
    expect(await isHeld('One ball')).toBe(true);
    await enter('All the dough', '1200 g');
    expect([await isHeld('All the dough'), await isHeld('One ball')]).toEqual([true, false]);
    await enter('Pizzas', '3');
    expect(await cell('One ball').inputValue()).toBe('400 g');
    expect(await cell('All the dough').inputValue()).toBe('1200 g');
    // A ball is kept finer than it is shown; what was typed in stays what it was.
    await enter('All the dough', '1000 g');
    expect(await cell('One ball').inputValue()).toBe('333 g');
    expect(await cell('All the dough').inputValue()).toBe('1000 g');
  });

  it('takes a weight as part of the formula, or as what there is', async () => {
    const flour = await figure('Flour, weight');
    await enter('Water, weight', String(Math.round(0.7 * flour)));
    expect(await figure('Water, percent of flour')).toBeCloseTo(70, 0);
    expect(await figure('Flour, weight')).toBeCloseTo(flour, -0.5);
    await page.getByLabel('A weight typed in').selectOption('ball');
    await enter('Flour, weight', '400');
    expect(await figure('Water, percent of flour')).toBeCloseTo(70, 0);
    expect(await figure('Flour, weight')).toBe(400);
    expect(await isHeld('Flour, weight')).toBe(true);
    await page.getByLabel('A weight typed in').selectOption('recipe');
  });

  it('keeps a wrong entry with its reason until Escape', async () => {
    await enter('One ball', '9.5 s');
    expect(await cell('One ball').inputValue()).toBe('9.5 s');
    expect(await cell('One ball').getAttribute('aria-invalid')).toBe('true');
    const reason = await cell('One ball').getAttribute('aria-describedby');
    expect(await page.locator(`[id="${reason!}"]`).innerText()).toMatch(/Found "9\.5 s"; allowed a mass/);
    await cell('One ball').press('Escape');
    expect(await cell('One ball').inputValue()).toBe('250 g');
    await enter('Pizzas', '2.5');
    expect(await cell('Pizzas').getAttribute('aria-invalid')).toBe('true');
    await cell('Pizzas').press('Escape');
  });
});

describe('liquid and yeast', () => {
  it('warmer liquid makes a warmer dough that is ready sooner', async () => {
    const before = await cell('Ready after').inputValue();
    await enter('Pour the liquid at', '35');
    expect(await cell('Pour the liquid at').inputValue()).toBe('35 °C');
    const wanted = page.getByLabel('Dough wanted at', { exact: true });
    expect(Number.parseFloat(await wanted.inputValue())).toBeGreaterThan(26);
    expect(await cell('Ready after').inputValue()).not.toBe(before);
    await enter('Pour the liquid at', '60');
    expect(await cell('Pour the liquid at').getAttribute('aria-invalid')).toBe('true');
    await cell('Pour the liquid at').press('Escape');
  });

  it('yeast follows the time there is, and the plan of the evening with it', async () => {
    await enter('Ready after', '3 h');
    const dose = await figure('Dose');
    expect(dose).toBeGreaterThan(0.2);
    // The dose is written with two digits.
    expect(await cell('Ready after').inputValue()).toMatch(/^(3 h( \d min)?|2 h 5\d min)$/);
    await settled(page);
    await page.getByRole('button', { name: 'Take the yeast for 12 h' }).click();
    expect(await figure('Dose')).toBeLessThan(0.2);
  });
});

describe('sauce, cheese and the list', () => {
  it('sauce goes by pizza, by area, for all and by the can', async () => {
    await enter('By area', '0.15');
    // Pi/4 (30 - 2 x 1.27)2 cm2 are 592 cm2 inside the bare rim.
    expect(await figure('On one pizza')).toBeCloseTo(88.8, 0);
    await enter('For all', '400 g');
    expect(await cell('On one pizza').inputValue()).toBe('100 g');
    await enter('Cans', '2');
    expect(await cell('For all').inputValue()).toBe('800 g');
    expect(await page.getByText('Nothing is left over.').count()).toBe(1);
  });

  it('the list is ticked, keeps its ticks in other views, and follows the amounts', async () => {
    const list = page.getByRole('region', { name: 'Shopping list' });
    await list.getByRole('checkbox', { name: /salt/ }).check();
    expect(await list.getByRole('status').innerText()).toBe('5 of 6 still to get.');
    await page.keyboard.press('Control+1');
    await page.getByRole('tab', { name: 'Amounts' }).click();
    expect(await list.getByRole('checkbox', { name: /salt/ }).isChecked()).toBe(true);
    await enter('Pizzas', '8');
    expect(await list.getByRole('listitem').filter({ hasText: 'mozzarella' }).innerText()).toContain('960 g');
  });
});

describe('what is kept', () => {
  it('ticks over a restart, with their evening, also under a new title', async () => {
    const data = tempFolder();
    const first = await openWindow(browser(), { data });
    await first.page.keyboard.press('Control+4');
    await first.page.getByRole('checkbox', { name: /salt/ }).check();
    await first.page.getByRole('checkbox', { name: /flour/ }).check();
    await first.page.getByRole('checkbox', { name: /flour/ }).uncheck();
    await first.page.getByLabel('Title of the evening').fill('Anna comes round');
    await first.page.getByLabel('Title of the evening').press('Enter');
    expect(await first.page.getByRole('checkbox', { name: /salt/ }).isChecked()).toBe(true);
    await first.page.keyboard.press('Control+s');
    await expect.poll(() => first.page.locator('.saved').innerText()).toMatch(/^saved/);
    await first.close();

    const second = await openWindow(browser(), { data });
    await second.page.keyboard.press('Control+4');
    // The built-in evening has another title.
    const ticked = second.page
      .getByRole('region', { name: 'Shopping list' })
      .getByRole('checkbox', { checked: true });
    expect(await ticked.count()).toBe(0);
    await second.page.getByRole('button', { name: 'Open' }).click();
    await second.page.getByRole('menuitem', { name: /Anna/ }).click();
    await expect.poll(() => ticked.count()).toBe(1);
    expect(await second.page.getByRole('checkbox', { name: /salt/ }).isChecked()).toBe(true);
    expect([...first.errors, ...second.errors]).toEqual([]);
    await second.close();
  });

  it('a wrong entry, with its reason, while other views are shown; not in another plan', async () => {
    await enter('One ball', 'heavy');
    await page.keyboard.press('Control+1');
    await cell('One ball').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+4');
    expect(await cell('One ball').inputValue()).toBe('heavy');
    expect(await cell('One ball').getAttribute('aria-invalid')).toBe('true');
    expect(await page.getByText('Found "heavy"; allowed a mass').count()).toBe(1);
    page = await open();
    expect(await cell('One ball').inputValue()).toBe('250 g');
    expect(await cell('One ball').getAttribute('aria-invalid')).toBeNull();
  });

  it('differences of temperature follow the units', async () => {
    const why = page.getByText("The bakers' rule of three temperatures");
    expect(await why.innerText()).toMatch(/\d\sK\b/u);
    await page.getByRole('radio', { name: '°F · US' }).click();
    expect(await why.innerText()).toMatch(/\d\sF degrees/u);
    expect(await why.innerText()).not.toMatch(/\d\sK\b/u);
    await page.getByRole('radio', { name: '°C · metric' }).click();
  });
});

describe('for everyone', () => {
  it('axe finds nothing, with a wrong entry too, in both themes', async () => {
    expect(await violations(page)).toEqual([]);
    await enter('One ball', 'heavy');
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    await cell('One ball').press('Escape');
  });

  it('every stop of the tab key has a name and a visible focus', async () => {
    await page.getByRole('tab', { name: 'Amounts' }).focus();
    const stops = await tabStops(page, 150);
    expect(stops.filter(({ name, ring }) => name === '' || !ring)).toEqual([]);
    expect(stops.map(({ name }) => name)).toContain('Water, weight');
    expect(stops.length).toBeLessThan(150);
  });
});
