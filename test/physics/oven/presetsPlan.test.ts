import { describe, expect, it } from 'vitest';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import type { PlanRead } from '../../../physics/evening/readPlan.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { planWith } from '../../../physics/evening/planWith.ts';
import { setPath, allPlanPaths, fieldAt } from '../../../physics/evening/planPath.ts';
import { demos } from '../../../physics/evening/demos.ts';
import { simulateEvening } from '../../../physics/evening/simulate.ts';
import { prepareModel } from '../../../physics/evening/model.ts';
import { sampleEngine } from '../../support/sampleRun.ts';

type Blocks = Readonly<Record<string, unknown>>;

function read(blocks: Blocks): PlanRead {
  return readPlanObject({ format: 'hearthclock/evening', version: 1, ...blocks }, { now: 0 });
}

function evening(blocks: Blocks) {
  const answer = read(blocks);
  if (!answer.ok) throw new Error(answer.problems.map(wording).join('; '));
  return answer;
}

function refused(blocks: Blocks): string {
  const answer = read(blocks);
  return answer.ok ? 'taken' : answer.problems.map(wording).join('\n');
}

describe('the figures of an oven in a plan', () => {
  it('are read with their units, each by its path', () => {
    const { oven } = evening({
      oven: {
        preset: 'european',
        physics: {
          linerCapacity: '3.6 kJ/(m2 K)',
          ventFlow: '1.8 m3/h',
          elementLoad: '4 W/cm2',
          seamConductance: '0.8 W/K',
          sensorLag: '70 s',
          doorGapConductance: '3 W/(m2 K)',
          rackCapacity: '1.2 kJ/K',
          holdShareTop: 0.5,
        },
      },
    }).evening;
    expect(oven.physics.linerCapacity).toBeCloseTo(3600, 9);
    expect(oven.physics.ventFlow).toBeCloseTo(0.5e-3, 12);
    expect(oven.physics.elementLoad).toBeCloseTo(40_000, 6);
    expect(oven.physics.rackCapacity).toBeCloseTo(1200, 9);
    expect(oven.physics.holdShareTop).toBe(0.5);
  });
  it('are all fields that can be set one by one, and so is every other', () => {
    const own = allPlanPaths.filter((path) => path.startsWith('oven.physics.'));
    expect(own.length).toBeGreaterThan(20);
    for (const path of own) expect(fieldAt(path)?.allowed, path).not.toBe('');
    const set = setPath(demos.saturday, 'oven.physics.woolThickness', '1 1/2 in');
    expect(set.ok && set.file.oven?.physics).toEqual({ woolThickness: '1 1/2 in' });
  });
  it.each([
    [{ wool: '30 mm' }, 'oven.physics.wool: found an unknown field; allowed linerCapacity, rackCapacity'],
    [{ woolThickness: 30 }, 'oven.physics.woolThickness: found 30; allowed text: a length with its unit'],
    [{ woolThickness: '30 s' }, 'oven.physics.woolThickness: found "30 s"; allowed a length'],
    [{ woolThickness: '3 mm' }, 'oven.physics.woolThickness: found "3 mm"; allowed 5 mm to 200 mm'],
    [{ wallEmissivity: 1.2 }, 'oven.physics.wallEmissivity: found 1.2; allowed a number from 0.05 to 0.98'],
    [{ ventFlow: '0.5 kg/s' }, 'oven.physics.ventFlow: found "0.5 kg/s"; allowed a flow of air'],
    [
      { holdShareBottom: 0, holdShareTop: 0 },
      'oven.physics.holdShareBottom: found 0; allowed shares of bottom and top that leave at least 100 W',
    ],
  ])('are refused by name: %j', (physics, message) => {
    expect(refused({ oven: { preset: 'european', physics } })).toContain(message);
  });
});

describe('a round plate', () => {
  const round = { plate: { shape: 'round', diameter: '36 cm' } } as const;
  it('has a diameter, and the pizza keeps a centimetre from its edge', () => {
    const { plate, pizzas } = evening(round).evening;
    expect([plate.width, plate.depth]).toEqual([plate.width, plate.width]);
    expect(plate.width).toBeCloseTo(0.36, 12);
    expect(pizzas.diameter).toBeCloseTo(0.3, 12);
    expect(refused({ ...round, pizzas: { diameter: '36 cm' } })).toContain(
      'pizzas.diameter: found "36 cm"; allowed at most 35 cm, the diameter of the plate less 1 cm',
    );
    const own = { count: 2, each: [{ diameter: '36 cm', ballMass: '300 g' }] };
    expect(refused({ ...round, pizzas: own })).toContain(
      'pizzas.each.0.diameter: found "36 cm"; allowed at most 35 cm, the diameter of the plate less 1 cm',
    );
  });
  it('that does not fit is refused by its diameter; left out, it takes what fits', () => {
    expect(refused({ plate: { shape: 'round', diameter: '45 cm' } })).toContain(
      'plate.diameter: found "45 cm"; allowed less than the depth of the cavity, 41 cm',
    );
    const { evening: without, assumed } = evening({ plate: { shape: 'round' } });
    expect(without.plate.width).toBeCloseTo(0.35, 12);
    expect(assumed).toContainEqual({ path: 'plate.diameter', taken: '35 cm', from: 'demo evening' });
    expect(assumed.map(({ path }) => path)).not.toContain('plate.width');
  });
  it('does not use sides, nor a square plate a diameter, and says so', () => {
    const both = { width: '40 cm', depth: '35 cm', diameter: '36 cm' };
    const codes = (shape: string) =>
      evening({ plate: { ...both, shape } }).warnings.map(({ code, message }) => `${code} ${message}`);
    expect(codes('round')).toEqual([
      'plate-shape-ignores The plate is round: its width 40 cm and depth 35 cm are not used.',
    ]);
    expect(codes('rectangular')).toEqual([
      'plate-shape-ignores The plate is rectangular: its diameter 36 cm is not used.',
    ]);
  });
  it('behaves like the square of its area: mass the same, settled within 1 K, ready within 2 %', () => {
    const side = (36 * Math.sqrt(Math.PI)) / 2;
    const square = {
      plate: { width: `${side} cm`, depth: `${side} cm` },
      pizzas: { diameter: '30 cm' },
    };
    const [a, b] = [round, square].map((blocks) => prepareModel(evening(blocks).evening));
    expect(Math.abs(a!.settled.plate - b!.settled.plate)).toBeLessThan(1);
    const [roundRun, squareRun] = [round, square].map((blocks) =>
      simulateEvening({
        ...evening(blocks).evening,
        pizzas: { ...evening(blocks).evening.pizzas, count: 1 },
      }),
    );
    expect(Math.abs(roundRun!.preheat.plateReady / squareRun!.preheat.plateReady - 1)).toBeLessThan(0.02);
  });
});

describe('what the energy costs', () => {
  const planned = (energyPrice?: string) => {
    const answer = evening({ kitchen: energyPrice === undefined ? {} : { energyPrice } });
    const plan = planWith(answer.evening, { assumed: [], warnings: [], band: false }, sampleEngine());
    if (!plan.ok) throw new Error(plan.problems.map(wording).join('; '));
    return plan.answer;
  };
  it.each([
    ['0.32 EUR/kWh', 0.32, 'EUR'],
    ['0,32 €/kWh', 0.32, '€'],
    ['$0.15/kWh', 0.15, '$'],
    ['32 ct / kWh', 32, 'ct'],
  ])('%s', (text, perKWh, currency) => {
    const { cost, energyKWh, preheat } = planned(text);
    expect(cost).toMatchObject({ perKWh, currency });
    expect(cost!.evening).toBeCloseTo(perKWh * energyKWh, 10);
    expect(cost!.preheat).toBeCloseTo(perKWh * preheat.energyKWh, 10);
  });
  it('is not said when the plan gives no price', () => {
    expect(planned().cost).toBeUndefined();
  });
  it.each(['0.32', '0.32 EUR', 'EUR/kWh', '-1 EUR/kWh', '1,234 EUR/kWh', '0.3 EUR/kWh extra', ''])(
    'refuses %j',
    (energyPrice) => {
      expect(refused({ kitchen: { energyPrice } })).toContain('allowed a price a kWh');
    },
  );
});

describe('what an answer says of the plate', () => {
  it('its mass, what it stores, what a thermometer shows, how long it stays hot', () => {
    const { evening: what } = evening({});
    const plan = planWith(what, { assumed: [], warnings: [], band: false }, sampleEngine());
    if (!plan.ok) throw new Error('not planned');
    const { preheat, cooling } = plan.answer;
    // 40 x 35 cm x 8 mm of steel at 7850 kg/m3
    expect(preheat.plateMassKg).toBeCloseTo(8.792, 3);
    // EN 1993-1-2:2005, 3.4.1.2: 547 J/(kg K) at 250 degC, and 115.1 kJ/kg from 20 to 250 degC (worked out beforehand)
    expect(preheat.plateHeatJPerK / 8.792).toBeGreaterThan(540);
    expect(preheat.plateHeatJPerK / 8.792).toBeLessThan(552);
    expect((preheat.plateEnergyKWh * 3600) / 8.792).toBeGreaterThan(110);
    expect((preheat.plateEnergyKWh * 3600) / 8.792).toBeLessThan(116);
    expect(Math.abs(preheat.infrared.showsC - preheat.plateTopC)).toBeLessThan(25);
    expect(cooling.belowC).toBeCloseTo(43, 9);
    expect(cooling.openAirMinutes).toBeGreaterThan(20);
    expect(cooling.shutOvenMinutes).toBe(240);
  });
});

describe('what cannot be computed', () => {
  it('is refused by the setting: powers that no cavity holds', () => {
    const hot = evening({
      oven: {
        preset: 'small',
        setpoint: '500 degC',
        highestSetting: '500 degC',
        power: { bottom: '12 kW', top: '12 kW' },
      },
      plate: { material: 'aluminium', width: '36 cm', depth: '32 cm', thickness: '0.5 mm' },
      pizzas: { diameter: '28 cm' },
    }).evening;
    const plan = planWith(
      hot,
      { assumed: [], warnings: [], band: false },
      { ...sampleEngine(), simulateEvening: (what) => simulateEvening(what) },
    );
    expect(plan.ok).toBe(false);
    if (plan.ok) return;
    expect(plan.problems.map(({ path }) => path)).toEqual(['oven.setpoint']);
    expect(plan.problems[0]!.found).toBe('500 degC with 24.0 kW in this cavity');
  });
});
