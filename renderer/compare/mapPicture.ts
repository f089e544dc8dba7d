/** The map as a picture on white paper. */
import { heatColour, type Heat } from './heat.ts';

export interface MapFigures {
  readonly title: string;
  readonly across: string;
  readonly down: string;
  readonly columns: readonly string[];
  readonly rows: readonly string[];
  /** figure of each cell, row by row, and where it lies; undefined for one that is not there */
  readonly cells: readonly (readonly { readonly text: string; readonly share: number | undefined }[])[];
}

const cell = { width: 120, height: 44 } as const;
const edge = { left: 190, top: 96, right: 24, bottom: 24 } as const;
const scale = 2;

/** @returns a PNG as a data address @throws Error where the browser has no canvas */
export function mapPicture(figures: MapFigures, heat: Heat, font: string): string {
  const { title, across, down, columns, rows, cells } = figures;
  const canvas = document.createElement('canvas');
  canvas.width = scale * (edge.left + columns.length * cell.width + edge.right);
  canvas.height = scale * (edge.top + rows.length * cell.height + edge.bottom);
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('picture: found no canvas; allowed a browser that has one');
  pen.scale(scale, scale);
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.textBaseline = 'middle';
  const write = (text: string, x: number, y: number, align: CanvasTextAlign, weight = 400): void => {
    pen.font = `${String(weight)} 14px ${font}`;
    pen.textAlign = align;
    pen.fillStyle = '#000000';
    pen.fillText(text, x, y);
  };
  write(title, 16, 24, 'left', 650);
  write(across, edge.left + (columns.length * cell.width) / 2, 52, 'center');
  write(down, 16, edge.top - 20, 'left');
  columns.forEach((name, i) => {
    write(name, edge.left + (i + 0.5) * cell.width, edge.top - 20, 'center');
  });
  rows.forEach((name, j) => {
    const y = edge.top + (j + 0.5) * cell.height;
    write(name, edge.left - 12, y, 'right');
    cells[j]?.forEach(({ text, share }, i) => {
      const x = edge.left + i * cell.width;
      pen.fillStyle = share === undefined ? '#ffffff' : heatColour(share, heat);
      pen.fillRect(x + 1, y - cell.height / 2 + 1, cell.width - 2, cell.height - 2);
      write(text, x + cell.width / 2, y, 'center');
    });
  });
  return canvas.toDataURL('image/png');
}
