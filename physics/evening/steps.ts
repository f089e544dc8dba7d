/** What the cook does, as lines for the fridge: plain kitchen words with the figures. Celsius and grams. */
import { zeroCelsius } from '../materials/constants.ts';
import type { Evening } from './evening.ts';
import type { BenchId, KeepId, LiquidId, MixingId, RisePlaceId, YeastId } from './ids.ts';
import { ballMasses, cheeseOn, everyPizza, withPizza } from './onePizza.ts';
import type { RiseStage } from './planDough.ts';

/** As a sentence names them. */
export const liquidNames: Readonly<Record<LiquidId, string>> = {
  water: 'water',
  beer: 'beer',
  milk: 'milk',
  whey: 'whey',
  oil: 'oil',
  honey: 'honey',
  custom: 'other liquid',
};
export const yeastNames: Readonly<Record<YeastId, string>> = {
  fresh: 'fresh yeast',
  'active-dry': 'active dry yeast',
  instant: 'instant yeast',
};
const mixingWords: Readonly<Record<MixingId, string>> = {
  hand: 'and knead by hand until smooth',
  mixer: 'in the mixer until smooth',
  'food-processor': 'in the food processor, in short bursts, until it comes together',
};
export const benchWords: Readonly<Record<BenchId, string>> = {
  metal: 'on an oiled sheet',
  flour: 'on a floured bench',
  semolina: 'on semolina',
  parchment: 'on baking paper',
};

/** K as whole degrees Celsius: `250 °C`. */
export const celsiusText = (kelvin: number): string => `${(kelvin - zeroCelsius).toFixed(0)} °C`;

/** kg as whole grams: `120 g`. */
export const gramsText = (kilograms: number): string => `${(1000 * kilograms).toFixed(0)} g`;

/** Baker's percent to two figures: `0.65 %`, `1.2 %`. */
export const percentText = (percent: number): string => `${Number(percent.toPrecision(2))} %`;

/** A duration as a cook says it: `6 min 20 s`, `48 min`, `6 h 10 min`. */
export function durationText(seconds: number): string {
  if (seconds < 600) {
    const rounded = Math.round(seconds / 10) * 10;
    const [minutes, rest] = [Math.floor(rounded / 60), rounded % 60];
    return minutes === 0 ? `${rest} s` : rest === 0 ? `${minutes} min` : `${minutes} min ${rest} s`;
  }
  const minutes = Math.round(seconds / 60);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** `a`, `a and b`, `a, b and c` */
export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`;
}

/** @param grams as weighed, by ingredient; @param liquid K, to pour; @param ice g of the water to take as ice */
export function mixStep(
  { dough }: Evening,
  grams: Readonly<Record<string, number>>,
  liquid: number,
  doughTemperature: number,
  ice = 0,
): string {
  // Oil and honey come as they stand, not at the temperature of what is poured.
  const own = new Set(['oil', 'honey']);
  const liquids = Object.entries(liquidNames)
    .filter(([kind]) => grams[kind] !== undefined && !own.has(kind))
    .map(([kind, name]) =>
      kind === 'water' && ice > 0
        ? `${Number((grams[kind]! - ice).toFixed(2))} g tap water and ${ice} g crushed ice in place of water`
        : `${grams[kind]!} g ${name}`,
    );
  const others = (
    [
      ['salt', 'salt'],
      ['sugar', 'sugar'],
      ['honey', 'honey'],
      ['oil', 'oil'],
      ['yeast', yeastNames[dough.yeast.kind]],
    ] as const
  )
    .filter(([key]) => grams[key] !== undefined)
    .map(([key, name]) => `${grams[key]!} g ${name}`);
  return `Mix ${grams['flour']!} g flour with ${listed(liquids)} at ${celsiusText(liquid)}, ${listed(others)}, ${mixingWords[dough.mixing]}; the dough should come out at ${celsiusText(doughTemperature)}`;
}

const carried: Readonly<Record<RisePlaceId, string>> = {
  room: 'let stand in the room',
  refrigerator: 'put into the refrigerator',
  warm: 'set in a warm place',
};

/** The way to the next place: `put into the refrigerator for 24 h at 4 °C`. */
function carriedTo({ where, duration, temperature }: RiseStage): string {
  return `${carried[where]} for ${durationText(duration)} at ${celsiusText(temperature)}`;
}

/** The dough carried from one place to the next. */
export function moveStep(stage: RiseStage, before: RiseStage): string {
  const what = stage.as === 'balls' ? 'the balls' : 'the dough';
  const out = before.where === 'refrigerator' ? `Take ${what} out of the refrigerator and ` : '';
  const text = `${out}${carriedTo(stage)}`;
  if (out !== '') return text;
  return stage.where === 'refrigerator'
    ? `Put ${what} into the refrigerator for ${durationText(stage.duration)} at ${celsiusText(stage.temperature)}`
    : `Set ${what} down for ${durationText(stage.duration)} at ${celsiusText(stage.temperature)}`;
}

/** `4 balls of 250 g`, `2 balls of 250 g and 1 of 300 g` */
function ballsText(grams: readonly string[]): string {
  const sizes = [...new Set(grams)];
  const counted = sizes.map((size) => ({ size, count: grams.filter((one) => one === size).length }));
  const [first, ...others] = counted as [(typeof counted)[number], ...typeof counted];
  return listed([
    `${first.count} ${first.count === 1 ? 'ball' : 'balls'} of ${first.size}`,
    ...others.map(({ size, count }) => `${count} of ${size}`),
  ]);
}

/** @param stage where the balls go first */
export function ballStep(evening: Evening, stage: RiseStage): string {
  const balls = ballMasses(evening).map(gramsText);
  const divide =
    balls.length === 1
      ? `Shape the dough into a ball of ${balls[0]!}`
      : `Divide the dough into ${ballsText(balls)}`;
  if (stage.duration < 60) return divide;
  const cover = stage.cover === 'oiled' ? 'oil thinly' : stage.cover === 'boxed' ? 'box' : 'cover';
  return stage.where === 'room'
    ? `${divide}, ${cover}, and let rest ${durationText(stage.duration)} at ${celsiusText(stage.temperature)}`
    : `${divide}, ${cover}, and ${carriedTo(stage)}`;
}

/** `70 g sauce` and `120 g cheese`, as far as there is any. @param evening of one pizza, as `withPizza` gives it */
function onTop(evening: Evening): readonly string[] {
  const { sauce } = evening.toppings;
  const cheese = cheeseOn(evening);
  return [
    ...(sauce > 0 ? [`${gramsText(sauce)} sauce`] : []),
    ...(cheese > 0 ? [`${gramsText(cheese)} cheese`] : []),
  ];
}

/** Sauce and cheese made ready. */
export function prepareStep(evening: Evening): string {
  const tops = everyPizza(evening).map((own) => listed(onTop(own)));
  const kinds = [...new Set(tops)];
  const cool = tops.some((top) => top.includes('cheese')) ? ', and keep the cheese cool' : '';
  if (kinds.length === 1) {
    const each = tops.length === 1 ? '' : ` for each of ${tops.length} pizzas`;
    return kinds[0] === '' ? 'Clear the bench for shaping' : `Get ready ${kinds[0]!}${each}${cool}`;
  }
  const portions = kinds
    .filter((kind) => kind !== '')
    .map((kind) => {
      const pizzas = tops.flatMap((top, index) => (top === kind ? [String(index + 1)] : []));
      return `${kind} for ${pizzas.length === 1 ? 'pizza' : 'pizzas'} ${listed(pizzas)}`;
    });
  return `Get ready ${portions.join('; ')}${cool}`;
}

/** @param plateReady s from switching on */
export function preheatStep({ oven }: Evening, plateReady: number): string {
  return `Put the plate in its place and switch the oven on at ${celsiusText(oven.setpoint)}; the plate is ready after ${durationText(plateReady)}, later than the oven says`;
}

/** @param which as the line names it */
export function shapeStep(evening: Evening, pizza: number, which = `pizza ${pizza}`): string {
  const own = withPizza(evening, pizza);
  const { diameter, bench, parBake } = own.pizzas;
  if (parBake !== undefined) return [`Top the base of ${which}, baked ahead`, ...onTop(own)].join(', ');
  const shaped = `Shape ${which} to ${(diameter * 100).toFixed(0)} cm ${benchWords[bench]}`;
  return [shaped, ...onTop(own)].join(', ');
}

/** Where bases are kept, in words. */
export const keptWords: Readonly<Record<KeepId, string>> = {
  room: 'at room temperature',
  refrigerator: 'in the refrigerator',
  freezer: 'in the freezer',
};

/** @param seconds that each base bakes */
export function aheadStep(evening: Evening, seconds: readonly number[]): string {
  const { bench, parBake } = evening.pizzas;
  const sizes = [...new Set(everyPizza(evening).map(({ pizzas }) => (pizzas.diameter * 100).toFixed(0)))];
  const [what, each] = seconds.length === 1 ? ['one base', ''] : [`${seconds.length} bases`, ' each'];
  return `Shape ${what} to ${sizes.join(' and ')} cm ${benchWords[bench]}, and bake ${seconds.length === 1 ? 'it' : 'them one after another'} without topping, ${durationText(Math.max(...seconds))}${each} at most on the ready plate; let cool on a rack, wrap well and keep ${keptWords[parBake?.keep ?? 'room']}`;
}

/** @param seconds of the bake */
export function loadStep(pizza: number, seconds: number): string {
  return `Slide pizza ${pizza} onto the plate, shut the door at once; it bakes ${durationText(seconds)}`;
}

/** @param planned whether the plan asks for the turn; if not it is a look first */
export function turnStep(pizza: number, planned: boolean): string {
  if (planned) return `Turn pizza ${pizza} half round, and be quick with the door`;
  return `Look at pizza ${pizza}; turn it only if one side is darker, and be quick with the door`;
}

/** A look while it bakes. */
export function lookStep(pizza: number): string {
  return `Look at pizza ${pizza}, and be quick with the door`;
}

/** The paper pulled out. */
export function pullStep(pizza: number): string {
  return `The base of pizza ${pizza} has set: pull the paper out from under it`;
}

/** @param seconds that the top element is on */
export function topStep(pizza: number, seconds: number, before: boolean): string {
  return before
    ? `Top element to full, ${durationText(seconds)} before pizza ${pizza} goes in`
    : `Top element to full until pizza ${pizza} comes out, ${durationText(seconds)}`;
}

/** @param finish s that the rim would still need under the top element for its shade */
export function cutStep(pizza: number, finish: number): string {
  const out = `Take pizza ${pizza} out and cut it`;
  return finish > 0
    ? `${out}; for a darker rim give it ${durationText(finish)} under the top element first`
    : out;
}
