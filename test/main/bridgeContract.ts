/** What every bridge has to do, however it is reached. Run over each of them in `bridge.test.ts`. */
import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import type { CallName, WindowBridge } from '../../main/bridge.ts';
import type { Places } from '../../main/files/places.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

export interface OpenBridge {
  /** as the window reaches it */
  readonly window: WindowBridge;
  readonly places: Places;
  /** a plan is opened from outside, where the host can be told so */
  openFromOutside?(path: string): Promise<void>;
  /** answers of the host's dialogs; missing where it has none */
  readonly dialogs?: { open: string | undefined; save: string | undefined; button: number };
  close(): Promise<void>;
}

const text = '{\n  "format": "hearthclock/evening",\n  "title": "Crème — 30 ℃, “quoted” \\u0000"\n}\n';

export function bridgeContract(host: string, open: (folder: string) => Promise<OpenBridge>): void {
  describe(`the bridge, ${host}`, () => {
    let folder: string;
    let bridge: OpenBridge;
    beforeEach(async () => {
      folder = newTempFolder();
      bridge = await open(folder);
      return async () => {
        await bridge.close();
        removeFolder(folder);
      };
    });
    /** A call by a name or with an ask that the types would not let through. */
    const wrongly = (name: string, ask: unknown): Promise<unknown> =>
      (bridge.window.call as (name: string, ask: unknown) => Promise<unknown>)(name, ask);
    const planFile = (name: string): string => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return path;
    };
    const saveAs = async (name: string): Promise<{ document: string; name: string; path: string }> => {
      const path = join(bridge.dialogs === undefined ? bridge.places.plans : folder, `${name}.hearthclock`);
      if (bridge.dialogs !== undefined) bridge.dialogs.save = path;
      const saved = await bridge.window.call('savePlanAs', { name, text });
      if (saved === null) throw new Error('savePlanAs was cancelled');
      return { ...saved, path };
    };

    it('greets with the settings of a first start and nothing open', async () => {
      const greeting = await bridge.window.call('greet', null);
      expect(greeting).toMatchObject({
        dialogs: bridge.dialogs !== undefined,
        version: '0.0.0-test',
        opened: null,
        recovered: null,
        settings: { theme: 'system', units: 'metric' },
      });
    });

    it('keeps the settings', async () => {
      await bridge.window.call('saveSettings', { theme: 'iron', units: 'us' });
      const { settings } = await bridge.window.call('greet', null);
      expect(settings).toEqual({ theme: 'iron', units: 'us' });
    });

    it.each(['format', 'constructor', '__proto__', 'toString', ''])(
      'refuses the unknown call %j',
      async (name) => {
        await expect(wrongly(name, null)).rejects.toThrow(
          name === '' ? /./ : `bridge: found ${JSON.stringify(name)}; allowed greet, choosePlan`,
        );
      },
    );

    it.each([
      [
        'openPlan',
        { document: '/etc/passwd' },
        'bridge.openPlan.document: found "/etc/passwd"; allowed the id of a document, a UUID',
      ],
      ['openPlan', null, 'bridge.openPlan: found null; allowed Object'],
      ['openPlan', { path: '/etc/passwd' }, 'bridge.openPlan.document: found undefined; allowed "document"'],
      ['savePlanAs', { name: '', text: '' }, 'bridge.savePlanAs.name: found 0; allowed >=1'],
      [
        'savePlanAs',
        { name: 'a', text: '', path: '/' },
        'bridge.savePlanAs.path: found "path"; allowed never',
      ],
      ['saveSettings', { theme: 'pink', units: 'us' }, 'bridge.saveSettings.theme: found "pink"; allowed'],
      [
        'keepUnsaved',
        { text: 'x'.repeat(1_000_001) },
        'bridge.keepUnsaved.text: found 1000001; allowed <=1000000',
      ],
      ['setAlarms', [{ step: 'bake-1', at: Infinity, title: 'x', body: '' }], 'bridge.setAlarms'],
      ['setAlarms', [{ step: '', at: 0, title: 'x', body: '' }], 'bridge.setAlarms.0.step: found 0'],
      [
        'saveSettings',
        { theme: 'x'.repeat(1000), units: 'us' },
        `bridge.saveSettings.theme: found "${'x'.repeat(79)}…; allowed`,
      ],
      ['greet', { hello: 1 }, 'bridge.greet: found Object; allowed null'],
    ] satisfies [CallName, unknown, string][])(
      'refuses a wrong ask (%#) of %s and names what is wrong',
      async (name, ask, message) => {
        await expect(wrongly(name, ask)).rejects.toThrow(message);
      },
    );

    it('saves under a name, lists, opens and saves over, keeping the version before', async () => {
      const saved = await saveAs('Friday');
      expect(saved.name).toBe('Friday');
      expect(readFileSync(saved.path, 'utf8')).toBe(text);
      const listed = await bridge.window.call('listPlans', null);
      expect(listed.map(({ document, name }) => [document, name])).toEqual([[saved.document, 'Friday']]);
      const opened = await bridge.window.call('openPlan', { document: saved.document });
      expect(opened).toEqual({ document: saved.document, name: 'Friday', text });
      await bridge.window.call('savePlan', { document: saved.document, text: 'second' });
      expect(readFileSync(saved.path, 'utf8')).toBe('second');
      expect(readFileSync(`${saved.path}.bak`, 'utf8')).toBe(text);
      // Shown again after a reload.
      expect((await bridge.window.call('greet', null)).opened?.text).toBe('second');
    });

    it('refuses a document that was not given out here', async () => {
      const document = '00000000-0000-4000-8000-000000000000';
      await expect(bridge.window.call('openPlan', { document })).rejects.toThrow(
        `document: found ${document}`,
      );
      await expect(bridge.window.call('savePlan', { document, text })).rejects.toThrow(
        `document: found ${document}`,
      );
    });

    it('does not save over a change that another program made, unless told to', async () => {
      const { document, path } = await saveAs('Friday');
      writeFileSync(path, 'from elsewhere');
      // Whatever the resolution of the file system's clock.
      utimesSync(path, 1_700_000_000, 1_700_000_000);
      if (bridge.dialogs !== undefined) bridge.dialogs.button = 1;
      await expect(bridge.window.call('savePlan', { document, text: 'mine' })).rejects.toThrow(path);
      expect(readFileSync(path, 'utf8')).toBe('from elsewhere');
      await bridge.window.call('savePlan', { document, text: 'mine', evenIfChanged: true });
      expect(readFileSync(path, 'utf8')).toBe('mine');
      expect(readFileSync(`${path}.bak`, 'utf8')).toBe('from elsewhere');
      await bridge.window.call('savePlan', { document, text: 'mine again' });
      expect(readFileSync(path, 'utf8')).toBe('mine again');
    });

    it('takes quick saves one after the other, and none for a change by another program', async () => {
      const { document, path } = await saveAs('Friday');
      const texts = ['1', '2', '3', '4', '5', '6'];
      await Promise.all(texts.map((one) => bridge.window.call('savePlan', { document, text: one })));
      // Over HTTP they may arrive in another order; each is written whole, and the last one's predecessor is kept.
      expect(texts).toContain(readFileSync(path, 'utf8'));
      expect(texts).toContain(readFileSync(`${path}.bak`, 'utf8'));
    });

    it('keeps unsaved work for the next start and forgets it', async () => {
      await bridge.window.call('keepUnsaved', { text });
      const { recovered } = await bridge.window.call('greet', null);
      expect(recovered?.text).toBe(text);
      expect(Date.parse(recovered?.keptAt ?? '')).not.toBeNaN();
      await bridge.window.call('keepUnsaved', { text: '' });
      expect((await bridge.window.call('greet', null)).recovered).toBeNull();
      expect(readdirSync(bridge.places.unsaved)).toEqual([]);
    });

    it('lets the cook choose a file where it has a dialog, and says so where it has none', async () => {
      if (bridge.dialogs === undefined) {
        await expect(bridge.window.call('choosePlan', null)).rejects.toThrow(
          'allowed a host with its own file dialogs',
        );
        return;
      }
      expect(await bridge.window.call('choosePlan', null)).toBeNull();
      bridge.dialogs.open = planFile('chosen.json');
      expect(await bridge.window.call('choosePlan', null)).toMatchObject({ name: 'chosen', text });
      bridge.dialogs.save = undefined;
      expect(await bridge.window.call('savePlanAs', { name: 'x', text })).toBeNull();
    });

    it('names the file and the reason when a chosen plan cannot be read', async () => {
      const { document, path } = await saveAs('Friday');
      writeFileSync(path, Buffer.from([0x7b, 0xff, 0x7d]));
      await expect(bridge.window.call('openPlan', { document })).rejects.toThrow(
        `${path}: found bytes that are not UTF-8`,
      );
    });

    it('takes the alarms of the evening, and none', async () => {
      const alarm = { step: 'bake-1', at: Date.now() + 3_600_000, title: 'Pizza 1 out', body: '' };
      expect(await bridge.window.call('setAlarms', [alarm])).toBeNull();
      expect(await bridge.window.call('setAlarms', [])).toBeNull();
    });

    it('answers whether the host notifies and keeps awake itself', async () => {
      const own = bridge.dialogs !== undefined;
      const note = { title: 'Pizza 2 out', body: 'The plate is at 236 °C' };
      expect(await bridge.window.call('notify', note)).toEqual({ shown: own });
      expect(await bridge.window.call('keepAwake', 'screen')).toEqual({ kept: own });
      expect(await bridge.window.call('keepAwake', 'off')).toEqual({ kept: own });
    });

    it('tells the window of a plan opened from outside, until it stops listening', async () => {
      if (bridge.openFromOutside === undefined) {
        // A bridge without pushes of its own: the other two show them.
        expect(host).toBe('called directly');
        return;
      }
      const heard: string[] = [];
      const stop = bridge.window.on('opened', ({ name }) => heard.push(`opened ${name}`));
      onTestFinished(bridge.window.on('command', (command) => heard.push(command)));
      await bridge.openFromOutside(planFile('one.json'));
      await expect.poll(() => heard).toEqual(['opened one']);
      stop();
      await bridge.openFromOutside(planFile('two.json'));
      expect(heard).toEqual(['opened one']);
    });
  });
}
