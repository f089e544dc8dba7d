/** Warnings about time: what should have begun already, what waits too long. */
import { yeastFor } from '../dough/riseSolve.ts';
import type { Warning } from './answer.ts';
import { showClock } from './clock.ts';
import type { Evening, Instant } from './evening.ts';
import { type DoughPlan, segmentsOf } from './planDough.ts';
import { OutOfRange } from './problem.ts';
import type { Schedule } from './schedule.ts';
import { durationText, percentText } from './steps.ts';

/**
 * What should have begun already, by the clock of whoever asks, and the yeast that would still make it.
 *
 * @param instant a moment given in s from the first load
 */
export function pastWarnings(
  evening: Evening,
  dough: DoughPlan,
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
  const doughLate = (now - instant(plan.mixFrom).epochMilliseconds) / 1000;
  const left = plan.doughReady - plan.mixTo - doughLate;
  const advice = doughLate > 0 ? quickerYeast(evening, dough, left) : '';
  return [{ code: 'starts-in-the-past', message: `${what}, ${durationText(late)} ago${advice}.` }];
}

function quickerYeast(evening: Evening, { liquid }: DoughPlan, seconds: number): string {
  const { dough, pizzas } = evening;
  const { kind } = dough.yeast;
  try {
    const percent = yeastFor(seconds, kind, dough, liquid.doughTemperature, segmentsOf(evening));
    return `; with ${percentText(percent)} ${kind} yeast in place of ${dough.yeast.percent} % a dough mixed now for ${pizzas.count === 1 ? 'the pizza' : 'the pizzas'} would still be in time`;
  } catch (error) {
    if (error instanceof OutOfRange) return '';
    throw error;
  }
}

const hourOf = ({ epochMilliseconds, offsetMinutes }: Instant): number =>
  Math.floor(epochMilliseconds / 3.6e6 + offsetMinutes / 60) % 24;

/** @param instant a moment given in s from the first load */
export function readyWarnings(plan: Schedule, instant: (seconds: number) => Instant): readonly Warning[] {
  const shapes = plan.hands.filter(({ kind }) => kind === 'shape');
  const lastShape = shapes[shapes.length - 1]!;
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
  if (lastShape.from <= plan.doughPast) return warnings;
  return [
    ...warnings,
    {
      code: 'dough-past-its-best',
      message: `The dough is past its best at ${showClock(instant(plan.doughPast))}, ${durationText(lastShape.from - plan.doughPast)} before the last pizza is shaped: keep the balls for the later pizzas cool.`,
    },
  ];
}
