/** The evening as a recipe for other programs: schema.org/Recipe in JSON-LD. */
import { writeInstant } from '../evening/clock.ts';
import type { HandoutFacts } from './facts.ts';
import { offsetsOf } from './facts.ts';
import { doneTasks, recipeParts, recipeSteps, whileBaking } from './recipe.ts';
import { plateText } from './setup.ts';
import type { Words } from './words.ts';

/** ISO 8601 duration to the minute: `PT6H10M`. */
export function isoDuration(milliseconds: number): string {
  const minutes = Math.max(1, Math.round(milliseconds / 60_000));
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return `PT${hours > 0 ? `${hours}H` : ''}${rest > 0 ? `${rest}M` : ''}`;
}

/** The recipe as an object: every text is for people, none is markup. */
function recipeData(facts: HandoutFacts, words: Words): Readonly<Record<string, unknown>> {
  const { evening, answer, now } = facts;
  const { pizzas, oven } = evening;
  const epoch = (text: string): number => words.at(text).epochMilliseconds;
  const tasks = doneTasks(facts);
  const firstIn = epoch(answer.bakes[0]!.inAt);
  const lastOut = epoch(answer.bakes.at(-1)!.outAt);
  // Hands at work until the first pizza goes in; the rise is in the total only.
  const preparing = tasks
    .filter((task) => task.lane === 'hands' && !whileBaking(task))
    .reduce((sum, { from, to }) => sum + epoch(to) - epoch(from), 0);
  const begin = Math.min(...tasks.map(({ from }) => epoch(from)));
  const pieces = pizzas.count === 1 ? '1 pizza' : `${pizzas.count} pizzas`;
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: answer.title,
    description: `${pieces} of ${words.length(pizzas.diameter)}, baked on ${plateText(evening, words)} at ${words.kelvin(oven.setpoint)}. Times are estimates for this oven and plate; the makers of both have the last word.`,
    recipeYield: pieces,
    recipeCategory: 'Pizza',
    cookingMethod: 'Baking on a preheated plate',
    prepTime: isoDuration(preparing),
    cookTime: isoDuration(lastOut - firstIn),
    totalTime: isoDuration(epoch(answer.lastEatAt) - begin),
    dateModified: writeInstant({ epochMilliseconds: now, offsetMinutes: offsetsOf(facts)(now) }),
    recipeIngredient: recipeParts(facts).map(({ grams, name }) => `${words.grams(grams)} ${name}`),
    recipeInstructions: recipeSteps(facts, words).map(({ name, text }) => ({
      '@type': 'HowToStep',
      name,
      text,
    })),
    tool: [plateText(evening, words), `oven that reaches ${words.kelvin(oven.setpoint)}`].map((name) => ({
      '@type': 'HowToTool',
      name,
    })),
  };
}

/**
 * As a file and for a script element of a page alike: `<` is written as an escape, so that no text of the plan ends the
 * element.
 */
export function recipeJsonLd(facts: HandoutFacts, words: Words): string {
  const text = JSON.stringify(recipeData(facts, words), undefined, 2);
  return `${text.replaceAll('\u00a0', ' ').replaceAll('<', '\\u003c')}\n`;
}
