import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BakeWatcher } from '../../../physics/evening/bakeWatcher.ts';
import { doorSeconds, openDoor } from '../../../physics/evening/bakeOne.ts';
import { lateStart } from '../../../physics/evening/lateStart.ts';
import type { LoadedOven } from '../../../physics/evening/loadedOven.ts';
import { prepareModel } from '../../../physics/evening/model.ts';
import { ovenHeat, runPreheat } from '../../../physics/evening/preheat.ts';
import { sampleAt } from '../../../physics/numerics/samples.ts';
import { OutOfRange } from '../../../physics/evening/problem.ts';
import type { Bake } from '../../../physics/evening/run.ts';
import { loadedAt, longerBake, shortestTurn } from '../../../physics/evening/series.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { saturationPressure } from '../../../physics/materials/water.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { evening, northAmerican } from '../../support/evenings.ts';

const seconds = ({ inAt, outAt }: Bake): number => outAt - inAt;

function unaccounted({ balance, water }: Bake): readonly [heat: number, water: number] {
  const { supplied, stored, lostToRoom, lostByVentAndDoor, lostBySteam } = balance;
  // Of a bake in which the elements hardly come on, the heat that moved is the measure.
  const moved = Math.max(supplied, Math.abs(stored), lostToRoom);
  return [
    Math.abs(supplied - stored - lostToRoom - lostByVentAndDoor - lostBySteam) / moved,
    Math.abs(water.before - water.after - water.evaporated) / water.before,
  ];
}

function loaded(asked: Evening): LoadedOven {
  const model = prepareModel(asked);
  const preheat = runPreheat(model);
  return loadedAt(model, preheat, preheat.preheat.plateReady);
}

describe('any evening that a plan file can describe', () => {
  const evenings = fc.record({
    preset: fc.constantFrom('european', 'north-american', 'north-american-gas', 'strong' as const),
    celsius: fc.integer({ min: 210, max: 250 }),
    plate: fc.constantFrom(
      { material: 'carbon-steel', surface: 'seasoned', thickness: '6 mm' },
      { material: 'cast-iron', surface: 'seasoned', thickness: '9 mm' },
      { material: 'aluminium', surface: 'bare', thickness: '8 mm' },
      { material: 'cordierite', surface: 'bare', thickness: '15 mm' },
      { material: 'fired-clay', surface: 'bare', thickness: '25 mm' },
    ),
    rackHeight: fc.double({ min: 0.12, max: 0.7, noNaN: true }),
    grams: fc.integer({ min: 180, max: 400 }),
    bench: fc.constantFrom('metal', 'flour', 'semolina', 'parchment'),
    shade: fc.constantFrom('pale', 'golden', 'dark'),
    fan: fc.boolean(),
    altitude: fc.integer({ min: 0, max: 2500 }),
    room: fc.integer({ min: 10, max: 32 }),
    sauce: fc.integer({ min: 0, max: 120 }),
    cheese: fc.integer({ min: 0, max: 180 }),
  });
  it('keeps its heat to 1e-9 and its water to 1e-9, in preheat and bake, and its order of time', () => {
    fc.assert(
      fc.property(evenings, (given) => {
        const run = simulateEvening(
          evening(given.preset, {
            kitchen: { altitude: `${given.altitude} m`, roomTemperature: `${given.room} degC` },
            oven: { setpoint: `${given.celsius} degC`, fan: given.fan },
            plate: { ...given.plate, width: '40 cm', depth: '35 cm', rackHeight: given.rackHeight },
            pizzas: { ballMass: `${given.grams} g`, bench: given.bench, shade: given.shade, count: 2 },
            toppings: {
              sauce: `${given.sauce} g`,
              cheese: [{ kind: 'low-moisture-mozzarella', mass: `${given.cheese} g` }],
            },
          }),
        );
        const { balance, airReady, plateReady } = run.preheat;
        const lost = balance.lostToRoom + balance.lostByVentAndDoor + balance.lostBySteam;
        expect(Math.abs(balance.supplied - balance.stored - lost)).toBeLessThan(1e-9 * balance.supplied);
        expect(airReady).toBeGreaterThan(0);
        let last = plateReady;
        for (const bake of run.bakes) {
          const [heat, water] = unaccounted(bake);
          expect(heat).toBeLessThan(1e-9);
          expect(water).toBeLessThan(1e-9);
          expect(bake.inAt).toBeGreaterThan(last);
          expect(bake.water.evaporated).toBeGreaterThan(0);
          expect(bake.waterLost).toBe(bake.water.evaporated);
          last = bake.outAt;
        }
        expect(run.energy).toBeGreaterThan(0);
      }),
      { seed: 2026, numRuns: 8 },
    );
  }, 60_000);
});

describe('from door to door', () => {
  it('the heat of oven, plate and pizza closes to 1e-9 with the door opened twice', () => {
    const oven = loaded(northAmerican());
    const { run } = oven;
    openDoor(oven, doorSeconds.load, undefined);
    oven.load();
    const heat = (): number => ovenHeat(run) + oven.centre.heatContent + oven.rim.heatContent;
    const before = heat();
    const ledger = { ...run.network.ledger };
    const closes = (): void => {
      const now = run.network.ledger;
      const supplied = now.supplied - ledger.supplied;
      const lost =
        now.lostToRoom +
        now.lostByVentAndDoor +
        now.lostBySteam -
        (ledger.lostToRoom + ledger.lostByVentAndDoor + ledger.lostBySteam);
      expect(Math.abs(supplied - lost - (heat() - before))).toBeLessThan(1e-9 * now.supplied);
    };
    const watcher = new BakeWatcher(oven);
    while (watcher.seconds < 120) watcher.step();
    closes();
    const shut = run.network.ledger.lostByVentAndDoor;
    openDoor(oven, 20, undefined);
    closes();
    // 20 s of an open door: up to 1.2 kW of radiation and 20 kJ for each filling of air exchanged (both worked out).
    const lost = run.network.ledger.lostByVentAndDoor - shut;
    expect(lost).toBeGreaterThan(10e3);
    expect(lost).toBeLessThan(250e3);
    while (watcher.seconds < 300) watcher.step();
    closes();
  });
});

describe('boiling is held during a bake: no wet cell gets hotter than water boils in it', () => {
  // Boiling points: IAPWS-IF97 at the pressure of the standard atmosphere.
  it.each([
    [0, 101325, 99.974],
    [2000, 79495, 93.315],
  ])('at %d m, where water boils under %d Pa at %d degC', (altitude, pressure, boiling) => {
    const oven = loaded(northAmerican({ kitchen: { altitude: `${altitude} m` } }));
    openDoor(oven, doorSeconds.load, undefined);
    oven.load();
    const watcher = new BakeWatcher(oven);
    let atBoiling = 0;
    let steepest = 0;
    while (watcher.seconds < 480) {
      watcher.step();
      for (const column of [oven.centre, oven.rim])
        for (let i = 0; i < column.size; i++) {
          const moisture = column.moisture(i);
          expect(moisture).toBeGreaterThanOrEqual(0);
          if (moisture < 0.3) continue;
          const T = column.temperature[i]!;
          // p_s(T_b) = p/a_w: the boiling point that the water left allows, half a kelvin above it at most.
          steepest = Math.max(steepest, column.activity(i) * saturationPressure(T - 0.5));
          if (T - 273.15 > boiling - 0.5) atBoiling += 1;
        }
    }
    expect(atBoiling).toBeGreaterThan(100);
    expect(steepest).toBeLessThan(pressure * 1.0001);
    expect(oven.centre.baseFace - 273.15).toBeGreaterThan(boiling + 60);
  });
});

describe('effects switched off one by one', () => {
  const full = simulateEvening(northAmerican());
  it('without evaporation nothing is lost and the base browns sooner: no heat goes into steam', () => {
    const dry = simulateEvening(northAmerican(), { effects: { evaporation: false } });
    expect(dry.bakes[0]!.waterLost).toBe(0);
    for (const lightness of [70, 60, 50])
      expect(dry.bakes[0]!.secondsToLightness.get(lightness)!).toBeLessThan(
        full.bakes[0]!.secondsToLightness.get(lightness)!,
      );
    expect(dry.bakes[0]!.crumb).toBeGreaterThan(full.bakes[0]!.crumb + 20);
  });
  it('without radiation the plate is ready far later, and the top takes in less', () => {
    const dark = simulateEvening(northAmerican(), { effects: { radiation: false } });
    expect(dark.preheat.plateReady).toBeGreaterThan(2 * full.preheat.plateReady);
    expect(dark.bakes[0]!.rimLightness).toBeGreaterThan(full.bakes[0]!.rimLightness);
  });
});

describe('the end of a bake', () => {
  it.each(['pale', 'golden', 'dark'])(
    'is located, not rounded to a step: a %s base has its shade',
    (shade) => {
      const asked = northAmerican({ pizzas: { shade } });
      const [bake] = simulateEvening(asked).bakes;
      // pale, the crumb or the cheese may have been waited for
      expect(bake!.baseLightness).toBeLessThanOrEqual(asked.pizzas.shadeLightness);
      if (bake!.decidedBy !== 'base') return;
      expect(bake!.baseLightness).toBeGreaterThan(asked.pizzas.shadeLightness - 0.02);
      const reached = bake!.secondsToLightness.get(asked.pizzas.shadeLightness)!;
      expect(Math.abs(seconds(bake!) - reached)).toBeLessThan(0.1);
    },
  );
});

describe('four pizzas', () => {
  const run = simulateEvening(northAmerican({ pizzas: { count: 4 } }));
  it('each goes in after the last came out and the hands had their time, none bakes a quarter longer', () => {
    expect(run.bakes.map(({ pizza }) => pizza)).toEqual([1, 2, 3, 4]);
    const first = seconds(run.bakes[0]!);
    run.bakes.slice(1).forEach((bake, i) => {
      expect(bake.inAt - run.bakes[i]!.outAt).toBeGreaterThanOrEqual(shortestTurn);
      expect(bake.inAt - run.bakes[i]!.outAt).toBeLessThan(21 * 60);
      expect(seconds(bake)).toBeLessThan(longerBake * first + 0.1);
    });
  });
  it('tells what happens to the plate: colder after each bake, warmer again at the next load', () => {
    for (const bake of run.bakes) expect(bake.plateTopAtUnload).toBeLessThan(bake.plateTopAtLoad - 10);
    run.bakes.slice(1).forEach((bake, i) => {
      expect(bake.plateTopAtLoad).toBeGreaterThan(run.bakes[i]!.plateTopAtUnload);
    });
  });
  it('has a trace without gaps from switching on to ten minutes after the last', () => {
    const { seconds: t } = run.trace;
    expect(t[0]).toBe(0);
    expect(t.at(-1)!).toBeGreaterThan(run.bakes[3]!.outAt + 600);
    for (let i = 1; i < t.length; i++) {
      expect(t[i]!).toBeGreaterThan(t[i - 1]!);
      expect(t[i]! - t[i - 1]!).toBeLessThan(20);
    }
  });
  it('is the same computed again', () => {
    const again = simulateEvening(northAmerican({ pizzas: { count: 4 } }));
    expect(again.bakes.map(seconds)).toEqual(run.bakes.map(seconds));
    expect(again.preheat.plateReady).toBe(run.preheat.plateReady);
  });
});

describe('a late start', () => {
  it('costs more the later: a colder plate and a longer bake', () => {
    const asked = northAmerican();
    const run = simulateEvening(asked);
    const rows = lateStart(asked, run, [0, 5, 10, 15, 20, 500]);
    expect(rows.map(({ lateMinutes }) => lateMinutes)).toEqual([0, 5, 10, 15, 20]);
    expect(Math.abs(rows[0]!.bakeMinutes * 60 - seconds(run.bakes[0]!))).toBeLessThan(0.5);
    for (let i = 2; i < rows.length; i++) {
      expect(rows[i]!.plateTopC).toBeLessThan(rows[i - 1]!.plateTopC);
      expect(rows[i]!.bakeMinutes).toBeGreaterThan(rows[i - 1]!.bakeMinutes);
    }
  });
});

describe('an oven too weak for its setting', () => {
  const weak = (setpoint: string): Evening =>
    northAmerican({ oven: { setpoint, power: { bottom: '800 W', top: '200 W' } } });
  const refusal = (asked: Evening): OutOfRange | undefined => {
    try {
      simulateEvening(asked);
    } catch (error) {
      if (error instanceof OutOfRange) return error;
      throw error;
    }
    return undefined;
  };
  it('is refused by the name of the setting, with the highest it reaches; a little below that is planned', () => {
    const { problem } = refusal(weak('288 degC'))!;
    expect(problem.path).toBe('oven.setpoint');
    expect(problem.found).toBe('288 degC');
    const reached = Number(/^(\d+) degC at most/u.exec(problem.allowed)?.[1]);
    expect(reached).toBeGreaterThan(150);
    expect(reached).toBeLessThan(288);
    expect(refusal(weak(`${reached + 5} degC`))?.problem.path).toBe('oven.setpoint');
    expect(refusal(weak(`${reached - 5} degC`))).toBeUndefined();
  });
  it('is not blamed when it is the plate that takes too long: a bright plate of 80 mm in a weak glow', () => {
    const slow = evening('small', {
      kitchen: { roomTemperature: '10 degC' },
      oven: { setpoint: '129 degC', thermostatOffset: '-19 K', power: { bottom: '2.08 kW', top: '3.33 kW' } },
      plate: {
        material: 'stainless-steel',
        surface: 'bare',
        thickness: '80 mm',
        width: '41.5 cm',
        depth: '37.8 cm',
      },
    });
    const { problem } = refusal(slow)!;
    expect(problem.path).toBe('oven.setpoint');
    expect(problem.allowed).toContain('within 8 h');
  });
});

describe('finer steps and cells', () => {
  const halved = {
    preheatStep: 2.5,
    bakeStep: 1,
    recoveryStep: 2,
    plateLayers: 8,
    mesh: { dough: 40, rim: 28, sauce: 6, cheese: 8, firstCell: 0.06e-3 },
  };
  const stone = { material: 'cordierite', surface: 'bare', thickness: '15 mm' };
  it.each([
    ['steel', {}, 3],
    // 1 % of the bake: the layers of the stone and the cells of the dough add up
    ['cordierite', stone, 5],
  ])(
    'on %s move the plate < 0.5 K, ready < 0.2 min, L* < 0.5, its browning by seconds',
    (name, plate, within) => {
      const [usual, fine] = [undefined, halved].map((resolution) =>
        simulateEvening(northAmerican({ plate }), resolution === undefined ? {} : { resolution }),
      );
      const [a, b] = [usual!.bakes[0]!, fine!.bakes[0]!];
      const ready = (fine!.preheat.plateReady - usual!.preheat.plateReady) / 60;
      const browned = b.secondsToLightness.get(50)! - a.secondsToLightness.get(50)!;
      const lightness = [100, 200].map((time) => {
        const [coarse, close] = [a, b].map(({ trace, inAt }) =>
          sampleAt(trace.seconds, trace.baseLightness, inAt + time),
        );
        return close! - coarse!;
      });
      // While it warms: once settled the phase of the thermostat's ripple would be compared.
      const warming = [600, 1200, 1800].map((time) => {
        const [coarse, close] = [usual!, fine!].map(({ preheat: { trace } }) =>
          sampleAt(trace.seconds, trace.plateTop, time),
        );
        return close! - coarse!;
      });
      const show = (values: readonly number[]): string => values.map((value) => value.toFixed(2)).join(', ');
      console.log(
        `${name}: plate ${show(warming)} K, ready ${show([ready])} min, L* ${show(lightness)}, ` +
          `L* 50 after ${show([browned])} s, whole bake ${show([seconds(b) - seconds(a)])} s`,
      );
      for (const difference of warming) expect(Math.abs(difference)).toBeLessThan(0.5);
      expect(Math.abs(ready)).toBeLessThan(0.2);
      expect(Math.abs(browned)).toBeLessThan(within);
      expect(Math.abs(seconds(b) - seconds(a))).toBeLessThan(within);
      for (const difference of lightness) expect(Math.abs(difference)).toBeLessThan(0.5);
    },
  );
});
