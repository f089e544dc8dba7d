/** Leaving a view by key loses nothing: what is half typed is taken, folds stay open, and the focus is not lost. */
import { describe, expect, it } from 'vitest';
import type { Locator, Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { complete, settled } from '../support/window.ts';

const shared = sharedWindow();

async function open(): Promise<Page> {
  const page = await shared.open();
  await page.keyboard.press('Control+1');
  return page;
}
/** By the pattern of its label, whether or not a lock says that it is held. */
function fieldOf(page: Page, label: string): Locator {
  return page.getByLabel(new RegExp(`^${label}(, held)?$`, 'u')).first();
}

/** Types without taking the entry, then goes to another view and back. */
async function typedAndLeft(page: Page, label: string, text: string, view: string): Promise<void> {
  await fieldOf(page, label).fill(text);
  await page.keyboard.press(view === '3' ? 'Control+4' : 'Control+3');
  await fieldOf(page, label).waitFor({ state: 'detached' });
  await page.keyboard.press(`Control+${view}`);
  await settled(page);
}

describe('a field that is half typed when its view is left by key', () => {
  it('is taken in Plan, as one step of the history', async () => {
    const page = await open();
    await typedAndLeft(page, 'Thickness', '16', '1');
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('16 mm');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('8 mm');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('stays as typed with its reason where it cannot be taken', async () => {
    const page = await open();
    await typedAndLeft(page, 'Thickness', 'thick', '1');
    const field = page.getByLabel('Thickness', { exact: true });
    expect(await field.inputValue()).toBe('thick');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
  });

  it('is taken in Compare, Adjust and Amounts too', async () => {
    const page = await open();
    for (const [view, label, text, shown] of [
      ['4', 'One ball', '230', '230 g'],
      ['3', 'The highest setting of the reader.s oven', '225', '225 °C'],
      ['2', 'Thickness', '18', '18 mm'],
    ] as const) {
      await page.keyboard.press(`Control+${view}`);
      await typedAndLeft(page, label, text, view);
      expect(await fieldOf(page, label).inputValue(), label).toBe(shown);
    }
  });
});

describe('a view that is left', () => {
  it('keeps what was folded open, until another plan is opened', async () => {
    const page = await open();
    const dough = page.getByRole('button', { name: /^Dough/ });
    await dough.click();
    await page.getByRole('button', { name: 'More of the dough' }).click();
    await page.keyboard.press('Control+4');
    await page.keyboard.press('Control+1');
    expect(await dough.getAttribute('aria-expanded')).toBe('true');
    expect(await page.getByLabel('Salt', { exact: true }).isVisible()).toBe(true);
    await open();
    expect(await dough.getAttribute('aria-expanded')).toBe('false');
  });

  it('hands the focus to the tab of the one that opens, unless it is elsewhere', async () => {
    const page = await open();
    await complete(page);
    await page.getByLabel('Thickness', { exact: true }).focus();
    await page.keyboard.press('Control+3');
    const focused = () => page.evaluate(() => document.activeElement?.textContent);
    await expect.poll(focused).toBe('Adjust');
    await page.keyboard.press('Control+2');
    await expect.poll(focused).toBe('Compare');
    await page.getByRole('button', { name: 'Open' }).focus();
    await page.keyboard.press('Control+1');
    await page.locator('#answer-bake').waitFor();
    expect(await focused()).toContain('Open');
  });
});
