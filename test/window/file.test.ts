/** Opening, saving and not losing a plan. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtWindow } from '../support/serve.ts';
import { sharedWindow } from '../support/sharedWindow.ts';
import { tempFolder } from '../support/tempFolder.ts';
import { answersOf, enterInto, openWindow, settled } from '../support/window.ts';

const { browser, open, served } = sharedWindow();

function keptTexts(folder: string): readonly string[] {
  return readdirSync(folder).map((name) => readFileSync(join(folder, name), 'utf8'));
}

describe('the file of a plan', () => {
  it('is saved under its title, listed, and opened again as it was', async () => {
    const page = await open();
    await page.getByLabel('Title of the evening').fill('Anna comes round');
    await page.getByLabel('Title of the evening').press('Enter');
    await enterInto(page, 'Thickness', '12 mm');
    expect(await page.locator('.saved').innerText()).toBe('changes not saved');
    const saved = await answersOf(page);
    await page.keyboard.press('Control+s');
    await expect.poll(() => page.locator('.saved').innerText()).toMatch(/^saved \d\d:\d\d$/);
    const [name, ...others] = readdirSync(served().places.plans);
    expect(others).toEqual([]);
    const written = JSON.parse(readFileSync(join(served().places.plans, name!), 'utf8')) as {
      title: string;
      plate: { thickness: string };
    };
    expect(written.title).toBe('Anna comes round');
    expect(written.plate.thickness).toBe('12 mm');

    await page.getByRole('button', { name: 'Open' }).click();
    await page.getByRole('menuitem', { name: 'Sunday pizza on clay' }).click();
    await settled(page);
    expect(await page.getByLabel('Title of the evening').inputValue()).toBe('Sunday pizza on clay');
    expect(await answersOf(page)).not.toEqual(saved);

    await page.getByRole('button', { name: 'Open' }).click();
    await page.getByRole('menuitem', { name: /Anna/ }).click();
    await expect.poll(() => page.getByLabel('Title of the evening').inputValue()).toBe('Anna comes round');
    await settled(page);
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('12 mm');
    expect(await answersOf(page)).toEqual(saved);
  });

  it('is opened through the file picker, and refused with the field named', async () => {
    const folder = tempFolder();
    const good = join(folder, 'good.json');
    const bad = join(folder, 'bad.json');
    const plan = { format: 'hearthclock/evening', version: 1, title: 'Two on stone', pizzas: { count: 2 } };
    writeFileSync(good, JSON.stringify(plan));
    writeFileSync(bad, JSON.stringify({ ...plan, plate: { thickness: '9.5 s' } }));
    const page = await open();
    await page.getByLabel('Plan file').setInputFiles(good);
    await expect.poll(() => page.getByLabel('Title of the evening').inputValue()).toBe('Two on stone');
    await settled(page);
    expect(await page.locator('#answer-eat').innerText()).toMatch(/last of two at/);
    await page.getByLabel('Plan file').setInputFiles(bad);
    const notice = page.getByRole('alert');
    expect(await notice.innerText()).toMatch(
      /bad\.json was not opened[\s\S]*plate\.thickness: found "9\.5 s"/,
    );
    expect(await page.getByLabel('Title of the evening').inputValue()).toBe('Two on stone');
  });

  it('offers at the next start what was not saved', async () => {
    const data = tempFolder();
    const first = await openWindow(browser(), { data });
    await enterInto(first.page, 'Thickness', '14 mm');
    const changed = await answersOf(first.page);
    // Kept one second after the last change.
    await expect
      .poll(() => readdirSync(first.served.places.unsaved).length, { timeout: 10_000 })
      .toBeGreaterThan(0);
    await first.close();

    const second = await openWindow(browser(), { data });
    const offer = second.page.getByRole('alertdialog');
    expect(await offer.innerText()).toContain('Four pizzas for friends');
    await offer.getByRole('button', { name: 'Go on with them' }).click();
    await settled(second.page);
    expect(await second.page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('14 mm');
    expect(await answersOf(second.page)).toEqual(changed);
    expect(second.errors).toEqual([]);
    await second.close();
  });

  it('shows what was opened from outside, and keeps the way back to unsaved work', async () => {
    const page = await open();
    await enterInto(page, 'Thickness', '14 mm');
    served().push('opened', {
      document: '3f0c6a52-8d5e-4b0e-9c59-0d5f7e1b2a34',
      name: 'other.json',
      text: '{ "format": "hearthclock/evening", "version": 1, "title": "From outside" }',
    });
    await expect.poll(() => page.getByLabel('Title of the evening').inputValue()).toBe('From outside');
    await page.getByRole('button', { name: 'Go back to it' }).click();
    await settled(page);
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('14 mm');
  });

  it('keeps a wrong entry and the saved document over a restart', async () => {
    const data = tempFolder();
    const first = await openWindow(browser(), { data });
    await first.page.keyboard.press('Control+s');
    await expect.poll(() => first.page.locator('.saved').innerText()).toMatch(/^saved/);
    const [name] = readdirSync(first.served.places.plans);
    await enterInto(first.page, 'Set to', '240 °C');
    await enterInto(first.page, 'Thickness', 'thick');
    await expect
      .poll(() => keptTexts(first.served.places.unsaved), { timeout: 10_000 })
      .toContainEqual(expect.stringContaining('"text":"thick"'));
    await first.close();

    const second = await openWindow(browser(), { data });
    const offer = second.page.getByRole('alertdialog');
    expect(await offer.innerText()).toContain('with an entry not taken yet');
    await offer.getByRole('button', { name: 'Go on with them' }).click();
    await expect.poll(() => second.page.getByLabel('Set to', { exact: true }).inputValue()).toBe('240 °C');
    const field = second.page.getByLabel('Thickness', { exact: true });
    expect(await field.inputValue()).toBe('thick');
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await enterInto(second.page, 'Thickness', '9 mm');
    await second.page.keyboard.press('Control+s');
    await expect.poll(() => second.page.locator('.saved').innerText()).toMatch(/^saved/);
    // Into the same file, not beside it.
    expect(readdirSync(second.served.places.plans).filter((one) => one.endsWith('.hearthclock'))).toEqual([
      name,
    ]);
    const written = readFileSync(join(second.served.places.plans, name!), 'utf8');
    expect(written).toContain('"thickness": "9 mm"');
    expect(second.errors).toEqual([]);
    await second.close();
  });

  it('asks before it replaces what another program wrote, and does what is chosen', async () => {
    const folder = tempFolder();
    const file = join(folder, 'shared.hearthclock');
    const plan = { format: 'hearthclock/evening', version: 1, title: 'Shared', plate: { thickness: '6 mm' } };
    writeFileSync(file, JSON.stringify(plan));
    const { page, served: own, close } = await openWindow(browser(), { file });
    await enterInto(page, 'Thickness', '7 mm');
    const theirs = JSON.stringify({ ...plan, title: 'Theirs' });
    writeFileSync(file, theirs);
    const question = page.getByRole('alertdialog');
    await page.keyboard.press('Control+s');
    await question.getByRole('button', { name: 'Cancel' }).click();
    expect(readFileSync(file, 'utf8')).toBe(theirs);
    expect(await page.locator('.saved').innerText()).toBe('changes not saved');

    await page.keyboard.press('Control+s');
    await question.getByRole('button', { name: 'Replace it' }).click();
    await expect.poll(() => page.locator('.saved').innerText()).toMatch(/^saved/);
    expect(readFileSync(file, 'utf8')).toContain('"thickness": "7 mm"');
    await expect.poll(() => question.count()).toBe(0);

    writeFileSync(file, theirs);
    await enterInto(page, 'Thickness', '8 mm');
    await page.keyboard.press('Control+s');
    await question.getByRole('button', { name: 'Save as another file' }).click();
    await expect.poll(() => readdirSync(own.places.plans)).toEqual(['Shared.hearthclock']);
    expect(readFileSync(file, 'utf8')).toBe(theirs);
    await expect.poll(() => question.count()).toBe(0);
    await close();
  });

  it('is opened when it is dropped on the window', async () => {
    const page = await open();
    await page.evaluate(() => {
      const transfer = new DataTransfer();
      const text = '{ "format": "hearthclock/evening", "version": 1, "title": "Dropped" }';
      transfer.items.add(new File([text], 'dropped.hearthclock'));
      for (const type of ['dragover', 'drop']) {
        document.body.dispatchEvent(
          new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: transfer }),
        );
      }
    });
    await expect.poll(() => page.getByLabel('Title of the evening').inputValue()).toBe('Dropped');
  });
});

it('the window carries the licence of its font', () => {
  const licence = createRequire(import.meta.url).resolve('@fontsource-variable/inter/LICENSE');
  const carried = readFileSync(join(builtWindow, 'inter-licence.txt'), 'utf8');
  expect(carried).toBe(readFileSync(licence, 'utf8'));
  expect(carried).toContain('SIL OPEN FONT LICENSE');
});
