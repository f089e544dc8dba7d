/** Changing a plan on the screen: answers, chart and drawing follow, and all of it can be undone. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { allPlanPaths } from '../../physics/evening/planPath.ts';
import { openBrowser } from '../support/browser.ts';
import {
  answersOf,
  enterInto,
  minutesOf,
  openWindow,
  secondsOf,
  settled,
  type OpenedWindow,
} from '../support/window.ts';

let browser: Browser;
let opened: OpenedWindow | undefined;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});
afterEach(async () => {
  const errors = opened?.errors;
  await opened?.close();
  opened = undefined;
  expect(errors).toEqual([]);
});

async function open(): Promise<Page> {
  opened = await openWindow(browser);
  return opened.page;
}

/** Every text of the chart, as it stands there. */
async function chartTexts(page: Page): Promise<readonly string[]> {
  return page.locator('.plot .annotation-text').allTextContents();
}
/** The path of the plate's curve, the thick solid one. */
async function plateCurve(page: Page): Promise<string> {
  return (
    (await page.locator('.plot .scatterlayer .trace').nth(1).locator('path.js-line').getAttribute('d')) ?? ''
  );
}
async function plateRow(page: Page): Promise<number> {
  return Number(await page.locator('.section rect.plate').getAttribute('y'));
}

describe('a change of the plan', () => {
  it('makes a thicker plate need longer, in answer, chart and drawing', async () => {
    const page = await open();
    const before = await answersOf(page);
    const curve = await plateCurve(page);
    const height = Number(await page.locator('.section rect.plate').getAttribute('height'));
    await enterInto(page, 'Thickness', '16 mm');
    const after = await answersOf(page);
    expect(after.eat).toBe(before.eat);
    expect(minutesOf(after.ovenOn)).toBeLessThan(minutesOf(before.ovenOn) - 10);
    expect(await plateCurve(page)).not.toBe(curve);
    expect(await chartTexts(page)).toContain(`oven on ${after.ovenOn}`);
    // 8 mm to 16 mm, to scale.
    expect(Number(await page.locator('.section rect.plate').getAttribute('height'))).toBeGreaterThan(height);
    await expect
      .poll(() => page.locator('p[aria-live]').textContent())
      .toMatch(/^Oven on \d+ minutes earlier, \d\d:\d\d\. /);
  });

  it('takes a bare number in the unit shown, and any other unit as typed', async () => {
    const page = await open();
    const field = page.getByLabel('Thickness', { exact: true });
    await enterInto(page, 'Thickness', '10');
    expect(await field.inputValue()).toBe('10 mm');
    await enterInto(page, 'Thickness', '3/8 in');
    expect(await field.inputValue()).toBe('9.5 mm');
    await page.getByRole('radio', { name: '°F · US' }).click();
    expect(await field.inputValue()).toBe('3/8 in');
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toBe('482 °F');
    // 288 degC are 550 degF within half a degree: 288 x 9/5 + 32 = 550.4.
    await enterInto(page, 'Set to', '288 °C');
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toBe('550 °F');
  });

  it('shows a hotter setting on the axis and in a shorter bake', async () => {
    const page = await open();
    const before = await answersOf(page);
    await enterInto(page, 'Highest setting', '300 °C');
    await enterInto(page, 'Set to', '290 °C');
    const after = await answersOf(page);
    expect(secondsOf(after.bake)).toBeLessThan(secondsOf(before.bake));
    await page.locator('#answer-oven-on').click();
    const figures = page.getByRole('dialog');
    expect(await figures.getByText('290 °C').count()).toBe(1);
    await page.keyboard.press('Escape');
    await expect.poll(() => figures.count()).toBe(0);
  });

  it('moves the plate by keys, rack by rack', async () => {
    const page = await open();
    const row = await plateRow(page);
    const before = await answersOf(page);
    const plate = page.getByRole('slider', { name: 'Rack: height of the plate' });
    expect(await plate.getAttribute('aria-valuetext')).toBe('second from the bottom of five');
    await plate.press('ArrowUp');
    await settled(page);
    expect(await plate.getAttribute('aria-valuetext')).toBe('third from the bottom of five');
    expect(await plateRow(page)).toBeLessThan(row);
    expect(await answersOf(page)).not.toEqual(before);
    expect(await page.getByLabel('Rack', { exact: true }).inputValue()).toBe('46 %');
    await plate.press('End');
    expect(await plate.getAttribute('aria-valuetext')).toBe('highest of five');
    await plate.press('Shift+ArrowDown');
    expect(await plate.getAttribute('aria-valuenow')).toBe('79');
  });

  it('moves the plate by dragging, as one step of the history', async () => {
    const page = await open();
    const before = await answersOf(page);
    const plate = page.getByRole('slider', { name: 'Rack: height of the plate' });
    const box = await plate.boundingBox();
    const [x, y] = [box!.x + box!.width / 2, box!.y + box!.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let up = 4; up <= 60; up += 4) await page.mouse.move(x, y - up);
    await page.mouse.up();
    await settled(page);
    const height = Number(await plate.getAttribute('aria-valuenow'));
    expect(height).toBeGreaterThan(60);
    expect(await answersOf(page)).not.toEqual(before);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await plate.getAttribute('aria-valuenow')).toBe('30');
    expect(await answersOf(page)).toEqual(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await page.keyboard.press('Control+Shift+z');
    await settled(page);
    expect(Number(await plate.getAttribute('aria-valuenow'))).toBe(height);
  });

  it('is undone step by step, back to where it began', async () => {
    const page = await open();
    const before = await answersOf(page);
    await enterInto(page, 'Thickness', '12 mm');
    await enterInto(page, 'Set to', '230 °C');
    await page.getByLabel('Material', { exact: true }).selectOption('cordierite');
    await settled(page);
    const changed = await answersOf(page);
    expect(changed).not.toEqual(before);
    const undo = page.getByRole('button', { name: 'Undo' });
    let steps = 0;
    while (await undo.isEnabled()) {
      await undo.click();
      steps += 1;
    }
    await settled(page);
    expect(steps).toBe(3);
    expect(await answersOf(page)).toEqual(before);
    expect(await page.getByLabel('Thickness', { exact: true }).inputValue()).toBe('8 mm');
    const redo = page.getByRole('button', { name: 'Redo' });
    while (await redo.isEnabled()) await redo.click();
    await settled(page);
    expect(await answersOf(page)).toEqual(changed);
  });

  it('says where a value comes from and puts it back', async () => {
    const page = await open();
    const source = page.locator('#field-plate-thickness-source');
    expect(await source.innerText()).toBe('from the example');
    await enterInto(page, 'Thickness', '12 mm');
    expect(await source.innerText()).toBe('yours');
    await page.getByRole('button', { name: 'Reset Thickness' }).click();
    await settled(page);
    expect(await source.innerText()).toBe('from the example');
    await page.getByLabel('Kind', { exact: true }).selectOption('strong');
    await settled(page);
    expect(await page.locator('#field-oven-setpoint-source').innerText()).toBe('from the preset');
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toBe('300 °C');
  });
});

describe('below the clock', () => {
  it('a later start of the oven finds the plate colder and the bake longer, step by step', async () => {
    const page = await open();
    const lines = await page.locator('.notes li', { hasText: /min late/ }).allInnerTexts();
    expect(lines.length).toBeGreaterThanOrEqual(3);
    const read = lines.map((line) => {
      const match = /^(\d+) min late: plate (\d+) degrees? colder, first bake (.*) longer$/.exec(line);
      expect(match, line).not.toBeNull();
      return { late: Number(match![1]), colder: Number(match![2]), longer: secondsOf(match![3]!) };
    });
    read.slice(1).forEach((later, i) => {
      expect(later.late).toBeGreaterThan(read[i]!.late);
      expect(later.colder).toBeGreaterThan(read[i]!.colder);
      expect(later.longer).toBeGreaterThanOrEqual(read[i]!.longer);
    });
  });

  it('cautions and assumptions are written out, in the units shown', async () => {
    const page = await open();
    expect(await page.locator('.mind li').allInnerTexts()).toContainEqual(expect.stringMatching(/\d °C/));
    await page.getByRole('radio', { name: '°F · US' }).click();
    const cautions = await page.locator('.mind li').allInnerTexts();
    expect(cautions).toContainEqual(expect.stringMatching(/\d °F/));
    expect(cautions.filter((text) => text.includes('°C'))).toEqual([]);
    expect(await page.locator('.notes').innerText()).toContain(
      'Oven: warm at the start 70 °F, from the kitchen',
    );
  });
});

describe('the inputs', () => {
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
    // The title stands in the header; lists are reached by their own rows.
    const lists = ['dough.liquid', 'dough.phases', 'toppings.cheese', 'pizzas.each.0.cheese'];
    const wanted = allPlanPaths.filter(
      (path) =>
        !['title', 'format', 'version'].includes(path) && !lists.some((list) => path.startsWith(list)),
    );
    expect(wanted.length).toBeGreaterThan(45);
    expect(wanted.filter((path) => !seen.has(`field-${path.replaceAll('.', '-')}`))).toEqual([]);
    for (const id of [
      'dough-liquid-0-percent',
      'dough-phases-0-duration',
      'toppings-cheese-0-mass',
      'pizzas-each-0-cheese-0-mass',
    ]) {
      expect(seen.has(`field-${id}`), id).toBe(true);
    }
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
