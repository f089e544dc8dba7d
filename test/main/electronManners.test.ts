/** What Electron is asked for so that the program behaves as its system's others do. */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi, type Mock } from 'vitest';
import type { MenuItemConstructorOptions } from 'electron';
import type { PlanDocument } from '../../main/bridge.ts';
import { closeElectron, openElectron, type RecordedElectron } from '../support/openElectron.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

let folder: string;
beforeEach(() => {
  folder = newTempFolder();
});
afterEach(() => {
  closeElectron();
  removeFolder(folder);
});

function plan(name: string): string {
  const path = join(folder, `${name}.hearthclock`);
  writeFileSync(path, name);
  return path;
}
const openedAtStart = async (electron: RecordedElectron): Promise<PlanDocument | null> =>
  (await electron.bridge.call('greet', null)).opened;
function choose({ recorder }: RecordedElectron, label: string): void {
  const menus = recorder.menus[0] as MenuItemConstructorOptions[];
  const found = menus
    .flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []))
    .find((one) => one.label === label);
  (found!.click as unknown as () => void)();
}
const mock = (of: object, name: string): Mock => (of as Record<string, Mock>)[name]!;

describe('one program at a time', () => {
  it('hands its file over and ends when another is running', async () => {
    const path = plan('Friday');
    const { recorder } = await openElectron(folder, {
      words: ['--some-switch', path],
      window: false,
      beforeLoad: ({ app }) => app.requestSingleInstanceLock.mockReturnValue(false),
    });
    expect(recorder.app.requestSingleInstanceLock).toHaveBeenCalledWith({ file: path });
    expect(recorder.app.quit).toHaveBeenCalledTimes(1);
    expect(recorder.windows).toEqual([]);
    expect(recorder.handlers.size).toBe(0);
  });

  it('brings the first window forward for a second start', async () => {
    const { recorder, window } = await openElectron(folder);
    recorder.app.emit('second-instance', {}, [], '/', { file: null });
    for (const call of ['restore', 'show', 'focus']) expect(mock(window, call)).toHaveBeenCalled();
  });

  it('ends with its window', async () => {
    const { recorder } = await openElectron(folder);
    expect(recorder.app.quit).not.toHaveBeenCalled();
    recorder.app.emit('window-all-closed');
    expect(recorder.app.quit).toHaveBeenCalledTimes(1);
  });
});

describe('where the window cannot come up', () => {
  it('ends with status 1 and says why', async () => {
    const { recorder, said } = await openElectron(folder, {
      window: false,
      beforeReady: () => {
        rmSync(join(folder, 'app', 'dist', 'renderer', 'index.html'));
      },
    });
    await vi.waitFor(() => {
      expect(recorder.app.exit).toHaveBeenCalledWith(1);
    });
    expect(said.join('')).toContain('found no index.html; allowed a built window');
  });
});

describe('once the window is closed', () => {
  it('no menu item, dialog or note reaches for it', async () => {
    const electron = await openElectron(folder);
    const { electronPlatform } = await import('../../main/shell/electronPlatform.ts');
    electron.window.emit('closed');
    choose(electron, 'Save as P&DF…');
    choose(electron, '&Print…');
    expect(electron.window.webContents.printToPDF).not.toHaveBeenCalled();
    await expect(electron.bridge.call('choosePlan', null)).rejects.toThrow('from a foreign page');
    // A question that was still to be asked when it went.
    await expect(electronPlatform(() => undefined).dialogs!.confirm('Replace?', 'Replace')).rejects.toThrow(
      'dialog: found no window; allowed while the window is open',
    );
    expect(electron.recorder.asked).toEqual([]);
  });
});

describe('a plan named from outside', () => {
  it('is the one of the command line', async () => {
    expect(await openedAtStart(await openElectron(folder, { words: [plan('Friday')] }))).toMatchObject({
      name: 'Friday',
    });
  });

  it('is the one of the command line of the packed program, which has a word less of its own', async () => {
    const electron = await openElectron(folder, {
      words: [plan('Friday')],
      beforeLoad: ({ app }) => {
        app.isPackaged = true;
      },
    });
    expect(await openedAtStart(electron)).toMatchObject({ name: 'Friday' });
  });

  it('is the one that macOS names before Electron is ready, over that of the command line', async () => {
    const event = { preventDefault: vi.fn() };
    const electron = await openElectron(folder, {
      words: [plan('Friday')],
      beforeReady: ({ app }) => {
        app.emit('open-file', event, plan('Saturday'));
      },
    });
    expect(event.preventDefault).toHaveBeenCalled();
    expect(await openedAtStart(electron)).toMatchObject({ name: 'Saturday', text: 'Saturday' });
    expect(electron.recorder.app.addRecentDocument).toHaveBeenCalledWith(
      join(folder, 'Saturday.hearthclock'),
    );
  });

  it('is the one that a second start names meanwhile', async () => {
    const electron = await openElectron(folder, {
      beforeReady: ({ app }) => {
        app.emit('second-instance', {}, [], '/', { file: plan('Sunday') });
      },
    });
    expect(await openedAtStart(electron)).toMatchObject({ name: 'Sunday' });
  });

  it('does not keep the window away when it cannot be read', async () => {
    const electron = await openElectron(folder, {
      beforeReady: ({ app }) => {
        app.emit('open-file', { preventDefault: vi.fn() }, join(folder, 'gone'));
      },
    });
    expect(electron.recorder.asked.flat().join(' ')).toContain('found no such file');
    expect(await openedAtStart(electron)).toBeNull();
  });
});

describe('the window', () => {
  it('is kept by name with size, place and maximised state, and is shown when it is drawn', async () => {
    const { window } = await openElectron(folder);
    // The clamping to a screen that exists is Electron's own with this switch: see the hand check.
    expect(window.options).toMatchObject({ name: 'evening', windowStatePersistence: true, show: false });
    const { minWidth, minHeight, width, height } = window.options as Record<string, number>;
    // WCAG 2.2, 1.4.10: 320 px wide at most needs no scrolling; the smallest window shows that much.
    expect([minWidth! >= 320, minWidth! < width!, minHeight! < height!]).toEqual([true, true, true]);
    expect(mock(window, 'show')).toHaveBeenCalledTimes(1);
  });

  it.each([
    ['a save that fails', 'savePlan'],
    ['a save under a name that fails', 'savePlanAs'],
    ['a replacement that is not wanted', 'confirm'],
  ])('does not close later after Save and %s', async (_what, how) => {
    const { bridge, recorder, window } = await openElectron(folder);
    recorder.dialogs.save = join(folder, 'Friday.hearthclock');
    const saved = await bridge.call('savePlanAs', { name: 'Friday', text: 'one' });
    await bridge.call('keepUnsaved', { text: 'two' });
    recorder.dialogs.button = 0;
    window.webContents.emit('will-prevent-unload', { preventDefault: vi.fn() });
    if (how === 'savePlanAs') {
      recorder.dialogs.save = join(folder, 'no such folder', 'x');
      await expect(bridge.call('savePlanAs', { name: 'x', text: 'two' })).rejects.toThrow('ENOENT');
    } else {
      writeFileSync(join(folder, 'Friday.hearthclock'), 'from elsewhere');
      recorder.dialogs.button = 1;
      const document = how === 'confirm' ? saved!.document : crypto.randomUUID();
      await expect(bridge.call('savePlan', { document, text: 'two' })).rejects.toThrow();
    }
    // The cook goes on and takes the changes back.
    await bridge.call('keepUnsaved', { text: '' });
    expect(mock(window, 'close')).not.toHaveBeenCalled();
  });
});

describe('staying awake', () => {
  it('ends with the last timer, and with a window that is loaded anew', async () => {
    const { bridge, recorder } = await openElectron(folder);
    await bridge.call('keepAwake', 'machine');
    await bridge.call('keepAwake', 'machine');
    await bridge.call('keepAwake', 'off');
    await bridge.call('keepAwake', 'off');
    expect(recorder.blockers).toEqual([
      'prevent-app-suspension',
      'stop 0',
      'prevent-app-suspension',
      'stop 2',
    ]);
    await bridge.call('keepAwake', 'screen');
    await bridge.call('greet', null);
    expect(recorder.blockers.slice(4)).toEqual(['prevent-display-sleep', 'stop 4']);
  });
});

describe('a note of the system', () => {
  it('brings the window forward by a click, and is short enough for each system', async () => {
    const { bridge, recorder, window } = await openElectron(folder);
    expect(await bridge.call('notify', { title: 'Pizza 2 out', body: '236 °C' })).toEqual({ shown: true });
    expect(recorder.notes).toEqual([{ title: 'Pizza 2 out', body: '236 °C' }, 'shown']);
    recorder.shownNotes[0]!.emit('click');
    recorder.shownNotes[0]!.emit('close');
    expect(mock(window, 'focus')).toHaveBeenCalledTimes(1);
    // macOS shows 256 bytes (Apple's limit as Electron's page on notifications gives it).
    await expect(bridge.call('notify', { title: 'x'.repeat(61), body: '' })).rejects.toThrow(
      'bridge.notify.title',
    );
    await expect(bridge.call('notify', { title: 'x', body: 'x'.repeat(181) })).rejects.toThrow(
      'bridge.notify.body',
    );
  });

  it('is left to the window where the system shows none', async () => {
    const { bridge, recorder } = await openElectron(folder, {
      beforeLoad: ({ module }) => {
        (module['Notification'] as { isSupported: () => boolean }).isSupported = () => false;
      },
    });
    expect(await bridge.call('notify', { title: 'x', body: '' })).toEqual({ shown: false });
    expect(recorder.notes).toEqual([]);
  });
});

describe('printing', () => {
  it('is the window’s own, from the menu as by the key', async () => {
    const electron = await openElectron(folder);
    const heard: string[] = [];
    electron.bridge.on('command', (command) => heard.push(command));
    choose(electron, '&Print…');
    expect(heard).toEqual(['print']);
  });

  it('into a PDF writes the same page on the paper of the region', async () => {
    const electron = await openElectron(folder);
    electron.recorder.dialogs.save = join(folder, 'evening.pdf');
    choose(electron, 'Save as P&DF…');
    await vi.waitFor(() => {
      expect(existsSync(join(folder, 'evening.pdf'))).toBe(true);
    });
    expect(JSON.parse(readFileSync(join(folder, 'evening.pdf'), 'utf8'))).toEqual({
      pageSize: 'Letter',
      printBackground: true,
    });
  });

  it('into a PDF says which file was not written, and why; nothing when cancelled', async () => {
    const electron = await openElectron(folder);
    choose(electron, 'Save as P&DF…');
    electron.recorder.dialogs.save = join(folder, 'gone', 'evening.pdf');
    choose(electron, 'Save as P&DF…');
    await vi.waitFor(() => {
      expect(electron.recorder.asked).toHaveLength(1);
    });
    expect(String(electron.recorder.asked[0])).toContain(`${join(folder, 'gone', 'evening.pdf')}: could not`);
  });
});
