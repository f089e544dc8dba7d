import { lexer, type Token, type Tokens } from 'marked';
import { parseFragment, type DefaultTreeAdapterTypes } from 'parse5';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import {
  blockMarkdown,
  markdownText,
  recipeBlock,
  type RecipeBlock,
} from '../../../physics/handout/block.ts';
import { wordsOf } from '../../../physics/handout/facts.ts';
import { blockHtml } from '../../../physics/handout/html.ts';
import { halves, readersTable } from '../../../physics/handout/readersTable.ts';
import { facts, hostileTitle, made } from '../../support/handout.ts';
import { textOf, within } from '../../support/markup.ts';

const saturday = facts(demos.saturday);
const american = facts(demos['same-evening'], { units: 'us' });

/** What a reader sees of inline Markdown. */
function seen(tokens: readonly Token[] | undefined): string {
  return (tokens ?? [])
    .map((token) => ('tokens' in token ? seen(token.tokens) : 'text' in token ? String(token.text) : ''))
    .join('')
    .replaceAll('&amp;', '&')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'");
}

interface Table {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

function tableOfMarkdown(text: string): Table {
  const table = lexer(text).find((token): token is Tokens.Table => token.type === 'table')!;
  return {
    head: table.header.map(({ tokens }) => seen(tokens)),
    rows: table.rows.map((row) => row.map(({ tokens }) => seen(tokens))),
  };
}

function tableOfHtml(text: string): Table {
  const root = parseFragment(text);
  const cells = (row: DefaultTreeAdapterTypes.Element): readonly string[] =>
    [...within(row, 'th'), ...within(row, 'td')].map(textOf);
  const [head, ...rows] = within(root, 'tr').map(cells);
  return { head: head!, rows };
}

describe('the block for under a recipe', () => {
  it.each([
    ['metric', saturday],
    ['us', american],
  ])('has the same table in Markdown, HTML and plain text: %s', (_, from) => {
    const markdown = tableOfMarkdown(made('block-markdown', from));
    expect(tableOfHtml(made('block-html', from))).toEqual(markdown);
    const words = wordsOf(from);
    const expected = readersTable(from.rows, from.evening, words).map(({ cells }) =>
      cells.map((cell) => cell.replaceAll('\u00a0', ' ')),
    );
    expect(markdown.rows).toEqual(expected);
    const lines = made('block-text', from).split('\n');
    for (const row of expected) {
      const line = lines.find((text) => text.startsWith(`  ${row[0]!} `))!;
      expect(line.replace('(as here)', '').trim().split(/ {2,}/u)).toEqual(row);
    }
  });

  it('says the figures of the computation', () => {
    const { rows } = tableOfMarkdown(made('block-markdown', saturday));
    for (const [
      index,
      { settingK, preheatMinutes, firstBakeMinutes, finishMinutes },
    ] of saturday.rows.entries()) {
      const [setting, preheat, bake, top] = rows[index]!;
      expect(setting).toBe(`${Math.round(settingK - 273.15)} °C`);
      expect(preheat).toBe(`${Math.round(preheatMinutes!)} min`);
      const said = (text: string): number =>
        text === '–' ? 0 : Number(text.replace('½', '.5').replace(' min', '').replace(/^\./u, '0.'));
      expect(Math.abs(said(bake!) - firstBakeMinutes!)).toBeLessThanOrEqual(0.25);
      expect(Math.abs(said(top!) - finishMinutes!)).toBeLessThanOrEqual(0.25);
    }
  });

  it('marks the setting of the recipe', () => {
    const own = within(parseFragment(made('block-html', saturday)), 'strong').map(textOf);
    expect(own[0]).toBe('250 °C');
    expect(own).toHaveLength(4);
    expect(made('block-markdown', saturday)).toContain('| **250 °C** |');
    expect(made('block-text', saturday)).toMatch(/^ {2}250 °C .*\(as here\)$/mu);
  });

  it('is short: it fits under a recipe', () => {
    expect(made('block-markdown', saturday).split('\n').length).toBeLessThan(30);
    expect(made('block-text', saturday).length).toBeLessThan(2500);
  });

  it('brings no script, no style, no address', () => {
    const html = made('block-html', american);
    expect(html).not.toMatch(/<script|<style|style=|href|src=|class=/u);
    expect(within(parseFragment(html), 'th').every(({ attrs }) => attrs[0]?.name === 'scope')).toBe(true);
  });

  it('has the cautions that go with it, and how sure it is', () => {
    const paper = facts(demos.saturday, { rows: saturday.rows });
    const onPaper = {
      ...paper,
      evening: { ...paper.evening, pizzas: { ...paper.evening.pizzas, bench: 'parchment' as const } },
    };
    const text = made('block-text', onPaper);
    expect(text).toContain('Baking paper is commonly rated to 215 to 230 °C');
    expect(text).toContain('The makers of oven and plate, and local rules, come before anything said here.');
    expect(text).toMatch(/in eight of ten ovens of this kind the plate is ready after \d+ to \d+ min/iu);
    expect(made('block-text', saturday)).not.toContain('Baking paper');
    expect(made('block-text', american)).toContain('With gas, run a hood');
    expect(made('block-text', american)).toContain('Start a stone in the cold oven');
  });
});

describe('text in the block', () => {
  const words: RecipeBlock = {
    ...recipeBlock(saturday, wordsOf(saturday)),
    heading: hostileTitle,
    paragraphs: ['1. no list', '# no heading', '- no item', '> no quote', '+ no item', 'a < b && c'],
    rows: [{ own: false, cells: ['a | b', '*', '`c`', '~~d~~'] }],
  };

  it('is text for Markdown', () => {
    const tokens = lexer(blockMarkdown(words)).filter(({ type }) => type !== 'space');
    const heading = tokens[0] as Tokens.Heading;
    expect([heading.type, seen(heading.tokens)]).toEqual(['heading', hostileTitle]);
    expect(heading.tokens.every(({ type }) => type === 'text' || type === 'escape')).toBe(true);
    const paragraphs = tokens.slice(1, 7) as Tokens.Paragraph[];
    expect(paragraphs.map(({ type }) => type)).toEqual(Array<string>(6).fill('paragraph'));
    expect(paragraphs.map(({ tokens: parts }) => seen(parts))).toEqual(words.paragraphs);
    expect(tableOfMarkdown(blockMarkdown(words)).rows).toEqual([['a | b', '*', '`c`', '~~d~~']]);
  });

  it('is text for HTML', () => {
    const root = parseFragment(blockHtml(words));
    expect(textOf(within(root, 'h3')[0]!)).toBe(hostileTitle);
    expect(within(root, 'b')).toEqual([]);
    expect(within(root, 'p').map(textOf)).toEqual(words.paragraphs);
  });

  it('leaves plain words alone', () => {
    expect(markdownText('6½ min, then 2 min')).toBe('6½ min, then 2 min');
  });
});

describe('half minutes', () => {
  it.each([
    [6.33, '6½ min'],
    [6.2, '6 min'],
    [0.5, '½ min'],
    [0.2, '12 s'],
    [40, '40 min'],
  ])('%f as %s', (minutes, said) => {
    expect(halves(minutes)).toBe(said.replace(' ', '\u00a0'));
  });

  it('says what an oven does not do', () => {
    const [row] = saturday.rows;
    const words = wordsOf(saturday);
    const cellsOf = (change: object): readonly string[] =>
      readersTable([{ ...row!, ...change }], saturday.evening, words)[0]!.cells.map((cell) =>
        cell.replaceAll('\u00a0', ' '),
      );
    expect(
      cellsOf({ reached: false, preheatMinutes: null, firstBakeMinutes: null, finishMinutes: null }),
    ).toEqual(['220 °C', 'never in such an oven', '–', '–']);
    expect(cellsOf({ firstBakeMinutes: null, finishMinutes: null }).slice(2)).toEqual([
      'not done in 40 min',
      '–',
    ]);
  });
});
