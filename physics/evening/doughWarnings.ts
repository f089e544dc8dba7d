/** What a cook is told of a dough: limits of the liquid, of the flour, of heat and cold, and phases that do not fit. */
import { mostIce } from '../dough/liquidTemperature.ts';
import { timeConstant } from '../dough/lump.ts';
import { type OpenSegment, riseTime } from '../dough/rise.ts';
import { yeastFor } from '../dough/riseSolve.ts';
import type { Warning } from './answer.ts';
import { attempt } from './attempt.ts';
import type { Evening } from './evening.ts';
import type { FlourId } from './ids.ts';
import { ballMasses } from './onePizza.ts';
import type { DoughPlan } from './planDough.ts';
import { celsiusText, durationText, gramsText, percentText } from './steps.ts';

type Facts = Omit<DoughPlan, 'warnings'>;

/** percent: a food processor copes below about 65 % (common practice, no source). */
const processorLimit = 65;
/** K: dough opens well at 50 to 55 degF, 10 to 13 degC (PMQ Think Tank, Lehmann; Pizza Today, June 2018). */
const opensFrom = 283.15;
/** Share of the yeast; less than that nobody would notice. */
const worthTelling = 0.01;
/**
 * s of rise at room temperature or so that flour bears: common practice, no source, but for strong flour, W 220 to 380,
 * which the Neapolitan rule asks for a rise of 8 h and more ("Pizza & pasta italiana" 8/2010).
 */
const flourBears: Readonly<Partial<Record<FlourId, number>>> = { weak: 4 * 3600, medium: 24 * 3600 };

/** Everything a cook is warned of in a dough. @param segments the rise as it is computed */
export function doughWarnings(
  evening: Evening,
  plan: Facts,
  segments: readonly OpenSegment[],
): readonly Warning[] {
  return [
    ...liquidWarnings(evening, plan, segments),
    ...heatWarnings(plan),
    ...flourWarnings(evening, plan),
    ...handlingWarnings(evening, plan),
    ...phaseWarnings(evening, plan, segments),
  ];
}

function liquidWarnings(
  { dough, kitchen }: Evening,
  { liquid, batch, rise }: Facts,
  segments: readonly OpenSegment[],
): readonly Warning[] {
  const instead = `The dough then comes out at ${celsiusText(liquid.doughTemperature)} instead of ${celsiusText(dough.wantedTemperature)}`;
  if (liquid.limited === 'yeast')
    return [
      {
        code: 'liquid-limited-by-yeast',
        message: `The liquid would have to be ${celsiusText(liquid.asked)}; it is held at ${celsiusText(liquid.temperature)}, because hotter harms the yeast. ${instead}; warmer flour or a warmer bowl helps.`,
      },
    ];
  if (liquid.limited === 'freezing') {
    const asWanted = riseTime(dough, dough.wantedTemperature, segments).seconds;
    const ice =
      liquid.ice > 0
        ? `Even with ${(100 * mostIce).toFixed(0)} % of the water as ice (${gramsText(liquid.ice)}) the liquid is not cold enough`
        : 'The liquid would have to be colder than it can be poured, and only water can be taken as ice';
    return [
      {
        code: 'liquid-limited-by-freezing',
        message: `${ice}. ${instead} and is ready after ${durationText(rise.seconds)} instead of ${durationText(asWanted)}; cold flour helps.`,
      },
    ];
  }
  if (liquid.iceShare <= 0.005) {
    if (liquid.temperature >= kitchen.tapTemperature - 0.5) return [];
    return [
      {
        code: 'liquid-below-tap',
        message: `Liquid of ${celsiusText(liquid.temperature)} is colder than a tap of ${celsiusText(kitchen.tapTemperature)}: chill it in the refrigerator.`,
      },
    ];
  }
  const water = batch.liquid
    .filter(({ part }) => part.kind === 'water')
    .reduce((sum, { mass }) => sum + mass, 0);
  return [
    {
      code: 'liquid-below-tap',
      message: `A tap of ${celsiusText(kitchen.tapTemperature)} is too warm for this dough: take ${gramsText(liquid.ice)} of the ${gramsText(water)} of water as crushed ice, the rest from the tap, or chill all of it.`,
    },
  ];
}

function heatWarnings({ killed, liquid, rise }: Facts): readonly Warning[] {
  if (killed < worthTelling) return [];
  const hottest = Math.max(liquid.doughTemperature, ...rise.segments.map(({ temperature }) => temperature));
  return [
    {
      code: 'dough-too-warm',
      message: `At up to ${celsiusText(hottest)} as much as ${(100 * killed).toFixed(0)} % of the yeast may die before the dough is shaped, which the rise does not count: keep the dough below 40 °C.`,
    },
  ];
}

function flourWarnings({ dough }: Evening, { stages }: Facts): readonly Warning[] {
  const kind = dough.flour;
  if (kind === 'gluten-free')
    return [
      {
        code: 'flour-without-gluten',
        message:
          'Flour without gluten drinks more, does not knead and does not hold gas: hydration, rise and bake here are those of wheat and do not fit. Keep to the recipe of the flour; clock and plate still hold.',
      },
    ];
  if (kind === 'rye' || kind === 'wholemeal')
    return [
      {
        code: 'flour-drinks-more',
        message: `${kind === 'rye' ? 'Rye' : 'Wholemeal'} drinks more and rises sooner and less than the white wheat flour meant here: watch the dough, not the ${durationText(stages.reduce((sum, { duration }) => sum + duration, 0))}.`,
      },
    ];
  // A day in the refrigerator asks of the gluten about what a quarter of it does outside: common practice, no source.
  const strain = stages.reduce(
    (sum, { duration, where }) => sum + (where === 'refrigerator' ? duration / 4 : duration),
    0,
  );
  const bears = flourBears[kind];
  if (bears === undefined || strain <= bears) return [];
  return [
    {
      code: 'flour-too-weak',
      message: `A rise that counts as ${durationText(strain)} at room temperature is long for ${kind === 'weak' ? 'weak' : 'ordinary'} flour: it slackens and tears. Take a stronger one, or more yeast and less time.`,
    },
  ];
}

function handlingWarnings(evening: Evening, plan: Facts): readonly Warning[] {
  const { dough, kitchen } = evening;
  const warnings: Warning[] = [];
  const wet = plan.trueHydrationPercent;
  if (dough.mixing === 'food-processor' && wet > processorLimit)
    warnings.push({
      code: 'too-wet-for-processor',
      message: `At a true hydration of ${wet.toFixed(0)} % the dough is wetter than a food processor copes with, about ${processorLimit} %: mix it by hand or in smaller batches.`,
    });
  const { temperature } = plan.rise.end;
  if (temperature < opensFrom && kitchen.roomTemperature > opensFrom) {
    const warming =
      timeConstant(Math.max(...ballMasses(evening)), 'boxed') *
      Math.log((kitchen.roomTemperature - temperature) / (kitchen.roomTemperature - opensFrom));
    warnings.push({
      code: 'cold-dough',
      message: `Balls of ${celsiusText(temperature)} tear when shaped: let them stand about ${durationText(warming)} in the room before, so that they come to ${celsiusText(opensFrom)}; the plan does not count that time.`,
    });
  }
  return warnings;
}

/** Phases of fixed length that end too soon or too late for the dose, with the dose that would fit. */
function phaseWarnings(
  { dough }: Evening,
  { rise, stages, liquid }: Facts,
  segments: readonly OpenSegment[],
): readonly Warning[] {
  if (dough.phases.length === 0) return [];
  const length = stages.reduce((sum, { duration }) => sum + duration, 0);
  const asked = length - rise.extended;
  const dose = attempt(() => yeastFor(asked, dough.yeast.kind, dough, liquid.doughTemperature, segments));
  const instead =
    dose === undefined
      ? ''
      : `; with ${percentText(dose)} ${dough.yeast.kind} yeast in place of ${dough.yeast.percent} % it would be ready then`;
  if (rise.extended > 0)
    return [
      {
        code: 'dough-not-ready-after-phases',
        message: `After its ${durationText(asked)} the dough is not ready: it needs ${durationText(rise.extended)} more${instead}.`,
      },
    ];
  if (rise.past < length)
    return [
      {
        code: 'dough-past-after-phases',
        message: `The dough is past its best ${durationText(length - rise.past)} before its phases end${instead}.`,
      },
    ];
  return [];
}
