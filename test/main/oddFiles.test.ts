/** Data folders as they are found in the field: dangling and circular links, folders for files, files that are gone. */
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SaveFailed, writeAtomically } from '../../main/files/atomicWrite.ts';
import { causeOf } from '../../main/files/disk.ts';
import { places, type Places } from '../../main/files/places.ts';
import { readText } from '../../main/files/readText.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices, type Services } from '../../main/services.ts';
import { faultyDisk } from '../support/faultyDisk.ts';
import { tempFolder } from '../support/tempFolder.ts';

interface Opened extends Services {
  readonly own: Places;
  readonly warnings: string[];
}

async function open(data = tempFolder()): Promise<Opened> {
  const own = places('linux', { HEARTHCLOCK_DATA: data }, data);
  const warnings: string[] = [];
  const services = await openServices({
    platform: browserPlatform('serve'),
    places: own,
    version: '0.0.0-test',
    warn: (message) => warnings.push(message),
    push: () => undefined,
  });
  return { ...services, own, warnings };
}

describe('the program comes up', () => {
  it('where another start has swept or forgotten a file since its name was read', async () => {
    const data = tempFolder();
    // To look at a link into nothing fails as does a file that has just gone.
    for (const name of [
      'plans/.x.hearthclock.0123456789ab.hearthclock-tmp',
      'unsaved/99999999.hearthclock',
    ]) {
      mkdirSync(join(data, name, '..'), { recursive: true });
      symlinkSync('/nowhere', join(data, name));
    }
    const { bridge, warnings } = await open(data);
    expect((await bridge.greet(null)).recovered).toBeNull();
    expect(warnings).toEqual([]);
  });

  it('where a folder has the name of a left-over, and leaves that alone', async () => {
    const data = tempFolder();
    const folder = join(data, 'plans', '.x.hearthclock.0123456789ab.hearthclock-tmp');
    mkdirSync(folder, { recursive: true });
    utimesSync(folder, 1_700_000_000, 1_700_000_000);
    await open(data);
    expect(existsSync(folder)).toBe(true);
  });

  it('where its own files are links in a circle, and says so; the ovens it refuses', async () => {
    const data = tempFolder();
    for (const name of ['settings.json', 'recent.json', 'ovens.json'])
      symlinkSync(join(data, name), join(data, name));
    const { bridge, own, warnings } = await open(data);
    expect((await bridge.greet(null)).settings).toEqual({ theme: 'system', units: 'metric' });
    expect(await bridge.listPlans(null)).toEqual([]);
    expect(warnings.map((line) => [line.split(':')[0], line.includes('ELOOP')])).toEqual([
      [own.settings, true],
      [own.recents, true],
    ]);
    await expect(bridge.readOvens(null)).rejects.toThrow(`${own.ovens}: found ELOOP`);
  });

  it('not where a file is in the place of its folder, which it names', async () => {
    const data = tempFolder();
    writeFileSync(join(data, 'plans'), '');
    await expect(open(data)).rejects.toThrow(join(data, 'plans'));
  });
});

describe('the list of plans', () => {
  it('is empty when the folder of plans has gone, and says why when a file took its place', async () => {
    const { bridge, own } = await open();
    rmSync(own.plans, { recursive: true });
    expect(await bridge.listPlans(null)).toEqual([]);
    writeFileSync(own.plans, '');
    await expect(bridge.listPlans(null)).rejects.toThrow('ENOTDIR');
  });

  it('leaves out folders, tells of what cannot be followed, and names files without their ending', async () => {
    const { bridge, own, warnings, openFromOutside } = await open();
    const circle = join(own.plans, 'circle.hearthclock');
    symlinkSync(circle, circle);
    mkdirSync(join(own.plans, 'folder.hearthclock'));
    const outside = tempFolder();
    for (const name of ['evening.txt', 'evening.json']) {
      writeFileSync(join(outside, name), '{}');
      await openFromOutside(join(outside, name));
    }
    const names = (await bridge.listPlans(null)).map(({ name }) => name);
    expect(names.sort()).toEqual(['evening', 'evening.txt']);
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatch(/circle\.hearthclock.*ELOOP.*left out of the list/u);
  });
});

describe('a save', () => {
  it('does not go over a plan that the window has never read, unless told to', async () => {
    const { bridge, own } = await open();
    const path = join(own.plans, 'Friday.hearthclock');
    writeFileSync(path, 'theirs');
    const [listed] = await bridge.listPlans(null);
    const { document } = listed!;
    await expect(bridge.savePlan({ document, text: 'mine' })).rejects.toThrow(path);
    expect(readFileSync(path, 'utf8')).toBe('theirs');
    await bridge.savePlan({ document, text: 'mine', evenIfChanged: true });
    expect(readFileSync(`${path}.bak`, 'utf8')).toBe('theirs');
  });

  it('names the file when its folder has become a file', async () => {
    const { bridge, openFromOutside } = await open();
    const folder = join(tempFolder(), 'folder');
    mkdirSync(folder);
    const path = join(folder, 'Friday.hearthclock');
    writeFileSync(path, 'one');
    const { document } = await openFromOutside(path);
    rmSync(folder, { recursive: true });
    writeFileSync(folder, 'a file');
    await expect(bridge.savePlan({ document, text: 'two' })).rejects.toThrow(`${path}: could not`);
    expect(readFileSync(folder, 'utf8')).toBe('a file');
  });

  it('names the file when a link cannot be read', async () => {
    const link = join(tempFolder(), 'link');
    symlinkSync('gone', link);
    const disk = faultyDisk((call) => (call === 'readlink' ? 'EIO' : undefined));
    const failed: unknown = await writeAtomically(link, 'new', { disk }).catch((error: unknown) => error);
    expect(failed).toBeInstanceOf(SaveFailed);
    expect(String(failed)).toContain(`${link}: could not follow the path: EIO`);
  });

  it('tells of the failure that stopped it, also when its left-over cannot be removed', async () => {
    const folder = tempFolder();
    const path = join(folder, 'plan');
    writeFileSync(path, 'old');
    const disk = faultyDisk((call, on) =>
      call === 'rm' || (call === 'rename' && basename(on) === 'plan') ? 'EROFS' : undefined,
    );
    await expect(writeAtomically(path, 'new', { disk, keepPrevious: false })).rejects.toThrow(
      `${path}: could not put the new file in place: EROFS`,
    );
    expect(readFileSync(path, 'utf8')).toBe('old');
    expect(readdirSync(folder)).toHaveLength(2);
  });
});

describe('reading', () => {
  it('says what is in the way', async () => {
    const path = join(tempFolder(), 'file');
    writeFileSync(path, '');
    await expect(readText(join(path, 'below'))).rejects.toThrow(
      /below: found ENOTDIR .*; allowed a readable/u,
    );
  });

  it.runIf(existsSync('/proc/self/status'))(
    'stops at the limit although the size told was smaller',
    async () => {
      // The kernel tells 0 bytes for what it writes while it is read, as a file that grows would.
      await expect(readText('/proc/self/status', 10)).rejects.toThrow(
        /found \d+ bytes; allowed a readable text file of at most 10 bytes/u,
      );
    },
  );
});

it('the cause of a failure is told whatever was thrown', () => {
  expect(causeOf(Object.assign(new Error('no space'), { code: 'ENOSPC' }))).toBe('ENOSPC (no space)');
  expect(causeOf(Object.assign(new Error('parse'), { code: 7 }))).toBe('parse');
  expect(causeOf('a word')).toBe('a word');
});
