import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { calls } from '../../main/bridge.ts';
import { contentSecurityPolicy } from '../../main/window/policy.ts';
import { enter, send } from '../support/httpClient.ts';
import { closeElectron, openElectron, type RecordedElectron } from '../support/openElectron.ts';
import { serveWindow } from '../support/serve.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

let folder: string;
let electron: RecordedElectron;
beforeEach(async () => {
  folder = newTempFolder();
  electron = await openElectron(folder);
});
afterEach(() => {
  closeElectron();
  removeFolder(folder);
});

/** An event that notes whether its default was prevented. */
function event(more: Record<string, unknown> = {}): { preventDefault: () => void; prevented: boolean } {
  const made = { ...more, prevented: false, preventDefault: (): void => undefined };
  made.preventDefault = () => {
    made.prevented = true;
  };
  return made;
}

const respond = async (url: string): Promise<Response> => {
  const handler = electron.recorder.protocols.get('app');
  if (handler === undefined) throw new Error('no handler for app:');
  return handler(new Request(url));
};

describe('the window of Electron', () => {
  it('is sandboxed, isolated and without Node, and loads from our own protocol', () => {
    const { options, loaded } = electron.window;
    expect(options['webPreferences']).toEqual({
      preload: join(folder, 'app', 'dist', 'main', 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      spellcheck: false,
    });
    expect(options).toMatchObject({ name: 'evening', windowStatePersistence: true, show: false });
    expect(loaded).toEqual(['app://hearthclock/']);
    expect(electron.recorder.windows).toHaveLength(1);
  });

  it('registers the protocol with the rights that modules and workers need, and no more', () => {
    expect(electron.recorder.privileged).toEqual([
      { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
  });

  it('serves the window with the policy of the loopback server, header for header', async () => {
    const served = await serveWindow({ root: join(folder, 'app', 'dist', 'renderer') });
    try {
      const cookie = await enter(served.address);
      for (const path of ['/', '/assets/page.js', '/assets/page.css', '/missing']) {
        const byProtocol = await respond(`app://hearthclock${path}`);
        const byHttp = await send(`${served.origin}${path}`, { headers: { cookie } });
        expect(byProtocol.status).toBe(byHttp.status);
        expect(await byProtocol.text()).toBe(byHttp.text);
        expect(byHttp.headers).toMatchObject(Object.fromEntries(byProtocol.headers));
        expect(byProtocol.headers.get('content-security-policy')).toBe(contentSecurityPolicy());
      }
    } finally {
      await served.close();
    }
  });

  it.each(['app://evil/', 'app://hearthclock.evil/', 'app://hearthclock:80/'])('refuses %s', async (url) => {
    expect((await respond(url)).status).toBe(421);
  });

  it.each(['app://hearthclock/%2e%2e/%2e%2e/package.json', 'app://hearthclock/..%2f..%2fpackage.json'])(
    'has nothing outside the window under %s',
    async (url) => {
      writeFileSync(join(folder, 'app', 'package.json'), '{}');
      expect((await respond(url)).status).toBe(404);
    },
  );

  it('opens one channel, and shows the page two functions', () => {
    expect([...electron.recorder.handlers.keys()]).toEqual(['hearthclock:call']);
    expect([...electron.recorder.exposed.keys()]).toEqual(['hearthclock']);
    expect(Object.keys(electron.bridge).sort()).toEqual(['call', 'on']);
  });

  it.each<[string, unknown]>([
    ['a frame inside the page', { url: 'app://hearthclock/' }],
    ['a frame that is gone', null],
  ])('refuses every call from %s', async (_who, senderFrame) => {
    const handle = electron.recorder.handlers.get('hearthclock:call')!;
    for (const name of Object.keys(calls)) {
      expect(await handle({ senderFrame }, name, null)).toEqual({
        error: `bridge: found a call of "${name}" from a foreign page; allowed only calls from our own window`,
      });
    }
    expect(electron.said.filter((line) => line.includes('from a foreign page'))).toHaveLength(
      Object.keys(calls).length,
    );
  });

  it('refuses calls once the window shows another page', async () => {
    electron.window.webContents.mainFrame.url = 'app://hearthclock.evil/';
    await expect(electron.bridge.call('greet', null)).rejects.toThrow('from a foreign page');
  });

  it('grants no permission but copying by a click', () => {
    const { session } = electron.recorder;
    const request = session['setPermissionRequestHandler']!.mock.calls[0]![0] as (
      contents: unknown,
      permission: string,
      decide: (granted: boolean) => void,
    ) => void;
    const check = session['setPermissionCheckHandler']!.mock.calls[0]![0] as (...words: unknown[]) => boolean;
    const granted = (permission: string): boolean => {
      const decide = vi.fn();
      request(electron.window.webContents, permission, decide);
      expect(check(null, permission, 'app://hearthclock/')).toBe(decide.mock.calls[0]![0]);
      expect(check(null, permission, 'https://evil.example/')).toBe(false);
      return decide.mock.calls[0]![0] as boolean;
    };
    const all = [
      'media',
      'geolocation',
      'notifications',
      'clipboard-read',
      'openExternal',
      'fullscreen',
      'usb',
      'toString',
    ];
    expect(all.filter(granted)).toEqual([]);
    expect(granted('clipboard-sanitized-write')).toBe(true);
    const device = session['setDevicePermissionHandler']!.mock.calls[0]![0] as () => boolean;
    expect(device()).toBe(false);
  });

  it('loads nothing from the network', () => {
    const before = electron.recorder.session['onBeforeRequest']!.mock.calls[0]![0] as (
      details: { url: string },
      decide: (answer: { cancel: boolean }) => void,
    ) => void;
    const cancelled = (url: string): boolean => {
      const decide = vi.fn<(answer: { cancel: boolean }) => void>();
      before({ url }, decide);
      return decide.mock.calls[0]![0].cancel;
    };
    expect(
      [
        'https://example.org/',
        'http://127.0.0.1/',
        'ws://127.0.0.1/',
        'file:///etc/passwd',
        'blob:https://x/1',
      ].map(cancelled),
    ).toEqual([true, true, true, true, true]);
    expect(
      ['app://hearthclock/a.js', 'blob:app://hearthclock/1', 'data:image/png;base64,'].map(cancelled),
    ).toEqual([false, false, false]);
  });

  it('stays on its page, opens no other window and no webview', () => {
    const { webContents } = electron.window;
    for (const name of ['will-navigate', 'will-redirect']) {
      const away = event({ url: 'https://evil.example/' });
      webContents.emit(name, away);
      expect(away.prevented).toBe(true);
      const home = event({ url: 'app://hearthclock/' });
      webContents.emit(name, home);
      expect(home.prevented).toBe(false);
    }
    const webview = event();
    webContents.emit('will-attach-webview', webview);
    expect(webview.prevented).toBe(true);
    expect(webContents.openHandler?.({ url: 'https://evil.example/' })).toEqual({ action: 'deny' });
    expect(electron.said.join('')).toContain('new window for https://evil.example/ refused');
  });

  it('keeps its data in the folder shared by all hosts', () => {
    expect(electron.recorder.app.setPath).toHaveBeenCalledWith('userData', join(folder, 'data', 'electron'));
    expect(existsSync(join(folder, 'data', 'electron'))).toBe(true);
  });

  it('tells the terminal once its window is up', () => {
    expect(electron.said).toContain('hearthclock: the window is open\n');
  });
});

describe('a second start and a double click', () => {
  const heard = (): string[] => {
    const names: string[] = [];
    electron.bridge.on('opened', ({ name }) => names.push(name));
    return names;
  };

  it('bring the window forward and open the file', async () => {
    const names = heard();
    const path = join(folder, 'Sunday.hearthclock');
    writeFileSync(path, '{}');
    electron.recorder.app.emit('second-instance', {}, [], '/', { file: path });
    await vi.waitFor(() => {
      expect(names).toEqual(['Sunday']);
    });
    const opened = event();
    electron.recorder.app.emit('open-file', opened, path);
    await vi.waitFor(() => {
      expect(names).toEqual(['Sunday', 'Sunday']);
    });
    expect(opened.prevented).toBe(true);
    expect(electron.recorder.app.addRecentDocument).toHaveBeenCalledWith(path);
  });

  it('say which file cannot be opened, and why', async () => {
    electron.recorder.app.emit('second-instance', {}, [], '/', { file: join(folder, 'missing') });
    await vi.waitFor(() => {
      expect(electron.recorder.asked.flat().join(' ')).toContain(
        `${join(folder, 'missing')}: found no such file`,
      );
    });
    electron.recorder.app.emit('second-instance', {}, [], '/', { other: 1 });
    expect(electron.said.at(-1)).toContain('a second start sent something else');
  });
});

describe('closing with unsaved work', () => {
  it.each([
    ['Save', 0, false],
    ["Don't save", 1, true],
    ['Cancel', 2, false],
  ])('%s', async (_label, button, leaves) => {
    await electron.bridge.call('keepUnsaved', { text: 'unsaved' });
    const commands: string[] = [];
    electron.bridge.on('command', (command) => commands.push(command));
    electron.recorder.dialogs.button = button;
    const close = (electron.window as unknown as { close: ReturnType<typeof vi.fn> }).close;
    const leaving = event();
    electron.window.webContents.emit('will-prevent-unload', leaving);
    expect(leaving.prevented).toBe(leaves);
    expect(commands).toEqual(button === 0 ? ['save'] : []);
    expect(close).not.toHaveBeenCalled();
    // The window has saved, and says that nothing is unsaved any more.
    await electron.bridge.call('keepUnsaved', { text: '' });
    expect(close).toHaveBeenCalledTimes(button === 0 ? 1 : 0);
  });

  it("leaves after Don't save also when what was kept of it cannot be removed, and says so", async () => {
    rmSync(electron.places.unsaved, { recursive: true });
    writeFileSync(electron.places.unsaved, 'a file in its place');
    electron.recorder.dialogs.button = 1;
    const leaving = event();
    electron.window.webContents.emit('will-prevent-unload', leaving);
    expect(leaving.prevented).toBe(true);
    await vi.waitFor(() => {
      expect(electron.said.join('')).toContain('ENOTDIR');
    });
  });

  it('goes on after Save when the cook cancels where to save', async () => {
    electron.window.webContents.emit('will-prevent-unload', event());
    expect(await electron.bridge.call('savePlanAs', { name: 'x', text: '{}' })).toBeNull();
    await electron.bridge.call('keepUnsaved', { text: '' });
    expect((electron.window as unknown as { close: ReturnType<typeof vi.fn> }).close).not.toHaveBeenCalled();
  });
});

describe('what the system draws', () => {
  it('follows the theme the cook chose, marks unsaved work, keeps awake only while asked', async () => {
    const theme = electron.recorder.module['nativeTheme'] as { themeSource: string };
    await electron.bridge.call('saveSettings', { theme: 'iron', units: 'metric' });
    expect(theme.themeSource).toBe('dark');
    await electron.bridge.call('keepUnsaved', { text: 'x' });
    const { setDocumentEdited } = electron.window as unknown as Record<string, ReturnType<typeof vi.fn>>;
    expect(setDocumentEdited!).toHaveBeenLastCalledWith(true);
    await electron.bridge.call('keepAwake', 'machine');
    await electron.bridge.call('keepAwake', 'screen');
    await electron.bridge.call('keepAwake', 'off');
    expect(electron.recorder.blockers).toEqual([
      'prevent-app-suspension',
      'stop 0',
      'prevent-display-sleep',
      'stop 2',
    ]);
    await electron.bridge.call('notify', { title: 'Pizza 1 out', body: '' });
    expect(electron.recorder.notes).toEqual([{ title: 'Pizza 1 out', body: '' }, 'shown']);
  });
});
