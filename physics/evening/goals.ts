/**
 * Changes worth trying for a goal, as fields of the plan and words. Which of them help, and at what price, is found by
 * planning each; here stands only what a cook could do.
 */
import { zeroCelsius } from '../materials/constants.ts';
import type { PlanAnswer } from './answer.ts';
import type { Evening } from './evening.ts';
import type { GoalId } from './ids.ts';
import { highestRack, lowestRack, rackStep, type PlanChange } from './remedies.ts';
import { darkestShade } from './shade.ts';
import { durationText } from './steps.ts';
import { thinnestSold } from './thinnerPlate.ts';

export interface Trial {
  /** stable, kebab-case */
  readonly what: string;
  /** what the cook does, as the begin of a sentence */
  readonly says: string;
  readonly change: readonly PlanChange[];
}

/** What a goal begins from, where it is more than the plan itself: each trial is that and one thing more. */
export interface Trials {
  readonly basis: Trial | undefined;
  readonly trials: readonly Trial[];
}

interface Facts {
  readonly evening: Evening;
  readonly answer: PlanAnswer;
}
type Maker = (facts: Facts) => Trial | undefined;

const one = (what: string, says: string, path: string, value: string): Trial => ({
  what,
  says,
  change: [{ path, value }],
});
const rounded = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));
const degrees = (kelvin: number): string => `${rounded(kelvin - zeroCelsius, 1)} degC`;
const shown = (kelvin: number): string => `${rounded(kelvin - zeroCelsius, 1)} °C`;

/** K: less on a dial is not worth a word */
const smallestTurn = 5;
/** K by which an oven is set lower, and by which a weaker one stops earlier; common practice, no source */
const lower = 20;
const weaker = 25;
/** L* of one shade */
const oneShade = 10;

const hotter: Maker = ({ evening: { oven } }) =>
  oven.highestSetting - oven.setpoint < smallestTurn
    ? undefined
    : one(
        'hotter',
        `Set the oven to its highest, ${shown(oven.highestSetting)}`,
        'oven.setpoint',
        degrees(oven.highestSetting),
      );

const cooler: Maker = ({ evening: { oven } }) =>
  one(
    'cooler',
    `Set the oven to ${shown(oven.setpoint - lower)}`,
    'oven.setpoint',
    degrees(oven.setpoint - lower),
  );

function thinner(share: number): Maker {
  return ({ evening: { plate } }) => {
    const millimetres = Math.round(2000 * plate.thickness * share) / 2;
    if (millimetres / 1000 < thinnestSold(plate)) return undefined;
    return one(
      'thinner-plate',
      `A plate ${millimetres} mm thick in place of ${rounded(1000 * plate.thickness, 1)} mm`,
      'plate.thickness',
      `${millimetres} mm`,
    );
  };
}

function rack(by: number): Maker {
  return ({ evening: { plate } }) => {
    const height = Number((plate.rackHeight + by).toFixed(2));
    if (height < lowestRack || height > highestRack) return undefined;
    const where = `${Math.round(100 * height)} % of the cavity's height`;
    return one(
      by > 0 ? 'rack-higher' : 'rack-lower',
      `Put the plate ${by > 0 ? 'higher' : 'lower'}, at ${where}`,
      'plate.rackHeight',
      String(height),
    );
  };
}

/** The first pizza in before the plate is quite ready, or longer after. */
function loadAt(share: number): Maker {
  return ({ answer }) => {
    const seconds = Math.round((60 * answer.preheat.minutes * share) / 60) * 60;
    return one(
      share < 1 ? 'load-sooner' : 'load-later',
      `Load the first pizza ${durationText(seconds)} after switching on, ${share < 1 ? 'before the plate is ready' : 'longer than the plate needs'}`,
      'pizzas.loadAt',
      `${seconds} s`,
    );
  };
}

const noWaits: Maker = ({ evening: { pizzas } }) =>
  pizzas.count === 1 || pizzas.wait !== undefined || pizzas.waitRule === 'fastest'
    ? undefined
    : one('no-waits', 'Wait no longer between pizzas than hands need', 'pizzas.waitRule', 'fastest');

function topElement(
  name: 'topElementBefore' | 'topElementAfter' | 'topElementAtEnd',
  seconds: number,
): Maker {
  const says = {
    topElementBefore: `Top element to full ${durationText(seconds)} before each load`,
    topElementAfter: 'Top element to full from the load on',
    topElementAtEnd: `Top element to full for the last ${durationText(seconds)}`,
  } as const;
  const what = {
    topElementBefore: 'top-before',
    topElementAfter: 'top-after',
    topElementAtEnd: 'top-at-end',
  };
  return ({ evening: { pizzas } }) =>
    pizzas.steps?.[name] === undefined
      ? one(what[name], says[name], `pizzas.steps.${name}`, `${seconds} s`)
      : undefined;
}

const barerBench: Maker = ({ evening: { pizzas } }) =>
  pizzas.bench === 'flour' || pizzas.bench === 'metal'
    ? undefined
    : one('flour-bench', `Bake on flour in place of ${pizzas.bench}`, 'pizzas.bench', 'flour');

const thinnerDough: Maker = ({ evening: { pizzas } }) => {
  const grams = Math.round(1000 * pizzas.ballMass * 0.85);
  return one(
    'thinner-dough',
    `Balls of ${grams} g, the pizza as wide as before`,
    'pizzas.ballMass',
    `${grams} g`,
  );
};

const lessSauce: Maker = ({ evening: { toppings } }) => {
  const grams = Math.round(1000 * toppings.sauce * 0.7);
  return grams < 10
    ? undefined
    : one(
        'less-sauce',
        `${grams} g of sauce in place of ${rounded(1000 * toppings.sauce, 0)} g`,
        'toppings.sauce',
        `${grams} g`,
      );
};

/** The wettest cheese exchanged for a drier one. */
const drierCheese: Maker = ({ evening: { toppings } }) => {
  const index = toppings.cheese.findIndex(({ kind, mass }) => kind === 'fresh-mozzarella' && mass > 0);
  return index === -1
    ? undefined
    : one(
        'drier-cheese',
        'Low-moisture mozzarella in place of fresh',
        `toppings.cheese.${index}.kind`,
        'low-moisture-mozzarella',
      );
};

const lessCheese: Maker = ({ evening: { toppings } }) => {
  const grams = toppings.cheese.map(({ mass }) => Math.round(1000 * mass * 0.75));
  if (!grams.some((mass) => mass >= 10)) return undefined;
  return {
    what: 'less-cheese',
    says: `${grams.reduce((sum, mass) => sum + mass, 0)} g of cheese, a quarter less`,
    change: grams.map((mass, index) => ({ path: `toppings.cheese.${index}.mass`, value: `${mass} g` })),
  };
};

/** What makes the dough of an evening begun now ready sooner. */
const doughSooner = ({ evening, answer }: Facts): readonly Trial[] =>
  evening.anchor.kind !== 'startAt'
    ? []
    : answer.suggestions
        .filter(({ id, change }) => change.length > 0 && id !== 'plate')
        .map(({ id, message, change }) => ({ what: id, says: message.replace(/:[^:]*$/u, ''), change }));

function darkerShade({ evening: { pizzas } }: Facts): Trial {
  const lightness = rounded(Math.max(darkestShade, pizzas.shadeLightness - oneShade), 1);
  return one(
    'darker-shade',
    `Bake each until its base is at L* ${lightness}`,
    'pizzas.shade',
    `lightness ${lightness}`,
  );
}

function weakerOven({ evening: { oven } }: Facts): Trial {
  const highest = Math.min(oven.highestSetting, oven.setpoint) - weaker;
  return {
    what: 'weaker-oven',
    says: `In an oven that stops at ${shown(highest)}`,
    change: ['oven.highestSetting', 'oven.setpoint'].map((path) => ({ path, value: degrees(highest) })),
  };
}

const makers: Readonly<Record<GoalId, readonly Maker[]>> = {
  sooner: [
    hotter,
    thinner(0.75),
    thinner(0.5),
    loadAt(0.9),
    loadAt(0.8),
    rack(-rackStep),
    rack(rackStep),
    noWaits,
  ],
  'darker-base': [hotter, rack(-rackStep), barerBench, loadAt(1.3), thinnerDough],
  'drier-top': [
    lessSauce,
    drierCheese,
    lessCheese,
    topElement('topElementAtEnd', 60),
    topElement('topElementAfter', 0),
    topElement('topElementBefore', 300),
    rack(rackStep),
    hotter,
  ],
  'less-energy': [
    thinner(0.75),
    thinner(0.5),
    cooler,
    loadAt(0.9),
    loadAt(0.8),
    noWaits,
    rack(-rackStep),
    rack(rackStep),
  ],
  'weaker-oven': [
    rack(-rackStep),
    barerBench,
    loadAt(1.3),
    topElement('topElementBefore', 300),
    thinnerDough,
    lessSauce,
  ],
};

/** @param facts the plan as it is */
export function trialsFor(goal: GoalId, facts: Facts): Trials {
  const basis =
    goal === 'darker-base' ? darkerShade(facts) : goal === 'weaker-oven' ? weakerOven(facts) : undefined;
  const found = makers[goal].flatMap((make) => make(facts) ?? []);
  const trials = goal === 'sooner' ? [...found, ...doughSooner(facts)] : found;
  return {
    basis,
    trials:
      basis === undefined
        ? trials
        : trials.map(({ what, says, change }) => ({
            what,
            says: `With that, ${says.charAt(0).toLowerCase()}${says.slice(1)}`,
            change: [...basis.change, ...change],
          })),
  };
}
