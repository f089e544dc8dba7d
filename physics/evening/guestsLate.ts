/** Guests who come late: what is held meanwhile, and what the wait costs. */
import { toKWh } from '../quantities/index.ts';
import { zeroCelsius } from '../materials/constants.ts';
import type { GuestsLate } from './answer.ts';
import type { Engine } from './engine.ts';
import type { Evening } from './evening.ts';
import { lastShape } from './join.ts';
import type { EveningRun } from './run.ts';
import type { Schedule } from './schedule.ts';
import { durationText } from './steps.ts';

/** min, as late as guests are */
const usualDelay = 20;
/** s: bakes that differ by less are the same on a kitchen clock */
const sameBake = 5;

/**
 * The evening with everything from the first load on so much later, found out when all is ready: oven and dough wait.
 *
 * @param late min
 */
export function guestsLate(
  evening: Evening,
  run: EveningRun,
  plan: Schedule,
  engine: Engine,
  late = usualDelay,
): GuestsLate {
  const energy = run.preheat.idlePower * 60 * late;
  const first = run.bakes[0]!;
  // A start so much sooner is a load so much later.
  const [held] = engine.lateStart(evening, run, [-late]);
  const bakeMinutes = held?.bakeMinutes ?? (first.outAt - first.inAt) / 60;
  const plateTopC = held?.plateTopC ?? first.plateTopAtLoad - zeroCelsius;
  // Bases that are baked already wait as they were kept.
  const doughSpare = plan.doughPast - lastShape(plan) - (plan.ahead === undefined ? 60 * late : 0);
  const price = evening.kitchen.energyPrice;
  const cost = price === undefined ? undefined : price.perKWh * toKWh(energy);
  return {
    minutes: late,
    energyKWh: toKWh(energy),
    ...(cost !== undefined && { cost }),
    plateTopC,
    bakeMinutes,
    doughSpareMinutes: doughSpare / 60,
    hold: [
      ovenText(late, energy, price && cost !== undefined ? ` (${cost.toFixed(2)} ${price.currency})` : ''),
      bakeText(plateTopC, 60 * bakeMinutes, first.outAt - first.inAt),
      ...(plan.ahead === undefined ? [doughText(evening, doughSpare)] : []),
      plan.ahead !== undefined
        ? 'Top nothing yet: a topped base soaks through. Keep sauce and cheese in the refrigerator meanwhile.'
        : 'Shape nothing yet: a shaped base sticks and soaks through. Keep sauce and cheese in the refrigerator meanwhile.',
    ],
  };
}

function ovenText(late: number, energy: number, money: string): string {
  return `Leave the oven on, shut: ${late} min more take ${toKWh(energy).toFixed(2)} kWh${money}. Known before it goes on, switch it on ${late} min later, and that costs nothing.`;
}

function bakeText(plateTopC: number, bake: number, planned: number): string {
  const off = bake - planned;
  const differs =
    Math.abs(off) < sameBake ? 'as planned' : `${durationText(Math.abs(off))} ${off < 0 ? 'less' : 'more'}`;
  return `The plate is then at ${plateTopC.toFixed(0)} °C and the first pizza bakes ${durationText(bake)}, ${differs}.`;
}

function doughText({ pizzas }: Evening, spare: number): string {
  const [balls, are] = pizzas.count === 1 ? ['the ball', 'it is'] : ['the balls', 'they are'];
  return spare >= 0
    ? `Leave ${balls} covered where ${are}: the dough is good for ${durationText(spare)} more after that.`
    : `Put ${balls} into the refrigerator until the guests come: left out, the last pizza would be ${durationText(-spare)} past its dough's best.`;
}
