/**
 * Electron's security checklist, point by point (electronjs.org/docs/latest/tutorial/security). Each point is held
 * against what our wiring asks of Electron, the packaging file or the source; what Electron makes of it is checked by
 * hand on the real binary.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { appWindowArguments } from '../../main/hosts/browsers.ts';
import { electronArguments } from '../../main/hosts/electronHost.ts';
import { calls } from '../../main/bridge.ts';
import { sourceOf } from '../support/bundle.ts';
import { closeElectron, openElectron, type RecordedElectron } from '../support/openElectron.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

let folder: string;
let electron: RecordedElectron;
let preferences: Record<string, unknown>;
beforeAll(async () => {
  folder = newTempFolder();
  electron = await openElectron(folder);
  preferences = electron.window.options['webPreferences'] as Record<string, unknown>;
});
afterAll(() => {
  closeElectron();
  removeFolder(folder);
});

/** Every source file of the shell, by its path. */
const sources = readdirSync(sourceOf('main'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .sort()
  .map((name) => ({ name, text: readFileSync(join(sourceOf('main'), name), 'utf8') }));
const naming = (what: RegExp): string[] =>
  sources.filter(({ text }) => what.test(text)).map(({ name }) => name);
const packaging = readFileSync(sourceOf('electron-builder.yml'), 'utf8');
const page = readFileSync(sourceOf('renderer/index.html'), 'utf8');

const fetched = (url: string): Promise<Response> =>
  Promise.resolve(electron.recorder.protocols.get('app')!(new Request(url)));
/** Whether the session lets a request out. */
function cancelled(url: string): boolean {
  const before = electron.recorder.session['onBeforeRequest']!.mock.calls[0]![0] as (
    details: { url: string },
    decide: (answer: { cancel: boolean }) => void,
  ) => void;
  const decide = vi.fn<(answer: { cancel: boolean }) => void>();
  before({ url }, decide);
  return decide.mock.calls[0]![0].cancel;
}
/** Whether an event of the window's contents is stopped. */
function stopped(name: string, details: Record<string, unknown>): boolean {
  const preventDefault = vi.fn();
  electron.window.webContents.emit(name, { ...details, preventDefault });
  return preventDefault.mock.calls.length > 0;
}

const points: Readonly<Record<string, () => void | Promise<void>>> = {
  '1 only secure content is loaded': () => {
    expect(electron.window.loaded).toEqual(['app://hearthclock/']);
    expect(electron.recorder.privileged).toMatchObject([{ scheme: 'app', privileges: { secure: true } }]);
    expect(
      ['http://example.org/', 'https://example.org/', 'ws://example.org/', 'ftp://x/'].every(cancelled),
    ).toBe(true);
    expect(page).not.toMatch(/(src|href)="(https?:)?\/\//);
  },
  '2 no Node for what is shown': () => {
    expect(preferences['nodeIntegration']).toBe(false);
    for (const name of ['nodeIntegrationInWorker', 'nodeIntegrationInSubFrames', 'webviewTag']) {
      expect(preferences).not.toHaveProperty(name);
    }
  },
  '3 contexts are isolated': () => {
    expect(preferences['contextIsolation']).toBe(true);
  },
  '4 the sandbox is on': () => {
    expect(preferences['sandbox']).toBe(true);
    // Only as root, where Chromium refuses to start with one, and the terminal says so.
    expect(naming(/no-sandbox/)).toEqual(['hosts/browsers.ts', 'hosts/electronHost.ts']);
    expect(electronArguments('/app', undefined, false)).toEqual(['/app']);
    expect(appWindowArguments('', '', false, false).join(' ')).not.toContain('sandbox');
  },
  '5 permissions are refused unless listed': () => {
    const { session, module } = electron.recorder;
    expect((module['session'] as { defaultSession: unknown }).defaultSession).toMatchObject(session);
    const request = session['setPermissionRequestHandler']!.mock.calls[0]![0] as (
      ...words: unknown[]
    ) => void;
    const check = session['setPermissionCheckHandler']!.mock.calls[0]![0] as (...words: unknown[]) => boolean;
    const granted = (permission: string, url: string): boolean => {
      const decide = vi.fn<(granted: boolean) => void>();
      request({ getURL: () => url }, permission, decide);
      expect(check(null, permission, url)).toBe(decide.mock.calls[0]![0]);
      return decide.mock.calls[0]![0];
    };
    // The names in Electron's own types: whatever a new version adds is refused until it is listed here.
    const types = readFileSync(createRequire(import.meta.url).resolve('electron/electron.d.ts'), 'utf8');
    const signature = /setPermissionRequestHandler\(handler: .*permission: ([^,]*),/.exec(types)?.[1] ?? '';
    const all = [...signature.matchAll(/'([\w-]+)'/g)].map(([, name]) => name!);
    expect(all.length).toBeGreaterThan(15);
    expect(all.filter((name) => granted(name, 'app://hearthclock/'))).toEqual(['clipboard-sanitized-write']);
    expect(all.filter((name) => granted(name, 'https://example.org/'))).toEqual([]);
  },
  '6 web security stays on': () => {
    expect(preferences['webSecurity']).toBe(true);
    expect(naming(/disable-web-security|webSecurity: false/)).toEqual([]);
  },
  '7 every answer has a Content-Security-Policy without unsafe words': async () => {
    for (const path of ['', 'assets/page.js', 'missing']) {
      const policy =
        (await fetched(`app://hearthclock/${path}`)).headers.get('content-security-policy') ?? '';
      expect(policy).toMatch(/^default-src 'none'; script-src 'self';/);
      for (const directive of ["base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'"]) {
        expect(policy).toContain(directive);
      }
      expect(policy).not.toMatch(/unsafe-|\*|https?:/);
    }
  },
  '8 no insecure content is let in': () => {
    expect(preferences).not.toHaveProperty('allowRunningInsecureContent');
    expect(naming(/allowRunningInsecureContent|allow-running-insecure-content/)).toEqual([]);
  },
  '9 no experimental features of Chromium': () => {
    expect(preferences).not.toHaveProperty('experimentalFeatures');
    expect(naming(/experimentalFeatures|enable-experimental|appendSwitch/)).toEqual([]);
  },
  '10 no Blink features': () => {
    expect(preferences).not.toHaveProperty('enableBlinkFeatures');
    expect(naming(/enableBlinkFeatures|enable-blink-features/)).toEqual([]);
  },
  '11 no webview that could open windows': () => {
    expect(naming(/<webview|allowpopups/)).toEqual([]);
    expect(page).not.toContain('webview');
  },
  '12 a webview is refused whatever its options': () => {
    expect(preferences).not.toHaveProperty('webviewTag');
    expect(stopped('will-attach-webview', {})).toBe(true);
  },
  '13 the window stays where it is': () => {
    const away = [
      'https://example.org/',
      'app://hearthclock.example/',
      'app://other/',
      'file:///etc/passwd',
      'data:text/html,x',
      'javascript:0',
      'no address',
    ];
    for (const url of away) {
      expect([url, stopped('will-navigate', { url })]).toEqual([url, true]);
      expect([url, stopped('will-redirect', { url })]).toEqual([url, true]);
      expect([url, stopped('will-frame-navigate', { url, isMainFrame: false })]).toEqual([url, true]);
    }
    expect(stopped('will-navigate', { url: 'app://hearthclock/' })).toBe(false);
    // The page itself is stopped by the first of them.
    expect(stopped('will-frame-navigate', { url: 'https://example.org/', isMainFrame: true })).toBe(false);
  },
  '14 no new window': () => {
    for (const url of ['https://example.org/', 'app://hearthclock/', 'about:blank', '']) {
      expect(electron.window.webContents.openHandler?.({ url })).toEqual({ action: 'deny' });
    }
    // For every web contents there will ever be, not for this one alone.
    expect(electron.recorder.app.hears('web-contents-created')).toBe(true);
  },
  '15 nothing is handed to other programs': () => {
    expect(naming(/openExternal|openPath|showItemInFolder/)).toEqual([]);
  },
  '16 a current Electron, exactly pinned': () => {
    const { devDependencies } = JSON.parse(readFileSync(sourceOf('package.json'), 'utf8')) as {
      devDependencies: Record<string, string>;
    };
    // Whether a newer one is out cannot be asked without the network. 44 was the first to keep the window's state.
    expect(devDependencies['electron']).toMatch(/^\d+\.\d+\.\d+$/);
    expect(Number(devDependencies['electron']?.split('.')[0])).toBeGreaterThanOrEqual(44);
  },
  '17 the sender of every message is checked': async () => {
    expect([...electron.recorder.handlers.keys()]).toEqual(['hearthclock:call']);
    expect(naming(/ipcMain\.(handle|on|once)\(/)).toEqual(['electron.ts']);
    const handle = electron.recorder.handlers.get('hearthclock:call')!;
    const frames = [null, { url: 'app://hearthclock/' }, { url: 'https://example.org/' }];
    for (const senderFrame of frames) {
      for (const name of Object.keys(calls)) {
        expect(await handle({ senderFrame }, name, null)).toHaveProperty('error');
      }
    }
    const { mainFrame } = electron.window.webContents;
    expect(await handle({ senderFrame: mainFrame }, 'listPlans', null)).toEqual({ answer: [] });
  },
  '18 an own protocol in place of file:, from a fixed list of files': async () => {
    expect([...electron.recorder.protocols.keys()]).toEqual(['app']);
    expect(naming(/file:\/\/|loadFile\(|registerFileProtocol/)).toEqual([]);
    expect((await fetched('app://hearthclock/')).status).toBe(200);
    expect((await fetched('app://hearthclock/%2e%2e%2f%2e%2e%2fpackage.json')).status).toBe(404);
    expect((await fetched('app://elsewhere/')).status).toBe(421);
    expect(cancelled('file:///etc/passwd')).toBe(true);
  },
  '19 the fuses': () => {
    // That they are set in a packed binary is shown by the test of the packaging.
    for (const line of [
      'runAsNode: false',
      'enableNodeOptionsEnvironmentVariable: false',
      'enableNodeCliInspectArguments: false',
      'enableEmbeddedAsarIntegrityValidation: true',
      'onlyLoadAppFromAsar: true',
      'grantFileProtocolExtraPrivileges: false',
    ]) {
      expect(packaging).toContain(`  ${line}\n`);
    }
  },
  '20 the page sees named functions and nothing of Electron': () => {
    expect([...electron.recorder.exposed.keys()]).toEqual(['hearthclock']);
    const shown = electron.recorder.exposed.get('hearthclock') as Record<string, unknown>;
    expect(Object.entries(shown).map(([name, what]) => [name, typeof what])).toEqual([
      ['call', 'function'],
      ['on', 'function'],
    ]);
    // A listener hears what was pushed, and never the event, which carries the sender.
    const heard: unknown[][] = [];
    electron.bridge.on('command', (...words) => heard.push(words));
    electron.window.webContents.send('hearthclock:push', 'command', 'save');
    electron.window.webContents.send('hearthclock:push', 'opened', 'not for this listener');
    expect(heard).toEqual([['save']]);
    expect(naming(/exposeInMainWorld|ipcRenderer/)).toEqual(['preload.ts']);
  },
};

describe("Electron's security checklist", () => {
  it('has twenty points, each once', () => {
    expect(Object.keys(points).map((title) => Number(title.split(' ')[0]))).toEqual(
      Array.from({ length: 20 }, (_, n) => n + 1),
    );
  });

  it.each(Object.entries(points))('%s', async (_title, check) => {
    await check();
  });
});
