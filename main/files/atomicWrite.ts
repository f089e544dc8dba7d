/**
 * Saving so that whatever happens in between, the file is either the old one or the new one, whole.
 *
 * The text goes to a temporary file in the same folder (a rename across file systems is a copy), is flushed, and is
 * renamed over the target; then the folder is flushed, because a rename that only memory knows is lost with the power
 * (Pillai et al., "All File Systems Are Not Created Equal", OSDI 2014). The version before stays beside it as `.bak`.
 */
import { randomBytes } from 'node:crypto';
import { readdir, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { causeOf, hasCode, realDisk, type Disk } from './disk.ts';

export const backupEnding = '.bak';
const temporary = /^\..+\.[0-9a-f]{12}\.hearthclock-tmp$/;

/** Growing pauses, 1.1 s in all: virus scanners and indexers on Windows hold a new file for a moment. */
const retryPauses = [10, 20, 40, 80, 150, 300, 500];

/** The file could not be saved; the one on disk is whole. Names the file, the step and the system's cause. */
export class SaveFailed extends Error {
  readonly path: string;
  readonly step: string;
  constructor(path: string, step: string, cause: unknown) {
    super(`${path}: could not ${step}: ${causeOf(cause)}; the file on disk was left as it was`, { cause });
    this.name = 'SaveFailed';
    this.path = path;
    this.step = step;
  }
}

export interface WriteOptions {
  readonly disk?: Disk;
  readonly platform?: NodeJS.Platform;
  /** Keep the version before as `.bak`; not for the program's own small files. */
  readonly keepPrevious?: boolean;
}

const queues = new Map<string, Promise<unknown>>();

/** One writer at a time per path, in the order of the calls; a failed one does not stop those behind it. */
export async function inTurn<T>(path: string, work: () => Promise<T>): Promise<T> {
  const before = queues.get(path) ?? Promise.resolve();
  const mine = before.then(work, work);
  queues.set(path, mine);
  try {
    return await mine;
  } finally {
    if (queues.get(path) === mine) queues.delete(path);
  }
}

/** The file behind a symbolic link (also a dangling one), so that saving replaces the file and not the link. */
export async function targetOf(path: string, disk: Disk = realDisk): Promise<string> {
  try {
    return await disk.realpath(path);
  } catch (error) {
    if (!hasCode(error, 'ENOENT')) throw new SaveFailed(path, 'follow the path', error);
  }
  let link;
  try {
    link = await disk.readlink(path);
  } catch (error) {
    if (hasCode(error, 'ENOENT', 'EINVAL')) return resolve(path);
    throw new SaveFailed(path, 'follow the path', error);
  }
  return targetOf(resolve(dirname(path), link), disk);
}

/** @throws SaveFailed with the file, the step and the cause; the old file is untouched then */
export async function writeAtomically(
  path: string,
  text: string | Uint8Array,
  options: WriteOptions = {},
): Promise<void> {
  // Twice: by the name asked for, so that calls keep their order while links are followed, and by the file itself.
  await inTurn(`name ${resolve(path)}`, async () => {
    const target = await targetOf(path, options.disk);
    await inTurn(target, () => write(target, text, options));
  });
}

async function write(
  target: string,
  text: string | Uint8Array,
  { disk = realDisk, platform = process.platform, keepPrevious = true }: WriteOptions,
): Promise<void> {
  const temp = temporaryBeside(target);
  const step = async <T>(name: string, work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      throw new SaveFailed(target, name, error);
    }
  };
  try {
    const old = await step('look at the old file', () => statIfThere(target, disk));
    await writeTemporary(temp, text, old?.mode, disk, step);
    if (old !== undefined && keepPrevious) {
      await step('keep the previous version', () => keepBackup(target, disk, platform));
    }
    await step('put the new file in place', () => renamePatiently(temp, target, disk, platform));
  } catch (error) {
    // Best effort: the failure to report is the one that stopped the save; a left-over is swept at the next start.
    await disk.rm(temp).catch(() => undefined);
    throw error;
  }
  await flushFolder(target, keepPrevious, disk, platform);
}

function temporaryBeside(target: string): string {
  return join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}.hearthclock-tmp`);
}

async function statIfThere(path: string, disk: Disk): Promise<{ mode: number } | undefined> {
  try {
    return await disk.stat(path);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return undefined;
    throw error;
  }
}

async function writeTemporary(
  temp: string,
  text: string | Uint8Array,
  mode: number | undefined,
  disk: Disk,
  step: <T>(name: string, work: () => Promise<T>) => Promise<T>,
): Promise<void> {
  const file = await step('make a file beside it', () => disk.open(temp, 'wx', 0o666));
  try {
    // The mask of the process would otherwise narrow the mode of the old file.
    if (mode !== undefined) await step('give it the mode of the old file', () => file.chmod(mode & 0o7777));
    await step('write the text', () => file.writeFile(text));
    await step('flush it to the disk', () => file.sync());
  } finally {
    await step('close it', () => file.close());
  }
}

/** The old file under a second name by a hard link, so that there is no moment without it; a copy where links fail. */
async function keepBackup(target: string, disk: Disk, platform: NodeJS.Platform): Promise<void> {
  const temp = temporaryBeside(target);
  try {
    try {
      await disk.link(target, temp);
    } catch (error) {
      if (!hasCode(error, 'EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EISDIR', 'EACCES'))
        throw error;
      await disk.copyFile(target, temp);
    }
    await renamePatiently(temp, target + backupEnding, disk, platform);
  } finally {
    // A rename between two names of one file does nothing and leaves both (POSIX rename).
    await disk.rm(temp);
  }
}

async function renamePatiently(
  from: string,
  to: string,
  disk: Disk,
  platform: NodeJS.Platform,
): Promise<void> {
  const pauses = platform === 'win32' ? retryPauses : [];
  for (const wait of pauses) {
    try {
      await disk.rename(from, to);
      return;
    } catch (error) {
      if (!hasCode(error, 'EPERM', 'EACCES', 'EBUSY')) throw error;
      await pause(wait);
    }
  }
  await disk.rename(from, to);
}

/** After the rename the new file is in place: a folder that cannot be flushed is no failed save. */
async function flushFolder(
  target: string,
  keptPrevious: boolean,
  disk: Disk,
  platform: NodeJS.Platform,
): Promise<void> {
  // Windows opens no folders; NTFS journals the rename itself.
  if (platform === 'win32') return;
  try {
    const folder = await disk.open(dirname(target), 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch (error) {
    throw new FlushFailed(target, keptPrevious, error);
  }
}

/** The new file is in place and whole, but the folder could not be flushed: power lost now may bring the old one back. */
export class FlushFailed extends Error {
  readonly path: string;
  constructor(path: string, keptPrevious: boolean, cause: unknown) {
    const previous = keptPrevious ? `; the previous version is in ${path}${backupEnding}` : '';
    super(`${path}: saved, but the folder could not be flushed: ${causeOf(cause)}${previous}`, { cause });
    this.name = 'FlushFailed';
    this.path = path;
  }
}

/** As `writeAtomically`, where a folder that cannot be flushed (some network drives never can) is only told. */
export async function writeAndTell(
  path: string,
  text: string | Uint8Array,
  warn: (message: string) => void,
  options: WriteOptions = {},
): Promise<void> {
  try {
    await writeAtomically(path, text, options);
  } catch (error) {
    // The new file is in place then; the cook's work is not to be called unsaved.
    if (!(error instanceof FlushFailed)) throw error;
    warn(error.message);
  }
}

/**
 * Removes what a killed save left in `folder`. Younger files may belong to a save that is running now.
 * @returns the names removed
 */
export async function sweepTemporaries(
  folder: string,
  now: number,
  olderThanMs = 600_000,
): Promise<string[]> {
  const removed: string[] = [];
  for (const name of await readdir(folder)) {
    if (!temporary.test(name)) continue;
    const path = join(folder, name);
    // Another start of the program may have swept it meanwhile.
    const about = await stat(path).catch(() => undefined);
    if (about?.isFile() !== true || now - about.mtimeMs < olderThanMs) continue;
    await rm(path, { force: true });
    removed.push(name);
  }
  return removed;
}
