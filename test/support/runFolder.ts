/**
 * One folder for whatever a whole run of the tests leaves behind, gone with the run: browsers and installers that a
 * test had to kill remove nothing themselves, nor does a test that was interrupted.
 */
import { mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { removeFolder } from './tempFolder.ts';

const own = /^hearthclock-tests-(\d+)-/;

export default function setup(): () => void {
  const temporary = tmpdir();
  for (const name of readdirSync(temporary)) {
    const run = own.exec(name)?.[1];
    // Left by a run that was killed.
    if (run !== undefined && !runs(Number(run))) removeFolder(join(temporary, name));
  }
  const folder = mkdtempSync(join(temporary, `hearthclock-tests-${process.pid}-`));
  // The workers and all that they start take it from here; Windows reads the other two.
  for (const name of ['TMPDIR', 'TMP', 'TEMP']) process.env[name] = folder;
  return () => {
    removeFolder(folder);
  };
}

function runs(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}
