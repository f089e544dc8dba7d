/** One page for the fridge door, as HTML to print: the clock, the amounts, the table for other ovens, the cautions. */
import { addMinutes, dateOf, weekdayName } from '../evening/clock.ts';
import { kept } from '../quantities/index.ts';
import { howSure } from './cautionLines.ts';
import { offsetsOf, wordsOf, type HandoutFacts } from './facts.ts';
import { htmlList, htmlTable, htmlText } from './html.ts';
import { pageStyle } from './pageStyle.ts';
import { readersHead, readersTable, type TableRow } from './readersTable.ts';
import { doneTasks, ofOnePizza, recipeParts } from './recipe.ts';
import { pizzaText, plateText, rackText } from './setup.ts';
import { clockAround, minutesRange, minutesSpan, type Words } from './words.ts';

interface Answer {
  readonly what: string;
  readonly figure: string;
  readonly more: string;
}

function answers({ answer, evening }: HandoutFacts, words: Words): readonly Answer[] {
  const { preheat, range, bakes } = answer;
  const on = words.at(answer.ovenOnAt);
  const between = (from: number, to: number): string =>
    `between ${words.clock(addMinutes(on, from))} and ${words.clock(addMinutes(on, to))}`;
  // With supper fixed it is the switching on that has to move; else the oven goes on when it goes on.
  const spread = (range === null ? [] : [range.preheatMinutes]).map(([short, long]) =>
    evening.anchor.kind === 'eatAt'
      ? between(preheat.minutes - long, preheat.minutes - short)
      : `plate ready ${between(short, long)}`,
  );
  const waits = bakes.slice(1).map(({ waitBeforeMinutes }) => waitBeforeMinutes);
  return [
    {
      what: `Switch the oven on, ${words.kelvin(evening.oven.setpoint)}`,
      figure: words.clock(on),
      more: [
        ...spread,
        `the plate needs ${words.minutes(preheat.minutes)}, the oven signals after ${words.minutes(preheat.airReadyMinutes)}`,
      ].join('; '),
    },
    {
      what: bakes.length === 1 ? 'Bake' : 'Bake each',
      figure: minutesSpan(
        bakes.map(({ minutes }) => minutes),
        words,
      ),
      more: [
        ...(range === null ? [] : [`likely ${minutesRange(range.bakeMinutes)}`]),
        ...(waits.length === 0 ? [] : [`the next one ${words.minutes(Math.max(...waits))} later`]),
      ].join('; '),
    },
    {
      what: 'Eat',
      figure: words.clockOf(answer.eatAt),
      more: bakes.length === 1 ? '' : `the last pizza at ${words.clockOf(answer.lastEatAt)}`,
    },
  ];
}

function answerHtml({ what, figure, more }: Answer): string {
  return `<div><p>${htmlText(what)}</p><p class="figure">${htmlText(figure)}</p><p>${htmlText(more)}</p></div>`;
}

/** What is done once, each with its time. */
function steps(facts: HandoutFacts, words: Words): string {
  const rows = doneTasks(facts)
    .filter((task) => !ofOnePizza(task))
    .map(
      ({ from, step }) =>
        `<tr><th scope="row">${htmlText(clockAround(facts.answer.eatAt, from, words))}</th><td>${htmlText(words.sentence(step))}</td></tr>\n`,
    );
  return `<table class="steps">\n<caption>By the clock</caption>\n<tbody>\n${rows.join('')}</tbody>\n</table>`;
}

/** What was true when the plan was made only; and how sure it is stands there with its ranges. */
const notOnPaper = new Set(['starts-in-the-past', 'step-in-the-night', 'figures-are-estimates']);

/** Pizzas beyond which the page is set closer, and their table goes on in the other column. */
const roomy = 8;

/** What is done for every pizza: a row each. */
function pizzas({ answer }: HandoutFacts, words: Words): readonly TableRow[] {
  const shaped = new Map(
    answer.tasks.flatMap(({ id, from }) => (id.startsWith('shape-') ? [[id.slice(6), from]] : [])),
  );
  return answer.bakes.map((bake) => {
    const from = shaped.get(String(bake.pizza));
    return {
      own: false,
      cells: [
        String(bake.pizza),
        from === undefined ? '–' : words.clockOf(from),
        words.clockOf(bake.inAt),
        words.minutes(bake.minutes),
        words.clockOf(bake.outAt),
        bake.finishMinutes < 0.25 ? '–' : words.minutes(bake.finishMinutes),
      ],
    };
  });
}

function pizzaTable(caption: string, rows: readonly TableRow[], first: string): string {
  return rows.length === 0
    ? ''
    : htmlTable(caption, ['Pizza', first, 'In', 'Bakes', 'Out', 'Top element'], rows);
}

function amounts(facts: HandoutFacts, words: Words): string {
  const { dough, toppings } = facts.answer;
  const rows = recipeParts(facts).map(({ grams, name }) => ({
    own: false,
    cells: [words.grams(grams), name],
  }));
  const notes = [
    `Liquid at ${words.celsius(dough.liquidC)} for a dough of ${words.celsius(dough.doughC)}; ready after ${words.minutes(dough.riseMinutes)} (${words.minutes(dough.riseRangeMinutes[0])} to ${words.minutes(dough.riseRangeMinutes[1])}).`,
    ...(toppings.leftSauceG >= 1 ? [`${words.grams(toppings.leftSauceG)} of sauce are left.`] : []),
  ];
  const table = htmlTable('Amounts', ['Weight', 'Of'], rows);
  return `${table}\n${notes.map((note) => `<p>${htmlText(note)}</p>`).join('\n')}`;
}

/** Whether the clocks are put forward or back in the course of the evening, and by how much. */
function clockChange(facts: HandoutFacts, words: Words): string {
  const offsets = doneTasks(facts).map(({ from }) => words.at(from).offsetMinutes);
  const [first, last] = [
    offsets[0] ?? 0,
    offsetsOf(facts)(words.at(facts.answer.lastEatAt).epochMilliseconds),
  ];
  if (first === last) return '';
  return ` The clocks go ${last > first ? 'forward' : 'back'} by ${kept(`${Math.abs(last - first)} min`)} on the way: the times are what the clock on the wall then shows.`;
}

/** The whole document, style included. */
export function page(facts: HandoutFacts): string {
  const { answer, evening, rows, paper } = facts;
  const words = wordsOf(facts);
  const supper = words.at(answer.eatAt);
  const plate = plateText(evening, words);
  const set = `${plate.slice(0, 1).toUpperCase()}${plate.slice(1)}, ${rackText(evening)}. Pizza ${pizzaText(evening, words)}.`;
  const warnings = answer.warnings.filter(({ code }) => !notOnPaper.has(code));
  const every = pizzas(facts, words);
  const crowded = every.length > roomy;
  // The left column has more room left.
  // A base baked ahead is topped, no longer shaped.
  const first = evening.pizzas.parBake === undefined ? 'Shape' : 'Top';
  const left = crowded ? Math.ceil(0.75 * every.length) : every.length;
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width">',
    `<title>${htmlText(answer.title)}</title>`,
    `<style>\n${pageStyle(paper)}</style>`,
    '</head>',
    `<body${crowded ? ' class="crowded"' : ''}>`,
    `<header><h1>${htmlText(answer.title)}</h1><p>${htmlText(`${weekdayName(supper)} ${dateOf(supper)}`)}</p></header>`,
    `<section class="answers">${answers(facts, words).map(answerHtml).join('')}</section>`,
    `<p>${htmlText(`${set}${clockChange(facts, words)}`)}</p>`,
    '<main>',
    `<section>${steps(facts, words)}${pizzaTable('The pizzas', every.slice(0, left), first)}</section>`,
    `<section>${amounts(facts, words)}${htmlTable('In other ovens of this kind', readersHead, readersTable(rows, evening, words))}${pizzaTable('The other pizzas', every.slice(left), first)}</section>`,
    '</main>',
    '<section class="cautions">',
    '<h2>Cautions</h2>',
    htmlList([...warnings.map(({ message }) => words.sentence(message)), howSure(facts)]),
    '</section>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
