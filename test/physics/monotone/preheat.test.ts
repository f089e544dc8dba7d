/**
 * What must go one way in a preheat whatever the oven, since heat only flows down its slope: more of what stores or
 * loses heat never hastens a plate, more of what supplies it never delays one.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ovenPresetIds } from '../../../physics/evening/ids.ts';
import { prepareModel, type EveningModel, type ModelOptions } from '../../../physics/evening/model.ts';
import { startPreheat } from '../../../physics/evening/preheat.ts';
import { evening, plateFor, type Changes } from '../../support/evenings.ts';

const ovens = fc.sample(
  fc.record({
    preset: fc.constantFrom(...ovenPresetIds),
    material: fc.constantFrom('carbon-steel', 'cast-iron', 'cordierite', 'fired-clay', 'aluminium'),
    thickness: fc.integer({ min: 5, max: 16 }),
    rackHeight: fc.integer({ min: 20, max: 50 }),
    setpoint: fc.integer({ min: 215, max: 260 }),
    power: fc.integer({ min: 80, max: 130 }),
  }),
  { numRuns: 8, seed: 20_261_126 },
);
type Asked = (typeof ovens)[number];

/** @param physics of the oven beside its preset's own */
function modelOf(
  asked: Asked,
  {
    physics,
    options,
    kitchen,
  }: { physics?: Record<string, unknown>; options?: ModelOptions; kitchen?: string } = {},
): EveningModel {
  const { preset, material, thickness, rackHeight, setpoint, power } = asked;
  const metal = material !== 'cordierite' && material !== 'fired-clay';
  const changes: Changes = {
    oven: { setpoint: `${setpoint} degC`, physics },
    plate: {
      ...plateFor(preset, { width: '38 cm', depth: '34 cm' }),
      material,
      surface: 'bare',
      thickness: `${thickness} mm`,
      rackHeight: rackHeight / 100,
      // One way of computing it for both that are compared, whatever their Biot numbers.
      model: metal ? 'lumped' : 'slab',
    },
    pizzas: { diameter: '25 cm', ballMass: '200 g' },
    ...(kitchen !== undefined && { kitchen: { roomTemperature: kitchen } }),
  };
  const { oven, ...rest } = evening(preset, changes);
  const share = power / 100;
  const scaled = { bottom: share * oven.power.bottom, top: share * oven.power.top };
  return prepareModel({ ...rest, oven: { ...oven, power: scaled } }, options);
}

/** Of the way from the kitchen to where the plate settles; near there the phase of the thermostat decides. */
const shares = [0.25, 0.4, 0.55, 0.7];
/** s that a climb may take, and that the steps of a thermostat which switches elsewhere may make of it */
const longest = 4 * 3600;
const rounding = 0.1;

interface Climb {
  /** s until the plate's face has each of the marks */
  readonly reached: readonly number[];
  /** s until the oven signals, and its elements are off for the first time */
  readonly fullPower: number;
}

/** K that a plate of the evening is timed at, changed or not. */
function marksOf({ settled, evening: { kitchen } }: EveningModel): readonly number[] {
  return shares.map((share) => kitchen.roomTemperature + share * (settled.plate - kitchen.roomTemperature));
}

function climb(model: EveningModel, marks: readonly number[]): Climb {
  const run = startPreheat(model);
  const face = run.plate!.layout.columns[0]!.top;
  const reached: number[] = [];
  let before = { time: 0, plate: run.network.temperature[face]! };
  while (reached.length < marks.length && run.time < longest) {
    run.step(5);
    const now = { time: run.time, plate: run.network.temperature[face]! };
    for (
      let mark = marks[reached.length];
      mark !== undefined && now.plate >= mark;
      mark = marks[reached.length]
    )
      reached.push(now.time - ((now.time - before.time) * (now.plate - mark)) / (now.plate - before.plate));
    before = now;
  }
  return { reached, fullPower: run.signalledAt ?? run.time };
}

const models = ovens.map((asked) => modelOf(asked));
const marks = models.map(marksOf);
const usual = models.map((model, i) => climb(model, marks[i]!));
const named = ({ preset, material, thickness, setpoint }: Asked): string =>
  `${preset}, ${material} of ${thickness} mm at ${setpoint} degC`;

describe('a plate is later at every temperature on its way up', () => {
  it.each<[string, (asked: Asked) => EveningModel]>([
    ['when it is thicker', (asked) => modelOf({ ...asked, thickness: 1.25 * asked.thickness })],
    ['in an oven of less power', (asked) => modelOf({ ...asked, power: 0.85 * asked.power })],
    ['in a colder kitchen', (asked) => modelOf(asked, { kitchen: '11 degC' })],
    // A plate is heated by radiation above all: the blanker its face, the less of it.
    ['of lower emissivity', (asked) => modelOf(asked, { options: { plateEmissivity: 0.1 } })],
  ])('%s', (_what, change) => {
    ovens.forEach((asked, i) => {
      const changed = climb(change(asked), marks[i]!);
      expect(usual[i]!.reached, named(asked)).toHaveLength(shares.length);
      changed.reached.forEach((seconds, k) => {
        expect(seconds, named(asked)).toBeGreaterThan(usual[i]!.reached[k]!);
      });
    });
  });

  it('or at least not sooner, in an oven that is set lower', () => {
    ovens.forEach((asked, i) => {
      climb(modelOf({ ...asked, setpoint: asked.setpoint - 15 }), marks[i]!).reached.forEach((seconds, k) => {
        expect(seconds, named(asked)).toBeGreaterThan(usual[i]!.reached[k]! - rounding);
      });
    });
  });

  // Once the thermostat switches, a loss makes the elements work more, and a bare plate above one gains by that.
  it.each<[string, Record<string, unknown>]>([
    ['with thinner wool in the walls', { woolThickness: '12 mm' }],
    ['with more air through the vent', { ventFlow: '3 l/s' }],
    ['with leakier seams', { seamConductance: '4 W/K' }],
    ['with heavier racks', { rackCapacity: '4 kJ/K' }],
    ['with a heavier liner', { linerCapacity: '30 kJ/(m2 K)' }],
  ])('while the elements are on without a break, %s', (_what, physics) => {
    let compared = 0;
    ovens.forEach((asked, i) => {
      const own = usual[i]!;
      climb(modelOf(asked, { physics }), marks[i]!).reached.forEach((seconds, k) => {
        if (own.reached[k]! >= own.fullPower) return;
        compared += 1;
        expect(seconds, named(asked)).toBeGreaterThan(own.reached[k]! - 1e-6);
      });
    });
    expect(compared).toBeGreaterThan(ovens.length);
  });
});

describe('what an oven settles at', () => {
  const settled = (asked: Asked, changes: Parameters<typeof modelOf>[1] = {}) =>
    modelOf(asked, changes).settled;

  it('rises with its setting: plate and power', () => {
    ovens.forEach((asked, i) => {
      const own = models[i]!.settled;
      const hotter = settled({ ...asked, setpoint: asked.setpoint + 15 });
      expect(hotter.plate, named(asked)).toBeGreaterThan(own.plate);
      expect(hotter.power, named(asked)).toBeGreaterThan(own.power);
    });
  });

  it('takes more power from a colder kitchen, with thinner wool and with more air through the vent', () => {
    ovens.forEach((asked, i) => {
      const own = models[i]!.settled.power;
      for (const changes of [
        { kitchen: '11 degC' },
        { physics: { woolThickness: '12 mm' } },
        { physics: { ventFlow: '3 l/s' } },
      ])
        expect(settled(asked, changes).power, `${named(asked)} ${JSON.stringify(changes)}`).toBeGreaterThan(
          own,
        );
    });
  });
});
