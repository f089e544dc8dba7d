/** The plan as a cook would pin it on the fridge: plain words, 80 columns, the three answers first. */
import type { Advice, BakeAnswer, PlanAnswer } from '../../physics/evening/answer.ts';
import { chainText, movedTexts, spareTexts } from '../../physics/evening/chainWords.ts';
import { addMinutes, dateOf, weekdayName } from '../../physics/evening/clock.ts';
import type { GoalId } from '../../physics/evening/ids.ts';
import type { Assumption } from '../../physics/evening/evening.ts';
import { listed } from '../../physics/evening/steps.ts';
import { spreadFrom, type SpreadPart } from '../../physics/evening/uncertain.ts';
import { clockAround, minutesRange, minutesSpan, wordsFor, type Words } from '../../physics/handout/words.ts';
import { kept, type UnitSystem } from '../../physics/quantities/index.ts';
import { columns, section, wrap } from './page.ts';

function ovenOn(answer: PlanAnswer, show: Words): readonly string[] {
  const { preheat } = answer;
  const on = show.at(answer.ovenOnAt);
  const [short, long] = answer.range?.preheatMinutes ?? [preheat.minutes, preheat.minutes];
  const clockAfter = (minutes: number): string => show.clock(addMinutes(on, minutes));
  // For a meal at its time a plate that needs longer must start earlier; else it is ready sooner or later.
  const between =
    answer.range === null
      ? ''
      : answer.anchor.kind === 'eatAt'
        ? ` (between ${clockAfter(preheat.minutes - long)} and ${clockAfter(preheat.minutes - short)})`
        : `; the plate is ready between ${clockAfter(short)} and ${clockAfter(long)}`;
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

function bake({ bakes, range: spread }: PlanAnswer, show: Words): readonly string[] {
  // A plan has a pizza at least.
  const first = bakes[0]!;
  const between = spread === null ? '' : ` (likely ${minutesRange(spread.bakeMinutes)})`;
  const waits = bakes.slice(1).map(({ waitBeforeMinutes }) => waitBeforeMinutes);
  const next =
    waits.length === 0
      ? ''
      : Math.max(...waits) < 0.25
        ? ', the next one straight after it'
        : `, then ${minutesSpan(waits, show)} until the next one can go in`;
  const finish =
    first.finishMinutes > 0 ? ` Then ${show.minutes(first.finishMinutes)} under the top element.` : '';
  return [
    ...wrap(
      `Bake ${minutesSpan(
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

function eat(answer: PlanAnswer, show: Words): readonly string[] {
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
      `${sets[answer.limitedBy]} the pace, to begin by ${clockAround(answer.eatAt, answer.beginBy[answer.limitedBy], show)}${spare.length === 0 ? '' : `; ${listed(spare)} to spare`}.`,
      '  ',
    ),
  ];
}

/**
 * What makes dough and plate meet: what does it alone, three at most, or else what comes nearest. That all is in time,
 * and with how much room, stands under the three answers.
 */
function meeting(suggestions: PlanAnswer['suggestions'], show: Words): readonly string[] {
  const alone = suggestions.filter(({ meets }) => meets).slice(0, 3);
  const shown = alone.length > 0 ? alone : suggestions.slice(0, 2);
  return shown.flatMap(({ message }) => wrap(show.sentence(message), '- '));
}

const goalHeads: Readonly<Record<GoalId, string>> = {
  sooner: 'To be done sooner',
  'darker-base': 'For a darker base',
  'drier-top': 'For a drier top',
  'less-energy': 'To take less energy',
  'weaker-oven': 'In a weaker oven',
};

/** What a goal begins from, then each change on top of it; every one was planned. */
function advised({ basis, items }: Advice, show: Words): readonly string[] {
  const lines = [...(basis ? [basis] : []), ...items].map(({ message }) => message);
  return (
    lines.length === 0 ? ['Nothing that was tried brings it nearer without a caution.'] : lines
  ).flatMap((line) => wrap(show.sentence(line), '- '));
}

function pace(answer: PlanAnswer, show: Words): readonly string[] {
  return [chainText(answer), ...spareTexts(answer), ...movedTexts(answer)].flatMap((line) =>
    wrap(show.sentence(line), '- '),
  );
}

function toBuy({ shopping }: PlanAnswer, show: Words): readonly string[] {
  return columns(
    shopping.map(({ item, grams, note }) => [
      show.grams(grams),
      note === '' ? item : `${item} (${show.sentence(note)})`,
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

function steps(answer: PlanAnswer, show: Words): readonly string[] {
  const rows = answer.tasks
    .flatMap(({ from, step }) => (step === undefined ? [] : [{ from, step }]))
    .sort((a, b) => show.at(a.from).epochMilliseconds - show.at(b.from).epochMilliseconds)
    .map(({ from, step }) => [clockAround(answer.eatAt, from, show), show.sentence(step)] as const);
  return columns(rows, 'right');
}

function ingredients(answer: PlanAnswer, show: Words): readonly string[] {
  const { dough } = answer;
  const rows = Object.entries(dough.ingredientsG).map(
    ([name, grams]) => [show.grams(grams), name.replaceAll('-', ' ')] as const,
  );
  return [
    ...columns(rows, 'right'),
    ...wrap(
      `Liquid at ${show.celsius(dough.liquidC)} (${show.celsius(dough.liquidByRuleC)} by the bakers' rule), for a dough of ${show.celsius(dough.doughC)}. Ready after ${show.minutes(dough.riseMinutes)} (${show.minutes(dough.riseRangeMinutes[0])} to ${show.minutes(dough.riseRangeMinutes[1])}), from ${clockAround(answer.eatAt, dough.readyWindow.from, show)} to ${clockAround(answer.eatAt, dough.readyWindow.to, show)}.`,
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

/** What makes the ranges wide: whoever measures that narrows them. */
function sureness({ range }: PlanAnswer): readonly string[] {
  if (range === null) return [];
  const line = (what: string, parts: readonly SpreadPart[]): readonly string[] =>
    parts.length === 0 ? [] : wrap(`${what} comes mostly from ${spreadFrom(parts)}.`);
  return [
    ...line('The range of the preheat', range.preheatFrom),
    ...line('That of the bake', range.bakeFrom),
  ];
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
  const show = wordsFor(units);
  const start = show.at(answer.eatAt);
  const others = answer.suggestions.filter(({ id }) => id !== 'in-time');
  return [
    ...wrap(answer.title),
    `${weekdayName(start)} ${dateOf(start)}`,
    '',
    ...ovenOn(answer, show),
    ...bake(answer, show),
    ...eat(answer, show),
    ...energy(answer),
    ...section('By the clock', steps(answer, show)),
    ...section('What must not be late', pace(answer, show)),
    ...section(
      others.length < answer.suggestions.length ? 'To be surer' : 'To make dough and plate meet',
      meeting(others, show),
    ),
    ...(answer.advice ? section(goalHeads[answer.advice.goal], advised(answer.advice, show)) : []),
    ...section(
      `If guests are ${answer.guestsLate.minutes} min late`,
      answer.guestsLate.hold.flatMap((line) => wrap(show.sentence(line), '- ')),
    ),
    ...section('Dough', ingredients(answer, show)),
    ...section('To buy', toBuy(answer, show)),
    ...section('How sure the times are', sureness(answer)),
    ...section('Assumed, because the plan does not say', assumed(answer.assumed)),
    ...section(
      'Cautions',
      answer.warnings.flatMap(({ message, source }) => [
        ...wrap(show.sentence(message), '- '),
        ...(source === undefined ? [] : wrap(`Source: ${show.sentence(source)}.`, '  ')),
      ]),
    ),
    '',
  ]
    .join('\n')
    .replaceAll('\u00a0', ' ');
}
