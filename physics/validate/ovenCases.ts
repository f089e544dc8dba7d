/** Published figures of ovens without pizza: energy, heat-up, control; and those of the European energy label. */
import { toKWh } from '../quantities/index.ts';
import { zeroCelsius, stefanBoltzmann } from '../materials/constants.ts';
import type { OvenRun } from '../oven/ovenRun.ts';
import { ovenPresets } from '../oven/presets.ts';
import { prepareModel } from '../evening/model.ts';
import type { PlanFile } from '../evening/planFile.ts';
import { runPreheat } from '../evening/preheat.ts';
import { blockEfficiency } from './blockTest.ts';
import { compared, type ValidationCase } from './case.ts';
import { gasPreset, labelCases } from './labelCases.ts';
import { emptyOven, eveningFor, step } from './ovens.ts';

const readBySensor = 'read from the air without lag at first; then from a body as quick as the sensor';

/** kWh from a cold start */
function energyIn(run: OvenRun, seconds: number): number {
  run.advance(seconds, step);
  return toKWh(run.network.ledger.supplied);
}

function signalMinutes(run: OvenRun): number {
  run.advance(3600, step);
  return (run.signalledAt ?? Infinity) / 60;
}

/** min until the oven signals with a plate in it */
function signalWith(oven: NonNullable<PlanFile['oven']>, plate: NonNullable<PlanFile['plate']>): number {
  const evening = eveningFor({ oven, plate, pizzas: { diameter: '11 in' } });
  return runPreheat(prepareModel(evening), 3600).preheat.airReady / 60;
}

/**
 * First crest (K above its target) and, once it has settled, half of the swing of a body in the cavity that is as quick
 * as the oven's own sensor: no one says how quick the thermometer was.
 */
function swing(run: OvenRun): { readonly first: number; readonly half: number } {
  const { thermostat } = run;
  let first = -Infinity;
  while (run.switchedOn.length < 1 && run.time < 2 * 3600) {
    run.step(step);
    first = Math.max(first, thermostat.sensor - thermostat.setting.target);
  }
  run.advance(2 * 3600, step);
  let [low, high] = [Infinity, -Infinity];
  run.advance(3 * 3600, step, () => {
    low = Math.min(low, thermostat.sensor);
    high = Math.max(high, thermostat.sensor);
  });
  return { first, half: (high - low) / 2 };
}

const guide = 'Consumer Guide to Home Energy Savings, as quoted (second hand)';
const guideNote = 'mean of ovens of its time, size and empty state not said: a third either way';

function oneHour(): readonly ValidationCase[] {
  return [
    compared(
      {
        id: 'hour-electric-350F',
        source: guide,
        quantity: 'energy of one hour at 350 degF, electric',
        published: 2.0,
        unit: 'kWh',
        tolerance: 0.67,
        note: guideNote,
      },
      energyIn(emptyOven({ preset: 'north-american', setpoint: '350 degF' }), 3600),
    ),
    compared(
      {
        id: 'hour-gas-350F',
        source: guide,
        quantity: 'energy of one hour at 350 degF, gas, 0.112 therm',
        published: 3.28,
        unit: 'kWh',
        tolerance: 1.1,
        note: guideNote,
        adjusted: gasPreset,
      },
      energyIn(emptyOven({ preset: 'north-american-gas', setpoint: '350 degF' }), 3600),
    ),
    compared(
      {
        id: 'fan-45min-325F',
        source: guide,
        quantity: 'energy of 45 min at 325 degF, electric with fan',
        published: 1.39,
        unit: 'kWh',
        tolerance: 0.46,
        note: guideNote,
      },
      energyIn(emptyOven({ preset: 'north-american', fan: true, setpoint: '325 degF' }), 2700),
    ),
  ];
}

function blocks(): readonly ValidationCase[] {
  const source =
    'US Department of Energy, cooking efficiency of self-cleaning ovens (technical support documents; from memory)';
  const note = 'mean of a class of products, from memory: 25 %';
  return [
    compared(
      {
        id: 'block-electric',
        source,
        quantity: 'efficiency with the aluminium block, electric',
        published: 13.8,
        unit: '%',
        tolerance: 3.5,
        note,
      },
      100 * blockEfficiency({ preset: 'north-american' }, 0.45),
    ),
    compared(
      {
        id: 'block-gas',
        source,
        quantity: 'efficiency with the aluminium block, gas',
        published: 7.1,
        unit: '%',
        tolerance: 1.8,
        note,
        adjusted: `${gasPreset}; 9.1 % and outside before`,
      },
      100 * blockEfficiency({ preset: 'north-american-gas' }, 0.45),
    ),
  ];
}

function heatUp(): readonly ValidationCase[] {
  return [
    compared(
      {
        id: 'signal-electric-350F',
        source: "a North American maker's manual, Preheating (double cavity, all racks in)",
        quantity: 'signal at 350 degF, electric',
        published: 13.5,
        unit: 'min',
        tolerance: 4,
        note: '12 to 15 min printed, for the maker’s own power and three racks a cavity',
      },
      signalMinutes(
        emptyOven({ preset: 'north-american', setpoint: '350 degF', physics: { rackCapacity: '2.2 kJ/K' } }),
      ),
    ),
    compared(
      {
        id: 'signal-electric-550F',
        source: 'The Home Pizzeria, preheating a stone or steel (hobby page)',
        quantity: 'air at 550 degF with a 1/4 in steel, electric',
        published: 20,
        unit: 'min',
        tolerance: 5,
        note: '"within the first 20 min", one oven, the plate upper than the middle',
        adjusted: 'computed empty at first (14.7 min), then with the steel that the page is about',
      },
      signalWith(
        { preset: 'north-american', setpoint: '550 degF' },
        { material: 'carbon-steel', width: '16 in', depth: '14 in', thickness: '0.25 in', rackHeight: 0.5 },
      ),
    ),
    compared(
      {
        id: 'signal-gas-500F',
        source: 'hobby forum, Economical Baking or Pizza Stone Alternative',
        quantity: 'air at 500 degF, gas, quarry tiles on the floor',
        published: 25,
        unit: 'min',
        tolerance: 12,
        note: 'weak: one oven of unknown burner; the model’s tiles lie 1.4 cm above the floor',
        adjusted: `${gasPreset}; computed empty at first (11 min), then with the tiles`,
      },
      signalWith(
        { preset: 'north-american-gas', setpoint: '500 degF' },
        { material: 'fired-clay', width: '18 in', depth: '12 in', thickness: '12 mm', rackHeight: 0.03 },
      ),
    ),
  ];
}

function control(): readonly ValidationCase[] {
  const electric = swing(emptyOven({ preset: 'north-american', setpoint: '350 degF' }));
  const gas = swing(emptyOven({ preset: 'north-american-gas', setpoint: '350 degF' }));
  const magazine = 'cookery magazine, test kitchen, issue 54';
  const open = emptyOven({ preset: 'north-american', setpoint: '350 degF' });
  open.advance(5400, step);
  const before = open.thermostat.sensor;
  open.doorOpen = true;
  open.advance(5400 + 8, 1);
  open.doorOpen = false;
  let lowest = before;
  open.advance(5400 + 188, 1, () => {
    lowest = Math.min(lowest, open.thermostat.sensor);
  });
  return [
    compared(
      {
        id: 'first-crest-350F',
        source: magazine,
        quantity: 'first crest above 350 degF, electric',
        published: 34.7,
        unit: 'K',
        tolerance: 20,
        note: '50 to 75 degF; other owners saw 20 degF',
        adjusted: `${readBySensor}: 31 K and within before`,
      },
      electric.first,
    ),
    compared(
      {
        id: 'swing-electric-350F',
        source: magazine,
        quantity: 'half of the swing about 350 degF, electric',
        published: 13.9,
        unit: 'K',
        tolerance: 8,
        note: '25 degF; a repair trade says 20 degF',
        adjusted: `${readBySensor}: 17 K before`,
      },
      electric.half,
    ),
    compared(
      {
        id: 'swing-gas-350F',
        source: 'appliance repair trade (hydraulic thermostat)',
        quantity: 'half of the swing about 350 degF, hydraulic',
        published: 11.1,
        unit: 'K',
        tolerance: 8,
        note: '20 degF at a thermometer of unknown lag, up to 80 degF of overshoot in poor ovens',
        adjusted: `${readBySensor}: 50 K and outside before; ${gasPreset}`,
      },
      gas.half,
    ),
    compared(
      {
        id: 'door-open',
        source: 'consumer page',
        quantity: 'drop of the sensor after the door stood open for 8 s',
        published: 13.9,
        unit: 'K',
        tolerance: 10,
        note: 'weak: 25 degF an opening, seconds and thermometer not said',
      },
      before - lowest,
    ),
  ];
}

/** Share of its heat that a bare rod gives off by radiation, cavity at 20 degC. */
function rodRadiantShare(): ValidationCase {
  const { surfaceLoad, emissivity, convection } = ovenPresets['north-american'].parameters.element;
  const cold = 20 + zeroCelsius;
  const radiated = (T: number): number => emissivity * stefanBoltzmann * (T ** 4 - cold ** 4);
  let [low, high] = [cold, 1500];
  while (high - low > 1e-6) {
    const T = (low + high) / 2;
    if (radiated(T) + convection * (T - cold) > surfaceLoad) high = T;
    else low = T;
  }
  return compared(
    {
      id: 'rod-radiant-share',
      source: 'thesis 81679, national thesis centre (TR), abstract',
      quantity: 'radiant share of a bare heater at 45 kW/m2',
      published: 76.5,
      unit: '%',
      tolerance: 5.5,
      note: '71 to 82 % for 42 to 87 kW/m2, which end belongs to which not said: the whole range',
      adjusted: 'first set beside the lower end, 71.5 within 10 %, which its source does not say',
    },
    (100 * radiated(low)) / surfaceLoad,
  );
}

/** Ovens without pizza; a few seconds. */
export function ovenCases(): readonly ValidationCase[] {
  return [...oneHour(), ...blocks(), ...heatUp(), ...control(), rodRadiantShare(), ...labelCases()];
}
