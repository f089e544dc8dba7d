/** The built window in a real browser: a drag of the plate, keys, and what a thousand redraws leave in memory. */
import type { Page } from 'playwright-core';
import { openBrowser } from '../support/browser.ts';
import { complete, openWindow } from '../support/window.ts';
import { quantileOf } from './timed.ts';

export interface Drag {
  readonly paintedMedian: number;
  readonly painted95: number;
  readonly answerMedian: number;
  readonly longestTask: number;
  readonly task95: number;
}
export interface Memory {
  readonly redraws: number;
  readonly beforeMB: number;
  readonly afterMB: number;
}

interface Seen {
  readonly painted: number[];
  readonly tasks: number[];
}

/** Notes in the page how long each move of the pointer waits for its frame, and every task of 50 ms and more. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const seen: Seen = { painted: [], tasks: [] };
    Object.assign(window, { seen });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) seen.tasks.push(duration);
    }).observe({ type: 'longtask' });
    let waiting = false;
    window.addEventListener(
      'pointermove',
      ({ timeStamp, buttons }) => {
        if (waiting || buttons === 0) return;
        waiting = true;
        // The task after the frame's callback runs when the frame has been drawn.
        requestAnimationFrame(() => {
          setTimeout(() => {
            waiting = false;
            seen.painted.push(performance.now() - timeStamp);
          });
        });
      },
      { capture: true },
    );
  });
}

async function drag(page: Page): Promise<Seen> {
  const handle = page.getByRole('slider', { name: /plate|rack/iu }).first();
  const box = (await handle.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 0; i < 240; i++) {
    await page.mouse.move(x, y + 25 * Math.sin(i / 12));
    await page.waitForTimeout(16);
  }
  await page.mouse.up();
  return page.evaluate(() => (window as unknown as { seen: Seen }).seen);
}

/** ms from a key to the frame in which the first answer has changed, each alone. */
async function keys(page: Page): Promise<readonly number[]> {
  const field = page.getByLabel('Thickness', { exact: true });
  await field.focus();
  const all: number[] = [];
  for (let i = 0; i < 12; i++) {
    const changed = page.evaluate(
      () =>
        new Promise<number>((done) => {
          let start = 0;
          window.addEventListener(
            'keydown',
            ({ timeStamp }) => {
              start = timeStamp;
            },
            { capture: true, once: true },
          );
          const answers = document.querySelector('.answers, [class*="answer"]')!.parentElement!;
          const observer = new MutationObserver(() => {
            observer.disconnect();
            requestAnimationFrame(() => {
              setTimeout(() => {
                done(performance.now() - start);
              });
            });
          });
          observer.observe(answers, { subtree: true, characterData: true, childList: true });
        }),
    );
    await field.press(i % 2 === 0 ? 'ArrowUp' : 'ArrowDown');
    all.push(await changed);
    await complete(page);
  }
  return all;
}

async function heapMB(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize / 2 ** 20;
}

/** Moves the line of the clock about: each move redraws the drawing and the figures of the moment. */
async function redraw(page: Page, times: number): Promise<void> {
  const plot = page.locator('.clock, [class*="clock"]').first();
  const box = (await plot.boundingBox())!;
  for (let i = 0; i < times; i++)
    await page.mouse.move(box.x + (0.2 + (0.6 * (i % 97)) / 97) * box.width, box.y + box.height / 3);
}

export async function benchWindow(): Promise<{
  readonly drag: Drag;
  readonly memory: Memory;
  readonly firstDraw: number;
}> {
  const browser = await openBrowser();
  try {
    const start = performance.now();
    const { page, close } = await openWindow(browser);
    const firstDraw = performance.now() - start;
    await complete(page);
    await watch(page);
    const { painted, tasks } = await drag(page);
    await complete(page);
    const answers = await keys(page);
    await redraw(page, 100);
    const beforeMB = await heapMB(page);
    const redraws = 1000;
    await redraw(page, redraws);
    const afterMB = await heapMB(page);
    await close();
    return {
      firstDraw,
      drag: {
        paintedMedian: quantileOf(painted, 0.5),
        painted95: quantileOf(painted, 0.95),
        answerMedian: quantileOf(answers, 0.5),
        longestTask: Math.max(0, ...tasks),
        task95: tasks.length === 0 ? 0 : quantileOf(tasks, 0.95),
      },
      memory: { redraws, beforeMB, afterMB },
    };
  } finally {
    await browser.close();
  }
}
