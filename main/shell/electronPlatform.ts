/** What Electron offers the services: dialogs, notes, staying awake, the marks of the title bar. */
import { app, dialog, nativeTheme, Notification, powerSaveBlocker, type BrowserWindow } from 'electron';
import { join } from 'node:path';
import type { Settings } from '../bridge.ts';
import { planEnding } from '../files/planName.ts';
import type { Platform } from '../platform.ts';

const filters = [
  { name: 'Hearthclock plan', extensions: [planEnding.slice(1), 'json'] },
  { name: 'All files', extensions: ['*'] },
];
const themes = { system: 'system', flour: 'light', iron: 'dark' } as const satisfies Record<
  Settings['theme'],
  string
>;

export interface ElectronPlatform extends Platform {
  /** Closes the window once the work in it is saved; given up when the cook goes on working. */
  closeAfterSave(): void;
}

export function electronPlatform(window: () => BrowserWindow | undefined): ElectronPlatform {
  let closing = false;
  let awake: number | undefined;
  /** A note that nothing refers to is collected, and its click is not heard. */
  const notes = new Set<Notification>();

  return {
    host: 'electron',
    dialogs: {
      pickToOpen: async () => {
        const { filePaths } = await dialog.showOpenDialog(owner(), { properties: ['openFile'], filters });
        return filePaths[0];
      },
      pickToSave: async (suggestedName) => {
        const defaultPath = join(app.getPath('documents'), suggestedName);
        const { canceled, filePath } = await dialog.showSaveDialog(owner(), { defaultPath, filters });
        return canceled ? undefined : filePath;
      },
      confirm: async (message, yes) => {
        const { response } = await dialog.showMessageBox(owner(), {
          type: 'question',
          message,
          buttons: [yes, 'Cancel'],
          defaultId: 1,
          cancelId: 1,
        });
        return response === 0;
      },
    },
    notify: ({ title, body }) => {
      if (!Notification.isSupported()) return false;
      const note = new Notification({ title, body });
      notes.add(note);
      note.on('click', () => {
        notes.delete(note);
        bringForward(window());
      });
      note.on('close', () => {
        notes.delete(note);
      });
      note.show();
      return true;
    },
    keepAwake: (what) => {
      if (awake !== undefined) powerSaveBlocker.stop(awake);
      awake =
        what === 'off'
          ? undefined
          : powerSaveBlocker.start(what === 'screen' ? 'prevent-display-sleep' : 'prevent-app-suspension');
      return true;
    },
    documentShown: (path) => {
      // Both do nothing where the system knows no such thing.
      window()?.setRepresentedFilename(path);
      app.addRecentDocument(path);
    },
    unsavedChanged: (unsaved) => {
      window()?.setDocumentEdited(unsaved);
      if (!unsaved && closing) window()?.close();
      closing = false;
    },
    saveGivenUp: () => {
      closing = false;
    },
    themeChosen: (theme) => {
      nativeTheme.themeSource = themes[theme];
    },
    closeAfterSave: () => {
      closing = true;
    },
  };

  /** A dialog belongs to the window whose call it answers. */
  function owner(): BrowserWindow {
    const one = window();
    if (one === undefined) throw new Error('dialog: found no window; allowed while the window is open');
    return one;
  }
}

export function bringForward(window: BrowserWindow | undefined): void {
  if (window?.isMinimized() === true) window.restore();
  window?.show();
  window?.focus();
}
