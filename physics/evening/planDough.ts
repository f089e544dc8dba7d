/** The dough's half of a plan: what to weigh, how warm to pour, how long it rises. */
import { massesFromTotal, roundedForScale } from '../dough/formula.ts';
import { hydration, percentagesOf } from '../dough/ingredients.ts';
import { type LiquidAdvice, liquidTemperature } from '../dough/liquidTemperature.ts';
import { timeConstant } from '../dough/lump.ts';
import { type Rise, riseTime } from '../dough/rise.ts';
import type { Warning } from './answer.ts';
import type { Evening } from './evening.ts';
import { celsiusText, durationText } from './steps.ts';

/** K (12 degC), a cold tap: common practice, no source. */
const coldTap = 285.15;
/** percent: a food processor copes below about 65 % (common practice, no source). */
const processorLimit = 65;
/** K: dough opens well at 50 to 55 degF, 10 to 13 degC (PMQ Think Tank, Lehmann; Pizza Today, June 2018). */
const opensFrom = 283.15;

export interface DoughPlan {
  /** g as weighed, by ingredient; the sum is count x ball mass within half a gram */
  readonly grams: Readonly<Record<string, number>>;
  readonly liquid: LiquidAdvice;
  readonly rise: Rise;
  readonly nominalHydrationPercent: number;
  readonly trueHydrationPercent: number;
  readonly warnings: readonly Warning[];
}

/** How the rise is kept in this evening: one piece under a cover, then balls for the rest before shaping. */
export function keepingOf({ pizzas, dough }: Evening): {
  readonly mass: number;
  readonly ballMass: number;
  readonly balledFor: number;
} {
  return {
    mass: pizzas.count * pizzas.ballMass,
    ballMass: pizzas.ballMass,
    balledFor: dough.restBeforeShaping,
  };
}

/** @throws OutOfRange for a dough that cannot be made or is not ready within 14 days; its path is a field of the plan */
export function planDough(evening: Evening): DoughPlan {
  const { dough, pizzas, kitchen } = evening;
  const total = pizzas.count * pizzas.ballMass;
  const exact = massesFromTotal(percentagesOf(dough), total);
  const share = exact.flour / 100;
  const liquid = liquidTemperature({
    flour: exact.flour,
    liquid: dough.liquid.map((part) => ({ mass: share * part.percent, part })),
    solids: share * (dough.salt + dough.sugar + dough.yeast.percent),
    oil: share * dough.oil,
    flourTemperature: dough.flourTemperature,
    roomTemperature: kitchen.roomTemperature,
    wanted: dough.wantedTemperature,
    mixing: dough.mixing,
    tapTemperature: coldTap,
  });
  const { nominalPercent, truePercent } = hydration(dough.liquid);
  const inGrams = Object.fromEntries(Object.entries(exact).map(([name, mass]) => [name, 1000 * mass]));
  return {
    grams: roundedForScale({ ...inGrams, flour: 1000 * exact.flour }),
    liquid,
    rise: riseTime(dough, liquid.doughTemperature, dough.riseTemperature, keepingOf(evening)),
    nominalHydrationPercent: nominalPercent,
    trueHydrationPercent: truePercent,
    warnings: [...liquidWarnings(evening, liquid), ...handlingWarnings(evening, truePercent)],
  };
}

function liquidWarnings({ dough }: Evening, liquid: LiquidAdvice): readonly Warning[] {
  const instead = `The dough then comes out at ${celsiusText(liquid.doughTemperature)} instead of ${celsiusText(dough.wantedTemperature)}`;
  if (liquid.limited === 'yeast')
    return [
      {
        code: 'liquid-limited-by-yeast',
        message: `The liquid would have to be ${celsiusText(liquid.asked)}; it is held at ${celsiusText(liquid.temperature)}, because hotter harms the yeast. ${instead}; warmer flour or a warmer bowl helps.`,
      },
    ];
  if (liquid.limited === 'freezing')
    return [
      {
        code: 'liquid-limited-by-freezing',
        message: `The liquid would have to be colder than ice water. ${instead}; cold flour helps, or ice in place of ${(100 * liquid.iceShare).toFixed(0)} % of the tap water or more.`,
      },
    ];
  if (liquid.iceShare > 0.005)
    return [
      {
        code: 'liquid-below-tap',
        message: `Liquid of ${celsiusText(liquid.temperature)} is colder than a tap of ${celsiusText(coldTap)}: chill it, or take ${(100 * liquid.iceShare).toFixed(0)} % of it as ice.`,
      },
    ];
  return [];
}

function handlingWarnings({ dough, pizzas, kitchen }: Evening, hydrationPercent: number): readonly Warning[] {
  const warnings: Warning[] = [];
  if (dough.mixing === 'food-processor' && hydrationPercent > processorLimit)
    warnings.push({
      code: 'too-wet-for-processor',
      message: `At a true hydration of ${hydrationPercent.toFixed(0)} % the dough is wetter than a food processor copes with, about ${processorLimit} %: mix it by hand or in smaller batches.`,
    });
  if (dough.riseTemperature < opensFrom && kitchen.roomTemperature > opensFrom) {
    const tau = timeConstant(pizzas.ballMass, 'boxed');
    const warming =
      tau *
      Math.log((kitchen.roomTemperature - dough.riseTemperature) / (kitchen.roomTemperature - opensFrom));
    warnings.push({
      code: 'cold-dough',
      message: `Balls that rise at ${celsiusText(dough.riseTemperature)} tear when shaped cold: take them out about ${durationText(warming)} before, so that they come to ${celsiusText(opensFrom)}; the plan does not count that time.`,
    });
  }
  return warnings;
}
