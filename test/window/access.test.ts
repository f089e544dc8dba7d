/** Accessibility: axe in both themes, the walk by keyboard, contrast measured, narrow windows. */
import { describe, expect, it } from 'vitest';
import { sharedWindow } from '../support/sharedWindow.ts';
import { enterInto, openWindow } from '../support/window.ts';
import { tabStops, violations } from '../support/windowAccess.ts';
import { contrast } from '../support/windowContrast.ts';

const { open, browser } = sharedWindow();

const themes = [
  ['flour', 'light'],
  ['iron', 'dark'],
] as const;

describe.each(themes)('in the theme %s', (theme, colorScheme) => {
  it('axe finds nothing: at rest, with a wrong entry, with an answer open, with the table', async () => {
    const page = await open();
    await page.emulateMedia({ colorScheme });
    await expect.poll(() => page.locator('html').getAttribute('data-theme')).toBe(theme);
    expect(await violations(page)).toEqual([]);
    await enterInto(page, 'Thickness', 'thick');
    expect(await violations(page)).toEqual([]);
    await enterInto(page, 'Thickness', '8 mm');
    for (const name of ['When', 'Pizzas', 'Dough', 'Kitchen']) {
      await page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
    }
    for (const name of ['More of the oven', 'Its physics', 'More of the plate', 'More of the dough']) {
      await page.getByRole('button', { name }).click();
    }
    await page.keyboard.press('t');
    expect(await violations(page)).toEqual([]);
    await page.locator('#answer-bake').click();
    expect(await violations(page, true)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('?');
    expect(await violations(page, true)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('t');
  });

  it('colours have the contrast that WCAG 2.2 asks for (1.4.3, 1.4.11)', async () => {
    const page = await open();
    await page.emulateMedia({ colorScheme });
    await expect.poll(() => page.locator('html').getAttribute('data-theme')).toBe(theme);
    const colours = await page.evaluate(() => {
      const style = getComputedStyle(document.documentElement);
      return Object.fromEntries(
        [
          'paper',
          'panel',
          'raised',
          'ink',
          'muted',
          'edge',
          'accent',
          'on-accent',
          'wrong',
          'bar',
          'bar-ink',
          'bake-ink',
          'air',
          'plate',
          'base',
          'crumb',
          'line-1',
          'line-2',
          'line-3',
          'line-4',
          'line-5',
          'line-6',
        ].map((name) => [name, style.getPropertyValue(`--${name}`).trim()]),
      );
    });
    const between = (one: string, other: string): number => contrast(colours[one]!, colours[other]!);
    for (const ground of ['paper', 'panel']) {
      for (const text of ['ink', 'muted', 'wrong'])
        expect(between(text, ground), `${text} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      for (const line of ['edge', 'accent'])
        expect(between(line, ground), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
    }
    expect(between('ink', 'raised')).toBeGreaterThanOrEqual(4.5);
    expect(between('on-accent', 'accent')).toBeGreaterThanOrEqual(4.5);
    expect(between('bar-ink', 'bar')).toBeGreaterThanOrEqual(4.5);
    expect(between('bake-ink', 'plate')).toBeGreaterThanOrEqual(4.5);
    for (const curve of ['air', 'plate', 'base', 'crumb'])
      expect(between(curve, 'paper'), curve).toBeGreaterThanOrEqual(3);
    for (let line = 1; line <= 6; line += 1)
      expect(between(`line-${String(line)}`, 'raised'), `line ${String(line)}`).toBeGreaterThanOrEqual(3);
    // Okabe and Ito, Color Universal Design, 2008.
    const okabeIto = ['#e69f00', '#56b4e9', '#009e73', '#f0e442', '#0072b2', '#d55e00', '#cc79a7'];
    for (const curve of ['air', 'plate', 'base']) expect(okabeIto).toContain(colours[curve]);
  });
});

describe('by keyboard alone', () => {
  it('every stop of the walk has a name and a visible focus, and the walk comes round', async () => {
    // A walk begins where a page begins only in one that nobody has used.
    const { page, errors, close } = await openWindow(browser());
    const stops = await tabStops(page, 120);
    const names = stops.map(({ name }) => name);
    expect(stops.filter(({ name }) => name === '')).toEqual([]);
    expect(stops.filter(({ ring }) => !ring)).toEqual([]);
    for (const name of [
      'Title of the evening',
      'Theme',
      'Plan',
      'Rack: height of the plate',
      'Moment on the clock',
      'Part of the evening shown',
      'Thickness',
      'Set to',
    ]) {
      expect(names).toContain(name);
    }
    expect(names.length).toBeLessThan(120);
    expect(errors).toEqual([]);
    await close();
  });

  it('changes theme and units, and both are remembered', async () => {
    const { page, served, errors, close } = await openWindow(browser());
    await page.getByRole('button', { name: 'Theme' }).press('Enter');
    await page.getByRole('menuitemradio', { name: 'Iron, dark' }).press('Enter');
    expect(await page.locator('html').getAttribute('data-theme')).toBe('iron');
    await page.getByRole('radio', { name: '°F · US' }).press('Space');
    expect(await page.getByLabel('Set to', { exact: true }).inputValue()).toBe('482 °F');
    expect(await page.locator('.readout').innerText()).toMatch(/oven air 4\d\d°/);
    await page.goto(served.origin);
    await expect.poll(() => page.getByLabel('Set to', { exact: true }).inputValue()).toBe('482 °F');
    expect(await page.locator('html').getAttribute('data-theme')).toBe('iron');
    expect(errors).toEqual([]);
    await close();
  });
});

describe('in a narrow window', () => {
  // 320 CSS px wide: WCAG 2.2, 1.4.10.
  it('nothing but the chart scrolls sideways at 320 px, and the inputs are a drawer', async () => {
    const { page, errors, close } = await openWindow(browser(), {
      context: { viewport: { width: 320, height: 640 } },
    });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
    expect(await page.getByLabel('Thickness', { exact: true }).isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Inputs' }).click();
    expect(await page.getByLabel('Thickness', { exact: true }).isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    expect(await page.getByLabel('Thickness', { exact: true }).isVisible()).toBe(false);
    for (const [digit, loaded] of [
      ['2', '.compared .best'],
      ['3', '.helps li'],
      ['4', '.shopping li'],
    ] as const) {
      await page.keyboard.press(`Control+${digit}`);
      await page.locator(loaded).first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), digit).toBeLessThanOrEqual(320);
    }
    expect(errors).toEqual([]);
    await close();
  });
});
