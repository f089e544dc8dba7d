/** Changing a plan on the screen: answers, chart and drawing follow, and all of it can be undone. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { sharedWindow } from '../support/sharedWindow.ts';
import {
  answersOf,
  complete,
  enterInto,
  minutesOf,
  openWindow,
  plannedIn,
  secondsOf,
  settled,
  textsOf,
  writtenPlan,
} from '../support/window.ts';

const { open, browser } = sharedWindow();

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
      .poll(() => page.locator('p[aria-live]').textContent(), { timeout: 10_000 })
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
    await page.getByRole('radio', { name: '°C · metric' }).click();
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
    const lines = await textsOf(page.locator('.notes li', { hasText: /min late:/ }));
    expect(lines.length).toBeGreaterThanOrEqual(3);
    const read = lines.map((line) => {
      const match = /^(\d+) min late: plate (\d+) degrees? colder, first bake (.*) longer\.$/.exec(line);
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
    expect(await textsOf(page.locator('.mind li'))).toContainEqual(expect.stringMatching(/\d °C/));
    await page.getByRole('radio', { name: '°F · US' }).click();
    const cautions = await textsOf(page.locator('.mind li'));
    expect(cautions).toContainEqual(expect.stringMatching(/\d °F/));
    expect(cautions.filter((text) => text.includes('°C'))).toEqual([]);
    expect((await textsOf(page.locator('.notes'))).join()).toContain(
      'Oven: warm at the start 70 °F, from the kitchen',
    );
    await page.getByRole('radio', { name: '°C · metric' }).click();
  });
});

describe('advice', () => {
  it('for base and top is tried with one key, changes the bake as it said, and is undone as one step', async () => {
    const page = await open();
    await complete(page);
    const before = await answersOf(page);
    const advice = page.locator('.notes li', { hasText: /^Top heat from .*the load.*: bake/ });
    const said = /: bake ((?:\d+ min)?(?: ?\d+ s)?), base golden, rim done too/.exec(
      (await textsOf(advice)).join(),
    );
    expect(said).not.toBeNull();
    await advice.getByRole('button', { name: /^Try: Top heat from / }).click();
    await settled(page);
    // With the bottom off the base takes longer: the whole evening is planned anew, and its first bake is what was promised.
    expect((await answersOf(page)).bake).toBe(said![1]);
    expect(secondsOf(said![1]!)).toBeGreaterThan(secondsOf(before.bake));
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });

  it('for dough and plate is given where they do not meet, and several fields are one step', async () => {
    // An ordinary evening that lies ahead needs none.
    const ordinary = await openWindow(browser(), { file: plannedIn(3 * 24 * 60) });
    expect(await ordinary.page.getByRole('heading', { name: 'So that dough and plate meet' }).count()).toBe(
      0,
    );
    await ordinary.close();
    // Begun at once, a quick dough still keeps its plate waiting.
    const file = writtenPlan({
      anchor: { kind: 'startAt', time: new Date(Date.now() + 3 * 24 * 3600_000).toISOString() },
      dough: { yeast: { kind: 'instant', percent: 1.4 }, restBeforeShaping: '15 min' },
    });
    const { page, errors, close } = await openWindow(browser(), { file });
    const eat = minutesOf((await answersOf(page)).eat);
    const meeting = page
      .locator('section', { hasText: 'So that dough and plate meet' })
      .getByRole('listitem');
    const first = (await textsOf(meeting))[0];
    expect(first).toMatch(/yeast.*; mix the dough to.*; let the dough rise/);
    await meeting.first().getByRole('button', { name: /^Try/ }).click();
    await settled(page);
    expect(minutesOf((await answersOf(page)).eat)).toBeLessThan(eat - 20);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(minutesOf((await answersOf(page)).eat)).toBe(eat);
    expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    expect(errors).toEqual([]);
    await close();
  });

  it('for a goal is worked out when asked, and what is tried gives what it said', async () => {
    const page = await open();
    const before = await answersOf(page);
    await page.getByLabel('What brings most for').selectOption({ label: 'Less energy' });
    const advised = page.locator('.goal-advice li');
    await advised.first().waitFor();
    const thinner = advised.filter({ hasText: /^A plate \d/ });
    // The preheat is said to be so much shorter, and the oven then goes on so much later but for a longer bake.
    expect((await textsOf(thinner))[0]).toMatch(/the preheat \d+ min.* shorter.*kWh less\./);
    await thinner.getByRole('button', { name: /^Try: A plate/ }).click();
    await settled(page);
    expect(minutesOf((await answersOf(page)).ovenOn)).toBeGreaterThan(minutesOf(before.ovenOn) + 5);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await answersOf(page)).toEqual(before);
  });

  it('says what begins first, and how much later the others may', async () => {
    const page = await open();
    const pace = page.locator('section', { hasText: 'What sets the pace' }).getByRole('listitem');
    const lines = await textsOf(pace);
    // Six hours of rise against three quarters of an hour of preheat.
    expect(lines[0]).toMatch(/^The dough begins first, by 1\d:\d\d/);
    const { ovenOn } = await answersOf(page);
    expect(lines).toContainEqual(
      expect.stringMatching(new RegExp(`^The oven can go on as late as ${ovenOn}, \\d h`)),
    );
  });

  it('says of the bake and the plate what a cook asks, where the answers come from', async () => {
    const page = await open();
    await page.getByRole('button', { name: /^Kitchen/ }).click();
    await enterInto(page, 'Energy price', '0.32 EUR/kWh');
    await complete(page);
    await page.locator('#answer-bake').click();
    const rows = await page.getByRole('dialog').locator('tbody tr').allInnerTexts();
    const bakes = rows.map((row) => secondsOf(row.split('\t')[2]!));
    expect(bakes.length).toBeGreaterThanOrEqual(3);
    // The longer the wait, the hotter the plate, the shorter the bake.
    bakes.slice(1).forEach((bake, i) => {
      expect(bake).toBeLessThan(bakes[i]!);
    });
    await page.keyboard.press('Escape');
    await page.locator('#answer-oven-on').click();
    const figures = await page.getByRole('dialog').locator('dl').innerText();
    const [, kWh, money] = /Energy until then\s+([\d.]+) kWh, ([\d.]+) EUR/.exec(figures)!;
    // Each is rounded where it is shown: kWh to tenths, money to hundredths.
    expect(Math.abs(Number(money) - 0.32 * Number(kWh))).toBeLessThanOrEqual(0.32 * 0.05 + 0.005);
    // 40 x 35 cm of 8 mm at 7850 kg/m3.
    expect(figures).toContain('8.8 kg');
    expect(figures).toMatch(/Infrared thermometer\s+shows \d+ °C, set to 0\.95/);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
  });
});
