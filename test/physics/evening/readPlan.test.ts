import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readInstant, writeInstant } from '../../../physics/evening/clock.ts';
import { saturday } from '../../../physics/evening/demos.ts';
import type { Evening } from '../../../physics/evening/evening.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { readPlanObject, readPlanText, type PlanRead } from '../../../physics/evening/readPlan.ts';

const at = (text: string): number => {
  const read = readInstant(text);
  return read.ok ? read.instant.epochMilliseconds : NaN;
};
const context = { now: at('2026-01-30T12:00:00+01:00') };
const head = { format: 'hearthclock/evening', version: 1 };

function read(file: unknown): Extract<PlanRead, { ok: true }> {
  const plan = readPlanObject(file, context);
  if (!plan.ok) throw new Error(plan.problems.map(wording).join('\n'));
  return plan;
}
const evening = (file: object): Evening => read({ ...head, ...file }).evening;

describe('a whole plan in SI', () => {
  it('reads the demo evening', () => {
    const { evening: e, assumed, warnings } = read(saturday);
    expect(e.anchor.kind).toBe('eatAt');
    expect(writeInstant(e.anchor.time)).toBe('2026-01-31T19:30:00+01:00');
    expect(e.oven.setpoint).toBeCloseTo(523.15, 9);
    expect(e.oven.cavity.height).toBeCloseTo(0.355, 12);
    expect(e.plate.thickness).toBeCloseTo(0.008, 12);
    expect(e.pizzas.shadeLightness).toBe(60);
    expect(e.dough.restBeforeShaping).toBe(5400);
    expect(e.toppings.cheese).toEqual([
      { kind: 'low-moisture-mozzarella', mass: 0.12, waterShare: undefined },
    ]);
    expect(e.plate.custom).toBeUndefined();
    expect(warnings).toEqual([]);
    expect(assumed.map(({ path }) => path)).toEqual([
      'oven.startTemperature',
      'dough.flourTemperature',
      'dough.riseTemperature',
    ]);
    expect(assumed.every(({ taken, from }) => taken === '21 degC' && from === 'kitchen')).toBe(true);
  });
  it('takes units as people write them', () => {
    const e = evening({
      plate: { thickness: '3/8 in', width: '16"', depth: '14 1/2 in' },
      oven: { preset: 'north-american', setpoint: '550F', thermostatOffset: '-18 F degrees' },
      pizzas: { shade: 'lightness 53', diameter: '12 in', ballMass: '9 oz' },
    });
    expect(e.plate.thickness).toBeCloseTo(0.009525, 12);
    expect(e.plate.depth).toBeCloseTo(0.3683, 12);
    expect(e.oven.setpoint).toBeCloseTo(560.928, 3);
    expect(e.oven.thermostatOffset).toBeCloseTo(-10, 12);
    expect(e.pizzas.shadeLightness).toBe(53);
  });
  it('takes a plate of the cook, a beer dough and cheese of known water', () => {
    const e = evening({
      plate: {
        material: 'custom',
        density: '7.8 g/cm3',
        specificHeat: '470 J/(kg K)',
        thermalConductivity: '50 W/(m K)',
        emissivity: 0.8,
      },
      dough: { liquid: [{ kind: 'custom', percent: 62, waterShare: 0.9 }] },
      toppings: { cheese: [{ kind: 'custom', mass: '100 g', waterShare: 0.5 }] },
    });
    expect(e.plate.custom?.density).toBeCloseTo(7800, 6);
    expect(e.dough.liquid[0]?.waterShare).toBe(0.9);
    expect(e.toppings.cheese[0]?.waterShare).toBe(0.5);
  });
});

describe('what is left out', () => {
  it('comes from the demo evening, on the next day that the clock comes round', () => {
    const { evening: e, assumed } = read(head);
    expect(writeInstant(e.anchor.time)).toBe('2026-01-30T19:30:00+01:00');
    expect(e.title).toBe('Pizza evening');
    expect(e.oven.preset).toBe('european');
    expect(e.plate.surface).toBe('seasoned');
    const later = readPlanObject(head, { now: at('2026-11-25T20:00:00-05:00'), offsetMinutes: -300 });
    expect(later.ok && writeInstant(later.evening.anchor.time)).toBe('2026-11-26T19:30:00-05:00');
    expect(assumed).toContainEqual({
      path: 'anchor.time',
      taken: '2026-01-30T19:30:00+01:00',
      from: 'demo evening',
    });
    expect(assumed).toContainEqual({ path: 'dough.liquid', taken: 'water 62 %', from: 'demo evening' });
  });
  it('an evening that starts at no given time starts now', () => {
    expect(writeInstant(evening({ anchor: { kind: 'startAt' } }).anchor.time)).toBe(
      '2026-01-30T12:00:00+01:00',
    );
  });
  it.each([
    [{ fuel: 'gas' }, 'north-american-gas'],
    [{ bottomElement: 'exposed' }, 'north-american'],
    [{ cavity: { width: '60 cm', depth: '48 cm', height: '44 cm' }, bottomElement: 'hidden' }, 'strong'],
    [{ cavity: { width: '60 cm', depth: '48 cm', height: '44 cm' } }, 'north-american'],
    [{ cavity: { width: '42 cm', depth: '38 cm', height: '31 cm' } }, 'small'],
    [{ cavity: { width: '48 cm', depth: '42 cm', height: '36 cm' } }, 'strong'],
    [{ setpoint: '240 degC' }, 'european'],
    [{ fuel: 'gas', bottomElement: 'exposed' }, 'north-american-gas'],
  ])('an oven %j is taken as %s', (oven, preset) => {
    const { evening: e, assumed } = read({ ...head, oven, plate: { width: '35 cm', depth: '35 cm' } });
    expect(e.oven.preset).toBe(preset);
    expect(assumed).toContainEqual({ path: 'oven.preset', taken: preset, from: 'common default' });
    expect(assumed.some(({ path, from }) => path === 'oven.power.top' && from === 'oven preset')).toBe(true);
  });
  it.each([
    ['carbon-steel', 'seasoned'],
    ['cast-iron', 'seasoned'],
    ['cordierite', 'bare'],
    ['fired-clay', 'bare'],
    ['soapstone', 'bare'],
    ['aluminium', 'bare'],
    ['stainless-steel', 'bare'],
  ])('a plate of %s is %s', (material, surface) => {
    const { evening: e, assumed } = read({ ...head, plate: { material } });
    expect(e.plate.surface).toBe(surface);
    expect(assumed).toContainEqual({ path: 'plate.surface', taken: surface, from: 'plate material' });
  });
  it('follows the room, the dial, the diameter and the kind of yeast', () => {
    const e = evening({
      kitchen: { roomTemperature: '27 degC' },
      oven: { highestSetting: '230 degC' },
      pizzas: { diameter: '24 cm' },
      dough: { yeast: { kind: 'fresh' } },
    });
    expect(e.oven.startTemperature).toBeCloseTo(300.15, 9);
    expect(e.dough.riseTemperature).toBeCloseTo(300.15, 9);
    expect(e.oven.setpoint).toBeCloseTo(503.15, 9);
    expect(e.pizzas.ballMass).toBeCloseTo(0.16, 12);
    // Instant is 0.33 of fresh: "Breads" (ckbk), yeast conversions.
    expect(e.dough.yeast.percent).toBeCloseTo(0.2 / 0.33, 1);
  });
  it('is made to fit what the cook has', () => {
    const narrow = read({ ...head, oven: { cavity: { width: '36.5 cm', depth: '33 cm' } } });
    expect(narrow.evening.plate.width).toBeCloseTo(0.34, 12);
    expect(narrow.evening.plate.depth).toBeCloseTo(0.31, 12);
    expect(narrow.evening.pizzas.diameter).toBeCloseTo(0.3, 12);
    expect(narrow.assumed).toContainEqual({ path: 'plate.width', taken: '34 cm', from: 'common default' });
    const small = read({ ...head, plate: { width: '26 cm', depth: '12 in' } });
    expect(small.evening.pizzas.diameter).toBeCloseTo(0.26, 12);
    expect(small.evening.pizzas.ballMass).toBeCloseTo(0.188, 12);
  });
  it('a setpoint above the dial is computed with a warning', () => {
    const plan = read({ ...head, oven: { preset: 'small', setpoint: '270 degC' } });
    expect(plan.warnings.map(({ code }) => code)).toEqual(['setpoint-above-highest']);
    expect(plan.warnings[0]?.message).toContain('230 °C');
  });
});

describe('any JSON', () => {
  it('never throws, and refuses with problems or gives finite SI', () => {
    const finite = (value: unknown): boolean =>
      typeof value === 'number'
        ? Number.isFinite(value)
        : typeof value !== 'object' || value === null || Object.values(value).every(finite);
    const field = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom('9 mm', '250 degC', '1 kg', '5 K', 'gas', 'custom', 0.5),
    );
    const block = (names: readonly string[]) =>
      fc.dictionary(fc.constantFrom(...names), field, { maxKeys: 4 });
    const nearly = fc.record(
      {
        oven: block(['preset', 'setpoint', 'fuel', 'power', 'cavity', 'fan']),
        plate: block(['material', 'width', 'thickness', 'rackHeight', 'surface']),
        dough: block(['liquid', 'salt', 'yeast']),
      },
      { requiredKeys: [] },
    );
    const file = fc.oneof(
      fc.jsonValue(),
      nearly.map((blocks) => ({ ...head, ...blocks })),
    );
    fc.assert(
      fc.property(file, (json) => {
        const plan = readPlanText(JSON.stringify(json), context);
        return plan.ok
          ? finite(plan.evening)
          : plan.problems.length > 0 && plan.problems.every((p) => p.found !== '');
      }),
      { seed: 20_260_131, numRuns: 500 },
    );
  });
});
