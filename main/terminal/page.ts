/** Plain text on a page of 80 columns. A no-break space holds a figure and its unit on one line. */
const width = 80;

/** Breaks a text between words; lines after the first begin with `hang` spaces, the first with what is given. */
export function wrap(text: string, first = '', hang = first.length): readonly string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/[ \t\r\n]+/u).filter((w) => w !== '')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = ' '.repeat(hang);
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return empty ? lines : [...lines, line];
}

/** Rows of two columns: the first as wide as its widest cell, to the right or to the left. */
export function columns(
  rows: readonly (readonly [string, string])[],
  align: 'left' | 'right',
): readonly string[] {
  const widest = Math.max(0, ...rows.map(([cell]) => cell.length));
  return rows.flatMap(([cell, text]) => {
    const padded = align === 'right' ? cell.padStart(widest) : cell.padEnd(widest);
    return wrap(text, `  ${padded}  `);
  });
}

/** A heading with its lines; nothing at all when there are none. */
export function section(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines];
}
