/** Text in columns, as thermometers and spreadsheets write it: what parts the columns, what the decimal sign is. */

export interface Dialect {
  readonly delimiter: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
}

/** In the order in which they are preferred when they explain a text equally well. */
export const dialects: readonly Dialect[] = [
  { delimiter: ',', decimal: '.' },
  { delimiter: ';', decimal: '.' },
  { delimiter: ';', decimal: ',' },
  { delimiter: '\t', decimal: '.' },
  { delimiter: '\t', decimal: ',' },
];

export interface Line {
  /** 1 for the first line of the text */
  readonly number: number;
  readonly cells: readonly string[];
}

/**
 * Splits a text into lines of cells. Quotes as in RFC 4180 (doubled inside), line breaks of any kind, a byte order mark;
 * an open quote ends with the text. Empty lines are left out. Never throws.
 */
export function splitCells(text: string, delimiter: Dialect['delimiter']): readonly Line[] {
  const lines: Line[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let number = 1;
  let started = 1;
  const endCell = (): void => {
    cells.push(cell.trim());
    cell = '';
  };
  const endLine = (): void => {
    endCell();
    if (cells.some((c) => c !== '')) lines.push({ number: started, cells });
    cells = [];
    started = number + 1;
  };
  const source = text.replace(/^\u{feff}/u, '').replaceAll(/\r\n?/gu, '\n');
  for (let i = 0; i < source.length; i++) {
    const c = source[i]!;
    if (quoted) {
      if (c === '"' && source[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else if (c === '"') quoted = false;
      else cell += c;
    } else if (c === '"' && cell.trim() === '') quoted = true;
    else if (c === delimiter) endCell();
    else if (c === '\n') endLine();
    else cell += c;
    if (c === '\n') number += 1;
  }
  endLine();
  return lines;
}

/** A plain number under a decimal sign; undefined for anything else, unit words included. */
export function plainNumber(cell: string, decimal: Dialect['decimal']): number | undefined {
  const form = decimal === '.' ? /^[+-]?(\d+\.?\d*|\.\d+)$/u : /^[+-]?(\d+,?\d*|,\d+)$/u;
  if (!form.test(cell)) return undefined;
  const value = Number(cell.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}
