/** Files that the browser saves where the cook wants them. */
import { usePlan } from './planStore.ts';
import { writePlan } from '../../physics/evening/planText.ts';

/** How a plan's file is called, as the shell calls it too. */
export const planEnding = '.hearthclock';

export function downloadText(name: string, type: string, text: string): void {
  downloadUrl(name, URL.createObjectURL(new Blob([text], { type })));
}

export function downloadUrl(name: string, url: string): void {
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the blob after this turn.
  setTimeout(() => {
    URL.revokeObjectURL(url);
  }, 10_000);
}

/** A name that every file system takes. */
export function fileName(ending: string, title = usePlan.getState().file.title ?? 'pizza evening'): string {
  const plain = title
    .replaceAll(/[^\p{L}\p{N} _-]/gu, '')
    .trim()
    .replaceAll(/\s+/g, '-');
  return `${plain === '' ? 'pizza-evening' : plain}${ending}`;
}

export function downloadCopy(): void {
  downloadText(fileName(planEnding), 'application/json', writePlan(usePlan.getState().file));
}
