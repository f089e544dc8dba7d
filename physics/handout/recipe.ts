/** The evening as a recipe: what it needs and what is done, without the clock. */
import { liquidNames, listed, shapeStep, yeastNames } from '../evening/steps.ts';
import { benchFlour, cheeseNames, flourNames } from '../evening/shopping.ts';
import { everyPizza } from '../evening/onePizza.ts';
import type { Task } from '../evening/answer.ts';
import type { RisePlaceId } from '../evening/ids.ts';
import type { HandoutFacts } from './facts.ts';
import { shadeText } from './setup.ts';
import { minutesSpan, type Words } from './words.ts';

export interface RecipePart {
  readonly grams: number;
  readonly name: string;
}
export interface RecipeStep {
  readonly name: string;
  readonly text: string;
}

/** Everything by weight, in the order in which it is used. */
export function recipeParts({ evening, answer }: HandoutFacts): readonly RecipePart[] {
  const { dough } = evening;
  const names: Readonly<Record<string, string>> = {
    ...liquidNames,
    flour: flourNames[dough.flour],
    yeast: yeastNames[dough.yeast.kind],
  };
  const parts = Object.entries(answer.dough.ingredientsG).map(([key, grams]) => ({
    grams,
    name: names[key] ?? key,
  }));
  const every = everyPizza(evening);
  for (const [bench, name] of [
    ['flour', 'flour for the bench'],
    ['semolina', 'semolina for the bench'],
  ] as const)
    parts.push({ grams: benchFlour * every.filter(({ pizzas }) => pizzas.bench === bench).length, name });
  parts.push({ grams: answer.toppings.sauceG, name: 'tomato sauce' });
  const cheeses = new Map<string, number>();
  for (const { toppings } of every)
    for (const { kind, mass } of toppings.cheese)
      cheeses.set(cheeseNames[kind], (cheeses.get(cheeseNames[kind]) ?? 0) + 1000 * mass);
  for (const [name, grams] of cheeses) parts.push({ grams, name });
  return parts.filter(({ grams }) => grams > 0);
}

/** What the cook does until the pizzas are baked, in a few words. */
export function taskName({ id, name, step }: Pick<Task, 'id' | 'name' | 'step'>): string {
  const [kind, number] =
    /^(?:hands-)?([a-z]+|ahead-preheat|top-before)(?:-(\d+))?$/u.exec(id)?.slice(1, 3) ?? [];
  switch (kind) {
    case 'mix':
      return 'Mix the dough';
    case 'move':
      return 'Move the dough';
    case 'ball':
      return 'Divide and ball the dough';
    case 'prepare':
      return 'Get sauce and cheese ready';
    case 'ahead':
      return 'Bake the bases ahead';
    case 'ahead-preheat':
      return 'Switch the oven on for the bases';
    case 'preheat':
      return 'Switch the oven on';
    case 'shape':
      return `Shape pizza ${number ?? ''}`;
    case 'load':
      return `Pizza ${number ?? ''} into the oven`;
    case 'turn':
      // Not asked for, it is a look first: `turnStep` says which.
      return `${step?.startsWith('Turn ') === true ? 'Turn' : 'Look at'} pizza ${number ?? ''}`;
    case 'look':
      return `Look at pizza ${number ?? ''}`;
    case 'pull':
      return `Paper from under pizza ${number ?? ''}`;
    case 'top':
      return `Top element on pizza ${number ?? ''}`;
    case 'top-before':
      return `Top element before pizza ${number ?? ''}`;
    case 'cut':
      return `Pizza ${number ?? ''} out, and cut it`;
    default:
      return name;
  }
}

/** Tasks with something to do, in their order; those of a single pizza end in its number. */
export function doneTasks({ answer }: HandoutFacts): readonly (Task & { readonly step: string })[] {
  return answer.tasks.filter((task): task is Task & { readonly step: string } => task.step !== undefined);
}

/** Whether a task belongs to one pizza and is told for all of them in a table. */
export function ofOnePizza({ id }: Pick<Task, 'id'>): boolean {
  return /^(?:shape|load|turn|cut)-\d+$/u.test(id);
}

function shaping({ evening }: HandoutFacts): readonly string[] {
  const alike = new Set(everyPizza(evening)).size === 1;
  return alike
    ? [shapeStep(evening, 1, evening.pizzas.count === 1 ? 'the pizza' : 'each pizza')]
    : everyPizza(evening).map((_, index) => shapeStep(evening, index + 1));
}

/** Whether a task has to do with one pizza in the oven, whatever the plan asks for there. */
export function whileBaking({ id }: Pick<Task, 'id'>): boolean {
  return /^(?:load|turn|look|pull|top|top-before|cut)-\d+$/u.test(id);
}

/** What the plan asks for before a pizza goes in, and while it bakes. */
function onTheWay(
  { pizzas }: HandoutFacts['evening'],
  words: Words,
): { readonly before: string; readonly during: string } {
  const { topElementBefore, topElementAfter, topElementAtEnd, lookAfter, turnAtHalfTime, pullParchment } =
    pizzas.steps ?? {};
  const timed = (seconds: number | undefined, say: (time: string) => string): string =>
    seconds === undefined || seconds === 0 ? '' : say(words.minutes(seconds / 60));
  const it = pizzas.count === 1 ? 'it' : 'each';
  return {
    before: timed(topElementBefore, (time) => `Turn the top element to full ${time} before ${it} goes in. `),
    during: [
      pullParchment === true ? ' Pull the paper out from under it once the base has set.' : '',
      timed(lookAfter, (time) => ` Look at it after ${time}.`),
      turnAtHalfTime === true ? ' Turn it half round at half time.' : '',
      topElementAfter === 0
        ? ' Turn the top element to full as it goes in.'
        : timed(topElementAfter, (time) => ` Turn the top element to full ${time} after it went in.`),
      timed(topElementAtEnd, (time) => ` Leave the top element at full for the last ${time}.`),
    ].join(''),
  };
}

/** How long, until what, and what then. */
export function bakingText({ evening, answer }: HandoutFacts, words: Words): string {
  const { bakes } = answer;
  const shades = [...new Set(everyPizza(evening).map(({ pizzas }) => shadeText(pizzas.shadeLightness)))];
  const times = minutesSpan(
    bakes.map(({ minutes }) => minutes),
    words,
  );
  const finish = Math.max(...bakes.map(({ finishMinutes }) => finishMinutes));
  const top =
    finish < 0.25
      ? ''
      : ` If the rim is still too light, give it up to ${words.minutes(finish)} under the top element.`;
  const wait = Math.max(...bakes.map(({ waitBeforeMinutes }) => waitBeforeMinutes));
  const next =
    bakes.length === 1 || wait < 0.25
      ? ''
      : ` Let the plate recover for ${words.minutes(wait)} before the next one.`;
  const { before, during } = onTheWay(evening, words);
  return `${before}Slide ${bakes.length === 1 ? 'it' : 'each'} onto the hot plate and shut the door at once. Bake ${times}, until the base is ${listed(shades)} and the cheese has melted.${during}${top}${next}`;
}

const risesIn: Readonly<Record<RisePlaceId, string>> = {
  room: 'in the room',
  refrigerator: 'in the refrigerator',
  warm: 'in a warm place',
};

/** The first stretch of the rise: the later ones are told where the dough is moved or balled. */
function rising({ answer }: HandoutFacts, words: Words): readonly RecipeStep[] {
  const [first] = answer.dough.phases;
  const bar = answer.tasks.find(({ id }) => id === 'rise');
  if (first === undefined || bar === undefined) return [];
  const [from, to] = [bar.from, bar.to].map((text) => words.at(text).epochMilliseconds) as [number, number];
  const text = `Cover it and let it rise ${words.minutes((to - from) / 60_000)} ${risesIn[first.where]}, at ${words.celsius(first.placeC)}.`;
  return [{ name: 'Let it rise', text }];
}

/** What is done, in order, without the clock. */
export function recipeSteps(facts: HandoutFacts, words: Words): readonly RecipeStep[] {
  const before = doneTasks(facts)
    .filter((task) => !ofOnePizza(task) && !whileBaking(task))
    .flatMap(({ id, name, step }) => [
      { name: taskName({ id, name, step }), text: `${words.sentence(step)}.` },
      ...(id === 'hands-mix' ? rising(facts, words) : []),
    ]);
  return [
    ...before,
    { name: 'Shape', text: `${shaping(facts).map(words.sentence).join('. ')}.` },
    { name: 'Bake', text: bakingText(facts, words) },
  ];
}
