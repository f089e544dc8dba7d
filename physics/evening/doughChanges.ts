/** Ways to a dough that is shaped sooner: more yeast, warmer liquid, a warmer place, less rest. */
import { freshYeastFor } from '../dough/ingredients.ts';
import { doughTemperatureFor, placeTemperatureFor, yeastFor } from '../dough/riseSolve.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { Suggestion } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Dough, Evening } from './evening.ts';
import { type Joined, joinClocks, lastShape } from './join.ts';
import { phasesOf, segmentsOf } from './planDough.ts';
import type { EveningRun } from './run.ts';
import { handworkFor } from './schedule.ts';
import { celsiusText, durationText, percentText } from './steps.ts';

/** Percent of fresh yeast, or its equal, above which a dough smells of it: common practice, no source. */
export const mostFreshYeast = 5;
/** K: pizzerias mix to 80 to 85 degF, 27 to 29 degC, and no warmer (PMQ); half a kelvin of grace. */
const warmestDough = 303.15;
/** K, an oven with its light on or a proofing box: common practice, no source. */
const warmestPlace = 308.15;
/** s: balls shaped sooner spring back (common practice, no source). */
export const shortestRest = 15 * 60;
/** s: less in the refrigerator only cools the dough down. */
const shortestChill = 4 * 3600;
/** s: a minute of a dough's hours is no difference. */
const enough = 60;

/** Upwards to a figure that a cook can set: never a dough that comes a little too late. */
const upTo = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step;
const roundedUp = (percent: number): number => {
  const step = 10 ** (Math.floor(Math.log10(percent)) - 1);
  return Number(upTo(percent, step).toPrecision(2));
};
const halfDegrees = (kelvin: number): number => upTo(kelvin - zeroCelsius, 0.5) + zeroCelsius;
const written = (kelvin: number): string => `${Number((kelvin - zeroCelsius).toFixed(1))} degC`;

interface Try {
  readonly id: Suggestion['id'];
  readonly dough: Partial<Dough>;
  readonly change: Suggestion['change'];
  /** what the cook does, as the begin of a sentence, with the figures of the plan that it gives */
  readonly says: (after: Joined) => string;
}
type Way = (evening: Evening, joined: Joined, needed: number, run: EveningRun) => Try | undefined;

/** A change, or several together, and the plan with it. */
interface Tried {
  readonly tries: readonly Try[];
  readonly evening: Evening;
  readonly joined: Joined;
}

function withTry(
  { evening, joined, tries }: Tried,
  run: EveningRun,
  way: Way,
  needed: number,
): Tried | undefined {
  const one = way(evening, joined, needed, run);
  if (one === undefined) return undefined;
  const changed: Evening = { ...evening, dough: { ...evening.dough, ...one.dough } };
  const after = attempt(() => joinClocks(changed, run.bakes));
  return after === undefined || after.dough.liquid.limited !== undefined
    ? undefined
    : { tries: [...tries, one], evening: changed, joined: after };
}

/**
 * Changes of the dough that bring its shaping forward by so many seconds. Each is tried alone; those that cannot go all
 * the way go as far as is sane and say so. When none does it alone, they are put together, the cheapest first.
 *
 * @param purpose what is reached, as the end of a sentence: `the plate waits no longer`
 */
export function quicker(
  evening: Evening,
  run: EveningRun,
  joined: Joined,
  needed: number,
  purpose: string,
): readonly Suggestion[] {
  const start: Tried = { tries: [], evening, joined };
  const gainOf = (tried: Tried): number => tried.joined.plan.beginBy.dough - joined.plan.beginBy.dough;
  const told = (tried: Tried | undefined): readonly Suggestion[] => {
    if (tried === undefined) return [];
    const { plan } = tried.joined;
    const gained = gainOf(tried);
    if (gained < enough) return [];
    const far = gained >= needed - enough;
    const keeps = lastShape(plan) <= plan.doughPast;
    const reach = !far
      ? `that gains ${durationText(gained)} of the ${durationText(needed)} missing`
      : keeps
        ? purpose
        : 'but it would be past its best before the last pizza';
    const said = tried.tries
      .map(({ says }) => says(tried.joined))
      .map((text, index) => (index === 0 ? text : text.charAt(0).toLowerCase() + text.slice(1)))
      .join('; ');
    return [
      {
        id: tried.tries.length > 1 ? 'together' : tried.tries[0]!.id,
        message: `${said}: ${reach}.`,
        change: tried.tries.flatMap(({ change }) => change),
        // Begun at once, a dough sooner than the plate gains nobody anything.
        gainsMinutes: (evening.anchor.kind === 'startAt' ? Math.min(gained, needed) : gained) / 60,
        meets: far && keeps,
      },
    ];
  };
  const alone = [shorterChill, moreYeast, warmerLiquid, warmerPlace, lessRest].flatMap((way) =>
    told(withTry(start, run, way, needed)),
  );
  if (alone.some(({ meets }) => meets)) return alone;
  let all = start;
  for (const way of [restShare, moreYeast, warmerLiquid, warmerPlace]) {
    const missing = needed - gainOf(all);
    if (all.tries.length > 1 && missing < enough) break;
    // The rest is cut for the whole of what is missing, since yeast alone cannot go below it.
    all = withTry(all, run, way, way === restShare ? needed : missing) ?? all;
  }
  const best = Math.max(0, ...alone.map(({ gainsMinutes }) => gainsMinutes));
  return all.tries.length > 1 && gainOf(all) / 60 > best + 10 ? [...alone, ...told(all)] : alone;
}

/** s from the end of mixing to shaping that is wanted; never less than the fixed phases and balling take. */
function wantedLength(evening: Evening, { plan }: Joined, needed: number): number {
  const { ball } = handworkFor(evening.pizzas.count, evening.dough.mixing);
  const phases = phasesOf(evening);
  const fixed = phases.reduce((sum, { duration }) => sum + (duration ?? 0), 0);
  const inBulk = phases.reduce((sum, { as, duration }) => sum + (as === 'bulk' ? (duration ?? 0) : 0), 0);
  return Math.max(plan.shapeable - plan.mixTo - needed, fixed + Math.max(0, ball - inBulk));
}

function moreYeast(evening: Evening, joined: Joined, needed: number): Try | undefined {
  const { dough } = evening;
  const { kind } = dough.yeast;
  const limit = mostFreshYeast / freshYeastFor[kind];
  const solved =
    attempt(() =>
      yeastFor(
        wantedLength(evening, joined, needed),
        kind,
        dough,
        joined.dough.liquid.doughTemperature,
        segmentsOf(evening),
      ),
    ) ?? limit;
  const percent = roundedUp(Math.min(solved, limit));
  if (percent <= dough.yeast.percent) return undefined;
  return {
    id: 'yeast',
    dough: { yeast: { kind, percent } },
    change: [{ path: 'dough.yeast.percent', value: String(percent) }],
    says: ({ dough: { grams } }) =>
      `Take ${percentText(percent)} ${kind} yeast (${grams['yeast']!} g) in place of ${dough.yeast.percent} %`,
  };
}

function warmerLiquid(evening: Evening, joined: Joined, needed: number): Try | undefined {
  const { dough } = evening;
  const solved =
    attempt(() => doughTemperatureFor(wantedLength(evening, joined, needed), dough, segmentsOf(evening))) ??
    warmestDough;
  const wantedTemperature = halfDegrees(Math.min(solved, warmestDough));
  if (wantedTemperature <= dough.wantedTemperature) return undefined;
  return {
    id: 'liquid',
    dough: { wantedTemperature },
    change: [{ path: 'dough.wantedTemperature', value: written(wantedTemperature) }],
    says: ({ dough: { liquid } }) =>
      `Mix the dough to ${celsiusText(wantedTemperature)}, with liquid of ${celsiusText(liquid.temperature)}`,
  };
}

/** The dough with its open phase, or its only place, at another temperature. */
export function placedAt(dough: Dough, temperature: number): Partial<Dough> | undefined {
  if (dough.phases.length === 0) return { riseTemperature: temperature };
  if (dough.phases.every(({ duration }) => duration !== undefined)) return undefined;
  return {
    phases: dough.phases.map((phase) => (phase.duration === undefined ? { ...phase, temperature } : phase)),
  };
}

function warmerPlace(evening: Evening, joined: Joined, needed: number): Try | undefined {
  const { dough } = evening;
  const open = dough.phases.findIndex(({ duration }) => duration === undefined);
  const now = open < 0 ? dough.riseTemperature : dough.phases[open]!.temperature;
  if (placedAt(dough, now) === undefined) return undefined;
  const at = (temperature: number) =>
    segmentsOf({ ...evening, dough: { ...dough, ...placedAt(dough, temperature) } });
  const solved =
    attempt(() =>
      placeTemperatureFor(
        wantedLength(evening, joined, needed),
        dough,
        joined.dough.liquid.doughTemperature,
        at,
      ),
    ) ?? warmestPlace;
  const temperature = halfDegrees(Math.min(solved, warmestPlace));
  if (temperature <= now) return undefined;
  const path = open < 0 ? 'dough.riseTemperature' : `dough.phases.${open}.temperature`;
  return {
    id: 'place',
    dough: placedAt(dough, temperature)!,
    change: [{ path, value: written(temperature) }],
    says: () => `Let the dough rise at ${celsiusText(temperature)} in place of ${celsiusText(now)}`,
  };
}

function shorterRest({ dough }: Evening, seconds: number): Try | undefined {
  const minutes = Math.round(Math.max(shortestRest, seconds) / 60);
  if (dough.phases.length > 0 || minutes * 60 >= dough.restBeforeShaping) return undefined;
  return {
    id: 'rest',
    dough: { restBeforeShaping: minutes * 60 },
    change: [{ path: 'dough.restBeforeShaping', value: `${minutes} min` }],
    says: () =>
      `Shape the balls after ${durationText(minutes * 60)} in place of ${durationText(dough.restBeforeShaping)}`,
  };
}

/** Only where the rest and not the yeast decides when the balls are shaped. */
function lessRest(evening: Evening, { plan }: Joined, needed: number): Try | undefined {
  if (plan.shapeable - plan.doughReady < enough) return undefined;
  return shorterRest(evening, evening.dough.restBeforeShaping - needed);
}

/**
 * The longest stay in the refrigerator cut short: hours there make little gas, so that what is missing is taken off it
 * and the open phase, or the room at the end, makes up for the rest.
 */
function shorterChill(evening: Evening, joined: Joined, needed: number, run: EveningRun): Try | undefined {
  const { phases } = evening.dough;
  const stays = phases.map(({ where, duration }) => (where === 'refrigerator' ? (duration ?? 0) : 0));
  const longest = Math.max(0, ...stays);
  const index = stays.indexOf(longest);
  const withStay = (duration: number): Dough['phases'] =>
    phases.map((phase, i) => (i === index ? { ...phase, duration } : phase));
  // The dough makes up in the room for what it misses in the cold: a few rounds settle it.
  let cut = needed;
  for (let round = 0; round < 4; round++) {
    if (!(cut > 0 && longest - cut >= shortestChill)) return undefined;
    const tried = { ...evening, dough: { ...evening.dough, phases: withStay(longest - cut) } };
    const after = attempt(() => joinClocks(tried, run.bakes));
    if (after === undefined) return undefined;
    cut += Math.max(0, needed - (after.plan.beginBy.dough - joined.plan.beginBy.dough));
  }
  const minutes = Math.floor((longest - cut) / 60);
  if (minutes * 60 < shortestChill) return undefined;
  return {
    id: 'phase',
    dough: { phases: withStay(minutes * 60) },
    change: [{ path: `dough.phases.${index}.duration`, value: `${minutes} min` }],
    says: () =>
      `Leave the dough in the refrigerator for ${durationText(minutes * 60)} in place of ${durationText(longest)}`,
  };
}

/** A third of the shorter rise for the balls, a quarter of an hour at least: together with more yeast. */
function restShare(evening: Evening, { plan }: Joined, needed: number): Try | undefined {
  return shorterRest(evening, (plan.shapeable - plan.mixTo - needed) / 3);
}
