/** What is checked of every view alike: axe, and the walk with the tab key. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What the page breaks, each with the first element: every rule of axe, or with `laidOver` those of WCAG 2.2 A and AA
 * alone, since the hidden closing buttons that react-aria puts around a popover stand outside of any landmark.
 */
export async function violations(page: Page, laidOver = false): Promise<readonly string[]> {
  await page.evaluate(axe);
  return page.evaluate(
    async (only) => {
      const { axe: tester } = window as unknown as {
        axe: {
          run(
            context: Document,
            options: object,
          ): Promise<{ violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[] }>;
        };
      };
      const found = await tester.run(document, only === undefined ? {} : { runOnly: only });
      return found.violations.map(
        ({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 160)} ${nodes[0]!.failureSummary ?? ''}`,
      );
    },
    laidOver ? ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] : undefined,
  );
}

export interface TabStop {
  readonly name: string;
  /** whether its focus can be seen */
  readonly ring: boolean;
}

/** Every stop of the tab key from where the focus is, until it leaves the page; at most so many. */
export async function tabStops(page: Page, most: number): Promise<readonly TabStop[]> {
  const stops: TabStop[] = [];
  for (let step = 0; step < most; step += 1) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement) || element === document.body) return undefined;
      const labels =
        element instanceof HTMLInputElement || element instanceof HTMLSelectElement ? element.labels : null;
      const style = getComputedStyle(element);
      return {
        name: element.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? element.textContent.trim(),
        ring: style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2,
      };
    });
    if (stop === undefined) break;
    stops.push(stop);
  }
  return stops;
}
