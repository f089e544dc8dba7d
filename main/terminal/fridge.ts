/** The plan as a cook would pin it on the fridge: plain words, 80 columns, the three answers first. */
import type { BakeAnswer, PlanAnswer, Range } from '../../physics/evening/answer.ts';
import { addMinutes, dateOf, readInstant, showClock, weekdayName } from '../../physics/evening/clock.ts';
import type { Assumption, Instant } from '../../physics/evening/evening.ts';
import { durationText } from '../../physics/evening/steps.ts';
import { fromCelsius, showQuantity, type UnitSystem } from '../../physics/quantities/index.ts';
import { heldTogether, inUnits } from './inUnits.ts';
import { columns, kept, listed, section, wrap } from './page.ts';

/** @throws RangeError when an answer of ours holds no instant */
function at(text: string): Instant {
  const read = readInstant(text);
  if (!read.ok) throw new RangeError(`answer: found ${read.problem.found}; allowed ${read.problem.allowed}`);
  return read.instant;
}

/** Everything that depends on the units a cook reads. */
function shower(units: UnitSystem) {
  const clock = (instant: Instant): string => kept(showClock(instant, units === 'us' ? 12 : 24));
  return {
    clock,
    words: (sentence: string): string => heldTogether(inUnits(sentence, units)),
    clockOf: (text: string): string => clock(at(text)),
    minutes: (minutes: number): string => kept(durationText(60 * minutes)),
    celsius: (celsius: number): string => kept(showQuantity(fromCelsius(celsius), 'temperature', units)),
    grams: (grams: number): string => kept(showQuantity(grams / 1000, 'mass', units)),
  };
}
type Shower = ReturnType<typeof shower>;

/** `5 to 8 min`: whole minutes, since nobody knows them better. */
function range([low, high]: Range): string {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? `about ${kept(`${from} min`)}` : `${from} to ${kept(`${to} min`)}`;
}

function ovenOn(answer: PlanAnswer, show: Shower): readonly string[] {
  const { preheat } = answer;
  const on = at(answer.ovenOnAt);
  // A plate that needs longer must start earlier.
  const between =
    answer.range === null
      ? ''
      : ` (between ${show.clock(addMinutes(on, preheat.minutes - answer.range.preheatMinutes[1]))} and ${show.clock(addMinutes(on, preheat.minutes - answer.range.preheatMinutes[0]))})`;
  return [
    ...wrap(`Switch the oven on at ${show.clock(on)}${between}.`),
    ...wrap(
      `The plate needs ${show.minutes(preheat.minutes)} and is then at ${show.celsius(preheat.plateTopC)}; the oven itself signals after ${show.minutes(preheat.airReadyMinutes)}.`,
      '  ',
    ),
  ];
}

const waitsFor: Readonly<Record<BakeAnswer['decidedBy'], string>> = {
  base: 'The colour of the base decides.',
  top: 'The top decides: the base is ready before it.',
  crumb: 'The crumb decides: the colour is there before it.',
};

/** `6 min 20 s`, or from the shortest to the longest when they differ by more than a quarter of a minute. */
function span(minutes: readonly number[], show: Shower): string {
  const [low, high] = [Math.min(...minutes), Math.max(...minutes)];
  if (high - low < 0.25) return show.minutes(minutes[0]!);
  const [from, to] = [show.minutes(low), show.minutes(high)];
  // `8 to 9 min` rather than `8 min to 9 min`.
  const bare = /^\d+(?=\u00a0min$)/u;
  return bare.test(to) ? `${bare.exec(from)?.[0] ?? from} to ${to}` : `${from} to ${to}`;
}

function bake({ bakes, range: spread }: PlanAnswer, show: Shower): readonly string[] {
  const [first, ...later] = bakes;
  if (first === undefined) return [];
  const between = spread === null ? '' : ` (likely ${range(spread.bakeMinutes)})`;
  const waits = later.map(({ waitBeforeMinutes }) => waitBeforeMinutes);
  const next =
    waits.length === 0
      ? ''
      : Math.max(...waits) < 0.25
        ? ', the next one straight after it'
        : `, then ${span(waits, show)} until the next one can go in`;
  const finish =
    first.finishMinutes > 0 ? ` Then ${show.minutes(first.finishMinutes)} under the top element.` : '';
  return [
    ...wrap(
      `Bake ${span(
        bakes.map((b) => b.minutes),
        show,
      )}${between}${next}.`,
    ),
    ...wrap(
      `${waitsFor[first.decidedBy]} ${show.grams(Math.round(first.waterLeftOnTopG))} of water left on top.${finish}`,
      '  ',
    ),
  ];
}

function eat(answer: PlanAnswer, show: Shower): readonly string[] {
  const last = answer.bakes.length > 1 ? `, the last pizza at ${show.clockOf(answer.lastEatAt)}` : '';
  const names = { plate: 'the plate', dough: 'the dough', hands: 'your hands' } as const;
  const sets = { plate: 'The plate sets', dough: 'The dough sets', hands: 'Your hands set' } as const;
  const parts = ['plate', 'dough', 'hands'] as const;
  const spare = parts
    .filter((part) => part !== answer.limitedBy && answer.slackMinutes[part] >= 1)
    .map(
      (part) =>
        `${names[part]} ${part === 'hands' ? 'have' : 'has'} ${show.minutes(Math.round(answer.slackMinutes[part]))}`,
    );
  return [
    ...wrap(`Eat at ${show.clockOf(answer.eatAt)}${last}.`),
    ...wrap(
      `${sets[answer.limitedBy]} the pace, to begin by ${clockAround(answer, answer.beginBy[answer.limitedBy], show)}${spare.length === 0 ? '' : `; ${listed(spare)} to spare`}.`,
      '  ',
    ),
  ];
}

/** The clock, with the day where it is not the day of the meal: a dough may be begun two days before. */
function clockAround({ eatAt }: PlanAnswer, text: string, show: Shower): string {
  const then = at(text);
  const day = dateOf(then) === dateOf(at(eatAt)) ? '' : `${weekdayName(then).slice(0, 3)}\u00a0`;
  return `${day}${show.clock(then)}`;
}

/** What makes dough and plate meet: what does it alone, three at most, or else what comes nearest. */
function meeting({ suggestions }: PlanAnswer, show: Shower): readonly string[] {
  const alone = suggestions.filter(({ meets }) => meets).slice(0, 3);
  const shown = alone.length > 0 ? alone : suggestions.slice(0, 2);
  return shown.flatMap(({ message }) => wrap(show.words(message), '- '));
}

function toBuy({ shopping }: PlanAnswer, show: Shower): readonly string[] {
  return columns(
    shopping.map(({ item, grams, note }) => [
      show.grams(grams),
      note === '' ? item : `${item} (${show.words(note)})`,
    ]),
    'right',
  );
}

/** `1.96 kWh in all, 1.12 of it before the first pizza, 0.63 EUR at 0.32 EUR/kWh` */
function energy({ energyKWh, preheat, cost }: PlanAnswer): readonly string[] {
  const price =
    cost === undefined
      ? ''
      : `: ${kept(`${cost.evening.toFixed(2)} ${cost.currency}`)} at ${kept(`${String(cost.perKWh)} ${cost.currency}/kWh`)}`;
  return wrap(
    `The oven takes ${kept(`${energyKWh.toFixed(1)} kWh`)} this evening, ${preheat.energyKWh.toFixed(1)} of it before the first pizza${price}.`,
  );
}

function steps(answer: PlanAnswer, show: Shower): readonly string[] {
  const rows = answer.tasks
    .flatMap(({ from, step }) => (step === undefined ? [] : [{ from, step }]))
    .sort((a, b) => at(a.from).epochMilliseconds - at(b.from).epochMilliseconds)
    .map(({ from, step }) => [clockAround(answer, from, show), show.words(step)] as const);
  return columns(rows, 'right');
}

function ingredients(answer: PlanAnswer, show: Shower): readonly string[] {
  const { dough } = answer;
  const rows = Object.entries(dough.ingredientsG).map(
    ([name, grams]) => [show.grams(grams), name.replaceAll('-', ' ')] as const,
  );
  if (rows.length === 0) return [];
  return [
    ...columns(rows, 'right'),
    ...wrap(
      `Liquid at ${show.celsius(dough.liquidC)} (${show.celsius(dough.liquidByRuleC)} by the bakers' rule), for a dough of ${show.celsius(dough.doughC)}. Ready after ${show.minutes(dough.riseMinutes)} (${show.minutes(dough.riseRangeMinutes[0])} to ${show.minutes(dough.riseRangeMinutes[1])}), from ${clockAround(answer, dough.readyWindow.from, show)} to ${clockAround(answer, dough.readyWindow.to, show)}.`,
      '  ',
    ),
  ];
}

const origins: Readonly<Record<Assumption['from'], string>> = {
  'demo evening': 'From the built-in evening',
  'oven preset': 'From the kind of oven',
  'plate material': 'From the material of the plate',
  kitchen: 'As the kitchen',
  'common default': 'As is usual',
};

/** `oven.power.bottom` as `oven power bottom`, `plate.rackHeight` as `plate rack height`. */
function inWords(path: string): string {
  return path.replaceAll('.', ' ').replaceAll(/[A-Z]/gu, (letter) => ` ${letter.toLowerCase()}`);
}

function assumed(list: readonly Assumption[]): readonly string[] {
  return (Object.keys(origins) as Assumption['from'][]).flatMap((from) => {
    const parts = list
      .filter((item) => item.from === from)
      .map(({ path, taken }) => `${inWords(path)} ${kept(taken)}`);
    return parts.length === 0 ? [] : wrap(`${origins[from]}: ${parts.join('; ')}.`, '  ');
  });
}

/** The page for the fridge. Temperatures and amounts in the units asked for; what was assumed as the file writes it. */
export function fridgeText(answer: PlanAnswer, units: UnitSystem): string {
  const show = shower(units);
  const start = at(answer.eatAt);
  return [
    ...wrap(answer.title),
    `${weekdayName(start)} ${dateOf(start)}`,
    '',
    ...ovenOn(answer, show),
    ...bake(answer, show),
    ...eat(answer, show),
    ...energy(answer),
    ...section('By the clock', steps(answer, show)),
    ...section('To make dough and plate meet', meeting(answer, show)),
    ...section('Dough', ingredients(answer, show)),
    ...section('To buy', toBuy(answer, show)),
    ...section('Assumed, because the plan does not say', assumed(answer.assumed)),
    ...section(
      'Cautions',
      answer.warnings.flatMap(({ message }) => wrap(show.words(message), '- ')),
    ),
    '',
  ]
    .join('\n')
    .replaceAll('\u00a0', ' ');
}
