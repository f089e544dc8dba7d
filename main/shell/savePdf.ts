/** The page that would be printed, as a PDF: the same style sheet for paper, on the paper of the region. */
import { app, dialog, type BrowserWindow } from 'electron';
import { join } from 'node:path';
import { writeAndTell } from '../files/atomicWrite.ts';
import { causeOf } from '../files/disk.ts';

/** Where letters are written on Letter: Unicode CLDR, supplemental data, paper size US-Letter; from memory. */
const letter = new Set(['US', 'CA', 'MX', 'PR', 'PH', 'CL', 'CO', 'CR', 'GT', 'NI', 'PA', 'SV', 'VE', 'BZ']);

export function paperOf(region: string): 'A4' | 'Letter' {
  return letter.has(region) ? 'Letter' : 'A4';
}

export async function savePdf(window: BrowserWindow, warn: (message: string) => void): Promise<void> {
  try {
    const { canceled, filePath } = await dialog.showSaveDialog(window, {
      defaultPath: join(app.getPath('documents'), 'Pizza evening.pdf'),
      filters: [{ name: 'PDF', extensions: ['pdf'] }],
    });
    if (canceled) return;
    const pdf = await window.webContents.printToPDF({
      pageSize: paperOf(app.getLocaleCountryCode()),
      printBackground: true,
    });
    await writeAndTell(filePath, pdf, warn, { keepPrevious: false });
  } catch (error) {
    dialog.showErrorBox('The PDF was not saved', causeOf(error));
  }
}
