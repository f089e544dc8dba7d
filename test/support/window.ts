/** The built window in a real Chromium, served by the product's own server, with every console error kept. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { planFormat, planVersion, type PlanFile } from '../../physics/evening/planFile.ts';
import { serveWindow, type Served, type ServeOptions } from './serve.ts';
import { tempFolder } from './tempFolder.ts';

export interface OpenedWindow {
  readonly page: Page;
  readonly served: Served;
  /** errors of the console, of the page and of the policy; empty in a good run */
  readonly errors: readonly string[];
  readonly close: () => Promise<void>;
}

export interface WindowOptions extends ServeOptions {
  readonly context?: BrowserContextOptions;
  /** the moment at which the clock of the page begins; the test may then move it */
  readonly at?: string;
}

const plain: BrowserContextOptions = {
  viewport: { width: 1280, height: 800 },
  locale: 'en-GB',
  timezoneId: 'Europe/Berlin',
  colorScheme: 'light',
  reducedMotion: 'reduce',
};

export async function openWindow(browser: Browser, options: WindowOptions = {}): Promise<OpenedWindow> {
  const { context: wanted, at, ...serve } = options;
  const served = await serveWindow(serve);
  const context = await browser.newContext({ ...plain, ...wanted });
  const page = await context.newPage();
  if (at !== undefined) await page.clock.install({ time: new Date(at) });
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') errors.push(message.text());
  });
  page.on('pageerror', (error) => {
    errors.push(String(error));
  });
  await page.goto(served.address);
  await settled(page);
  return {
    page,
    served,
    errors,
    close: async () => {
      await context.close();
      await served.close();
    },
  };
}

/** Until the point forecast is that of the plan as it stands; ranges and tried advice follow it, see `complete`. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.window:not([data-computing="point"])').waitFor({ timeout: 45_000 });
}

/** The example again, as if just opened, in a window that others of the file have used before: undo is empty. */
export async function freshPlan({ page, served }: OpenedWindow): Promise<void> {
  const before = await page.locator('.window').getAttribute('data-opened');
  served.push('command', 'new');
  await page.locator(`.window:not([data-opened="${before ?? ''}"])`).waitFor();
  await settled(page);
}

/** Until ranges and tried advice are there as well. */
export async function complete(page: Page): Promise<void> {
  await page.locator('.window[data-computing="nothing"]').waitFor({ timeout: 45_000 });
}

export interface Answers {
  readonly ovenOn: string;
  readonly bake: string;
  readonly eat: string;
}

/** The large figures as they stand on the screen. */
export async function answersOf(page: Page): Promise<Answers> {
  const figure = async (id: string): Promise<string> =>
    (await page.locator(`#answer-${id} .answer-figure`).innerText()).replaceAll(/\s+/g, ' ').trim();
  return { ovenOn: await figure('oven-on'), bake: await figure('bake'), eat: await figure('eat') };
}

/** Texts as they read, whatever kind of space keeps a figure and its unit together. */
export async function textsOf(texts: Locator): Promise<readonly string[]> {
  return (await texts.allInnerTexts()).map((text) => text.replaceAll(/\s+/gu, ' ').trim());
}

/** Minutes of a clock time such as 18:43, counted from noon, so that an evening does not cross zero. */
export function minutesOf(clock: string): number {
  const match = /^(\d{1,2}):(\d{2})$/.exec(clock);
  if (match === null) throw new Error(`clock: found ${clock}; allowed hh:mm`);
  return ((Number(match[1]) + 12) % 24) * 60 + Number(match[2]);
}

/** Seconds of a span such as `6 min 20 s`. */
export function secondsOf(span: string): number {
  const match = /^(?:(\d+) min)? ?(?:(\d+) s)?$/.exec(span);
  if (match === null) throw new Error(`span: found ${span}; allowed minutes and seconds`);
  return Number(match[1] ?? 0) * 60 + Number(match[2] ?? 0);
}

/** Types into a field by its label and takes the entry. */
export async function enterInto(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
  await settled(page);
}

/** A file of a plan that says this and nothing else. @param folder removed with the test when left out */
export function writtenPlan(
  fields: Omit<PlanFile, 'format' | 'version'>,
  folder: string = tempFolder(),
): string {
  const file = join(folder, 'evening.hearthclock');
  writeFileSync(file, JSON.stringify({ format: planFormat, version: planVersion, ...fields }));
  return file;
}

/** A file with the first pizza so many minutes from now. */
export function plannedIn(minutes: number): string {
  const time = new Date(Date.now() + minutes * 60_000).toISOString();
  return writtenPlan({ anchor: { kind: 'eatAt', time } });
}
