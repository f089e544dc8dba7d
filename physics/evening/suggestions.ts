/**
 * What to change so that dough and plate meet: where one keeps the other waiting, where the evening should have begun
 * already, and where the dough would not last. Every figure is solved for and then planned anew, so that what is
 * promised is what the plan gives when the change is made.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { toKWh } from '../quantities/index.ts';
import type { Range, Suggestion } from './answer.ts';
import { attempt } from './attempt.ts';
import { quicker } from './doughChanges.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import { type Joined, lastShape } from './join.ts';
import { keepingLonger } from './keepLonger.ts';
import type { EveningRun } from './run.ts';
import type { Chain } from './schedule.ts';
import { durationText } from './steps.ts';
import { thinnerPlate } from './thinnerPlate.ts';

/** s: chains that differ by less meet as well as anyone can tell. */
const near = 10 * 60;
/** s by which the oven has to go on sooner to be sure before it is worth a word; our choice */
const worthSooner = 3 * 60;

export interface SuggestionFacts {
  readonly evening: Evening;
  readonly run: EveningRun;
  readonly joined: Joined;
  readonly engine: Engine;
  /** s from the first load, of whoever asks; undefined when nothing can lie in the past */
  readonly now: number | undefined;
  /** P10 to P90 of the preheat, min; undefined when it was not computed */
  readonly preheatRange: Range | undefined;
  /** whether to try other plates, which takes further runs of the oven */
  readonly tryPlates: boolean;
}

/**
 * What each costs a cook, the cheapest first: a switch turned sooner; sauce made the day before; a first pizza on a
 * plate a little colder; a shorter stay in the refrigerator; a gram of yeast; warmer liquid; a warmer place, which a
 * kitchen may not have; less rest, which the shaping pays for; several of these; a later supper; another plate. Our own
 * judgement.
 */
const byCost: readonly Suggestion['id'][] = [
  'in-time',
  'oven-earlier',
  'ahead',
  'load-colder',
  'phase',
  'yeast',
  'liquid',
  'place',
  'rest',
  'together',
  'later',
  'plate',
];

/** Those that make them meet alone come first, by cost; then the others, by what they gain. */
function sorted(suggestions: readonly Suggestion[]): readonly Suggestion[] {
  return [...suggestions].sort((a, b) => {
    if (a.meets !== b.meets) return a.meets ? -1 : 1;
    return a.meets ? byCost.indexOf(a.id) - byCost.indexOf(b.id) : b.gainsMinutes - a.gainsMinutes;
  });
}

/** What can be changed, what makes dough and plate meet alone first. */
export function suggestionsFor(facts: SuggestionFacts): readonly Suggestion[] {
  const { evening, joined } = facts;
  const parts = evening.anchor.kind === 'startAt' ? waiting(facts) : late(facts);
  const short = lastShape(joined.plan) > joined.plan.doughPast;
  return sorted([...parts, ...(short ? keepingLonger(evening, facts.run, joined) : [])]);
}

/** Begun at once: whoever is ready first waits for the other. */
function waiting(facts: SuggestionFacts): readonly Suggestion[] {
  const { evening, run, joined, engine } = facts;
  const { limitedBy, slack } = joined.plan;
  const minutes = (seconds: number): number => seconds / 60;
  if (limitedBy === 'dough')
    return slack.plate < near ? [] : quicker(evening, run, joined, slack.plate, 'the plate waits no longer');
  if (limitedBy === 'hands') {
    const gain = Math.min(slack.plate, slack.dough);
    return gain < 60 ? [] : [ahead(gain)];
  }
  if (slack.dough < near) return [];
  const early: Suggestion = {
    id: 'oven-earlier',
    message: `Switch the oven on ${durationText(slack.dough)} before you begin to mix: then the dough does not wait for the plate.`,
    change: [],
    gainsMinutes: minutes(slack.dough),
    meets: true,
  };
  return [early, ...(facts.tryPlates ? thinnerPlate(evening, run, engine, slack.dough) : [])];
}

function ahead(gain: number): Suggestion {
  return {
    id: 'ahead',
    message: `Get sauce and cheese ready before you mix, or the day before: no pause of the dough is long enough for it, and the balls then wait ${durationText(gain)} less.`,
    change: [],
    gainsMinutes: gain / 60,
    meets: true,
  };
}

/** For a fixed supper, or a fixed start of the oven: what should have begun already by the clock of whoever asks. */
function late(facts: SuggestionFacts): readonly Suggestion[] {
  const { evening, run, joined, engine, now } = facts;
  const { beginBy } = joined.plan;
  if (now === undefined) return inTime(facts);
  // Once the first pizza should be in the oven there is nothing left to hurry.
  if (now >= 0) return [];
  const doughLate = now - beginBy.dough;
  const plateLate = now - beginBy.plate;
  const most = Math.max(doughLate, plateLate);
  if (!(most > 0)) return inTime(facts);
  const found: Suggestion[] = [
    {
      id: 'later',
      message: `${evening.anchor.kind === 'ovenOnAt' ? 'Switch the oven on' : 'Eat'} ${durationText(most)} later, and nothing else has to change.`,
      change: [],
      gainsMinutes: most / 60,
      meets: true,
    },
  ];
  if (doughLate > 0)
    found.push(...quicker(evening, run, joined, doughLate, 'the dough mixed now is in time'));
  if (plateLate > 0) {
    found.push(...loadColder(evening, run, engine, plateLate, doughLate <= 0));
    if (facts.tryPlates) found.push(...thinnerPlate(evening, run, engine, plateLate));
  }
  // With both late a change of one is not enough.
  return doughLate > 0 && plateLate > 0
    ? found.map((one) => (one.id === 'later' ? one : { ...one, meets: false }))
    : found;
}

const firstOf: Readonly<Record<Chain, string>> = {
  plate: 'the oven goes on',
  dough: 'the dough is mixed',
  hands: 'your hands begin',
};
const othersOf: Readonly<Record<Chain, string>> = {
  plate: 'the oven',
  dough: 'the dough',
  hands: 'sauce and cheese',
};

/** For a fixed supper that can be met: how much room there is, and what makes it surer where that is cheap. */
function inTime({ evening, run, joined, now, preheatRange }: SuggestionFacts): readonly Suggestion[] {
  const { limitedBy, slack, beginBy } = joined.plan;
  const left = now === undefined ? '' : `, ${durationText(beginBy[limitedBy] - now)} from now`;
  const others = (['plate', 'dough', 'hands'] as const)
    .filter((chain) => chain !== limitedBy && slack[chain] >= 60)
    .map((chain) => `${othersOf[chain]} can wait ${durationText(slack[chain])} longer`);
  const found: Suggestion[] = [
    {
      id: 'in-time',
      message: `Everything meets as planned: ${firstOf[limitedBy]} first${left}${others.length === 0 ? '' : `; ${others.join(', ')}`}.`,
      change: [],
      gainsMinutes: Math.max(...Object.values(slack)) / 60,
      meets: true,
    },
  ];
  const freed = Math.min(slack.plate, slack.dough);
  if (limitedBy === 'hands' && freed >= 60) found.push(ahead(freed));
  const { plateReady, idlePower } = run.preheat;
  const sooner = preheatRange === undefined ? 0 : 60 * preheatRange[1] - plateReady;
  // The oven can go on sooner than the plan says, where no one has said when, and for as long as it has not had to go
  // on yet.
  const free = evening.anchor.kind !== 'ovenOnAt';
  if (free && sooner >= worthSooner && (now === undefined || beginBy.plate - sooner >= now))
    found.push({
      id: 'oven-earlier',
      message: `Switch the oven on ${durationText(sooner)} sooner than planned, and in nine of ten such evenings the plate is ready at its time; that costs ${toKWh(idlePower * sooner).toFixed(2)} kWh.`,
      change: [],
      gainsMinutes: sooner / 60,
      meets: true,
    });
  return found;
}

/** The first pizza at its time on a plate that is not ready yet: what it costs. */
function loadColder(
  evening: Evening,
  run: EveningRun,
  engine: Engine,
  plateLate: number,
  alone: boolean,
): readonly Suggestion[] {
  const lateMinutes = Math.ceil(plateLate / 60);
  const [cost] = attempt(() => engine.lateStart(evening, run, [lateMinutes])) ?? [];
  const first = run.bakes[0]!;
  if (cost === undefined) return [];
  const colder = first.plateTopAtLoad - zeroCelsius - cost.plateTopC;
  const longer = cost.bakeMinutes * 60 - (first.outAt - first.inAt);
  return [
    {
      id: 'load-colder',
      message: `Switch the oven on now and load the first pizza at its time: the plate is ${Math.max(0, colder).toFixed(0)} K colder and the pizza bakes ${durationText(Math.max(0, longer))} longer.`,
      change: [],
      gainsMinutes: plateLate / 60,
      meets: alone,
    },
  ];
}
