/**
 * Published readings of plates. All are infrared spot readings by eye of one moment, with an emissivity setting that
 * nobody gives: 10 K at best. The model's value is what such a thermometer, set to 0.95 as most are sold, would show of
 * the plate ten seconds after the door was opened (`plate/infrared.ts`). The first four are four stones in four ovens,
 * one reading each: not one curve.
 */
import { zeroCelsius } from '../materials/constants.ts';
import { prepareModel, type EveningModel } from '../evening/model.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { runPreheat, type PreheatRun } from '../evening/preheat.ts';
import { ceilingNode } from '../oven/networkParts.ts';
import { shownByInfrared, usualSetting } from '../plate/infrared.ts';
import { compared, type ValidationCase } from './case.ts';
import { eveningFor } from './ovens.ts';

type Plate = NonNullable<PlanFile['plate']>;

interface Reading {
  readonly minutes: number;
  readonly celsius: number;
}

interface Plates {
  readonly id: string;
  readonly source: string;
  readonly name: string;
  readonly setpoint: string;
  readonly plate: Plate;
  readonly note: string;
  readonly readings: readonly Reading[];
}

const testKitchen = "America's Test Kitchen, how-to 6633, The Importance of Preheating Your Pizza Stone";
const currie = 'D. Currie, Cooking Surfaces for Pizza (Slice and Cookistry, 2011)';
const oneOven = 'one home oven, rack and room not seen; 10 % of the rise and the instant of its cycle';
const middle = { rackHeight: 0.4 } as const;

const plates: readonly Plates[] = [
  {
    id: 'test-kitchen',
    source: testKitchen,
    name: 'stone',
    setpoint: '500 degF',
    plate: { ...middle, material: 'cordierite', width: '16 in', depth: '14 in', thickness: '12.7 mm' },
    note: 'one of four stones, each in an oven of its own, sizes not said: 10 % of the rise, twice that while it is steep',
    readings: [
      { minutes: 15, celsius: 143.9 },
      { minutes: 30, celsius: 212.8 },
      { minutes: 45, celsius: 232.8 },
      { minutes: 60, celsius: 265.0 },
    ],
  },
  {
    id: 'tiles',
    source: `${currie}, part 3`,
    name: 'six quarry tiles, 25.4 kg/m2',
    setpoint: '550 degF',
    plate: { ...middle, material: 'fired-clay', width: '18 in', depth: '12 in', thickness: '11.8 mm' },
    note: oneOven,
    readings: [
      { minutes: 45, celsius: 289.4 },
      { minutes: 60, celsius: 290.0 },
    ],
  },
  {
    id: 'ceramic-stone',
    source: `${currie}, part 5`,
    name: 'ceramic stone, 32.3 kg/m2 with its feet',
    setpoint: '550 degF',
    plate: { ...middle, material: 'cordierite', width: '16 in', depth: '14 in', thickness: '16 mm' },
    note: oneOven,
    readings: [
      { minutes: 45, celsius: 275.0 },
      { minutes: 60, celsius: 287.2 },
    ],
  },
  {
    id: 'glazed',
    source: `${currie}, part 6`,
    name: 'round glazed ceramic, 14.25 in',
    setpoint: '550 degF',
    plate: {
      ...middle,
      material: 'fired-clay',
      surface: 'enamelled',
      shape: 'round',
      diameter: '14.25 in',
      thickness: '12.7 mm',
    },
    note: `${oneOven}; thickness assumed`,
    readings: [
      { minutes: 45, celsius: 273.9 },
      { minutes: 60, celsius: 281.7 },
    ],
  },
  {
    id: 'composite',
    source: `${currie}, part 10`,
    name: 'refractory composite, 3/4 in',
    setpoint: '550 degF',
    plate: { ...middle, material: 'fired-clay', width: '17 in', depth: '15 in', thickness: '0.75 in' },
    note: oneOven,
    readings: [
      { minutes: 45, celsius: 279.4 },
      { minutes: 60, celsius: 281.7 },
    ],
  },
];

/** s from opening the door to the reading; common practice, no source */
const aiming = 10;
const adjusted =
  'the plate’s own temperature at first, then what a thermometer shows, then with the door open: between the second and the third two rows came within';
/** minutes in which the curve is still so steep that the unknown oven counts twice */
const steep = 30;

/** K that the thermometer shows once the door has stood open so long that the cook has taken aim */
function throughTheDoor(model: EveningModel, { run, states }: PreheatRun, minutes: number): number {
  const { state } = states[minutes]!;
  run.load(state);
  run.doorOpen = true;
  run.advance(state.time + aiming, 1);
  run.doorOpen = false;
  const T = run.network.temperature;
  return shownByInfrared({
    surface: T[run.plate!.layout.columns[0]!.top]!,
    emissivity: model.material.emissivity,
    setTo: usualSetting,
    around: T[ceilingNode]!,
    instrument: model.evening.kitchen.roomTemperature,
  });
}

/** A preheat for each plate, read off as it was published. */
export function plateCases(): readonly ValidationCase[] {
  return plates.flatMap(({ id, source, name, setpoint, plate, note, readings }) => {
    const evening = eveningFor({
      oven: { preset: 'north-american', setpoint },
      plate,
      pizzas: { diameter: '11 in' },
    });
    const model = prepareModel(evening);
    const preheat = runPreheat(model, 3660);
    const shows = (minutes: number): number => throughTheDoor(model, preheat, minutes) - zeroCelsius;
    const rise = evening.oven.setpoint - evening.kitchen.roomTemperature;
    return readings.map(({ minutes, celsius }) =>
      compared(
        {
          id: `${id}-${minutes}min`,
          source,
          quantity: `${name} after ${minutes} min, set ${setpoint}`,
          published: celsius,
          unit: 'degC',
          tolerance: Math.round((minutes <= steep ? 0.2 : 0.1) * rise),
          note,
          adjusted,
        },
        shows(minutes),
      ),
    );
  });
}
