/** Saving with the disk failing at every single call, once for each cause, by the function and by the services. */
import { chmodSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FlushFailed, SaveFailed, writeAtomically } from '../../main/files/atomicWrite.ts';
import type { Disk } from '../../main/files/disk.ts';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { faultyDisk } from '../support/faultyDisk.ts';
import { tempFolder } from '../support/tempFolder.ts';

const causes = ['ENOSPC', 'EACCES', 'EROFS', 'EIO', 'EPERM', 'EBUSY', 'EDQUOT'] as const;

/** Fails the call of that number, once. */
function failingAt(number: number, code: string): { disk: Disk; calls: string[] } {
  const calls: string[] = [];
  return { calls, disk: faultyDisk(() => (calls.length - 1 === number ? code : undefined), calls) };
}

/** Every call of one save over an old file, in order. */
async function callsOfASave(platform: NodeJS.Platform): Promise<readonly string[]> {
  const path = join(tempFolder(), 'plan');
  writeFileSync(path, 'old');
  const { disk, calls } = failingAt(-1, '');
  await writeAtomically(path, 'new', { disk, platform });
  return calls;
}

describe.each<NodeJS.Platform>(['linux', 'darwin', 'win32'])('a save on %s', (platform) => {
  it.each(causes)('keeps a whole file, old or new as it says, whichever call fails with %s', async (code) => {
    const all = await callsOfASave(platform);
    expect(all.length).toBeGreaterThan(platform === 'win32' ? 9 : 12);
    const outcomes: string[] = [];
    for (const [number, name] of all.entries()) {
      const folder = tempFolder();
      const path = join(folder, 'plan');
      writeFileSync(path, 'old');
      const { disk } = failingAt(number, code);
      const error: unknown = await writeAtomically(path, 'new', { disk, platform }).then(
        () => undefined,
        (failed: unknown) => failed,
      );
      const what = `${name} failing with ${code}: ${String(error)}`;
      if (error !== undefined) {
        expect(error, what).toSatisfy((e) => e instanceof SaveFailed || e instanceof FlushFailed);
        expect((error as Error).message, what).toContain(`${path}: `);
        expect((error as Error).message, what).toContain(code);
      }
      const inPlace = error === undefined || error instanceof FlushFailed;
      expect(readFileSync(path, 'utf8'), what).toBe(inPlace ? 'new' : 'old');
      const beside = readdirSync(folder).filter((one) => one !== 'plan');
      expect(
        beside.filter((one) => one !== 'plan.bak'),
        what,
      ).toEqual([]);
      if (beside.includes('plan.bak')) expect(readFileSync(`${path}.bak`, 'utf8'), what).toBe('old');
      if (inPlace) expect(beside, what).toEqual(['plan.bak']);
      outcomes.push(error === undefined ? 'saved' : (error as Error).name);
    }
    // The flush of the folder alone fails softly: its opening, its flush, its closing.
    expect(outcomes.filter((one) => one === 'FlushFailed')).toHaveLength(platform === 'win32' ? 0 : 3);
    // Windows tries a held file again; a file system without hard links copies.
    const retried = platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(code) ? 2 : 0;
    const copied = ['EPERM', 'EACCES'].includes(code) ? 1 : 0;
    expect(outcomes.filter((one) => one === 'saved')).toHaveLength(retried + copied);
  });
});

interface Opened {
  readonly bridge: Awaited<ReturnType<typeof openServices>>['bridge'];
  readonly own: ReturnType<typeof places>;
  readonly warnings: string[];
}

async function open(disk: Disk, data = tempFolder()): Promise<Opened> {
  const own = places('linux', { HEARTHCLOCK_DATA: data }, data);
  const warnings: string[] = [];
  const warn = (message: string): void => void warnings.push(message);
  const platform = browserPlatform('serve');
  const { bridge } = await openServices({
    platform,
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    warn,
    disk,
  });
  return { bridge, own, warnings };
}

describe('the services on a failing disk', () => {
  it.each(causes)(
    'refuse the save with file and cause (%s), and take it once the cause is gone',
    async (code) => {
      let fails = false;
      const { bridge, own } = await open(
        faultyDisk((call) => (fails && call === 'writeFile' ? code : undefined)),
      );
      const saved = await bridge.savePlanAs({ name: 'Friday', text: 'old' });
      const path = join(own.plans, 'Friday.hearthclock');
      const document = saved?.document ?? '';
      await bridge.keepUnsaved({ text: 'kept' });
      fails = true;
      const refusal = `${path}: could not write the text: ${code}`;
      await expect(bridge.savePlan({ document, text: 'new' })).rejects.toThrow(refusal);
      await expect(bridge.savePlanAs({ name: 'Friday', text: 'new' })).rejects.toThrow(code);
      await expect(bridge.keepUnsaved({ text: 'more' })).rejects.toThrow(code);
      await expect(bridge.saveSettings({ theme: 'iron', units: 'us' })).rejects.toThrow(code);
      expect(readFileSync(path, 'utf8')).toBe('old');
      expect(readdirSync(own.plans)).toEqual(['Friday.hearthclock']);
      expect((await bridge.greet(null)).recovered?.text).toBe('kept');
      fails = false;
      await bridge.savePlan({ document, text: 'new' });
      expect(readFileSync(path, 'utf8')).toBe('new');
      expect(readFileSync(`${path}.bak`, 'utf8')).toBe('old');
    },
  );

  it('say that it is saved, and tell the terminal, where no folder can be flushed', async () => {
    const folders = (path: string): boolean => !path.endsWith('.hearthclock-tmp');
    const disk = faultyDisk((call, path) => (call === 'sync' && folders(path) ? 'EINVAL' : undefined));
    const { bridge, own, warnings } = await open(disk);
    await bridge.savePlanAs({ name: 'Friday', text: 'new' });
    await bridge.keepUnsaved({ text: 'kept' });
    await bridge.saveSettings({ theme: 'iron', units: 'us' });
    expect(readFileSync(join(own.plans, 'Friday.hearthclock'), 'utf8')).toBe('new');
    // The plan, the list of recent plans, the unsaved work, the settings.
    expect(warnings).toHaveLength(4);
    expect(warnings[0]).toContain('Friday.hearthclock: saved, but the folder could not be flushed: EINVAL');
  });

  it('save the file behind a link, with its mode, and leave the link', async () => {
    const { disk } = failingAt(-1, '');
    const { bridge, own } = await open(disk);
    const target = join(tempFolder(), 'real.json');
    writeFileSync(target, 'old');
    chmodSync(target, 0o640);
    symlinkSync(target, join(own.plans, 'link.hearthclock'));
    const [listed] = await bridge.listPlans(null);
    await bridge.openPlan({ document: listed!.document });
    await bridge.savePlan({ document: listed!.document, text: 'new' });
    expect(readFileSync(target, 'utf8')).toBe('new');
    expect(statSync(target).mode & 0o777).toBe(0o640);
    expect(readdirSync(own.plans)).toEqual(['link.hearthclock']);
  });
});
