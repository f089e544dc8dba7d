/** HTML without script or style of its own: the block for under a recipe, and pieces of the page. */
import type { RecipeBlock } from './block.ts';
import type { TableRow } from './readersTable.ts';

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text for between tags and for quoted attributes; control characters that HTML knows not are left out. */
export function htmlText(text: string): string {
  return text
    .replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/gu, '')
    .replaceAll(/[&<>"']/gu, (sign) => entities[sign]!)
    .replaceAll('\u00a0', '&nbsp;');
}

/** @param caption and cells as plain text */
export function htmlTable(caption: string, head: readonly string[], rows: readonly TableRow[]): string {
  const heads = head.map((cell) => `<th scope="col">${htmlText(cell)}</th>`).join('');
  const body = rows
    .map(({ cells: [first = '', ...others], own }) => {
      const mark = (text: string): string => (own ? `<strong>${text}</strong>` : text);
      const data = others.map((cell) => `<td>${mark(htmlText(cell))}</td>`).join('');
      return `<tr><th scope="row">${mark(htmlText(first))}</th>${data}</tr>\n`;
    })
    .join('');
  return `<table>\n<caption>${htmlText(caption)}</caption>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${body}</tbody>\n</table>`;
}

/** An unordered list of plain texts. */
export function htmlList(items: readonly string[]): string {
  return `<ul>\n${items.map((item) => `<li>${htmlText(item)}</li>\n`).join('')}</ul>`;
}

/** A piece of a page: it takes the style of the page it is pasted into. */
export function blockHtml({ heading, paragraphs, caption, head, rows, cautions }: RecipeBlock): string {
  return [
    '<section>',
    `<h3>${htmlText(heading)}</h3>`,
    ...paragraphs.map((text) => `<p>${htmlText(text)}</p>`),
    htmlTable(caption, head, rows),
    htmlList(cautions),
    '</section>',
    '',
  ].join('\n');
}
