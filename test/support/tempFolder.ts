import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

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

export function removeFolder(folder: string): void {
  // A browser may still be writing its profile while it ends.
  rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
}
