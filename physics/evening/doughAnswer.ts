/** The dough's half of the answer, in degrees Celsius, grams and minutes. */
import { placeTemperatureFor } from '../dough/riseSolve.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { DoughForTime, PlanAnswer } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Evening } from './evening.ts';
import { placedAt } from './doughChanges.ts';
import { type DoughPlan, segmentsOf } from './planDough.ts';
import type { Schedule } from './schedule.ts';
import { yeastInstead } from './shopping.ts';
import { celsiusText } from './steps.ts';
import { yeastForTime } from './yeastForTime.ts';

const minutes = (seconds: number): number => seconds / 60;
const kelvins = (difference: number): string => `${difference.toFixed(1)} K`;

/** Why rule and balance part, with the figures of this dough. */
export function whyNotTheRule({ liquid }: Pick<DoughPlan, 'liquid'>): string {
  const { asked, byRule, terms } = liquid;
  const apart = byRule - asked;
  const difference =
    Math.abs(apart) < 0.5 ? 'the same' : `${kelvins(Math.abs(apart))} ${apart > 0 ? 'warmer' : 'colder'}`;
  const mixing =
    terms.work >= 0
      ? `mixing ${kelvins(terms.work)} more`
      : `mixing by this method takes ${kelvins(-terms.work)} back`;
  return `The bakers' rule of three temperatures says ${celsiusText(byRule)}, ${difference}. It weighs flour, room and liquid alike; in the balance of heat a degree of flour counts as ${terms.flourCounts.toFixed(2)} of a degree of liquid, wetting the flour warms the dough by ${kelvins(terms.hydrationRise)}, ${mixing}, and ${(100 * terms.exchange).toFixed(0)} % of what the dough differs from the room goes to bowl and bench.`;
}

/** @param at writes a moment given in s from the first pizza's load */
export function doughAnswer(
  evening: Evening,
  dough: DoughPlan,
  plan: Schedule,
  at: (seconds: number) => string,
): PlanAnswer['dough'] {
  const { liquid, rise } = dough;
  return {
    liquidC: liquid.temperature - zeroCelsius,
    doughC: liquid.doughTemperature - zeroCelsius,
    trueHydrationPercent: dough.trueHydrationPercent,
    nominalHydrationPercent: dough.nominalHydrationPercent,
    riseMinutes: minutes(rise.seconds),
    riseRangeMinutes: [minutes(rise.range[0]), minutes(rise.range[1])],
    readyWindow: { from: at(plan.doughReady), to: at(plan.doughPast) },
    ingredientsG: dough.grams,
    liquidByRuleC: liquid.byRule - zeroCelsius,
    liquidWhy: whyNotTheRule(dough),
    iceG: iceGrams(dough),
    yeastG: yeastInstead(dough.grams['yeast'] ?? 0, evening.dough.yeast.kind),
    forTimes: forTimes(evening, dough),
    phases: plan.stages.map(({ where, as, from, to }, index) => ({
      where,
      as,
      from: at(from),
      to: at(to),
      placeC: dough.stages[index]!.temperature - zeroCelsius,
    })),
  };
}

/** h that a cook asks about */
const times = [2, 3, 4, 6, 8, 10, 12, 18, 24] as const;

/** How much yeast for a time, and how warm a place: for the rise in one place, or for the open one of its phases. */
function forTimes(evening: Evening, plan: DoughPlan): readonly DoughForTime[] {
  const { dough } = evening;
  const { doughTemperature } = plan.liquid;
  const segments = segmentsOf(evening);
  const fixed =
    dough.phases.length === 0 ? 0 : segments.reduce((sum, { duration }) => sum + (duration ?? 0), 0);
  const flour = plan.batch.flour;
  return times.flatMap((hours) => {
    const seconds = fixed + 3600 * hours;
    const percent = yeastForTime(evening, plan, seconds);
    const place =
      placedAt(dough, dough.riseTemperature) === undefined
        ? undefined
        : attempt(() =>
            placeTemperatureFor(seconds, dough, doughTemperature, (temperature) =>
              segmentsOf({ ...evening, dough: { ...dough, ...placedAt(dough, temperature) } }),
            ),
          );
    if (percent === undefined && place === undefined) return [];
    return [
      {
        minutes: minutes(seconds),
        ...(percent === undefined ? {} : { yeastPercent: percent, yeastG: 10 * flour * percent }),
        ...(place === undefined ? {} : { placeC: place - zeroCelsius }),
      },
    ];
  });
}

/** g of ice in whole grams; nobody weighs it finer. */
export function iceGrams({ liquid }: Pick<DoughPlan, 'liquid'>): number {
  return Math.round(1000 * liquid.ice);
}
