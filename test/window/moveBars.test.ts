/** Bars of the clock taken hold of: what follows, one step of the history for a drag, and refusals with their reason. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { answersOf, complete, minutesOf, openWindow, settled, writtenPlan } from '../support/window.ts';

const { open, browser } = sharedWindow();
let page: Page;

beforeEach(async () => {
  page = await open();
});

const dose = async (): Promise<number> => {
  const field = page.getByLabel('Yeast dose', { exact: true });
  if (!(await field.isVisible())) await page.getByRole('button', { name: /^Dough/ }).click();
  return Number.parseFloat(await field.inputValue());
};

describe('the mix', () => {
  it('is moved by keys: sooner takes less yeast, the meal stays, undo brings it back', async () => {
    // The strip shows the whole evening; its beginning is brought into the chart.
    await page.getByRole('slider', { name: 'Part of the evening shown' }).press('Home');
    const mix = page.getByRole('slider', { name: /^Mix: the yeast follows/ });
    const [before, eat, yeast] = [
      await mix.getAttribute('aria-valuetext'),
      (await answersOf(page)).eat,
      await dose(),
    ];
    await mix.press('Shift+ArrowLeft');
    await settled(page);
    expect((await answersOf(page)).eat).toBe(eat);
    expect(await dose()).toBeLessThan(yeast);
    await expect
      .poll(async () => minutesOf((await mix.getAttribute('aria-valuetext'))!))
      .toBeLessThan(minutesOf(before!) - 13);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await dose()).toBe(yeast);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });
});

describe('the oven', () => {
  it('is switched on sooner by keys: the meal stays, and back again nothing is left of it', async () => {
    // Far from now, before which nothing is moved.
    const anchor = { kind: 'eatAt', time: '2040-01-13T20:00:00+01:00' } as const;
    const { page: own, errors, close } = await openWindow(browser(), { file: writtenPlan({ anchor }) });
    // The answers are those of the file, no longer of the example that stood there first.
    await expect.poll(async () => (await answersOf(own)).eat, { timeout: 20_000 }).toBe('20:00');
    const before = await answersOf(own);
    const on = own.getByRole('slider', { name: 'Oven on: the plate soaks longer, the pizzas stay' });
    expect(await on.getAttribute('aria-valuetext')).toBe(before.ovenOn);
    await on.press('Shift+ArrowLeft');
    await settled(own);
    const after = await answersOf(own);
    expect(after.eat).toBe(before.eat);
    // A hotter plate bakes a little faster, so that the pizza goes in a little later.
    expect(minutesOf(before.ovenOn) - minutesOf(after.ovenOn)).toBeGreaterThanOrEqual(13);
    expect(minutesOf(before.ovenOn) - minutesOf(after.ovenOn)).toBeLessThanOrEqual(15);
    await on.press('Shift+ArrowRight');
    await settled(own);
    expect(await answersOf(own)).toEqual(before);
    await on.press('ArrowRight');
    expect(await own.getByRole('alert').innerText()).toContain('the plate is ready 35 min after');
    expect(errors).toEqual([]);
    await close();
  });

  it('stays on when it was while the first pizza is dragged, as one step', async () => {
    const before = await answersOf(page);
    const bar = page.getByRole('slider', { name: 'Pizza 1: the plate soaks until then' });
    const box = (await bar.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let right = 6; right <= 60; right += 6) await page.mouse.move(x + right, y);
    await page.mouse.up();
    await settled(page);
    const after = await answersOf(page);
    expect(minutesOf(after.eat)).toBeGreaterThan(minutesOf(before.eat) + 4);
    expect(Math.abs(minutesOf(after.ovenOn) - minutesOf(before.ovenOn))).toBeLessThanOrEqual(1);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });
});

describe('a later pizza', () => {
  it('is dragged as one step: it waits longer, and the evening ends later', async () => {
    const last = async (): Promise<string> => page.locator('#answer-eat .answer-range').innerText();
    const before = await last();
    const bar = page.getByRole('slider', { name: 'Pizza 2: the wait between two follows' });
    const box = (await bar.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let right = 6; right <= 48; right += 6) await page.mouse.move(x + right, y);
    await page.mouse.up();
    await settled(page);
    expect(await last()).not.toBe(before);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await last()).toBe(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('does not go in before the one before is out, and says so', async () => {
    const bar = page.getByRole('slider', { name: 'Pizza 2: the wait between two follows' });
    await bar.press('Shift+ArrowLeft');
    expect(await page.getByRole('alert').innerText()).toContain('pizza 1 is still on the plate');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Close the notice' }).click();
  });
});

describe('the curves', () => {
  it('have a band from P10 to P90 around the plate once the ranges are there', async () => {
    await complete(page);
    const fills = page.locator('.plot .scatterlayer .fills path');
    await expect.poll(() => fills.count()).toBeGreaterThan(0);
    expect((await fills.first().getAttribute('d'))!.length).toBeGreaterThan(100);
  });
});
