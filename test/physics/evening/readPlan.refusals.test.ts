import { describe, expect, it } from 'vitest';
import { wording } from '../../../physics/evening/problem.ts';
import { readPlanObject, readPlanText } from '../../../physics/evening/readPlan.ts';

const context = { now: 0 };
const head = { format: 'hearthclock/evening', version: 1 };

function problems(file: unknown): readonly string[] {
  const plan = readPlanObject(file, context);
  return plan.ok ? [] : plan.problems.map(wording);
}
const refused = (blocks: object): readonly string[] => problems({ ...head, ...blocks });

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
      'plate.width: found "47 cm"; allowed less than the width of the cavity, 46 cm',
    ],
    [
      'from wall to wall',
      { plate: { width: '46 cm' } },
      'plate.width: found "46 cm"; allowed less than the width of the cavity, 46 cm',
    ],
    [
      'too deep',
      { plate: { depth: '42 cm' } },
      'plate.depth: found "42 cm"; allowed less than the depth of the cavity, 41 cm',
    ],
    [
      'a dial below the kitchen',
      { oven: { setpoint: '60 degC', thermostatOffset: '-55 K' } },
      'oven.thermostatOffset: found "-55 K"; allowed setpoint and thermostat offset together at least 26 °C',
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
    { plate: { width: '45.9 cm', depth: '40.9 cm' } },
    { pizzas: { diameter: '35 cm' } },
    // What follows the room must allow all that the room may be.
    { kitchen: { roomTemperature: '-10 degC' } },
    { kitchen: { roomTemperature: '45 degC' } },
  ])('%j', (blocks) => {
    expect(refused(blocks)).toEqual([]);
  });
});
