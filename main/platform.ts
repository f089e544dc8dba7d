/** What a host can do for the services. One implementation for Electron, one for the two HTTP hosts. */
import type { Answer, Ask, Settings } from './bridge.ts';

/** The host's own file dialogs; each answers undefined when the cook cancels. */
export interface Dialogs {
  pickToOpen(): Promise<string | undefined>;
  pickToSave(suggestedName: string): Promise<string | undefined>;
  /** A question whose answer "no" changes nothing. */
  confirm(question: string, yes: string): Promise<boolean>;
}

export interface Platform {
  readonly host: Answer<'greet'>['host'];
  /** Missing where the window runs in a browser: there it brings its own. */
  readonly dialogs?: Dialogs;
  /** Whether the host shows the note itself; otherwise the window has to. */
  notify(note: Ask<'notify'>): boolean;
  /** Whether the host keeps the machine awake itself; otherwise the window has to. */
  keepAwake(what: Ask<'keepAwake'>): boolean;
  /** A document was opened or saved: for the title bar and the system's list of recent documents. */
  documentShown(path: string): void;
  /** Whether there is unsaved work, for the mark in the title bar and for closing after a save. */
  unsavedChanged(unsaved: boolean): void;
  /** A save failed or was cancelled: a window that waits for one must not close. */
  saveGivenUp(): void;
  /** The theme the cook chose, for the parts of the window that the system draws. */
  themeChosen(theme: Settings['theme']): void;
}

/** The window in a browser has its own means for everything a host may offer. */
export function browserPlatform(host: 'browser' | 'serve'): Platform {
  return {
    host,
    notify: () => false,
    keepAwake: () => false,
    documentShown: () => undefined,
    unsavedChanged: () => undefined,
    saveGivenUp: () => undefined,
    themeChosen: () => undefined,
  };
}

export type SystemName = Answer<'greet'>['platform'];

export function systemName(platform: NodeJS.Platform): SystemName {
  if (platform === 'darwin') return 'mac';
  return platform === 'win32' ? 'windows' : 'linux';
}
