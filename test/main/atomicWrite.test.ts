import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FlushFailed, SaveFailed, sweepTemporaries, writeAtomically } from '../../main/files/atomicWrite.ts';
import { realDisk } from '../../main/files/disk.ts';
import { faultyDisk, type DiskCall } from '../support/faultyDisk.ts';
import { tempFolder } from '../support/tempFolder.ts';

function oldFile(): string {
  const path = join(tempFolder(), 'Friday.hearthclock');
  writeFileSync(path, 'old');
  return path;
}

const isTemporary = (path: string): boolean => path.endsWith('.hearthclock-tmp');

describe('saving', () => {
  it('replaces the file, flushed before the rename and the folder after it', async () => {
    const path = oldFile();
    chmodSync(path, 0o640);
    const calls: string[] = [];
    await writeAtomically(path, 'new', { disk: faultyDisk(() => undefined, calls), platform: 'linux' });
    expect(readFileSync(path, 'utf8')).toBe('new');
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe('old');
    expect(statSync(path).mode & 0o777).toBe(0o640);
    const temp = '.Friday.hearthclock.*.hearthclock-tmp';
    const folder = basename(join(path, '..'));
    expect(calls.slice(2)).toEqual([
      `open ${temp}`,
      `chmod ${temp}`,
      `writeFile ${temp}`,
      `sync ${temp}`,
      `close ${temp}`,
      `link ${temp}`,
      'rename Friday.hearthclock.bak',
      `rm ${temp}`,
      'rename Friday.hearthclock',
      `open ${folder}`,
      `sync ${folder}`,
      `close ${folder}`,
    ]);
    expect(readdirSync(join(path, '..')).sort()).toEqual(['Friday.hearthclock', 'Friday.hearthclock.bak']);
  });

  it.each<[DiskCall, string, string, (path: string) => boolean]>([
    ['realpath', 'EACCES', 'follow the path', () => true],
    ['stat', 'EIO', 'look at the old file', () => true],
    ['open', 'EROFS', 'make a file beside it', isTemporary],
    ['chmod', 'EPERM', 'give it the mode of the old file', isTemporary],
    ['writeFile', 'ENOSPC', 'write the text', isTemporary],
    ['sync', 'EIO', 'flush it to the disk', isTemporary],
    ['close', 'EIO', 'close it', isTemporary],
    ['link', 'EIO', 'keep the previous version', isTemporary],
    ['rename', 'EACCES', 'keep the previous version', (path) => path.endsWith('.bak')],
    ['rename', 'EXDEV', 'put the new file in place', (path) => path.endsWith('.hearthclock')],
  ])(
    'when %s fails with %s keeps the old file and names it, "%s" and the cause',
    async (call, code, step, where) => {
      const path = oldFile();
      const disk = faultyDisk((called, at) => (called === call && where(at) ? code : undefined));
      const error: unknown = await writeAtomically(path, 'new', { disk, platform: 'linux' }).catch(
        (e: unknown) => e,
      );
      expect(error).toBeInstanceOf(SaveFailed);
      expect((error as SaveFailed).message).toBe(
        `${path}: could not ${step}: ${code} (${code}: made to fail, ${call}); the file on disk was left as it was`,
      );
      expect(readFileSync(path, 'utf8')).toBe('old');
      expect(readdirSync(join(path, '..')).filter(isTemporary)).toEqual([]);
      // The same file can be saved once the cause is gone.
      await writeAtomically(path, 'new');
      expect(readFileSync(path, 'utf8')).toBe('new');
    },
  );

  it('says that the file is saved when only the folder could not be flushed', async () => {
    const path = oldFile();
    const disk = faultyDisk((call, at) => (call === 'sync' && !isTemporary(at) ? 'EINVAL' : undefined));
    await expect(writeAtomically(path, 'new', { disk, platform: 'linux' })).rejects.toThrow(FlushFailed);
    expect(readFileSync(path, 'utf8')).toBe('new');
  });

  it('copies the previous version where the file system has no hard links', async () => {
    const path = oldFile();
    const disk = faultyDisk((call) => (call === 'link' ? 'EPERM' : undefined));
    await writeAtomically(path, 'new', { disk });
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe('old');
  });

  it('leaves nothing behind when the backup already is the old file', async () => {
    const path = oldFile();
    await realDisk.link(path, `${path}.bak`);
    await writeAtomically(path, 'new');
    expect(readdirSync(join(path, '..')).sort()).toEqual(['Friday.hearthclock', 'Friday.hearthclock.bak']);
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe('old');
  });

  it.each(['EPERM', 'EACCES', 'EBUSY'])(
    'tries again on Windows while a scanner holds the file (%s)',
    async (code) => {
      const path = oldFile();
      let held = 3;
      const disk = faultyDisk((call, at) =>
        call === 'rename' && !at.endsWith('.bak') && (held -= 1) >= 0 ? code : undefined,
      );
      await writeAtomically(path, 'new', { disk, platform: 'win32' });
      expect(readFileSync(path, 'utf8')).toBe('new');
    },
  );

  it('reports on Windows when the file stays held, and never writes in place', async () => {
    const path = oldFile();
    const calls: string[] = [];
    const disk = faultyDisk(
      (call, at) => (call === 'rename' && !at.endsWith('.bak') ? 'EBUSY' : undefined),
      calls,
    );
    await expect(writeAtomically(path, 'new', { disk, platform: 'win32' })).rejects.toThrow('EBUSY');
    expect(calls.filter((call) => call === 'rename Friday.hearthclock')).toHaveLength(8);
    expect(readFileSync(path, 'utf8')).toBe('old');
  });

  it('writes one after the other, the last call last, also past a failed one', async () => {
    const path = oldFile();
    let calls = 0;
    const disk = faultyDisk((call) => (call === 'writeFile' && (calls += 1) === 2 ? 'ENOSPC' : undefined));
    const all = ['a', 'b', 'c', 'd'].map((text) => writeAtomically(path, text, { disk }));
    const outcomes = await Promise.allSettled(all);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled', 'fulfilled']);
    expect(readFileSync(path, 'utf8')).toBe('d');
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe('c');
  });

  it('follows a link, also one whose file is not there yet', async () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'real'));
    symlinkSync(join('real', 'plan'), join(folder, 'link'));
    await writeAtomically(join(folder, 'link'), 'first');
    await writeAtomically(join(folder, 'link'), 'second');
    expect(readFileSync(join(folder, 'real', 'plan'), 'utf8')).toBe('second');
    expect(readdirSync(join(folder, 'real')).sort()).toEqual(['plan', 'plan.bak']);
    expect(readdirSync(folder).sort()).toEqual(['link', 'real']);
  });

  it('sweeps what a killed save left, but not what may be a running one', async () => {
    const folder = tempFolder();
    for (const name of ['.a.hearthclock.0123456789ab.hearthclock-tmp', 'a.hearthclock', '.other.tmp']) {
      writeFileSync(join(folder, name), '');
    }
    expect(await sweepTemporaries(folder, Date.now())).toEqual([]);
    const later = Date.now() + 3_600_000;
    expect(await sweepTemporaries(folder, later)).toEqual(['.a.hearthclock.0123456789ab.hearthclock-tmp']);
    expect(readdirSync(folder).sort()).toEqual(['.other.tmp', 'a.hearthclock']);
  });
});
