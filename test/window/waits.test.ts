/** Waiting longer or baking longer: the curve, its table behind one key, its CSV, and a wait that is tried. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sharedWindow } from '../support/sharedWindow.ts';
import { complete, settled, textsOf } from '../support/window.ts';
import { waitSummary, waitTable } from '../../renderer/words/advice.ts';

const { open } = sharedWindow();

describe('wait or bake longer', () => {
  it('is a curve of both with the planned wait marked, and a table behind T', async () => {
    const page = await open();
    await complete(page);
    const waits = page.locator('.wait-or-bake');
    const names = waits.locator('.annotation-text');
    await names.first().waitFor();
    expect(await waits.locator('.scatterlayer .trace').count()).toBe(2);
    const texts = await names.allTextContents();
    for (const name of ['bake', 'wait and bake', 'as planned, 1 min 40 s']) expect(texts).toContain(name);
    await page.keyboard.press('t');
    const rows = waits.locator('tbody tr');
    expect(await rows.count()).toBeGreaterThanOrEqual(3);
    expect((await textsOf(rows))[1]).toMatch(/^4 min 2\d\d °C \d min \d0 s 1\d min$/);
    await page.keyboard.press('t');
    await waits.getByLabel('Which pizza waits').selectOption('4');
    expect(await waits.locator('p').innerText()).toContain('before pizza 4');
  });

  it('is saved as CSV, every pizza after the first', async () => {
    const page = await open();
    await complete(page);
    const [csv] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Wait or bake longer: CSV' }).click(),
    ]);
    const [head, ...rows] = readFileSync(await csv.path(), 'utf8')
      .trim()
      .split('\r\n');
    expect(head).toBe('pizza,wait_min,plate_top_degC,bake_min,in_all_min');
    expect(new Set(rows.map((row) => row.split(',')[0]))).toEqual(new Set(['2', '3', '4']));
    for (const row of rows) {
      const [, wait, , bake, all] = row.split(',').map(Number);
      expect(Math.abs(wait! + bake! - all!)).toBeLessThan(0.02);
    }
  });

  it('can be tried, and undone', async () => {
    const page = await open();
    await complete(page);
    await page.getByRole('button', { name: 'Try: Wait 4 min before every pizza' }).click();
    await settled(page);
    expect(await page.locator('#answer-bake .answer-range').innerText()).toMatch(/next after 4.min/);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await page.locator('#answer-bake .answer-range').innerText()).toMatch(/next after 1½.min/);
  });
});

describe('in words', () => {
  const curve = {
    pizza: 3,
    plannedWaitMinutes: 100 / 60,
    waitMinutes: [1.5, 4, 8, 20],
    bakeMinutes: [7.5, 7, 6.5, 6],
    totalMinutes: [9, 11, 14.5, 26],
    plateTopC: [240, 250, 260, 261],
  };
  it('is said with what a wait within patience gains and costs', () => {
    expect(waitSummary(curve)).toBe(
      'The plan waits 1 min 40 s before pizza 3. Waiting 8 min instead of 1 min 30 s would bake it 1 min faster, and have it out 5 min 30 s later.',
    );
  });
  it('has a row for each wait, in the units shown', () => {
    expect(waitTable(curve, 'us').rows[0]).toEqual(['1 min 30 s', '464 °F', '7 min 30 s', '9 min']);
  });
});
