/** The block that a recipe writer puts under a recipe: how it was baked here, and the table for other ovens. */
import { briefCautions, howSure } from './cautionLines.ts';
import type { HandoutFacts } from './facts.ts';
import { bakingText } from './recipe.ts';
import { readersHead, readersTable, type TableRow } from './readersTable.ts';
import { pizzaText, plateText, rackText } from './setup.ts';
import type { Words } from './words.ts';

export interface RecipeBlock {
  readonly heading: string;
  readonly paragraphs: readonly string[];
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly TableRow[];
  readonly cautions: readonly string[];
}

/** The block as pieces, for plain text, Markdown and HTML alike. */
export function recipeBlock(facts: HandoutFacts, words: Words): RecipeBlock {
  const { evening, answer, rows } = facts;
  const { preheat } = answer;
  const plate = plateText(evening, words);
  return {
    heading: 'How it was baked',
    paragraphs: [
      `${plate.slice(0, 1).toUpperCase()}${plate.slice(1)}, ${rackText(evening)}. Oven set to ${words.kelvin(evening.oven.setpoint)}: the plate is ready ${words.minutes(preheat.minutes)} after switching on, the oven itself signals after ${words.minutes(preheat.airReadyMinutes)}.`,
      `Pizza ${pizzaText(evening, words)}. ${bakingText(facts, words)}`,
    ],
    caption: 'If your oven stops elsewhere: the same plate and pizza in an oven of this kind',
    head: readersHead,
    rows: readersTable(rows, evening, words),
    cautions: [howSure(facts), ...briefCautions(facts, words)],
  };
}

/** Plain text has no no-break space that every program bears. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

/** For mails and notes: no line is broken, the table stands in columns. */
export function blockText({ heading, paragraphs, caption, head, rows, cautions }: RecipeBlock): string {
  const lines = [head, ...rows.map(({ cells }) => cells)];
  const widths = head.map((_, k) => Math.max(...lines.map((cells) => cells[k]!.length)));
  const table = lines.map((cells, n) => {
    const own = n > 0 && rows[n - 1]!.own ? '  (as here)' : '';
    return `  ${cells.map((cell, k) => cell.padEnd(widths[k]!)).join('  ')}${own}`.trimEnd();
  });
  return plain(
    [heading, '', ...paragraphs.flatMap((text) => [text, '']), `${caption}:`, '', ...table, '', ...cautions]
      .join('\n')
      .concat('\n'),
  );
}

/**
 * Text that Markdown takes for nothing but text: what begins something inside a line or at its start has a backslash
 * (CommonMark 0.31, 2.4), and so has the pipe of tables.
 */
export function markdownText(text: string): string {
  return plain(text)
    .replaceAll(/\s*[\r\n]+\s*/gu, ' ')
    .replaceAll(/[\\`*_[\]<>|~&]/gu, '\\$&')
    .replace(/^(\s*)([#+\-=])/u, '$1\\$2')
    .replace(/^(\s*\d+)([.)])/u, '$1\\$2');
}

/** CommonMark with a table as in GitHub Flavored Markdown (4.10). */
export function blockMarkdown({ heading, paragraphs, caption, head, rows, cautions }: RecipeBlock): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    `### ${markdownText(heading)}`,
    '',
    ...paragraphs.flatMap((text) => [markdownText(text), '']),
    `${markdownText(caption)}:`,
    '',
    line(head.map(markdownText)),
    line(head.map(() => '---')),
    ...rows.map(({ cells, own }) =>
      line(cells.map((cell) => (own ? `**${markdownText(cell)}**` : markdownText(cell)))),
    ),
    '',
    ...cautions.map((text) => `- ${markdownText(text)}`),
    '',
  ].join('\n');
}
