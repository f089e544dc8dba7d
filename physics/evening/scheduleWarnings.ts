/** Warnings about time: what should have begun already, what waits too long. */
import { zeroCelsius } from '../materials/constants.ts';
import type { Warning } from './answer.ts';
import { showClock } from './clock.ts';
import type { Evening, Instant } from './evening.ts';
import { lastShape } from './join.ts';
import type { EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import { durationText, keptWords } from './steps.ts';

/**
 * What should have begun already, by the clock of whoever asks; what would still make it is among the suggestions.
 *
 * @param instant a moment given in s from the first load
 */
export function pastWarnings(
  plan: Schedule,
  now: number | undefined,
  instant: (seconds: number) => Instant,
): readonly Warning[] {
  if (now === undefined) return [];
  const begin = Math.min(plan.mixFrom, plan.ovenOn);
  const late = (now - instant(begin).epochMilliseconds) / 1000;
  if (!(late > 0)) return [];
  const what =
    plan.mixFrom <= plan.ovenOn
      ? `Mixing should have begun at ${showClock(instant(plan.mixFrom))}`
      : `The oven should have been switched on at ${showClock(instant(plan.ovenOn))}`;
  return [{ code: 'starts-in-the-past', message: `${what}, ${durationText(late)} ago.` }];
}

/** A dough whose bases are baked ahead has its clock on another day than its toppings. */
export function aheadWarnings({ pizzas: { parBake } }: Evening, { bakes }: EveningRun): readonly Warning[] {
  const ahead = bakes.flatMap(({ baseAhead }) => baseAhead?.seconds ?? []);
  if (parBake === undefined || ahead.length === 0) return [];
  return [
    {
      code: 'bases-baked-ahead',
      message: `The dough is for ${ahead.length === 1 ? 'a base that is' : `${ahead.length} bases that are`} baked ahead and kept ${durationText(parBake.kept)} ${keptWords[parBake.keep]}: the oven goes on twice, and the energy counted is that of the evening. Wrapped warm they sweat and go off: let them cool first.`,
    },
  ];
}

/** s by which a plate may lack at the load without a word: less than a cook's watch is off */
const hardlyEarly = 60;

/** A pizza that goes in by the clock may meet a plate that is not ready: thicker than when its hour was set, say. */
export function earlyWarnings({ pizzas }: Evening, { preheat, bakes }: EveningRun): readonly Warning[] {
  const early = pizzas.loadAt === undefined ? 0 : preheat.plateReady - pizzas.loadAt;
  if (early < hardlyEarly) return [];
  const { inAt, outAt, plateTopAtLoad } = bakes[0]!;
  const celsius = (kelvin: number): string => `${(kelvin - zeroCelsius).toFixed(0)} °C`;
  return [
    {
      code: 'pizza-before-plate',
      message: `The first pizza goes in ${durationText(60 * Math.round(early / 60))} before the plate is ready and bakes ${durationText(outAt - inAt)}: the plate is then at ${celsius(plateTopAtLoad)} and would settle at ${celsius(preheat.settledPlateTop)}. Set its hour later, or not at all, and it bakes quicker.`,
    },
  ];
}

const hourOf = ({ epochMilliseconds, offsetMinutes }: Instant): number =>
  Math.floor(epochMilliseconds / 3.6e6 + offsetMinutes / 60) % 24;

/** @param instant a moment given in s from the first load */
export function readyWarnings(plan: Schedule, instant: (seconds: number) => Instant): readonly Warning[] {
  const shaped = lastShape(plan);
  // What carries a step of the dough into the small hours is worth knowing before it is planned.
  const night = plan.hands.find(({ kind, from }) => {
    if (kind !== 'mix' && kind !== 'ball' && kind !== 'move') return false;
    const hour = hourOf(instant(from));
    return hour >= 0 && hour < 6;
  });
  const warnings: Warning[] = [];
  if (night !== undefined)
    warnings.push({
      code: 'step-in-the-night',
      message: `The dough wants hands at ${showClock(instant(night.from))} in the night: lengthen or shorten a phase, or change the yeast.`,
    });
  if (shaped <= plan.doughPast) return warnings;
  return [
    ...warnings,
    {
      code: 'dough-past-its-best',
      message: `The dough is past its best at ${showClock(instant(plan.doughPast))}, ${durationText(shaped - plan.doughPast)} before the last ${plan.ahead === undefined ? 'pizza' : 'base'} is shaped: keep the balls for the later ones cool.`,
    },
  ];
}
