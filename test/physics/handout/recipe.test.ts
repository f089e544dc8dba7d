import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { demos } from '../../../physics/evening/demos.ts';
import { isoDuration } from '../../../physics/handout/jsonLd.ts';
import { acrossSummerTime, facts, hostileTitle, made } from '../../support/handout.ts';
import { textOf, within } from '../../support/markup.ts';

/**
 * Properties with what they expect, as far as they are written here: schema.org/Recipe, CreativeWork and Thing (read in
 * stored copies of those pages); `tool` of HowTo, which Recipe is a kind of, and HowToTool (from memory).
 */
const isText = (value: unknown): boolean => typeof value === 'string' && value.trim() !== '';
/** ISO 8601-1, 5.5.2.2: years to seconds, at least one, T before the hours */
const isDuration = (value: unknown): boolean =>
  typeof value === 'string' && /^P(?!$)(\d+Y)?(\d+M)?(\d+D)?(T(?=\d)(\d+H)?(\d+M)?(\d+S)?)?$/u.test(value);
const isDateTime = (value: unknown): boolean =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/u.test(value);
const listOf =
  (isOne: (value: unknown) => boolean) =>
  (value: unknown): boolean =>
    Array.isArray(value) && value.length > 0 && value.every(isOne);
const isA =
  (type: string, properties: Readonly<Record<string, (value: unknown) => boolean>>) =>
  (value: unknown): boolean => {
    if (typeof value !== 'object' || value === null) return false;
    const known: typeof properties = {
      ...properties,
      '@type': (found: unknown) => found === type,
      '@context': isText,
    };
    return '@type' in value && Object.entries(value).every(([name, found]) => known[name]?.(found) === true);
  };
const isRecipe = isA('Recipe', {
  name: isText,
  description: isText,
  recipeYield: isText,
  recipeCategory: isText,
  cookingMethod: isText,
  prepTime: isDuration,
  cookTime: isDuration,
  totalTime: isDuration,
  dateModified: isDateTime,
  recipeIngredient: listOf(isText),
  recipeInstructions: listOf(isA('HowToStep', { name: isText, text: isText })),
  tool: listOf(isA('HowToTool', { name: isText })),
});

interface Recipe {
  readonly '@context': string;
  readonly name: string;
  readonly prepTime: string;
  readonly cookTime: string;
  readonly totalTime: string;
  readonly recipeIngredient: readonly string[];
  readonly recipeInstructions: readonly { readonly name: string; readonly text: string }[];
}

const saturday = facts(demos.saturday, { rows: [] });
const american = facts(demos['same-evening'], { rows: [], units: 'us' });
const recipe = JSON.parse(made('recipe', saturday)) as Recipe;

/** min */
function minutesOf(duration: string): number {
  const [, hours, minutes] = /^PT(?:(\d+)H)?(?:(\d+)M)?$/u.exec(duration) ?? [];
  return 60 * Number(hours ?? 0) + Number(minutes ?? 0);
}

describe('the recipe for other programs', () => {
  it.each([
    ['metric', saturday],
    ['us', american],
    ['phases', facts(acrossSummerTime, { rows: [] })],
  ])('has the properties of schema.org/Recipe and no others: %s', (_, from) => {
    const read: unknown = JSON.parse(made('recipe', from));
    expect(read).toSatisfy(isRecipe);
    expect((read as Recipe)['@context']).toBe('https://schema.org');
  });

  it('is refused by the check when something else stands in it', () => {
    expect({ ...recipe, ingredients: ['flour'] }).not.toSatisfy(isRecipe);
    expect({ ...recipe, cookTime: '34 min' }).not.toSatisfy(isRecipe);
    expect(recipe).not.toHaveProperty('author');
  });

  it('weighs what the plan weighs, the amount first', () => {
    const { ingredientsG } = saturday.answer.dough;
    expect(recipe.recipeIngredient).toContain(`${ingredientsG['flour']!} g wheat flour`);
    expect(recipe.recipeIngredient).toContain(`${ingredientsG['water']!} g water`);
    expect(recipe.recipeIngredient).toContain('480 g low-moisture mozzarella');
    expect(recipe.recipeIngredient).toContain('280 g tomato sauce');
    const us = JSON.parse(made('recipe', american)) as Recipe;
    // 2 x 4 oz and 2 x 1/2 oz of the plan.
    expect(us.recipeIngredient).toContain('8 oz low-moisture mozzarella');
    expect(us.recipeIngredient).toContain('1 oz hard cheese');
  });

  it('takes as long as the plan: hands, oven, and all of it', () => {
    const { bakes, tasks, lastEatAt } = saturday.answer;
    const minutes = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 60_000;
    expect(Math.abs(minutesOf(recipe.cookTime) - minutes(bakes[0]!.inAt, bakes.at(-1)!.outAt))).toBeLessThan(
      1,
    );
    expect(Math.abs(minutesOf(recipe.totalTime) - minutes(tasks[0]!.from, lastEatAt))).toBeLessThan(1);
    // 15 min of mixing, 6 of balling, 9 of sauce and cheese, 3 for each pizza.
    expect(minutesOf(recipe.prepTime)).toBe(42);
  });

  it('tells the steps in their order, the rise among them, and the pizzas once', () => {
    expect(recipe.recipeInstructions.map(({ name }) => name)).toEqual([
      'Mix the dough',
      'Let it rise',
      'Divide and ball the dough',
      'Switch the oven on',
      'Get sauce and cheese ready',
      'Shape',
      'Bake',
    ]);
    const texts = recipe.recipeInstructions.map(({ text }) => text);
    expect(texts[1]).toMatch(/^Cover it and let it rise 4 h( \d+ min)? in the room, at 21 °C\.$/u);
    expect(texts[5]).toBe('Shape each pizza to 30 cm on a floured bench, 70 g sauce, 120 g cheese.');
    expect(texts[6]).toContain('until the base is golden');
    expect(JSON.stringify(recipe)).not.toContain('\u00a0');
  });

  it('tells with the bake what the plan asks for while a pizza is in the oven', () => {
    const asked = {
      lookAfter: '3 min',
      turnAtHalfTime: true,
      pullParchment: true,
      topElementBefore: '5 min',
      topElementAtEnd: '1 min',
    };
    const busy = facts(
      {
        ...demos.saturday,
        pizzas: { ...demos.saturday.pizzas, count: 2, bench: 'parchment', steps: asked },
      },
      { rows: [] },
    );
    const { recipeInstructions } = JSON.parse(made('recipe', busy)) as Recipe;
    expect(recipeInstructions.map(({ name }) => name)).toEqual(
      recipe.recipeInstructions.map(({ name }) => name),
    );
    const { text } = recipeInstructions.at(-1)!;
    expect(text).toMatch(/^Turn the top element to full 5 min before each goes in\. Slide each/u);
    for (const said of ['Pull the paper out', 'Look at it after 3 min', 'half round', 'for the last 1 min'])
      expect(text).toContain(said);
    const summaries = [...made('calendar', busy).matchAll(/^SUMMARY:(.*)\r$/gmu)].map(([, said]) => said!);
    expect(summaries.length).toBeGreaterThan(12);
    // What stands in a calendar is words, no id.
    for (const said of summaries) expect(said).toMatch(/^[A-Z][a-z]+ /u);
    expect(summaries).toContain('Top element before pizza 1');
    expect(summaries).toContain('Turn pizza 2');
  });

  it('tells pizzas that differ one by one', () => {
    const two = facts(
      {
        ...demos.saturday,
        pizzas: { ...demos.saturday.pizzas, count: 2, each: [{ diameter: '26 cm', shade: 'dark' }] },
      },
      { rows: [] },
    );
    const { recipeInstructions } = JSON.parse(made('recipe', two)) as Recipe;
    expect(recipeInstructions.at(-2)!.text).toMatch(/^Shape pizza 1 to 26 cm .*\. Shape pizza 2 to 30 cm /u);
    expect(recipeInstructions.at(-1)!.text).toContain('until the base is dark and golden');
  });

  it('cannot end the script element that it is put into', () => {
    const text = made('recipe', { ...saturday, answer: { ...saturday.answer, title: hostileTitle } });
    const root = parse(`<!doctype html><script type="application/ld+json">${text}</script><p>after</p>`);
    const [script] = within(root, 'script');
    expect((JSON.parse(textOf(script!)) as Recipe).name).toBe(hostileTitle);
    expect(within(root, 'p').map(textOf)).toEqual(['after']);
  });
});

describe('durations of ISO 8601', () => {
  it.each([
    [90, 'PT1H30M'],
    [60, 'PT1H'],
    [34.4, 'PT34M'],
    [0.2, 'PT1M'],
    [1800, 'PT30H'],
  ])('%f min as %s', (minutes, duration) => {
    expect(isoDuration(60_000 * minutes)).toBe(duration);
  });
});
