/** The menu in the order of each platform. Everything in it can be reached in the window too: browsers have no menu. */
import type { MenuItemConstructorOptions } from 'electron';
import type { Push } from '../bridge.ts';
import type { SystemName } from '../platform.ts';

type Command = Push<'command'>;

export interface MenuActions {
  readonly send: (command: Command) => void;
  readonly savePdf: () => void;
}

export function menuTemplate(
  system: SystemName,
  { send, savePdf }: MenuActions,
): MenuItemConstructorOptions[] {
  // The window answers its own keys (also in the browser hosts); a key handled in both places would act twice. New is
  // left to the menu: in a browser that key is the browser's own.
  const item = (label: string, accelerator: string, command: Command): MenuItemConstructorOptions => ({
    label,
    accelerator,
    registerAccelerator: command === 'new',
    click: () => {
      send(command);
    },
  });
  const line: MenuItemConstructorOptions = { type: 'separator' };
  const mac = system === 'mac';
  const redoKey = system === 'windows' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z';

  const settings = item('Settin&gs…', 'CmdOrCtrl+,', 'settings');
  const application: MenuItemConstructorOptions = {
    role: 'appMenu',
    submenu: [
      { role: 'about' },
      line,
      settings,
      line,
      { role: 'services' },
      line,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      line,
      { role: 'quit' },
    ],
  };
  const recent: MenuItemConstructorOptions = {
    label: 'Open Recent',
    role: 'recentDocuments',
    submenu: [{ role: 'clearRecentDocuments' }],
  };
  const file: MenuItemConstructorOptions = {
    label: '&File',
    submenu: [
      item('&New', 'CmdOrCtrl+N', 'new'),
      item('&Open…', 'CmdOrCtrl+O', 'open'),
      ...(mac ? [recent] : []),
      line,
      item('&Save', 'CmdOrCtrl+S', 'save'),
      item('Save &As…', 'CmdOrCtrl+Shift+S', 'saveAs'),
      line,
      item('&Print…', 'CmdOrCtrl+P', 'print'),
      // In a browser the print dialog itself offers it.
      { label: 'Save as P&DF…', click: savePdf },
      line,
      ...(mac ? [] : [settings, line]),
      mac ? { role: 'close' } : { role: 'quit' },
    ],
  };
  const edit: MenuItemConstructorOptions = {
    label: '&Edit',
    submenu: [
      item('&Undo', 'CmdOrCtrl+Z', 'undo'),
      item('&Redo', redoKey, 'redo'),
      line,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: '&View',
    submenu: [
      { role: 'zoomIn' },
      // The key beside 0 that has the plus on it, without Shift.
      { role: 'zoomIn', accelerator: 'CmdOrCtrl+=', visible: false, acceleratorWorksWhenHidden: true },
      { role: 'zoomOut' },
      { role: 'resetZoom' },
      line,
      { role: 'togglefullscreen' },
      line,
      { role: 'reload' },
      { role: 'toggleDevTools' },
    ],
  };
  const rest: MenuItemConstructorOptions[] = mac
    ? [{ role: 'windowMenu' }]
    : [{ role: 'help', submenu: [{ role: 'about' }] }];
  return [...(mac ? [application] : []), file, edit, view, ...rest];
}
