/**
 * The plan file as a schema: `planSchema` for what a file may say (anything may be left out), `fullSchema` for the
 * same with everything filled in. Both give SI. Ranges are our own judgement of what a home kitchen can mean, apart
 * from those the format fixes (count, setpoint, rack height, thickness).
 */
import * as v from 'valibot';
import { choice, flag, instant, line, number, quantity, shade } from './field.ts';
import {
  benchIds,
  bottomElementIds,
  cheeseIds,
  fuelIds,
  liquidIds,
  mixingIds,
  ovenPresetIds,
  plateMaterialIds,
  surfaceIds,
  yeastIds,
} from './ids.ts';
import { planFormat, planVersion } from './planFile.ts';

const degrees = { metric: 'degC', us: 'degF' } as const;
const inside = { metric: 'cm', us: 'in' } as const;
const thin = { metric: 'mm', us: 'in' } as const;
const weight = { metric: 'g', us: 'oz' } as const;
const watts = { metric: 'kW', us: 'kW' } as const;
const minutes = { metric: 'min', us: 'min' } as const;

const head = {
  format: v.literal(planFormat, `"${planFormat}"`),
  version: v.literal(planVersion, `${planVersion}`),
};
const anchor = { kind: choice(['eatAt', 'startAt']), time: instant() };
const kitchen = {
  roomTemperature: quantity('temperature', '-10 degC', '45 degC', degrees),
  altitude: quantity('length', '-400 m', '5000 m', { metric: 'm', us: 'ft' }),
};
const oven = {
  preset: choice(ovenPresetIds),
  setpoint: quantity('temperature', '60 degC', '500 degC', degrees),
  highestSetting: quantity('temperature', '60 degC', '500 degC', degrees),
  startTemperature: quantity('temperature', '-10 degC', '500 degC', degrees),
  fuel: choice(fuelIds),
  fan: flag(),
  bottomElement: choice(bottomElementIds),
  thermostatOffset: quantity('temperatureDifference', '-60 K', '60 K', { metric: 'K', us: 'F degrees' }),
};
const power = {
  bottom: quantity('power', '0.2 kW', '12 kW', watts),
  top: quantity('power', '0.2 kW', '12 kW', watts),
};
const cavity = {
  width: quantity('length', '20 cm', '120 cm', inside),
  depth: quantity('length', '20 cm', '100 cm', inside),
  height: quantity('length', '12 cm', '100 cm', inside),
};
const plate = {
  material: choice(plateMaterialIds),
  width: quantity('length', '10 cm', '120 cm', inside),
  depth: quantity('length', '10 cm', '100 cm', inside),
  thickness: quantity('length', '0.5 mm', '80 mm', thin),
  rackHeight: number(0.03, 0.9),
  surface: choice(surfaceIds),
};
const custom = {
  density: quantity('density', '300 kg/m3', '20000 kg/m3', { metric: 'kg/m3', us: 'lb/ft3' }),
  specificHeat: quantity('specificHeat', '100 J/(kg K)', '3000 J/(kg K)', {
    metric: 'J/(kg K)',
    us: 'BTU/(lb °F)',
  }),
  thermalConductivity: quantity('thermalConductivity', '0.1 W/(m K)', '500 W/(m K)', {
    metric: 'W/(m K)',
    us: 'BTU/(h ft °F)',
  }),
  emissivity: number(0.02, 1),
};
const pizzas = {
  count: number(1, 20, true),
  diameter: quantity('length', '10 cm', '60 cm', inside),
  ballMass: quantity('mass', '50 g', '2 kg', weight),
  shade: shade(),
  bench: choice(benchIds),
};
const waterShare = v.optional(number(0, 1));
const liquid = v.pipe(
  v.array(
    v.object(
      { kind: choice(liquidIds), percent: number(0, 120), waterShare },
      'a kind and a percent for every liquid',
    ),
    'a list of liquids, each with kind and percent',
  ),
  v.check((parts) => parts.length >= 1 && parts.length <= 8, '1 to 8 liquids'),
);
const yeast = {
  kind: choice(yeastIds),
  // Not down to nothing: a dough without yeast is never ready.
  percent: number(0.005, 10),
};
const dough = {
  salt: number(0, 10),
  sugar: number(0, 25),
  oil: number(0, 30),
  flourTemperature: quantity('temperature', '-20 degC', '45 degC', degrees),
  wantedTemperature: quantity('temperature', '10 degC', '40 degC', degrees),
  riseTemperature: quantity('temperature', '-10 degC', '45 degC', degrees),
  mixing: choice(mixingIds),
  restBeforeShaping: quantity('duration', '0 min', '48 h', minutes),
};
const cheese = v.pipe(
  v.array(
    v.object(
      { kind: choice(cheeseIds), mass: quantity('mass', '0 g', '500 g', weight), waterShare },
      'a kind and a mass for every cheese',
    ),
    'a list of cheeses, each with kind and mass',
  ),
  v.check((parts) => parts.length <= 8, 'at most 8 cheeses'),
);
const toppings = { sauce: quantity('mass', '0 g', '500 g', weight) };

/** A block of which anything may be left out, or all of it. */
const some = <const E extends v.ObjectEntries>(entries: E) => v.optional(v.partial(v.object(entries)));

export const planSchema = v.object({
  ...head,
  title: v.optional(line(200)),
  anchor: some(anchor),
  kitchen: some(kitchen),
  oven: some({ ...oven, power: some(power), cavity: some(cavity) }),
  plate: some({ ...plate, ...custom }),
  pizzas: some(pizzas),
  dough: some({ liquid, ...dough, yeast: some(yeast) }),
  toppings: some({ ...toppings, cheese }),
});

export const fullSchema = v.object({
  title: line(200),
  anchor: v.object(anchor),
  kitchen: v.object(kitchen),
  oven: v.object({ ...oven, power: v.object(power), cavity: v.object(cavity) }),
  plate: v.object({ ...plate, custom: v.optional(v.object(custom)) }),
  pizzas: v.object(pizzas),
  dough: v.object({ liquid, ...dough, yeast: v.object(yeast) }),
  toppings: v.object({ ...toppings, cheese }),
});

/** A plan with nothing left out, still in the words of the file. */
export type FullPlan = v.InferInput<typeof fullSchema>;
/** The same in SI. */
export type FullPlanSI = v.InferOutput<typeof fullSchema>;

/** Names of the fields that only a plate of material `custom` has, all four of them. */
export const customFields = Object.keys(custom) as (keyof typeof custom)[];
