/**
 * The cautions in the few words that fit under a recipe. The full ones, with the figure behind each, are on the page;
 * these say what somebody else has to know with another oven.
 */
import type { Warning } from '../evening/answer.ts';
import type { HandoutFacts } from './facts.ts';
import { minutesRange, type Words } from './words.ts';

const brief: Readonly<Record<string, string>> = {
  'plate-too-heavy-for-rack': 'Ask the maker of the oven whether its rack carries the plate.',
  'plate-heavy-for-rack': 'Ask the maker of the oven whether its rack carries the plate.',
  'little-air-round-plate': 'Leave air free around the plate.',
  'stone-thermal-shock':
    'Start a stone in the cold oven, let it cool there, and keep water and frozen food off it while hot.',
  'gas-ventilation': 'With gas, run a hood that leads outside or open a window.',
};

const parchment =
  'Baking paper is commonly rated to 215 to 230 °C; above what its box says it chars and can catch fire.';
const always = [
  'The plate burns long after the bake: leave it in the oven until it is cold.',
  'Do not taste raw dough.',
  'The makers of oven and plate, and local rules, come before anything said here.',
] as const;

/** Those that apply to this evening. */
export function briefCautions({ evening, answer }: HandoutFacts, words: Words): readonly string[] {
  const fitting = answer.warnings.flatMap(({ code }: Warning) => brief[code] ?? []);
  const { each = [], bench } = evening.pizzas;
  const onPaper = bench === 'parchment' || each.some((own) => own.bench === 'parchment');
  return [...(onPaper ? [parchment] : []), ...new Set(fitting), ...always].map(words.sentence);
}

/** How sure it is, in a sentence. */
export function howSure({ answer: { range } }: HandoutFacts): string {
  const spread =
    range === null
      ? ''
      : ` In eight of ten ovens of this kind the plate is ready after ${minutesRange(range.preheatMinutes)} and the bake takes ${minutesRange(range.bakeMinutes)}.`;
  return `All figures are estimates from a model of an ordinary oven.${spread} Watch the pizza, not the clock.`;
}
