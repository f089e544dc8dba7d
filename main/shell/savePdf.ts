/** The page that would be printed, as a PDF: the same style sheet for paper, on the paper of the region. */
import { app, dialog, type BrowserWindow } from 'electron';
import { join } from 'node:path';
import { writeAndTell } from '../files/atomicWrite.ts';
import { paperOf } from '../../physics/handout/paper.ts';
import { causeOf } from '../files/disk.ts';

/** As Electron calls them. */
const pageSizes = { a4: 'A4', letter: 'Letter' } as const;

export async function savePdf(window: BrowserWindow, warn: (message: string) => void): Promise<void> {
  try {
    const { canceled, filePath } = await dialog.showSaveDialog(window, {
      defaultPath: join(app.getPath('documents'), 'Pizza evening.pdf'),
      filters: [{ name: 'PDF', extensions: ['pdf'] }],
    });
    if (canceled) return;
    const pdf = await window.webContents.printToPDF({
      pageSize: pageSizes[paperOf(app.getLocaleCountryCode())],
      printBackground: true,
    });
    await writeAndTell(filePath, pdf, warn, { keepPrevious: false });
  } catch (error) {
    dialog.showErrorBox('The PDF was not saved', causeOf(error));
  }
}
