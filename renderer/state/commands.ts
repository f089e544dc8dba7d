/** Everything that can be done with a key or a menu: one list, used by keys, buttons and the shell's menu alike. */
import { choosePlan, openExample, savePlan, savePlanAs, useDocument } from './documentStore.ts';
import { leaveField } from './leaveField.ts';
import { toggleTable } from './momentStore.ts';
import { redo, undo } from './planStore.ts';
import { useSettings } from './settingsStore.ts';
import { showSheet } from './sheetStore.ts';
import { showView, viewIds, type ViewId } from './viewStore.ts';

export interface KeyHelp {
  readonly keys: string;
  readonly does: string;
}

export const apple = navigator.platform.startsWith('Mac');
/** The key of commands, as it is written on the keyboard. */
export const command = apple ? '⌘' : 'Ctrl';

export const keyHelp: readonly KeyHelp[] = [
  { keys: `${command} Z`, does: 'Undo' },
  { keys: `${command} Shift Z`, does: 'Redo' },
  { keys: `${command} S`, does: 'Save' },
  { keys: `${command} Shift S`, does: 'Save under another name' },
  { keys: `${command} O`, does: 'Open' },
  { keys: `${command} P`, does: 'Print' },
  { keys: `${command} ,`, does: 'Settings' },
  { keys: `${command} 1 … ${String(viewIds.length)}`, does: 'Open a view, in the order of the tabs' },
  { keys: 'T', does: 'Chart or table' },
  { keys: '?', does: 'This list' },
  { keys: 'Arrows, on the line in the chart', does: 'Move the moment by 1 min, with Shift by 10' },
  { keys: 'Arrows, on the plate in the drawing', does: 'Move the plate to the next rack, with Shift by 1 %' },
  { keys: 'Arrows, on eat or preheat in the chart', does: 'Move the evening by 1 min, with Shift by 15' },
  {
    keys: 'Arrows, on oven on, mix, divide or a pizza',
    does: 'Move that alone by 1 min, with Shift by 15; soak, yeast, rest or wait follow',
  },
  { keys: 'Arrows, in the map of Compare', does: 'Go to the next point; Enter opens it as the plan' },
  { keys: 'Arrows, on the strip', does: 'Move the part shown by 5 min, with Shift by 30' },
  { keys: 'D, M, G in Tonight', does: 'Done, one more minute, guests 10 min late' },
  { keys: 'Enter', does: 'Take an entry' },
  { keys: 'Escape', does: 'Take an entry back, close what is open, stop long work' },
];

/** The one file input of the page; hosts without dialogs open through it. */
let picker: HTMLInputElement | null = null;
export function setPicker(element: HTMLInputElement | null): void {
  picker = element;
}
export function openPlan(): void {
  if (useDocument.getState().greeting?.dialogs === true) void choosePlan();
  else picker?.click();
}
export function printPlan(): void {
  window.print();
}

export const commands = {
  new: () => {
    openExample('saturday');
  },
  open: openPlan,
  save: () => {
    leaveField();
    void savePlan();
  },
  saveAs: () => {
    leaveField();
    void savePlanAs();
  },
  undo,
  redo,
  print: printPlan,
  settings: () => {
    showSheet('settings');
  },
} as const;
export type Command = keyof typeof commands;

const withCommandKey: Readonly<Record<string, Command>> = {
  z: 'undo',
  'shift+z': 'redo',
  y: 'redo',
  s: 'save',
  'shift+s': 'saveAs',
  o: 'open',
  p: 'print',
  ',': 'settings',
};

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLInputElement ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLElement && target.closest('[role="menu"],[role="dialog"]') !== null)
  );
}

/** The view that a digit opens; undefined for one that is not there. */
function viewOf(key: string, views: readonly ViewId[]): ViewId | undefined {
  return views.find((id) => String(viewIds.indexOf(id) + 1) === key);
}

/** @param views that can be opened */
export function listenForKeys(views: readonly ViewId[]): () => void {
  const hear = (event: KeyboardEvent): void => {
    const key = event.key.toLowerCase();
    if ((apple ? event.metaKey : event.ctrlKey) && !event.altKey) {
      const view = event.shiftKey ? undefined : viewOf(key, views);
      if (view !== undefined) {
        event.preventDefault();
        showView(view);
        return;
      }
      const name = withCommandKey[`${event.shiftKey ? 'shift+' : ''}${key}`];
      // Inside a field the browser's own undo takes back what is being typed.
      const typing = event.target instanceof HTMLInputElement && event.target.dataset['typing'] === 'true';
      if (name === undefined || (typing && (name === 'undo' || name === 'redo'))) return;
      event.preventDefault();
      commands[name]();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
    if (!useSettings.getState().letterKeys) return;
    if (key === 't') toggleTable();
    else if (key === '?') showSheet('keys');
    else return;
    event.preventDefault();
  };
  window.addEventListener('keydown', hear);
  return () => {
    window.removeEventListener('keydown', hear);
  };
}
