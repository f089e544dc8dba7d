/** The inputs: every field of a plan is reached, entries are read as people write them, wrong ones stay with their reason. */
import { describe, expect, it } from 'vitest';
import { allPlanPaths } from '../../physics/evening/planPath.ts';
import { sharedWindow } from '../support/sharedWindow.ts';
import { answersOf, enterInto, minutesOf, settled } from '../support/window.ts';

const { open } = sharedWindow();

describe('the inputs', () => {
  it('let one pizza differ, and fewer pizzas take what was said of the last one with them', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^Pizzas/ }).click();
    await page.getByRole('button', { name: 'Pizzas one by one' }).click();
    await page.getByRole('button', { name: 'Pizza 4: as the others' }).click();
    const own = page.getByRole('group', { name: 'Pizza 4' });
    await own.getByLabel('Across', { exact: true }).fill('26 cm');
    await own.getByLabel('Across', { exact: true }).press('Enter');
    await settled(page);
    expect(await own.getByRole('button', { name: 'Pizza 4: 26 cm' }).count()).toBe(1);
    await enterInto(page, 'How many', '3');
    expect(await page.getByLabel('How many', { exact: true }).getAttribute('aria-invalid')).toBeNull();
    expect(await page.locator('#answer-eat').innerText()).toMatch(/last of three at/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await own.getByRole('button', { name: 'Pizza 4: 26 cm' }).count()).toBe(1);
  });

  it('reach every field that a plan may have', async () => {
    const page = await open();
    for (const name of ['When', 'Pizzas', 'Dough', 'Kitchen']) {
      await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
    }
    await page.getByLabel('Material', { exact: true }).selectOption('custom');
    // Every fold, those inside a fold too.
    const folded = page.locator('.inputs-area .more-key[aria-expanded="false"]');
    while ((await folded.count()) > 0) await folded.first().click();
    await page.getByLabel('Bases baked ahead', { exact: true }).selectOption('refrigerator');
    await page.getByRole('button', { name: 'Cheese of its own' }).first().click();
    const ids = async (): Promise<readonly string[]> =>
      page.locator('.inputs-area [id^="field-"]').evaluateAll((elements) => elements.map(({ id }) => id));
    const seen = new Set(await ids());
    await page.getByLabel('Shape', { exact: true }).selectOption('round');
    await page.getByRole('button', { name: 'Add a stretch of the rise' }).click();
    for (const id of await ids()) seen.add(id);
    for (const kind of ['liquid', 'cheese', 'cheese']) {
      await page
        .getByRole('combobox', { name: `Kind of ${kind}` })
        .nth(kind === 'cheese' && seen.has('field-toppings-cheese-0-waterShare') ? 1 : 0)
        .selectOption('custom');
      for (const id of await ids()) seen.add(id);
    }
    // The title stands in the header, the log is kept by the view Tonight; format and version are not the cook's.
    const wanted = allPlanPaths.filter(
      (path) => !['title', 'format', 'version'].includes(path) && !path.startsWith('tonight.'),
    );
    expect(wanted.length).toBeGreaterThan(45);
    expect(wanted.filter((path) => !seen.has(`field-${path.replaceAll('.', '-')}`))).toEqual([]);
  });

  it('tie the evening to another of its moments without moving it, and back again', async () => {
    const page = await open();
    const before = await answersOf(page);
    await page.getByRole('button', { name: /^When/ }).click();
    await page.getByLabel('Tied to', { exact: true }).selectOption('ovenOnAt');
    await settled(page);
    expect((await answersOf(page)).ovenOn).toBe(before.ovenOn);
    await page.getByLabel('Tied to', { exact: true }).selectOption('startAt');
    await settled(page);
    const started = await answersOf(page);
    // Each is tied to the minute.
    expect(Math.abs(minutesOf(started.ovenOn) - minutesOf(before.ovenOn))).toBeLessThanOrEqual(1);
    await page.getByRole('button', { name: 'Reset Tied to' }).click();
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
  });

  it('take a clock time as people write it', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^When/ }).click();
    await enterInto(page, 'First pizza cut', '8 pm');
    expect((await answersOf(page)).eat).toBe('20:00');
    await enterInto(page, 'First pizza cut', '18.45');
    expect((await answersOf(page)).eat).toBe('18:45');
    await enterInto(page, 'First pizza cut', '25:00');
    expect(await page.getByLabel('First pizza cut', { exact: true }).getAttribute('aria-invalid')).toBe(
      'true',
    );
    expect((await answersOf(page)).eat).toBe('18:45');
  });
});

describe('an entry that cannot be taken', () => {
  it('stays as typed with its reason, while the last good plan stays on screen', async () => {
    const page = await open();
    const before = await answersOf(page);
    const field = page.getByLabel('Thickness', { exact: true });
    await enterInto(page, 'Thickness', '9.5 s');
    expect(await field.inputValue()).toBe('9.5 s');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    const reason = page.locator(`#${(await field.getAttribute('aria-describedby')) ?? ''}`);
    expect(await reason.innerText()).toMatch(/Found "9\.5 s"; allowed a length/);
    expect(await answersOf(page)).toEqual(before);
    expect(await page.locator('.held').innerText()).toContain('Plate: thickness');
    expect(await page.locator('.dimmed').count()).toBeGreaterThan(0);
    await enterInto(page, 'Thickness', '200 mm');
    expect(await reason.innerText()).toMatch(/allowed 0\.5 mm to 80 mm/);
    await enterInto(page, 'Thickness', '9.5 mm');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    expect(await page.locator('.dimmed').count()).toBe(0);
    expect(await answersOf(page)).not.toEqual(before);
  });

  it('names the other field when two clash, and is taken once that one makes room', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'More of the plate' }).click();
    await page.getByRole('button', { name: 'More of the oven' }).click();
    const width = page.getByLabel('Width', { exact: true });
    await enterInto(page, 'Width', '50 cm');
    expect(await width.getAttribute('aria-invalid')).toBe('true');
    await enterInto(page, 'Inside width', '56 cm');
    expect(await width.getAttribute('aria-invalid')).toBeNull();
    expect(await width.inputValue()).toBe('50 cm');
  });
});
