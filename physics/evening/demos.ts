/**
 * The built-in evenings: invented, plain and complete, so that a first start shows a whole evening. What a plan file
 * leaves out is taken from the first of them.
 */
import { instantOf, nextRound, type OffsetAt, writeInstant } from './clock.ts';
import type { Instant } from './evening.ts';
import { planFormat, planVersion, type PlanFile } from './planFile.ts';

/**
 * Baker's percent of instant yeast that makes a dough ready after some six hours in a room of 21 degC: the region
 * that the rise model names, and common practice (no source).
 */
const sixHourInstantYeast = 0.2;

/** Four pizzas for friends, dough mixed after lunch, an ordinary European oven and a steel plate. */
export const saturday = {
  format: planFormat,
  version: planVersion,
  title: 'Four pizzas for friends',
  anchor: { kind: 'eatAt', time: '2026-01-31T19:30:00+01:00' },
  kitchen: { roomTemperature: '21 degC', altitude: '120 m', tapTemperature: '12 degC', scaleStep: '1 g' },
  oven: {
    preset: 'european',
    setpoint: '250 degC',
    highestSetting: '250 degC',
    fuel: 'electric',
    fan: false,
    bottomElement: 'hidden',
    power: { bottom: '1.3 kW', top: '1.1 kW' },
    cavity: { width: '46 cm', depth: '41 cm', height: '35.5 cm' },
    thermostatOffset: '0 K',
  },
  plate: {
    material: 'carbon-steel',
    width: '40 cm',
    depth: '35 cm',
    thickness: '8 mm',
    // Second of five positions: the lowest some 4.5 cm above the floor, the next 6 cm higher, of 35.5 cm.
    rackHeight: 0.3,
    surface: 'seasoned',
  },
  pizzas: { count: 4, diameter: '30 cm', ballMass: '250 g', shade: 'golden', bench: 'flour' },
  dough: {
    flour: 'medium',
    flourMoisture: 14,
    liquid: [{ kind: 'water', percent: 62 }],
    salt: 2.5,
    sugar: 0,
    oil: 1.5,
    yeast: { kind: 'instant', percent: sixHourInstantYeast },
    wantedTemperature: '25 degC',
    mixing: 'hand',
    restBeforeShaping: '90 min',
  },
  toppings: {
    sauce: '70 g',
    cheese: [{ kind: 'low-moisture-mozzarella', mass: '120 g' }],
    can: '400 g',
    tomatoes: 'crushed',
  },
} satisfies PlanFile;

/** Ninety minutes from flour to table, on a stone in a gas oven. */
const sameEvening = {
  format: planFormat,
  version: planVersion,
  title: 'Pizza the same evening',
  anchor: { kind: 'startAt', time: '2026-02-04T18:00:00-05:00' },
  kitchen: { roomTemperature: '72 degF', altitude: '600 ft' },
  oven: { preset: 'north-american-gas', setpoint: '500 degF', highestSetting: '550 degF', fuel: 'gas' },
  plate: {
    material: 'cordierite',
    width: '16 in',
    depth: '14 in',
    thickness: '15 mm',
    rackHeight: 0.4,
    surface: 'bare',
  },
  pizzas: { count: 2, diameter: '12 in', ballMass: '9 oz', shade: 'golden', bench: 'semolina' },
  dough: {
    liquid: [{ kind: 'water', percent: 62 }],
    salt: 2,
    sugar: 1,
    oil: 3,
    yeast: { kind: 'instant', percent: 1.4 },
    wantedTemperature: '86 degF',
    mixing: 'food-processor',
    restBeforeShaping: '15 min',
  },
  toppings: {
    sauce: '2 3/4 oz',
    cheese: [
      { kind: 'low-moisture-mozzarella', mass: '4 oz' },
      { kind: 'hard', mass: '1/2 oz' },
    ],
  },
} satisfies PlanFile;

/** A thick clay plate in an oven that goes to 300 degC, with fresh cheese. */
const clay = {
  format: planFormat,
  version: planVersion,
  title: 'Sunday pizza on clay',
  anchor: { kind: 'eatAt', time: '2026-02-08T18:30:00+01:00' },
  kitchen: { roomTemperature: '20 degC', altitude: '340 m' },
  oven: { preset: 'strong', setpoint: '300 degC', highestSetting: '300 degC' },
  plate: {
    material: 'fired-clay',
    width: '40 cm',
    depth: '36 cm',
    thickness: '20 mm',
    rackHeight: 0.4,
    surface: 'bare',
  },
  pizzas: { count: 3, diameter: '30 cm', ballMass: '260 g', shade: 'golden', bench: 'flour' },
  dough: {
    liquid: [{ kind: 'water', percent: 63 }],
    salt: 2.8,
    sugar: 0,
    oil: 0,
    yeast: { kind: 'fresh', percent: 0.6 },
    wantedTemperature: '24 degC',
    mixing: 'mixer',
    restBeforeShaping: '2 h',
  },
  toppings: { sauce: '80 g', cheese: [{ kind: 'fresh-mozzarella', mass: '90 g' }] },
} satisfies PlanFile;

/** All built-in evenings by name; the first stands for "no file". */
export const demos = { saturday, 'same-evening': sameEvening, clay } satisfies Record<string, PlanFile>;
export type DemoId = keyof typeof demos;
export const demoIds = Object.keys(demos) as DemoId[];

/** The demo's supper time, for plans that give none. */
export function demoTime(): Instant {
  return instantOf(saturday.anchor.time);
}

/**
 * A built-in evening on a day that is still to come: its own day while that lies ahead, otherwise the next day that
 * the clock time comes round, by a clock that keeps `offsetMinutes`.
 */
export function upcoming(id: DemoId, now: number, offsetMinutes: number, readersClock?: OffsetAt): PlanFile {
  const file: PlanFile = demos[id];
  const own = instantOf(demos[id].anchor.time);
  if (own.epochMilliseconds > now) return file;
  return {
    ...file,
    anchor: { ...file.anchor, time: writeInstant(nextRound(own, now, offsetMinutes, readersClock)) },
  };
}
