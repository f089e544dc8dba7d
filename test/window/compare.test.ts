/** The view Compare: others beside the plan, as curves, in figures and as a map whose points open as the plan. */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import { tabStops, violations } from '../support/windowAccess.ts';
import { answersOf, secondsOf, settled } from '../support/window.ts';

const { open } = sharedWindow();
let page: Page;

beforeEach(async () => {
  page = await open();
  await page.keyboard.press('Control+2');
});

/** Until so many evenings stand in the table. */
async function columns(count: number): Promise<void> {
  await expect.poll(() => page.locator('.compared thead th').count(), { timeout: 30_000 }).toBe(count);
}
/** The figures of a row, the plan's first. */
async function row(name: string): Promise<readonly string[]> {
  const cells = page
    .locator('.compared tbody tr', { has: page.getByRole('rowheader', { name }) })
    .locator('td');
  return (await cells.allInnerTexts()).map((text) =>
    text.replaceAll(/\s+/gu, ' ').replace(', best', '').trim(),
  );
}

describe('steel or stone', () => {
  it('stand side by side at once: the stone bakes longer, and says so in figures and curves', async () => {
    await columns(3);
    const bakes = (await row('First bake')).map(secondsOf);
    // Steel gives its heat faster than stone at the same oven: 6 to 7 against 7 to 12 min (common practice, no source).
    expect(bakes[1]).toBeGreaterThan(bakes[0]! * 1.2);
    const [plan, stone, thick] = (await row('Weight on the rack')).map(Number.parseFloat);
    // 40 x 35 cm of steel at 7850 kg/m3: 8 mm weigh 8.8 kg, 12 mm half as much again.
    expect(plan).toBeCloseTo(8.8, 1);
    expect(thick).toBeCloseTo(13.2, 1);
    expect(stone).toBeLessThan(plan!);
    const best = page.locator('.compared tbody tr', { hasText: 'Weight on the rack' }).locator('.best');
    expect(await best.innerText()).toContain(String(stone));
    // A curve for each, in both charts.
    expect(await page.locator('.chart-panel').first().locator('.scatterlayer .trace').count()).toBe(3);
    expect(await page.locator('.chart-panel').nth(1).locator('.scatterlayer .trace').count()).toBe(3);
    expect(await page.getByText('Ready first: Cordierite, 15 mm').count()).toBe(1);
  });

  it('the stone is made the plan as one step, and undo brings the steel back', async () => {
    await columns(3);
    const stoneBake = (await row('First bake'))[1]!;
    await page.getByRole('button', { name: /^Make it the plan: Cordierite/ }).click();
    await settled(page);
    expect(await page.getByRole('alert').innerText()).toContain('The plan now: Cordierite, 15 mm.');
    await page.keyboard.press('Control+1');
    expect((await answersOf(page)).bake).toBe(stoneBake);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByLabel('Material', { exact: true }).inputValue()).toBe('carbon-steel');
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    // It left the list when it became the plan.
    await page.keyboard.press('Control+2');
    await columns(2);
    await page.getByRole('button', { name: 'A stone' }).click();
    await columns(3);
  });
});

describe('an evening beside the plan', () => {
  it('is set by any field, refuses what cannot be read, and says what cannot be computed', async () => {
    await page.getByRole('button', { name: 'Something else' }).click();
    const card = page.locator('.variant').last();
    await card.getByLabel('What differs').selectOption('plate.width');
    const value = card.getByRole('textbox', { name: 'Width' });
    await value.fill('wide');
    await value.press('Enter');
    expect(await value.getAttribute('aria-invalid')).toBe('true');
    expect(await card.innerText()).toMatch(/Found "wide"; allowed a length/);
    await page.keyboard.press('Control+1');
    await value.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+2');
    expect(await value.inputValue()).toBe('wide');
    expect(await value.getAttribute('aria-invalid')).toBe('true');
    expect(await card.innerText()).toMatch(/Found "wide"; allowed a length/);
    await value.fill('70 cm');
    await value.press('Enter');
    // Wider than the oven: named, and not among the figures.
    await expect.poll(() => card.innerText()).toContain('Plate: width: found "70 cm"');
    expect(await card.getByRole('button', { name: /^Make it the plan/ }).isDisabled()).toBe(true);
    await card.getByRole('button', { name: /^Leave out: / }).click();
  });

  it('are six with the plan at most', async () => {
    for (const name of ['One rack up', 'Another oven', 'A thicker plate']) {
      await page.getByRole('button', { name, exact: true }).click();
    }
    await columns(6);
    expect(await page.getByText('Six are as many as can be told apart.').count()).toBe(1);
    // Told apart without colour: six lines, six dashes.
    const dashes = await page
      .locator('.compared thead .sample line')
      .evaluateAll((lines) => lines.map((line) => line.getAttribute('stroke-dasharray') ?? 'solid'));
    expect(new Set(dashes).size).toBe(6);
    while ((await page.locator('.variant').count()) > 3) {
      await page
        .locator('.variant')
        .last()
        .getByRole('button', { name: /^Leave out: / })
        .click();
    }
  });
});

describe('the charts', () => {
  it('are tables behind T, and are saved as CSV and picture', async () => {
    await columns(3);
    const save = async (name: string): Promise<Buffer> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name }).click(),
      ]);
      return readFileSync(await download.path());
    };
    const lines = (await save('Warming up: CSV')).toString('utf8').split('\r\n');
    expect(lines[0]).toBe('plan,minute,plate_top_degC');
    expect(lines[1]).toMatch(/^The plan,0\.000,2\d\.\d\d$/);
    const compared = (await save('In figures: CSV')).toString('utf8').split('\r\n');
    expect(compared[0]).toMatch(/^plan,preheat_min,/);
    expect(compared).toHaveLength(5);
    // The signature of PNG (ISO/IEC 15948, 5.2).
    expect((await save('The first bake: picture')).subarray(1, 4).toString('latin1')).toBe('PNG');
    await page.getByRole('tab', { name: 'Compare' }).press('t');
    const table = page.getByRole('region', { name: 'Warming up, as a table' });
    expect(await table.getByRole('rowheader').first().innerText()).toBe('0');
    expect(await page.locator('.chart-panel .plot').count()).toBe(0);
    await page.getByRole('tab', { name: 'Compare' }).press('t');
  });
});

describe('the map', () => {
  it('goes one rack up on a point of it, which opens as the plan', async () => {
    await page.getByLabel('Across: values of thickness').fill('8 mm, 12 mm');
    await page.getByLabel('Across: values of thickness').press('Enter');
    await page.getByRole('button', { name: 'Work out 10 evenings' }).click();
    const point = page.getByRole('button', { name: /^8 mm, rack 3 of 5: / });
    await expect.poll(() => point.innerText(), { timeout: 40_000 }).toMatch(/\d+ min/);
    const said = (await point.innerText()).trim();
    const plan = page.getByRole('button', { name: /^8 mm, rack 2 of 5: .*the plan\. Open as the plan$/ });
    await expect.poll(() => plan.count(), { timeout: 40_000 }).toBe(1);
    // The arrow keys walk: from the highest rack, where the walk begins, two down.
    await page.locator('.map button[tabindex="0"]').focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await page.getByRole('tab', { name: 'Plan' }).getAttribute('aria-selected')).toBe('true');
    expect((await answersOf(page)).bake).toBe(said);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('shows its progress and stops on Escape', async () => {
    await page.getByLabel('Across: values of thickness').fill('5 mm, 7 mm, 9 mm, 11 mm, 14 mm');
    await page.getByLabel('Across: values of thickness').press('Enter');
    const bar = page.getByRole('progressbar', { name: 'Working out evenings of the map' });
    await bar.waitFor();
    await page.getByRole('tab', { name: 'Compare' }).press('Escape');
    await page.getByText(/of 25 evenings of the map, stopped/).waitFor();
    // What was under way is finished, nothing more is begun.
    const missing = await page.locator('.map td button', { hasText: '…' }).count();
    expect(missing).toBeGreaterThan(15);
    await page.getByRole('button', { name: 'Go on' }).click();
    await expect
      .poll(() => page.locator('.map td button', { hasText: '…' }).count(), { timeout: 20_000 })
      .toBeLessThan(missing);
    await page.getByRole('button', { name: 'Stop (Escape)' }).click();
  });

  it('keeps values that cannot be read as typed, with the reason', async () => {
    const values = page.getByLabel('Across: values of thickness');
    await values.fill('8 mm, thick');
    await values.press('Enter');
    expect(await values.inputValue()).toBe('8 mm, thick');
    expect(await values.getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.map-side .reason:visible').innerText()).toMatch(/Found "thick"; allowed/);
    await values.press('Escape');
    expect(await values.getAttribute('aria-invalid')).toBeNull();
  });
});

describe('for everyone', () => {
  it('axe finds nothing in either theme, and every stop of the tab key has a name and a visible focus', async () => {
    await columns(3);
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await violations(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'light' });
    await page.getByRole('tab', { name: 'Compare' }).focus();
    const stops = await tabStops(page, 120);
    expect(stops.filter(({ name, ring }) => name === '' || !ring)).toEqual([]);
    expect(stops.length).toBeLessThan(120);
  });
});
