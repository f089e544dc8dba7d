/** The clock: pointer, strip, zoom, table, export, and labels that never lie on each other. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { answersOf, minutesOf, openWindow, plannedIn, settled } from '../support/window.ts';

const { open, browser } = sharedWindow();

interface Box {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

async function boxesOf(page: Page, selector: string): Promise<readonly Box[]> {
  return page.locator(selector).evaluateAll((elements) =>
    elements
      .map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return { text: element.textContent, x, y, width, height };
      })
      .filter(({ width, text }) => width > 0 && text.trim() !== ''),
  );
}

/** Pairs of texts whose boxes share more than a pixel in both directions (line boxes are taller than their ink). */
function overlaps(boxes: readonly Box[]): readonly string[] {
  const shared = (a: number, aSize: number, b: number, bSize: number): number =>
    Math.min(a + aSize, b + bSize) - Math.max(a, b);
  return boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (other) =>
          shared(one.x, one.width, other.x, other.width) > 1 &&
          shared(one.y, one.height, other.y, other.height) > 3,
      )
      .map((other) => `${one.text} / ${other.text}`),
  );
}

const pointer = (page: Page) => page.getByRole('slider', { name: 'Moment on the clock' });

/** Until the page has been measured and drawn anew. */
async function resize(page: Page, width: number, height: number): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate(async () => {
    for (let frame = 0; frame < 4; frame += 1) await new Promise(requestAnimationFrame);
  });
}

describe('labels', () => {
  const sizes = [
    [1024, 700],
    [1280, 800],
    [1920, 1080],
  ] as const;
  it.each(sizes)('do not meet at %i x %i, for any of the built-in evenings', async (width, height) => {
    const page = await open();
    await resize(page, width, height);
    for (const title of ['Four pizzas for friends', 'Pizza the same evening', 'Sunday pizza on clay']) {
      await page.getByRole('button', { name: 'Open' }).click();
      await page.getByRole('menuitem', { name: title }).click();
      await settled(page);
      // On a busy machine the chart is drawn a moment after the window has settled.
      await expect
        .poll(
          async () =>
            (await boxesOf(page, '.plot .annotation-text, .plot .xtick text, .plot .ytick text')).length,
        )
        .toBeGreaterThan(15);
      const chart = await boxesOf(page, '.plot .annotation-text, .plot .xtick text, .plot .ytick text');
      expect(overlaps(chart)).toEqual([]);
      const drawing = await boxesOf(page, '.section text, .slice text');
      expect(drawing.length).toBeGreaterThan(10);
      expect(overlaps(drawing)).toEqual([]);
      const panel = (await page.locator('.drawing').boundingBox())!;
      for (const { text, x, width: wide } of drawing) {
        expect(x + wide, text).toBeLessThanOrEqual(panel.x + panel.width + 1);
      }
    }
    await page.setViewportSize({ width: 1280, height: 800 });
  });

  it('are all on screen with the three answers at 1280 x 800 and 1024 x 700, lanes included', async () => {
    for (const [width, height] of [sizes[0], sizes[1]]) {
      const { page, close } = await openWindow(browser(), { context: { viewport: { width, height } } });
      const lanes = await boxesOf(page, '.plot .annotation-text');
      const hands = lanes.find(({ text }) => text === 'Hands');
      expect(hands!.y + hands!.height).toBeLessThan(height);
      const answer = (await page.locator('#answer-eat').boundingBox())!;
      expect(answer.x + answer.width).toBeLessThanOrEqual(width);
      await close();
    }
  });
});

describe('the moment', () => {
  it('is moved by keys and drives readout and drawing', async () => {
    const page = await open();
    await pointer(page).press('Home');
    expect(await page.locator('.drawing-moment').innerText()).toContain('the oven is still off');
    expect(await pointer(page).getAttribute('aria-valuetext')).toContain('plate 21 °C');
    await page.locator('#answer-oven-on').click();
    await page.getByRole('button', { name: 'Show the moment' }).click();
    const ready = (await page.locator('.readout b').innerText()).trim();
    const flags = await page.locator('.plot .annotation-text').allTextContents();
    expect(flags.some((text) => text.startsWith(`plate ready ${ready}`))).toBe(true);
    await pointer(page).press('ArrowRight');
    await pointer(page).press('Shift+ArrowRight');
    const later = (await page.locator('.readout b').innerText()).trim();
    expect(minutesOf(later) - minutesOf(ready)).toBeGreaterThanOrEqual(11);
    expect(minutesOf(later) - minutesOf(ready)).toBeLessThanOrEqual(12);
  });

  it('follows the mouse, and the cut pizza shows while one bakes', async () => {
    const page = await open();
    const bar = (await boxesOf(page, '.plot .annotation-text')).find(
      ({ text }) => text === 'Pizza 3' || text === '3',
    );
    await page.mouse.move(bar!.x + 4, bar!.y - 100);
    expect(await page.locator('.drawing-moment').innerText()).toContain('pizza 3');
    expect(await page.locator('.slice text').allTextContents()).toContainEqual(
      expect.stringMatching(/^cheese \d+°, \d+ % water$/),
    );
    const early = Number(
      /lightness (\d+)/.exec(
        (await page.locator('.drawing li', { hasText: /^Base/ }).textContent()) ?? '',
      )?.[1],
    );
    await page.mouse.move(bar!.x + 24, bar!.y - 100);
    const later = Number(
      /lightness (\d+)/.exec(
        (await page.locator('.drawing li', { hasText: /^Base/ }).textContent()) ?? '',
      )?.[1],
    );
    // A base only ever darkens.
    expect(later).toBeLessThan(early);
  });
});

describe('the part shown', () => {
  const firstTick = (page: Page) => page.locator('.plot .xtick text').first().textContent();

  it('is moved by the strip, zoomed by the wheel and reset by a double click', async () => {
    const page = await open();
    const usual = await firstTick(page);
    const frame = page.getByRole('slider', { name: 'Part of the evening shown' });
    const shown = await frame.getAttribute('aria-valuetext');
    await frame.press('Home');
    await expect.poll(() => firstTick(page)).not.toBe(usual);
    expect(await page.locator('.plot .annotation-text').allTextContents()).toContain('Rise');
    await page.locator('.figure').dblclick({ position: { x: 300, y: 200 } });
    await expect.poll(() => firstTick(page)).toBe(usual);
    await page.mouse.wheel(0, -200);
    await expect.poll(() => frame.getAttribute('aria-valuetext')).not.toBe(shown);
    await page.locator('.figure').dblclick({ position: { x: 300, y: 200 } });
    await expect.poll(() => frame.getAttribute('aria-valuetext')).toBe(shown);
  });
});

describe('the figures behind the chart', () => {
  it('are a table behind T, and T can be switched off', async () => {
    const page = await open();
    await page.keyboard.press('t');
    const rows = page.locator('.table-room table').first().locator('tbody tr');
    expect(await rows.count()).toBeGreaterThan(15);
    expect(await rows.first().innerText()).toMatch(/\d\d:\d\d\s+21 °C|\d\d:\d\d\s+\d\d °C/);
    expect(await page.locator('.table-room caption').allInnerTexts()).toHaveLength(2);
    await page.keyboard.press('t');
    expect(await page.locator('.plot').count()).toBe(1);
    await page.keyboard.press('?');
    await page.getByRole('checkbox', { name: 'Single letters work as keys' }).uncheck();
    await page.keyboard.press('Escape');
    await page.keyboard.press('t');
    expect(await page.locator('.table-room').count()).toBe(0);
  });

  it('are saved as CSV with instants and units, and as a picture', async () => {
    const page = await open();
    const [csv] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'CSV' }).click(),
    ]);
    expect(csv.suggestedFilename()).toBe('Four-pizzas-for-friends.csv');
    const lines = readFileSync(await csv.path(), 'utf8').split('\r\n');
    expect(lines[0]).toBe(
      'time_s,instant,oven_air_degC,plate_top_degC,plate_core_degC,pizza,base_degC,crumb_degC',
    );
    expect(lines.at(-1)).toBe('');
    const fields = lines.slice(1, -1).map((line) => line.split(','));
    // RFC 4180: the same number of fields in each record.
    expect(new Set(fields.map(({ length }) => length))).toEqual(new Set([8]));
    expect(fields[0]![0]).toBe('0');
    expect(fields[0]![1]).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\+01:00$/);
    expect(Number(fields[0]![3])).toBeCloseTo(21, 0);
    expect(fields.some(([, , , , , pizza]) => pizza === '4')).toBe(true);
    const [picture] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Picture' }).click(),
    ]);
    const bytes = readFileSync(await picture.path());
    // The signature of PNG (ISO/IEC 15948, 5.2), then its header with width and height.
    expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([2560, 1440]);
  });
});

describe('what can be moved', () => {
  it('is moved by keys: the whole evening goes along, step by step into the history', async () => {
    const page = await open();
    const before = await answersOf(page);
    const eat = page.getByRole('slider', { name: 'Eat: moves the evening', exact: true });
    expect(await eat.getAttribute('aria-valuetext')).toBe(before.eat);
    await eat.press('Shift+ArrowRight');
    await settled(page);
    const after = await answersOf(page);
    expect(minutesOf(after.eat) - minutesOf(before.eat)).toBe(15);
    expect(minutesOf(after.ovenOn) - minutesOf(before.ovenOn)).toBe(15);
    expect(after.bake).toBe(before.bake);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
  });

  it('is dragged as one step while the part shown stands still', async () => {
    const page = await open();
    const before = await answersOf(page);
    const ticks = await page.locator('.plot .xtick text').allTextContents();
    const box = (await page.getByRole('slider', { name: 'Preheat: moves the evening' }).boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let right = 10; right <= 120; right += 10) await page.mouse.move(x + right, y);
    expect(await page.locator('.plot .xtick text').allTextContents()).toEqual(ticks);
    await page.mouse.up();
    await settled(page);
    const after = await answersOf(page);
    const later = minutesOf(after.ovenOn) - minutesOf(before.ovenOn);
    expect(later).toBeGreaterThan(5);
    expect(minutesOf(after.eat) - minutesOf(before.eat)).toBe(later);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('does not go where its dough would have to be mixed in the past, and says why', async () => {
    const { page, errors, close } = await openWindow(browser(), { file: plannedIn(9 * 60) });
    const before = await answersOf(page);
    const eat = page.getByRole('slider', { name: 'Eat: moves the evening', exact: true });
    for (let back = 0; back < 24; back += 1) await eat.press('Shift+ArrowLeft');
    await settled(page);
    const moved = minutesOf(before.eat) - minutesOf((await answersOf(page)).eat);
    const notice = await page.getByRole('alert').innerText();
    expect(notice).toMatch(/would have to begin at .*, before now\. At most \d+ min earlier\./);
    // Six hours and some of rise are left of nine: some steps went through, the next was refused.
    expect((moved + 24 * 60) % (24 * 60)).toBeGreaterThanOrEqual(15);
    expect((moved + 24 * 60) % (24 * 60)).toBeLessThan(4 * 60);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('the present', () => {
  it('is marked while the evening runs, and not before it', async () => {
    const running = await openWindow(browser(), { file: plannedIn(30) });
    const flags = await running.page.locator('.plot .annotation-text').allTextContents();
    expect(flags).toContainEqual(expect.stringMatching(/^now \d\d:\d\d$/));
    expect(running.errors).toEqual([]);
    await running.close();
    const ahead = await openWindow(browser(), { file: plannedIn(3 * 24 * 60) });
    const later = await ahead.page.locator('.plot .annotation-text').allTextContents();
    expect(later.filter((text) => text.startsWith('now'))).toEqual([]);
    await ahead.close();
  });
});
