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

function problems(file: unknown): readonly string[] {
  const plan = readPlanObject(file, context);
  return plan.ok ? [] : plan.problems.map(wording);
}
const refused = (blocks: object): readonly string[] => problems({ ...head, ...blocks });

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
  it('a setpoint above the dial is computed with a warning', () => {
    const plan = read({ ...head, oven: { preset: 'small', setpoint: '270 degC' } });
    expect(plan.warnings.map(({ code }) => code)).toEqual(['setpoint-above-highest']);
    expect(plan.warnings[0]?.message).toContain('230 °C');
  });
});

describe('what is refused, and how it is said', () => {
  it.each<[string, unknown, string]>([
    ['a list', [], 'plan: found a list; allowed an object'],
    ['null', null, 'plan: found null; allowed an object'],
    ['another format', { ...head, format: 'x' }, 'format: found "x"; allowed "hearthclock/evening"'],
    ['no format', { version: 1 }, 'format: found nothing; allowed "hearthclock/evening"'],
    ['a newer version', { ...head, version: 2 }, 'version: found 2, written by a newer program; allowed 1'],
    ['an older version', { ...head, version: 0 }, 'version: found 0; allowed 1'],
    ['a version as text', { ...head, version: '1' }, 'version: found "1"; allowed 1'],
  ])('%s', (_, file, message) => {
    expect(problems(file)).toEqual([message]);
  });
  it.each<[string, object, string]>([
    ['an unknown block', { pan: {} }, 'pan: found an unknown field; allowed format, version, title, anchor'],
    [
      'an unknown field',
      { plate: { thicknes: '9 mm' } },
      'plate.thicknes: found an unknown field; allowed material',
    ],
    [
      'one deeper',
      { oven: { power: { left: '1 kW' } } },
      'oven.power.left: found an unknown field; allowed bottom, top',
    ],
    [
      'one in a list',
      { dough: { liquid: [{ kind: 'water', percent: 60, x: 1 }] } },
      'dough.liquid.0.x: found',
    ],
    ['a name of every object', { plate: { toString: 1 } }, 'plate.toString: found an unknown field'],
    ['a line break in a key', { 'a\nb': 1 }, '"a\\nb": found an unknown field'],
    ['a list for a block', { plate: [] }, 'plate: found a list; allowed an object with material'],
    ['null for a block', { oven: null }, 'oven: found null; allowed an object with'],
    ['null for a field', { oven: { fan: null } }, 'oven.fan: found null; allowed true or false'],
    ['no pizza', { pizzas: { count: 0 } }, 'pizzas.count: found 0; allowed a whole number from 1 to 20'],
    ['21 pizzas', { pizzas: { count: 21 } }, 'pizzas.count: found 21; allowed'],
    ['2.5 pizzas', { pizzas: { count: 2.5 } }, 'pizzas.count: found 2.5; allowed'],
    ['a count as text', { pizzas: { count: '4' } }, 'pizzas.count: found "4"; allowed'],
    [
      'an infinite number',
      { dough: { salt: Infinity } },
      'dough.salt: found Infinity; allowed a number from 0 to 10',
    ],
    ['not a number', { dough: { salt: NaN } }, 'dough.salt: found NaN; allowed'],
    [
      'a cool oven',
      { oven: { setpoint: '59 degC' } },
      'oven.setpoint: found "59 degC"; allowed 60 degC to 500 degC',
    ],
    [
      'a kiln',
      { oven: { setpoint: '501 degC' } },
      'oven.setpoint: found "501 degC"; allowed 60 degC to 500 degC',
    ],
    [
      'a bare number',
      { oven: { setpoint: 250 } },
      'oven.setpoint: found 250; allowed text: a temperature with its unit',
    ],
    [
      'a bare number as text',
      { oven: { setpoint: '250' } },
      'oven.setpoint: found "250" without a unit; allowed',
    ],
    [
      'a wrong dimension',
      { plate: { thickness: '9.5 s' } },
      'plate.thickness: found "9.5 s"; allowed a length',
    ],
    [
      'an infinite length',
      { plate: { thickness: '1e400 mm' } },
      'plate.thickness: found "1e400 mm", which is not a finite',
    ],
    [
      'two readings',
      { plate: { thickness: '1,234 mm' } },
      'plate.thickness: found "1,234 mm", which can be read in two ways',
    ],
    [
      'a foil',
      { plate: { thickness: '0.4 mm' } },
      'plate.thickness: found "0.4 mm"; allowed 0.5 mm to 80 mm',
    ],
    [
      'an anvil',
      { plate: { thickness: '81 mm' } },
      'plate.thickness: found "81 mm"; allowed 0.5 mm to 80 mm',
    ],
    [
      'on the floor',
      { plate: { rackHeight: 0.02 } },
      'plate.rackHeight: found 0.02; allowed a number from 0.03 to 0.9',
    ],
    ['at the ceiling', { plate: { rackHeight: 0.91 } }, 'plate.rackHeight: found 0.91; allowed'],
    [
      'through the ceiling',
      { plate: { rackHeight: 0.9, thickness: '60 mm' } },
      'plate.rackHeight: found 0.9, which leaves 0 cm',
    ],
    [
      'too wide',
      { plate: { width: '47 cm' } },
      'plate.width: found "47 cm"; allowed at most the width of the cavity, 46 cm',
    ],
    [
      'too deep',
      { plate: { depth: '42 cm' } },
      'plate.depth: found "42 cm"; allowed at most the depth of the cavity, 41 cm',
    ],
    [
      'a surface it cannot have',
      { plate: { material: 'cordierite', surface: 'rusted' } },
      'plate.surface: found "rusted"; allowed for cordierite: seasoned, bare',
    ],
    [
      'an unknown material',
      { plate: { material: 'wood' } },
      'plate.material: found "wood"; allowed carbon-steel, ',
    ],
    [
      'a pizza over the edge',
      { pizzas: { diameter: '36 cm' } },
      'pizzas.diameter: found "36 cm"; allowed at most the smaller side of the plate, 35 cm',
    ],
    [
      'a loaf',
      { pizzas: { diameter: '20 cm', ballMass: '900 g' } },
      'pizzas.ballMass: found "900 g"; allowed 31 g to 471 g',
    ],
    [
      'a shade',
      { pizzas: { shade: 'brown' } },
      'pizzas.shade: found "brown"; allowed pale, golden, dark, or "lightness 53"',
    ],
    ['a lightness', { pizzas: { shade: 'lightness 20' } }, 'pizzas.shade: found "lightness 20"; allowed'],
    [
      'no day',
      { anchor: { time: '2026-02-30T19:30:00+01:00' } },
      'anchor.time: found "2026-02-30T19:30:00+01:00"; allowed a day from 01 to 28',
    ],
    [
      'a dry dough',
      { dough: { liquid: [{ kind: 'water', percent: 20 }] } },
      'dough.liquid: found 20 percent of flour in all; allowed 30 to 120',
    ],
    ['no liquid', { dough: { liquid: [] } }, 'dough.liquid: found a list; allowed 1 to 8 liquids'],
    [
      'half a liquid',
      { dough: { liquid: [{ kind: 'water' }] } },
      'dough.liquid.0.percent: found nothing; allowed a kind and a percent for every liquid',
    ],
    [
      'a liquid unknown',
      { dough: { liquid: [{ kind: 'custom', percent: 60 }] } },
      'dough.liquid.0.waterShare: found nothing; allowed',
    ],
    [
      'water explained',
      { dough: { liquid: [{ kind: 'water', percent: 60, waterShare: 1 }] } },
      'dough.liquid.0.waterShare: found 1; allowed nothing',
    ],
    [
      'no yeast',
      { dough: { yeast: { percent: 0 } } },
      'dough.yeast.percent: found 0; allowed a number from 0.005 to 10',
    ],
    [
      'a custom plate in part',
      { plate: { material: 'custom', density: '2 g/cm3' } },
      'plate.specificHeat: found nothing; allowed',
    ],
    [
      'figures of no custom plate',
      { plate: { density: '2 g/cm3' } },
      'plate.density: found "2 g/cm3"; allowed nothing',
    ],
    ['a two-line title', { title: 'a\nb' }, 'title: found "a\\nb"; allowed one line'],
    [
      'power',
      { oven: { power: { bottom: '20 kW' } } },
      'oven.power.bottom: found "20 kW"; allowed 0.2 kW to 12 kW',
    ],
    [
      'the moon',
      { kitchen: { altitude: '380000 m' } },
      'kitchen.altitude: found "380000 m"; allowed -400 m to 5000 m',
    ],
    [
      'a scald',
      { dough: { wantedTemperature: '60 degC' } },
      'dough.wantedTemperature: found "60 degC"; allowed 10 degC to 40 degC',
    ],
  ])('%s', (_, blocks, message) => {
    expect(refused(blocks)[0]).toContain(message);
  });
  it('lists every problem, one line each', () => {
    const all = refused({ a: 1, b: 2, plate: { thickness: 'x', c: 3 }, pizzas: { count: 0, bench: 'wood' } });
    expect(all.map((line) => line.split(':')[0])).toEqual([
      'a',
      'b',
      'plate.c',
      'plate.thickness',
      'pizzas.count',
      'pizzas.bench',
    ]);
  });
  it('refuses keys that reach for a prototype, and nothing is changed by them', () => {
    for (const [key, path] of [
      ['__proto__', '__proto__'],
      ['constructor', 'constructor'],
      ['prototype', 'prototype'],
    ] as const) {
      const text = `{"format":"hearthclock/evening","version":1,"oven":{"power":{"${key}":{"x":1}}}}`;
      const plan = readPlanText(text, context);
      expect(plan.ok ? [] : plan.problems.map((p) => p.path)).toEqual([`oven.power.${path}`]);
    }
    expect(Object.hasOwn(Object.prototype, 'x')).toBe(false);
  });
  it('refuses nesting deeper than 32, and text that would overflow a stack', () => {
    const nested = (depth: number): string => `{"a":${'['.repeat(depth - 1)}${']'.repeat(depth - 1)}}`;
    const problem = (text: string): string => {
      const plan = readPlanText(text, context);
      return plan.ok ? '' : wording(plan.problems[0]!);
    };
    expect(problem(nested(33))).toBe('plan: found nesting deeper than 32; allowed at most 32 levels');
    expect(problem(nested(400_000))).toContain('nesting deeper than 32');
    expect(problem(nested(32))).toContain('format: found nothing');
  });
});

describe('limits are allowed', () => {
  it.each([
    { pizzas: { count: 1 } },
    { pizzas: { count: 20 } },
    { oven: { setpoint: '60 degC' } },
    { oven: { setpoint: '140 degF' } },
    { oven: { setpoint: '500 degC' } },
    { oven: { setpoint: '932 degF' } },
    { plate: { rackHeight: 0.03 } },
    { plate: { rackHeight: 0.9 } },
    { plate: { thickness: '0.5 mm' } },
    { plate: { thickness: '80 mm' } },
    { plate: { width: '46 cm', depth: '41 cm' } },
    { pizzas: { diameter: '35 cm' } },
  ])('%j', (blocks) => {
    expect(refused(blocks)).toEqual([]);
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
