/** Everything that leaves the program for an evening: each a text with its name, all from the same facts. */
import { instantOf } from '../evening/clock.ts';
import { writePlan } from '../evening/planText.ts';
import { blockMarkdown, blockText, recipeBlock } from './block.ts';
import { calendar } from './calendar.ts';
import { curvesCsv, curvesForSpreadsheets } from './curves.ts';
import { offsetsOf, wordsOf, type HandoutFacts } from './facts.ts';
import { blockHtml } from './html.ts';
import { recipeJsonLd } from './jsonLd.ts';
import { page } from './page.ts';

export const handoutIds = [
  'page',
  'block-markdown',
  'block-html',
  'block-text',
  'recipe',
  'calendar',
  'curves',
  'curves-spreadsheet',
  'plan',
] as const;
export type HandoutId = (typeof handoutIds)[number];

export interface HandoutFile {
  readonly name: string;
  /** media type */
  readonly type: string;
  readonly make: (facts: HandoutFacts) => string;
}

const ovenOn = ({ answer }: HandoutFacts): number => instantOf(answer.ovenOnAt).epochMilliseconds;

/** File name, media type and maker of each. */
export const handouts: Readonly<Record<HandoutId, HandoutFile>> = {
  page: { name: 'page.html', type: 'text/html', make: page },
  'block-markdown': {
    name: 'recipe-block.md',
    type: 'text/markdown',
    make: (facts) => blockMarkdown(recipeBlock(facts, wordsOf(facts))),
  },
  'block-html': {
    name: 'recipe-block.html',
    type: 'text/html',
    make: (facts) => blockHtml(recipeBlock(facts, wordsOf(facts))),
  },
  'block-text': {
    name: 'recipe-block.txt',
    type: 'text/plain',
    make: (facts) => blockText(recipeBlock(facts, wordsOf(facts))),
  },
  recipe: {
    name: 'recipe.jsonld',
    type: 'application/ld+json',
    make: (facts) => recipeJsonLd(facts, wordsOf(facts)),
  },
  calendar: {
    name: 'evening.ics',
    type: 'text/calendar',
    make: (facts) => calendar(facts, wordsOf(facts)),
  },
  curves: {
    name: 'curves.csv',
    type: 'text/csv',
    make: (facts) => curvesCsv(facts.run, ovenOn(facts), offsetsOf(facts)),
  },
  'curves-spreadsheet': {
    name: 'curves-for-spreadsheets.csv',
    type: 'text/csv',
    make: (facts) => curvesForSpreadsheets(facts.run, ovenOn(facts), offsetsOf(facts)),
  },
  plan: {
    name: 'evening.hearthclock',
    type: 'application/json',
    make: ({ file }) => writePlan(file),
  },
};
