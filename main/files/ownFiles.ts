/** The program's own small files: settings, recent documents, unsaved work. A broken one is reported, not fatal. */
import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { uptime } from 'node:os';
import * as v from 'valibot';
import { calls, type Ask, type Settings } from '../bridge.ts';
import { inTurn, writeAndTell } from './atomicWrite.ts';
import { causeOf, hasCode, realDisk, type Disk } from './disk.ts';
import { readText } from './readText.ts';

export type Warn = (message: string) => void;

export const firstSettings: Settings = { theme: 'system', units: 'metric' };
const recentPaths = v.array(v.string());
const recentLimit = 20;

async function readOwn<T>(
  path: string,
  schema: v.GenericSchema<unknown, T>,
  first: T,
  warn: Warn,
): Promise<T> {
  try {
    await stat(path);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return first;
    warn(`${path}: ${causeOf(error)}; the defaults are used`);
    return first;
  }
  try {
    return v.parse(schema, JSON.parse((await readText(path)).text));
  } catch (error) {
    warn(`${path}: ${causeOf(error)}; the defaults are used`);
    return first;
  }
}

function writeOwn(path: string, value: unknown, warn: Warn, disk: Disk): Promise<void> {
  return writeOwnText(path, `${JSON.stringify(value, null, 2)}\n`, warn, disk);
}

async function writeOwnText(path: string, text: string, warn: Warn, disk: Disk): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  // The version before is kept here too: a file that could not be read is then not lost by the next write.
  await writeAndTell(path, text, warn, { disk });
}

export function readSettings(path: string, warn: Warn): Promise<Settings> {
  return readOwn(path, calls.saveSettings.ask, firstSettings, warn);
}

export function writeSettings(path: string, settings: Settings, warn: Warn, disk = realDisk): Promise<void> {
  return writeOwn(path, settings, warn, disk);
}

/**
 * What was kept of the ovens learned, as the window wrote it; empty when nothing was.
 *
 * @throws FileProblem when it is there and cannot be read: taking it for empty would lose it by the next write
 */
export async function readOvens(path: string): Promise<string> {
  try {
    await stat(path);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return '';
  }
  return (await readText(path)).text;
}

export function writeOvens(path: string, text: string, warn: Warn, disk = realDisk): Promise<void> {
  return writeOwnText(path, text, warn, disk);
}

export function readRecents(path: string, warn: Warn): Promise<string[]> {
  return readOwn(path, recentPaths, [], warn);
}

/** Puts `document` first; the oldest beyond twenty are forgotten. */
export function addRecent(path: string, document: string, warn: Warn, disk = realDisk): Promise<void> {
  return inTurn(`recents ${path}`, async () => {
    const known = await readRecents(path, warn);
    const recents = [document, ...known.filter((one) => one !== document)].slice(0, recentLimit);
    await writeOwn(path, recents, warn, disk);
  });
}

export interface Unsaved {
  readonly text: string;
  readonly keptAt: string;
}

/**
 * Unsaved work, one file per running program, so that two of them do not overwrite each other's. What another
 * program left is offered once that program is gone, and removed when the cook has taken or dropped it.
 */
export class UnsavedWork {
  readonly #folder: string;
  readonly #own: string;
  readonly #warn: Warn;
  readonly #disk: Disk;
  #offered: string | undefined;

  constructor(folder: string, warn: Warn, session = process.pid, disk = realDisk) {
    this.#folder = folder;
    this.#own = join(folder, `${String(session)}.hearthclock`);
    this.#warn = warn;
    this.#disk = disk;
  }

  /**
   * In the order of the calls: forgetting must not overtake the keeping before it. What was offered stays while the
   * cook has not decided (`open`); unsaid, it goes with what is forgotten and stays beside what is kept.
   */
  keep(text: string, offer?: Ask<'keepUnsaved'>['offer']): Promise<void> {
    const settled = offer === 'settled' || (offer === undefined && text === '');
    return inTurn(`unsaved ${this.#own}`, () => this.#keepNow(text, settled));
  }

  async #keepNow(text: string, settled: boolean): Promise<void> {
    if (text === '') {
      await rm(this.#own, { force: true });
    } else {
      await mkdir(this.#folder, { recursive: true });
      await writeAndTell(this.#own, text, this.#warn, { disk: this.#disk, keepPrevious: false });
    }
    if (!settled || this.#offered === undefined) return;
    // Last: work that was taken is by now in our own file.
    await rm(this.#offered, { force: true });
    this.#offered = undefined;
  }

  /** The newest work that no running program is still keeping; our own after the window was loaded again. */
  async offer(): Promise<Unsaved | null> {
    const found = [];
    for (const name of await namesIn(this.#folder)) {
      const session = /^(\d+)\.hearthclock$/.exec(name)?.[1];
      if (session === undefined) continue;
      const path = join(this.#folder, name);
      const about = await stat(path).catch(() => undefined);
      // Gone meanwhile: its program has ended with nothing unsaved.
      if (about === undefined) continue;
      const { mtimeMs } = about;
      if (path === this.#own || !stillRuns(Number(session), mtimeMs)) found.push({ path, mtimeMs });
    }
    found.sort((a, b) => b.mtimeMs - a.mtimeMs);
    for (const { path, mtimeMs } of found) {
      try {
        const { text } = await readText(path);
        if (path !== this.#own) this.#offered = path;
        return { text, keptAt: new Date(mtimeMs).toISOString() };
      } catch (error) {
        this.#warn(causeOf(error));
      }
    }
    return null;
  }
}

/** A process of that number that was there before the file was written in this uptime of the machine. */
function stillRuns(pid: number, keptAtMs: number): boolean {
  if (keptAtMs < Date.now() - uptime() * 1000) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return hasCode(error, 'EPERM');
  }
}

export async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return [];
    throw error;
  }
}
