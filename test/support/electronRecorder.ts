/**
 * Stands where the module `electron` is, keeps what it is told and lets a test play the other side. It proves what our
 * wiring asks of Electron, not what Electron does.
 */
import { vi, type Mock } from 'vitest';

type Listener = (...words: unknown[]) => unknown;

export class Emitter {
  readonly #listeners = new Map<string, Listener[]>();
  on(name: string, listener: Listener): this {
    this.#listeners.set(name, [...(this.#listeners.get(name) ?? []), listener]);
    return this;
  }
  once(name: string, listener: Listener): this {
    return this.on(name, listener);
  }
  off(name: string, listener: Listener): this {
    this.#listeners.set(
      name,
      (this.#listeners.get(name) ?? []).filter((one) => one !== listener),
    );
    return this;
  }
  emit(name: string, ...words: unknown[]): void {
    for (const listener of this.#listeners.get(name) ?? []) listener(...words);
  }
  hears(name: string): boolean {
    return (this.#listeners.get(name) ?? []).length > 0;
  }
}

export class RecordedContents extends Emitter {
  readonly mainFrame = { url: 'app://hearthclock/' };
  openHandler: ((details: { url: string }) => { action: string }) | undefined;
  readonly #renderer: Emitter;
  constructor(renderer: Emitter) {
    super();
    this.#renderer = renderer;
  }
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
  readonly printToPDF = vi.fn((options: unknown) =>
    Promise.resolve(new TextEncoder().encode(JSON.stringify(options))),
  );
  getURL(): string {
    return this.mainFrame.url;
  }
  send(channel: string, ...words: unknown[]): void {
    this.#renderer.emit(channel, {}, ...words);
  }
}

export interface Recorder {
  /** what `import … from 'electron'` gives */
  readonly module: Record<string, unknown>;
  readonly app: Emitter & {
    isPackaged: boolean;
    readonly quit: Mock;
    readonly exit: Mock;
    readonly setPath: Mock;
    readonly requestSingleInstanceLock: Mock;
    readonly addRecentDocument: Mock;
  };
  readonly windows: (Emitter & {
    options: Record<string, unknown>;
    webContents: RecordedContents;
    loaded: string[];
  })[];
  readonly session: Record<string, Mock>;
  readonly protocols: Map<string, (request: Request) => Response | Promise<Response>>;
  readonly privileged: unknown[];
  readonly handlers: Map<string, Listener>;
  readonly exposed: Map<string, unknown>;
  readonly menus: unknown[][];
  readonly notes: unknown[];
  /** those shown, to be clicked */
  readonly shownNotes: Emitter[];
  readonly blockers: string[];
  /** what the dialogs will answer */
  readonly dialogs: { open: string | undefined; save: string | undefined; button: number };
  readonly asked: unknown[];
}

/** @param ready when Electron is: what comes before it comes early */
export function electronRecorder(
  appPath: string,
  documents: string,
  ready: Promise<void> = Promise.resolve(),
): Recorder {
  const renderer = new Emitter();
  const handlers = new Map<string, Listener>();
  const exposed = new Map<string, unknown>();
  const protocols: Recorder['protocols'] = new Map();
  const windows: Recorder['windows'] = [];
  const privileged: unknown[] = [];
  const menus: unknown[][] = [];
  const notes: unknown[] = [];
  const shownNotes: Emitter[] = [];
  const blockers: string[] = [];
  const asked: unknown[] = [];
  const dialogs: Recorder['dialogs'] = { open: undefined, save: undefined, button: 0 };

  const app = Object.assign(new Emitter(), {
    isPackaged: false,
    setPath: vi.fn(),
    setAppUserModelId: vi.fn(),
    requestSingleInstanceLock: vi.fn(() => true),
    whenReady: () => ready,
    quit: vi.fn(),
    exit: vi.fn(),
    getVersion: () => '0.0.0-test',
    getAppPath: () => appPath,
    getPath: () => documents,
    getLocaleCountryCode: () => 'US',
    addRecentDocument: vi.fn(),
  });

  class BrowserWindow extends Emitter {
    readonly options: Record<string, unknown>;
    readonly webContents = new RecordedContents(renderer);
    readonly loaded: string[] = [];
    readonly show = vi.fn();
    readonly focus = vi.fn();
    readonly restore = vi.fn();
    readonly close = vi.fn();
    readonly isMinimized = (): boolean => true;
    readonly setRepresentedFilename = vi.fn();
    readonly setDocumentEdited = vi.fn();
    constructor(options: Record<string, unknown>) {
      super();
      this.options = options;
      windows.push(this);
      app.emit('web-contents-created', {}, this.webContents);
    }
    loadURL(address: string): Promise<void> {
      this.loaded.push(address);
      this.emit('ready-to-show');
      return Promise.resolve();
    }
  }

  class Notification extends Emitter {
    static isSupported(): boolean {
      return true;
    }
    constructor(note: unknown) {
      super();
      notes.push(note);
    }
    show(): void {
      shownNotes.push(this);
      notes.push('shown');
    }
  }

  const session = {
    setPermissionRequestHandler: vi.fn(),
    setPermissionCheckHandler: vi.fn(),
    setDevicePermissionHandler: vi.fn(),
    onBeforeRequest: vi.fn(),
  };
  const answerBox = (...words: unknown[]): number => {
    asked.push(words.at(-1));
    return dialogs.button;
  };

  const module = {
    app,
    BrowserWindow,
    Notification,
    dialog: {
      showOpenDialog: () => Promise.resolve({ filePaths: dialogs.open === undefined ? [] : [dialogs.open] }),
      showSaveDialog: () =>
        Promise.resolve({ canceled: dialogs.save === undefined, filePath: dialogs.save ?? '' }),
      showMessageBox: (...words: unknown[]) => Promise.resolve({ response: answerBox(...words) }),
      showMessageBoxSync: answerBox,
      showErrorBox: vi.fn((...words: unknown[]) => asked.push(words)),
    },
    ipcMain: { handle: (channel: string, listener: Listener) => handlers.set(channel, listener) },
    ipcRenderer: {
      invoke: async (channel: string, ...words: unknown[]) => {
        const contents = windows[0]?.webContents;
        // Structured cloning lies between the two processes.
        return structuredClone(
          await handlers.get(channel)?.(
            { senderFrame: contents?.mainFrame ?? null },
            ...structuredClone(words),
          ),
        );
      },
      on: (channel: string, listener: Listener) => renderer.on(channel, listener),
      off: (channel: string, listener: Listener) => renderer.off(channel, listener),
    },
    contextBridge: { exposeInMainWorld: (name: string, api: unknown) => exposed.set(name, api) },
    Menu: {
      buildFromTemplate: (template: unknown[]) => {
        menus.push(template);
        return template;
      },
      setApplicationMenu: vi.fn(),
    },
    nativeTheme: { themeSource: 'system' },
    powerSaveBlocker: {
      start: (kind: string) => blockers.push(kind) - 1,
      stop: (id: number) => blockers.push(`stop ${id}`),
    },
    protocol: {
      registerSchemesAsPrivileged: (schemes: unknown[]) => privileged.push(...schemes),
      handle: (scheme: string, respond: (request: Request) => Response) => protocols.set(scheme, respond),
    },
    session: { defaultSession: { ...session, webRequest: { onBeforeRequest: session.onBeforeRequest } } },
  };
  return {
    module,
    app,
    windows,
    session,
    protocols,
    privileged,
    handlers,
    exposed,
    menus,
    notes,
    shownNotes,
    blockers,
    dialogs,
    asked,
  };
}
