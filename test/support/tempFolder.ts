import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const stillInUse = new Set(['ENOTEMPTY', 'EBUSY', 'EPERM']);

/** A folder of its own for one test, gone with it. */
export function tempFolder(): string {
  const folder = newTempFolder();
  onTestFinished(() => {
    removeFolder(folder);
  });
  return folder;
}

/** The same for a whole file of tests, which has to remove it. */
export function newTempFolder(): string {
  return mkdtempSync(join(tmpdir(), 'hearthclock-test-'));
}

/**
 * A browser that is about to end may write its profile for longer than a test can wait. What it leaves is no fault of
 * what was tested: it goes with the folder of the run, or with the next run's look for what was left.
 */
export function removeFolder(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  } catch (error) {
    if (!stillInUse.has((error as NodeJS.ErrnoException).code ?? '')) throw error;
  }
}
