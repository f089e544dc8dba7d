/** The window in Electron: wiring only. What it does is in the services, what it may not do in the lock-down. */
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import * as v from 'valibot';
import { answer } from './answer.ts';
import type { Push, PushName } from './bridge.ts';
import { causeOf, messageOf } from './files/disk.ts';
import { places } from './files/places.ts';
import { callChannel, electronReady, pushChannel, type CallOutcome } from './ipc.ts';
import { systemName } from './platform.ts';
import { openServices, type Services } from './services.ts';
import { bringForward, electronPlatform } from './shell/electronPlatform.ts';
import { isOurs, lockContents, lockSession, windowOrigin, windowScheme } from './shell/lockDown.ts';
import { menuTemplate } from './shell/menu.ts';
import { savePdf } from './shell/savePdf.ts';
import { readWindowFiles, windowResponse, type WindowFiles } from './window/windowFiles.ts';

const own = places(process.platform, process.env, homedir());
const warn = (message: string): void => {
  process.stderr.write(`hearthclock: ${message}\n`);
};
let window: BrowserWindow | undefined;
let services: Services | undefined;
/** A plan that macOS or a second start names before everything is ready; the last one is shown. */
let early: string | undefined;

/** Electron's own words come first: the program, and when not packaged its folder. */
const named = process.argv.slice(app.isPackaged ? 1 : 2).find((word) => !word.startsWith('-'));
const file = named === undefined ? undefined : resolve(named);

protocol.registerSchemesAsPrivileged([
  { scheme: windowScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
]);
// Electron refuses a folder that does not exist.
mkdirSync(own.electronProfile, { recursive: true, mode: 0o700 });
app.setPath('userData', own.electronProfile);
app.setAppUserModelId('org.hearthclock.app');

if (app.requestSingleInstanceLock({ file: file ?? null })) {
  app.on('second-instance', (_event, _words, _folder, data) => {
    bringForward(window);
    const other = v.safeParse(v.strictObject({ file: v.nullable(v.string()) }), data);
    if (!other.success) warn('a second start sent something else than the name of a file');
    else if (other.output.file !== null) void openFromOutside(other.output.file);
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    void openFromOutside(path);
  });
  app.on('window-all-closed', () => {
    app.quit();
  });
  app.on('web-contents-created', (_event, contents) => {
    lockContents(contents, warn);
  });
  app
    .whenReady()
    .then(openWindow)
    .catch((error: unknown) => {
      warn(causeOf(error));
      app.exit(1);
    });
} else {
  // The one that runs already has been told the file.
  app.quit();
}

async function openWindow(): Promise<void> {
  const platform = electronPlatform(() => window);
  const started = await openServices({ platform, places: own, version: app.getVersion(), file, warn, push });
  services = started;
  const { bridge } = started;
  // The window asks for it when it greets.
  if (early !== undefined) await openFromOutside(early);
  const files = await readWindowFiles(join(app.getAppPath(), 'dist', 'renderer'));
  lockSession(session.defaultSession, warn);
  protocol.handle(windowScheme, (request) => respond(files, request));
  ipcMain.handle(callChannel, async (event, name: unknown, ask: unknown): Promise<CallOutcome> => {
    try {
      const frame = event.senderFrame;
      const ours = frame !== null && frame === window?.webContents.mainFrame && isOurs(frame.url);
      return { answer: await answer(bridge, ours, String(name), ask) };
    } catch (error) {
      warn(`call of ${String(name)} refused: ${causeOf(error)}`);
      return { error: messageOf(error) };
    }
  });
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(
      menuTemplate(systemName(process.platform), {
        send: (command) => {
          push('command', command);
        },
        savePdf: () => {
          if (window !== undefined) void savePdf(window, warn);
        },
      }),
    ),
  );
  const opened = newWindow();
  window = opened;
  opened.webContents.on('will-prevent-unload', (event) => {
    const choice = askBeforeClosing(opened);
    if (choice === 'save') {
      platform.closeAfterSave();
      push('command', 'save');
    } else if (choice === 'discard') {
      bridge.keepUnsaved({ text: '' }).catch((error: unknown) => {
        warn(causeOf(error));
      });
      event.preventDefault();
    }
  });
  await opened.loadURL(`${windowOrigin}/`);
}

function newWindow(): BrowserWindow {
  const made = new BrowserWindow({
    // Size, place and maximised state come back, clamped to a screen that exists.
    name: 'evening',
    windowStatePersistence: true,
    width: 1360,
    height: 860,
    minWidth: 360,
    minHeight: 480,
    show: false,
    webPreferences: {
      preload: join(app.getAppPath(), 'dist', 'main', 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webSecurity: true,
      // It would fetch dictionaries from the network.
      spellcheck: false,
    },
  });
  made.once('ready-to-show', () => {
    made.show();
    process.stdout.write(`${electronReady}\n`);
  });
  made.once('closed', () => {
    window = undefined;
  });
  return made;
}

function respond(files: WindowFiles, request: Request): Response {
  if (!isOurs(request.url)) return new Response('Not our window.\n', { status: 421 });
  return windowResponse(files, request.method, new URL(request.url).pathname);
}

function push<K extends PushName>(name: K, what: Push<K>): void {
  window?.webContents.send(pushChannel, name, what);
}

async function openFromOutside(path: string): Promise<void> {
  if (services === undefined) {
    early = path;
    return;
  }
  try {
    push('opened', await services.openFromOutside(path));
  } catch (error) {
    dialog.showErrorBox('The plan could not be opened', causeOf(error));
  }
}

/** The window says by `beforeunload` that there is unsaved work; only a dialog that waits can answer in time. */
function askBeforeClosing(leaving: BrowserWindow): 'save' | 'discard' | undefined {
  const chosen = dialog.showMessageBoxSync(leaving, {
    type: 'warning',
    message: 'Save the changes to this evening?',
    buttons: ['Save', "Don't save", 'Cancel'],
    defaultId: 0,
    cancelId: 2,
    noLink: true,
  });
  return (['save', 'discard'] as const)[chosen];
}
