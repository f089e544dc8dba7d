import { mkdirSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answer, Refusal } from '../../main/answer.ts';
import type { Bridge } from '../../main/bridge.ts';
import { UnsavedWork } from '../../main/files/ownFiles.ts';
import { places, type Places } from '../../main/files/places.ts';
import { fileNameFor } from '../../main/files/planName.ts';
import { readText } from '../../main/files/readText.ts';
import { browserPlatform, systemName } from '../../main/platform.ts';
import { openServices, type Services } from '../../main/services.ts';
import { readWindowFiles } from '../../main/window/windowFiles.ts';
import { tempFolder } from '../support/tempFolder.ts';

interface Opened extends Services {
  readonly own: Places;
  readonly warnings: string[];
}

async function open(data = tempFolder(), file?: string): Promise<Opened> {
  const own = places('linux', { HEARTHCLOCK_DATA: data }, '/nowhere');
  const warnings: string[] = [];
  const services = await openServices({
    platform: browserPlatform('serve'),
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    file,
    warn: (message) => warnings.push(message),
  });
  return { ...services, own, warnings };
}

describe('the door of the bridge', () => {
  it('refuses an answer that breaks the contract: our fault, not the window’s', async () => {
    const { bridge } = await open();
    const broken = { ...bridge, listPlans: () => Promise.resolve([{ path: '/etc' }]) } as unknown as Bridge;
    const error: unknown = await answer(broken, true, 'listPlans', null).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(Error);
    expect(error).not.toBeInstanceOf(Refusal);
  });

  it('refuses a foreign page before it looks at anything else', async () => {
    const { bridge } = await open();
    await expect(answer(bridge, false, 'no such call', 1)).rejects.toMatchObject({ kind: 'foreign' });
  });
});

describe('the alarms of the evening', () => {
  it('are noted by the system and pushed to the window when they are due, once', async () => {
    const told: unknown[] = [];
    const { bridge } = await openServices({
      platform: {
        ...browserPlatform('serve'),
        notify: (note) => {
          told.push(note);
          return true;
        },
      },
      places: places('linux', { HEARTHCLOCK_DATA: tempFolder() }, '/nowhere'),
      version: '0.0.0-test',
      warn: () => undefined,
      push: (name, what) => told.push([name, what]),
    });
    const alarm = { step: 'bake-1', at: Date.now() + 20, title: 'Pizza 1 out', body: 'Look at it first' };
    await bridge.setAlarms([alarm]);
    await expect.poll(() => told.length).toBe(2);
    await bridge.setAlarms([alarm]);
    expect(told).toEqual([
      { title: 'Pizza 1 out', body: 'Look at it first' },
      ['alarmDue', { step: 'bake-1' }],
    ]);
  });
});

describe('where the program keeps its own', () => {
  it.each([
    ['linux', {}, '/home/a/.local/share/Hearthclock'],
    ['linux', { XDG_DATA_HOME: '/data' }, '/data/Hearthclock'],
    ['linux', { XDG_DATA_HOME: 'relative' }, '/home/a/.local/share/Hearthclock'],
    ['darwin', {}, '/home/a/Library/Application Support/Hearthclock'],
    ['win32', {}, '\\home\\a\\AppData\\Roaming\\Hearthclock'],
    ['win32', { APPDATA: 'C:\\Users\\a\\AppData\\Roaming' }, 'C:\\Users\\a\\AppData\\Roaming\\Hearthclock'],
    ['linux', { HEARTHCLOCK_DATA: '/elsewhere' }, '/elsewhere'],
    ['darwin', { HEARTHCLOCK_DATA: '' }, '/home/a/Library/Application Support/Hearthclock'],
  ] as const)('%s, %j', (platform, env, root) => {
    expect(places(platform, env, '/home/a').root).toBe(root);
  });

  it('is for the cook alone, and nothing is written beside it', async () => {
    const folder = tempFolder();
    const { own } = await open(join(folder, 'data'));
    expect(statSync(own.root).mode & 0o077).toBe(0);
    expect(readdirSync(folder)).toEqual(['data']);
  });

  it('knows the three systems', () => {
    expect((['linux', 'freebsd', 'darwin', 'win32'] as const).map(systemName)).toEqual([
      'linux',
      'linux',
      'mac',
      'windows',
    ]);
  });

  it('is swept of what a killed save left', async () => {
    const data = tempFolder();
    mkdirSync(join(data, 'plans'));
    const left = join(data, 'plans', '.x.hearthclock.0123456789ab.hearthclock-tmp');
    writeFileSync(left, 'half');
    utimesSync(left, 1_700_000_000, 1_700_000_000);
    await open(data);
    expect(readdirSync(join(data, 'plans'))).toEqual([]);
  });
});

describe('a plan saved by name', () => {
  it.each([
    ['Friday 24/12', 'Friday 24-12'],
    ['../../etc/passwd', '-..-etc-passwd'],
    ['...', undefined],
    ['  ', undefined],
    ['con', undefined],
    ['LPT1.x', undefined],
    ['Pizza für acht — “scharf”', 'Pizza für acht — “scharf”'],
    ['a\u0000b\nc', 'a-b-c'],
    ['.hidden', 'hidden'],
    ['ends with dots..', 'ends with dots'],
    ['ж'.repeat(120), undefined],
  ])('%j becomes %j', (name, file) => {
    if (file === undefined)
      expect(() => fileNameFor(name)).toThrow(`name: found ${JSON.stringify(name)}; allowed`);
    else expect(fileNameFor(name)).toBe(file);
  });

  it('never leaves its folder, whatever the name (property)', () => {
    const anyName = fc.string({ unit: 'binary', minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(anyName, (name) => {
        let file;
        try {
          file = fileNameFor(name);
        } catch {
          return;
        }
        expect(file).not.toMatch(/[/\\\p{Cc}]|^\.|[. ]$/u);
        expect(file.length).toBeGreaterThan(0);
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });

  it('stands beside one of the same name, also when two are saved at once', async () => {
    const { bridge, own } = await open();
    const save = async (): Promise<string> =>
      (await bridge.savePlanAs({ name: 'Friday', text: '{}' }))?.name ?? '';
    const names = await Promise.all([save(), save(), save()]);
    expect(names.sort()).toEqual(['Friday', 'Friday 2', 'Friday 3']);
    expect(readdirSync(own.plans).sort()).toEqual([
      'Friday 2.hearthclock',
      'Friday 3.hearthclock',
      'Friday.hearthclock',
    ]);
  });
});

describe('reading a file', () => {
  it.each<[string, Buffer, string]>([
    [
      'bytes over the limit',
      Buffer.alloc(1_000_001, 0x20),
      'found 1000001 bytes; allowed a readable text file of at most 1000000 bytes',
    ],
    ['half a character', Buffer.from([0xe2, 0x82]), 'found bytes that are not UTF-8'],
    ['a surrogate in UTF-8', Buffer.from([0xed, 0xa0, 0x80]), 'found bytes that are not UTF-8'],
    ['UTF-16', Buffer.from('\ufeff{}', 'utf16le'), 'found bytes that are not UTF-8'],
  ])('refuses %s', async (_what, bytes, message) => {
    const path = join(tempFolder(), 'plan');
    writeFileSync(path, bytes);
    await expect(readText(path)).rejects.toThrow(`${path}: ${message}`);
  });

  it('takes a byte-order mark away', async () => {
    const path = join(tempFolder(), 'plan');
    writeFileSync(path, '\ufeff{"a":"ü"}');
    expect((await readText(path)).text).toBe('{"a":"ü"}');
  });
});

describe('the list of plans', () => {
  it('has the own ones and the recent ones, newest first, and not those that are gone', async () => {
    const outside = tempFolder();
    const file = (name: string, seconds: number): string => {
      const path = join(outside, name);
      writeFileSync(path, '{}');
      utimesSync(path, seconds, seconds);
      return path;
    };
    const { bridge, own, openFromOutside } = await open();
    await openFromOutside(file('old.json', 1_600_000_000));
    await openFromOutside(file('newest.hearthclock', 4_000_000_000));
    await bridge.savePlanAs({ name: 'own', text: '{}' });
    const names = async (): Promise<string[]> => (await bridge.listPlans(null)).map(({ name }) => name);
    expect(await names()).toEqual(['newest', 'own', 'old']);
    writeFileSync(own.recents, JSON.stringify([join(outside, 'old.json'), join(outside, 'gone')]));
    expect(await names()).toEqual(['own', 'old']);
  });

  it('remembers all of several opened at once', async () => {
    const outside = tempFolder();
    const { own, openFromOutside } = await open();
    const paths = ['a', 'b', 'c', 'd'].map((name) => join(outside, `${name}.json`));
    for (const path of paths) writeFileSync(path, '{}');
    await Promise.all(paths.map(openFromOutside));
    expect((JSON.parse(readFileSync(own.recents, 'utf8')) as string[]).sort()).toEqual(paths);
  });

  it('remembers twenty recent plans, each once', async () => {
    const outside = tempFolder();
    const { own, openFromOutside } = await open();
    for (let n = 0; n < 23; n += 1) {
      writeFileSync(join(outside, `${n}.json`), '{}');
      await openFromOutside(join(outside, `${n}.json`));
    }
    await openFromOutside(join(outside, '10.json'));
    const recents = JSON.parse(readFileSync(own.recents, 'utf8')) as string[];
    expect(recents).toHaveLength(20);
    expect(recents.slice(0, 2)).toEqual([join(outside, '10.json'), join(outside, '22.json')]);
    expect(new Set(recents).size).toBe(20);
  });
});

describe('settings that cannot be read', () => {
  it.each(['{"theme":"pink","units":"us"}', '{', '', '{"theme":"iron","units":"us","more":1}'])(
    '%j are reported, and the first ones used',
    async (text) => {
      const data = tempFolder();
      writeFileSync(join(data, 'settings.json'), text);
      const { bridge, own, warnings } = await open(data);
      expect((await bridge.greet(null)).settings).toEqual({ theme: 'system', units: 'metric' });
      expect(warnings).toHaveLength(1);
      expect(warnings[0]).toContain(`${own.settings}: `);
      await bridge.saveSettings({ theme: 'iron', units: 'us' });
      expect(readFileSync(`${own.settings}.bak`, 'utf8')).toBe(text);
    },
  );
});

describe('the ovens learned', () => {
  it('are kept as the window wrote them, the version before beside them', async () => {
    const data = tempFolder();
    const { bridge, own } = await open(data);
    expect(await bridge.readOvens(null)).toBe('');
    await bridge.saveOvens({ text: 'first' });
    await bridge.saveOvens({ text: 'second' });
    expect(await (await open(data)).bridge.readOvens(null)).toBe('second');
    expect(readFileSync(`${own.ovens}.bak`, 'utf8')).toBe('first');
  });

  it('are not taken for none when they cannot be read', async () => {
    const { bridge, own } = await open();
    writeFileSync(own.ovens, Buffer.from([0xff, 0xfe, 0x41]));
    await expect(bridge.readOvens(null)).rejects.toThrow(
      `${own.ovens}: found bytes that are not UTF-8; allowed text in UTF-8`,
    );
  });
});

describe('the plan named at the start', () => {
  it('is opened when the window greets', async () => {
    const file = join(tempFolder(), 'Sunday.hearthclock');
    writeFileSync(file, '{}');
    const { bridge } = await open(tempFolder(), file);
    expect((await bridge.greet(null)).opened).toMatchObject({ name: 'Sunday', text: '{}' });
  });

  it('does not keep the window from coming up when it is gone by then', async () => {
    const file = join(tempFolder(), 'gone');
    const { bridge, warnings } = await open(tempFolder(), file);
    expect((await bridge.greet(null)).opened).toBeNull();
    expect(warnings[0]).toContain(`${file}: found no such file`);
  });
});

describe('unsaved work', () => {
  /** No process has this number: beyond the largest that Linux gives (2^22). */
  const dead = 4_194_305;

  it('of a program that is gone is offered, and stays beside new work until it is taken or dropped', async () => {
    const folder = tempFolder();
    await new UnsavedWork(folder, () => undefined, dead).keep('from before');
    const now = new UnsavedWork(folder, () => undefined);
    expect((await now.offer())?.text).toBe('from before');
    await now.keep('from now');
    await now.keep('', 'open');
    expect(readdirSync(folder)).toEqual([`${dead}.hearthclock`]);
    await now.keep('from now', 'settled');
    expect(readdirSync(folder)).toEqual([`${process.pid}.hearthclock`]);
    expect((await now.offer())?.text).toBe('from now');
    await now.keep('');
    expect(await now.offer()).toBeNull();
  });

  it('of a program that is gone is removed with what is forgotten', async () => {
    const folder = tempFolder();
    await new UnsavedWork(folder, () => undefined, dead).keep('from before');
    const now = new UnsavedWork(folder, () => undefined);
    await now.offer();
    await now.keep('');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('that is forgotten while it is still being written stays forgotten', async () => {
    const folder = tempFolder();
    const now = new UnsavedWork(folder, () => undefined);
    await Promise.all([now.keep('x'.repeat(500_000)), now.keep('')]);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('of a program that still runs is left alone', async () => {
    const folder = tempFolder();
    await new UnsavedWork(folder, () => undefined, process.ppid).keep('of the other');
    const now = new UnsavedWork(folder, () => undefined);
    expect(await now.offer()).toBeNull();
    await now.keep('');
    expect(readdirSync(folder)).toEqual([`${process.ppid}.hearthclock`]);
  });

  it('from before the machine was started is offered, whoever has its number now', async () => {
    const folder = tempFolder();
    await new UnsavedWork(folder, () => undefined, process.ppid).keep('long ago');
    utimesSync(join(folder, `${process.ppid}.hearthclock`), 1_500_000_000, 1_500_000_000);
    expect((await new UnsavedWork(folder, () => undefined).offer())?.text).toBe('long ago');
  });

  it('that cannot be read is reported, and the next older offered', async () => {
    const folder = tempFolder();
    await new UnsavedWork(folder, () => undefined, dead).keep('whole');
    utimesSync(join(folder, `${dead}.hearthclock`), 1_500_000_000, 1_500_000_000);
    writeFileSync(join(folder, `${dead + 1}.hearthclock`), Buffer.from([0xff]));
    const warnings: string[] = [];
    const { text } = (await new UnsavedWork(folder, (message) => warnings.push(message)).offer())!;
    expect([text, warnings.length]).toEqual(['whole', 1]);
  });
});

describe('the files of the window', () => {
  it('are refused without a page, and with a type that has no name', async () => {
    const root = tempFolder();
    await expect(readWindowFiles(root)).rejects.toThrow('found no index.html');
    writeFileSync(join(root, 'index.html'), '');
    writeFileSync(join(root, 'a.exe'), '');
    await expect(readWindowFiles(root)).rejects.toThrow('a.exe: found a type that is not served');
  });
});
