/**
 * The plan file as a schema: `planSchema` for what a file may say (anything may be left out), `fullSchema` for the
 * same with everything filled in. Both give SI. Ranges are our own judgement of what a home kitchen can mean, apart
 * from those the format fixes (count, setpoint, rack height, thickness).
 */
import * as v from 'valibot';
import { browningLawIds } from '../bake/browning.ts';
import {
  choice,
  energyPrice,
  flag,
  instant,
  line,
  number,
  quantity,
  shade,
  signedDuration,
} from './field.ts';
import {
  anchorIds,
  benchIds,
  bottomElementIds,
  cheeseIds,
  coverIds,
  flourIds,
  fuelIds,
  instrumentIds,
  keepIds,
  liquidIds,
  logWhatIds,
  mixingIds,
  ovenPresetIds,
  placeIds,
  plateMaterialIds,
  risePieceIds,
  risePlaceIds,
  surfaceIds,
  tomatoIds,
  waitRuleIds,
  yeastIds,
} from './ids.ts';
import { planFormat, planVersion } from './planFile.ts';
import { usualSpread } from './uncertain.ts';
import type { LogWhatId } from './ids.ts';
import type { UncertainName } from './uncertain.ts';

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
const anchor = { kind: choice(anchorIds), time: instant() };
const price = energyPrice();
const kitchen = {
  roomTemperature: quantity('temperature', '-10 degC', '45 degC', degrees),
  altitude: quantity('length', '-400 m', '5000 m', { metric: 'm', us: 'ft' }),
  tapTemperature: quantity('temperature', '0 degC', '40 degC', degrees),
  scaleStep: quantity('mass', '0.01 g', '10 g', weight),
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
const areal = { metric: 'kJ/(m2 K)', us: 'BTU/(ft2 °F)' } as const;
const transfer = { metric: 'W/(m2 K)', us: 'BTU/(h ft2 °F)' } as const;
const conductance = { metric: 'W/K', us: 'BTU/(h °F)' } as const;
const flow = { metric: 'l/s', us: 'ft3/min' } as const;
/** Figures that a preset supplies, one by one: ranges are of what a domestic oven can be built like, our judgement. */
const physics = {
  linerCapacity: quantity('arealHeatCapacity', '1 kJ/(m2 K)', '200 kJ/(m2 K)', areal),
  rackCapacity: quantity('heatCapacity', '0 J/K', '50 kJ/K', { metric: 'J/K', us: 'BTU/°F' }),
  woolThickness: quantity('length', '5 mm', '200 mm', thin),
  outerCoefficient: quantity('heatTransfer', '3 W/(m2 K)', '50 W/(m2 K)', transfer),
  doorPaneCapacity: quantity('arealHeatCapacity', '1 kJ/(m2 K)', '50 kJ/(m2 K)', areal),
  doorGapConductance: quantity('heatTransfer', '0.3 W/(m2 K)', '30 W/(m2 K)', transfer),
  seamConductance: quantity('conductance', '0 W/K', '10 W/K', conductance),
  ventFlow: quantity('flow', '0 l/s', '10 l/s', flow),
  wallEmissivity: number(0.05, 0.98),
  doorEmissivity: number(0.05, 0.98),
  elementLoad: quantity('heatFlux', '1 W/cm2', '12 W/cm2', { metric: 'W/cm2', us: 'W/in2' }),
  elementEmissivity: number(0.1, 0.98),
  elementCapacity: quantity('arealHeatCapacity', '1 kJ/(m2 K)', '30 kJ/(m2 K)', areal),
  elementConvection: quantity('heatTransfer', '2 W/(m2 K)', '60 W/(m2 K)', transfer),
  elementLossBelow: quantity('conductance', '0 W/K', '2 W/K', conductance),
  burnerToFloor: number(0, 1),
  burnerAir: number(1, 6),
  preheatShareBottom: number(0, 1),
  preheatShareTop: number(0, 1),
  holdShareBottom: number(0, 1),
  holdShareTop: number(0, 1),
  sensorLag: quantity('duration', '1 s', '10 min', { metric: 's', us: 's' }),
  sensorHalfBand: quantity('temperatureDifference', '0.5 K', '40 K', { metric: 'K', us: 'F degrees' }),
  sensorWallShare: number(0, 1),
  circulation: quantity('heatTransfer', '0 W/(m2 K)', '30 W/(m2 K)', transfer),
  fanCoefficient: quantity('heatTransfer', '5 W/(m2 K)', '80 W/(m2 K)', transfer),
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
const diameter = quantity('length', '10 cm', '100 cm', inside);
const plate = {
  material: choice(plateMaterialIds),
  width: quantity('length', '10 cm', '120 cm', inside),
  depth: quantity('length', '10 cm', '100 cm', inside),
  thickness: quantity('length', '0.5 mm', '80 mm', thin),
  rackHeight: number(0.03, 0.9),
  surface: choice(surfaceIds),
  model: choice(['auto', 'lumped', 'slab']),
  shape: choice(['rectangular', 'round']),
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
  ballMass: quantity('mass', '20 g', '2 kg', weight),
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
const riseTemperature = quantity('temperature', '-10 degC', '45 degC', degrees);
const dough = {
  flour: choice(flourIds),
  flourMoisture: number(0, 20),
  salt: number(0, 10),
  sugar: number(0, 25),
  oil: number(0, 30),
  flourTemperature: quantity('temperature', '-20 degC', '45 degC', degrees),
  wantedTemperature: quantity('temperature', '10 degC', '40 degC', degrees),
  riseTemperature,
  mixing: choice(mixingIds),
  restBeforeShaping: quantity('duration', '0 min', '48 h', minutes),
};
const phases = v.pipe(
  v.array(
    v.object(
      {
        where: choice(risePlaceIds),
        temperature: v.optional(riseTemperature),
        duration: v.optional(quantity('duration', '0 min', '168 h', { metric: 'h', us: 'h' })),
        as: choice(risePieceIds),
        cover: v.optional(choice(coverIds)),
      },
      'where the dough stands and as what for every phase',
    ),
    'a list of phases, each with where and as',
  ),
  v.check((parts) => parts.length <= 8, 'at most 8 phases'),
);
const cheese = v.pipe(
  v.array(
    v.object(
      { kind: choice(cheeseIds), mass: quantity('mass', '0 g', '1 kg', weight), waterShare },
      'a kind and a mass for every cheese',
    ),
    'a list of cheeses, each with kind and mass',
  ),
  v.check((parts) => parts.length <= 8, 'at most 8 cheeses'),
);
/** What a plan may say of its pizzas beyond that; nothing is taken instead. */
const bakeTime = v.optional(quantity('duration', '0 min', '40 min', minutes));
const onPizzas = {
  each: v.optional(
    v.pipe(
      v.array(
        v.partial(
          v.object({
            diameter: pizzas.diameter,
            ballMass: pizzas.ballMass,
            shade: pizzas.shade,
            bench: pizzas.bench,
            sauce: quantity('mass', '0 g', '1 kg', weight),
            cheese,
          }),
        ),
        'a list of pizzas, each with what differs',
      ),
      v.check((list) => list.length <= 20, 'at most 20 pizzas'),
    ),
  ),
  steps: v.optional(
    v.object({
      turnAtHalfTime: v.optional(flag()),
      lookAfter: bakeTime,
      pullParchment: v.optional(flag()),
      topElementBefore: bakeTime,
      topElementAfter: bakeTime,
      topElementAtEnd: bakeTime,
    }),
  ),
  loadAt: v.optional(quantity('duration', '1 min', '6 h', minutes)),
  wait: v.optional(quantity('duration', '0 min', '60 min', minutes)),
  waitRule: v.optional(choice(waitRuleIds)),
  parBake: v.optional(
    v.object(
      {
        keep: choice(keepIds),
        shade: v.optional(shade()),
        kept: v.optional(quantity('duration', '0 min', '2200 h', { metric: 'h', us: 'h' })),
      },
      'where the bases are kept',
    ),
  ),
  browningLaw: v.optional(choice(browningLawIds)),
  browningRate: v.optional(number(0.1, 10)),
};
const toppings = {
  sauce: quantity('mass', '0 g', '1 kg', weight),
  can: quantity('mass', '50 g', '5 kg', weight),
  tomatoes: choice(tomatoIds),
};

/** Percent of one standard deviation, at most the usual one: what is known makes no range wider. */
const percentOf = (name: UncertainName) =>
  v.pipe(
    number(0, usualSpread[name] * 100),
    v.transform((percent) => percent / 100),
  );
const known = {
  thermostatOffset: quantity('temperatureDifference', '0 K', `${usualSpread.thermostatOffset} K`, {
    metric: 'K',
    us: 'F degrees',
  }),
  plateEmissivity: number(0, usualSpread.plateEmissivity),
  wallEmissivity: number(0, usualSpread.wallEmissivity),
  topShare: percentOf('topShare'),
  power: percentOf('power'),
  convection: percentOf('convection'),
  thickness: percentOf('thickness'),
  vent: percentOf('vent'),
  liner: percentOf('liner'),
  contact: percentOf('contact'),
  browning: percentOf('browning'),
  density: percentOf('density'),
  crust: percentOf('crust'),
};

const needed = {
  begun: [],
  done: ['step'],
  skipped: ['step'],
  heard: ['step'],
  longer: ['step', 'by'],
  guestsLate: ['by'],
  clockMoved: ['by'],
  reading: ['place', 'temperature'],
  words: ['pizza', 'words'],
} as const satisfies Readonly<Record<LogWhatId, readonly string[]>>;
const logEntry = v.pipe(
  v.object(
    {
      at: instant(),
      what: choice(logWhatIds),
      step: v.optional(line(40)),
      by: v.optional(signedDuration('24 h')),
      place: v.optional(choice(placeIds)),
      temperature: v.optional(quantity('temperature', '-40 degC', '1000 degC', degrees)),
      instrument: v.optional(choice(instrumentIds)),
      pizza: v.optional(number(1, 20, true)),
      words: v.optional(line(500)),
      shade: v.optional(shade()),
    },
    'at and what for every entry',
  ),
  v.check(
    (entry) => needed[entry.what].every((name) => entry[name] !== undefined),
    `what each entry needs beside at and what: ${Object.entries(needed)
      .filter(([, names]) => names.length > 0)
      .map(([what, names]) => `${what} ${names.join(' and ')}`)
      .join(', ')}`,
  ),
);
const tonight = {
  log: v.pipe(
    v.array(logEntry, 'a list of entries, each with at and what'),
    v.check((entries) => entries.length <= 2000, 'at most 2000 entries'),
  ),
};

/** A block of which anything may be left out, or all of it. */
const some = <const E extends v.ObjectEntries>(entries: E) => v.optional(v.partial(v.object(entries)));

/** What a file may say. */
export const planSchema = v.object({
  ...head,
  title: v.optional(line(200)),
  anchor: some(anchor),
  kitchen: some({ ...kitchen, energyPrice: price }),
  oven: some({ ...oven, power: some(power), cavity: some(cavity), physics: some(physics) }),
  plate: some({ ...plate, diameter, ...custom }),
  pizzas: some({ ...pizzas, ...onPizzas }),
  dough: some({ liquid, ...dough, yeast: some(yeast), phases }),
  toppings: some({ ...toppings, cheese }),
  known: some(known),
  tonight: some(tonight),
});

/** The same with nothing left out. */
export const fullSchema = v.object({
  title: line(200),
  anchor: v.object(anchor),
  kitchen: v.object({ ...kitchen, energyPrice: v.optional(price) }),
  oven: v.object({
    ...oven,
    power: v.object(power),
    cavity: v.object(cavity),
    physics: v.partial(v.object(physics)),
  }),
  plate: v.object({ ...plate, custom: v.optional(v.object(custom)) }),
  pizzas: v.object({ ...pizzas, ...onPizzas }),
  dough: v.object({ liquid, ...dough, yeast: v.object(yeast), phases }),
  toppings: v.object({ ...toppings, cheese }),
  known: v.partial(v.object(known)),
});

/** A plan with nothing left out, still in the words of the file. */
export type FullPlan = v.InferInput<typeof fullSchema>;
/** The same in SI. */
export type FullPlanSI = v.InferOutput<typeof fullSchema>;

/** Names of the fields that only a plate of material `custom` has, all four of them. */
export const customFields = Object.keys(custom) as (keyof typeof custom)[];
