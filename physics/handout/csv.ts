/** Tables for other programs: RFC 4180, and the same for spreadsheets of regions that write a decimal comma. */

export type CsvCell = string | number | undefined;

export interface CsvForm {
  readonly separator: ',' | ';';
  readonly decimal: '.' | ',';
}

/** RFC 4180, section 2. */
const rfc4180: CsvForm = { separator: ',', decimal: '.' };
/** What spreadsheets open at once where the comma is the decimal sign. */
export const spreadsheet: CsvForm = { separator: ';', decimal: ',' };

/**
 * Signs with which a cell is taken for a formula by spreadsheet programs (OWASP, CSV Injection; from memory). An
 * apostrophe before the text makes it text.
 */
const formula = /^[=+\-@\t\r]/u;
const number = /^-?\d+(?:\.\d+)?$/u;

function written(cell: CsvCell, { separator, decimal }: CsvForm): string {
  if (cell === undefined) return '';
  // A number is ours: its minus begins no formula.
  if (typeof cell === 'number') return String(cell).replace('.', decimal);
  const safe = formula.test(cell) && !number.test(cell) ? `'${cell}` : cell;
  return safe.includes(separator) || /["\r\n]/u.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Records with CRLF behind each; the caller gives each the same number of cells, a header first. */
export function csvText(records: readonly (readonly CsvCell[])[], form: CsvForm = rfc4180): string {
  return records
    .map((cells) => `${cells.map((cell) => written(cell, form)).join(form.separator)}\r\n`)
    .join('');
}
