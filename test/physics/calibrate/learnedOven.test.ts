/** A learned oven as a file and in a plan. The oven of these tests is invented. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blocksWith,
  figuresOf,
  readOven,
  versionOf,
  writeOven,
  type LearnedOven,
  type LearnedVersion,
} from '../../../physics/calibrate/learnedOven.ts';
import { saturday } from '../../../physics/evening/demos.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';

const learnedPlan: PlanFile = {
  ...saturday,
  oven: {
    ...saturday.oven,
    startTemperature: '40 degC',
    power: { bottom: '910 W', top: '0.77 kW' },
    thermostatOffset: '-12 K',
    physics: { wallEmissivity: 0.4 },
  },
  plate: { ...saturday.plate, thickness: '7.6 mm' },
  pizzas: { ...saturday.pizzas, browningRate: 1.25 },
  known: { power: 4, thermostatOffset: '3 K' },
};
const version = versionOf(learnedPlan, '2026-02-01T20:00:00+01:00');
const oven: LearnedOven = {
  format: 'hearthclock/oven',
  version: 1,
  name: 'Grandmother’s',
  versions: [version, { learnedAt: '2026-01-10T20:00:00Z', oven: { preset: 'european' } }],
};

/** The problems of the oven with one thing changed, as the window words them. */
function problemsOf(changed: unknown): readonly string[] {
  const read = readOven(typeof changed === 'string' ? changed : JSON.stringify(changed));
  return read.ok ? [] : read.problems.map(wording);
}
const withFirst = (change: object): unknown => ({ ...oven, versions: [{ ...version, ...change }] });

describe('the file of a learned oven', () => {
  it('comes back as it was written, keys in one order', () => {
    expect(readOven(writeOven(oven))).toEqual({ ok: true, value: oven });
    const { format, ...rest } = oven;
    expect(writeOven({ ...rest, format })).toBe(writeOven(oven));
  });

  it.each([
    [
      { ...oven, format: 'hearthclock/evening' },
      'format: found "hearthclock/evening"; allowed "hearthclock/oven"',
    ],
    [{ ...oven, version: 2 }, 'version: found 2, written by a newer program; allowed 1'],
    [{ ...oven, name: '' }, 'name: found ""; allowed one line of 1 to 60 characters'],
    [{ ...oven, versions: [] }, 'versions: found a list; allowed 1 to 20 versions'],
    [
      { ...oven, versions: Array.from({ length: 21 }, () => version) },
      'versions: found a list; allowed 1 to 20 versions',
    ],
    [{ ...oven, more: 1 }, 'more: found an unknown field; allowed format, version, name, versions'],
    [
      withFirst({ oven: { power: { bottom: '40 kW' } } }),
      'versions.0.oven.power.bottom: found "40 kW"; allowed 0.2 kW to 12 kW',
    ],
    [
      withFirst({ known: { power: -1 } }),
      /^versions\.0\.known\.power: found -1; allowed a number from 0 to/u,
    ],
    [withFirst({ learnedAt: 'Friday' }), /^versions\.0\.learnedAt: found "Friday"; allowed /u],
    [withFirst({ oven: { setpoint: '250 degC' } }), /^versions\.0\.oven\.setpoint: found an unknown field/u],
    [withFirst({ oven: undefined }), /^versions\.0\.oven: found nothing; allowed /u],
    [[oven], 'oven: found a list; allowed an object'],
    ['', 'oven: found nothing; allowed an oven in JSON'],
    ['{"format":', /^oven: found text that ends too early, at line 1, column 11; allowed JSON$/u],
    ['{"__proto__":{"a":1}}', '__proto__: found a key that no oven may have; allowed oven fields'],
    [' '.repeat(1_000_001), 'oven: found more than 1 MB; allowed at most 1 MB'],
  ])('%# is refused by field, value and what is allowed', (changed, says) => {
    const problems = problemsOf(changed);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(says);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readOven(text).ok).toBe(false);
      }),
    );
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('name', 'versions', 'version'), (value, field) => {
        const read = readOven(JSON.stringify({ ...oven, [field]: value }));
        if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
      }),
    );
    fc.assert(
      fc.property(
        fc.jsonValue(),
        fc.constantFrom('oven', 'plate', 'known', 'browningRate'),
        (value, field) => {
          const read = readOven(JSON.stringify(withFirst({ [field]: value })));
          if (!read.ok)
            expect(read.problems.every(({ path }) => path.startsWith(`versions.0.${field}`))).toBe(true);
        },
      ),
    );
  });
});

describe('a learned oven in a plan', () => {
  it('sets oven, plate, browning and what is known, and leaves dial and start to the plan', () => {
    const plan: PlanFile = {
      ...saturday,
      oven: { ...saturday.oven, setpoint: '230 degC', fan: true },
      pizzas: { ...saturday.pizzas, count: 2 },
      known: { liner: 1 },
    };
    const changed = { ...plan, ...blocksWith(plan, version) };
    expect(changed.oven).toEqual({ ...version.oven, setpoint: '230 degC' });
    expect(changed.plate).toEqual(learnedPlan.plate);
    expect(changed.pizzas).toEqual({ ...saturday.pizzas, count: 2, browningRate: 1.25 });
    expect(changed.known).toEqual({ power: 4, thermostatOffset: '3 K' });
    expect(changed.dough).toBe(plan.dough);
    expect(readPlanObject(changed, { now: 0, offsetMinutes: 60 }).ok).toBe(true);
  });

  it('takes away what was learned of another oven', () => {
    const plain: LearnedVersion = { learnedAt: version.learnedAt, oven: { preset: 'small' } };
    const blocks = blocksWith(learnedPlan, plain);
    expect(blocks.pizzas).toEqual(saturday.pizzas);
    expect(blocks.known).toBeUndefined();
    expect(blocks.plate).toBe(learnedPlan.plate);
    expect(blocks.oven).toEqual({ preset: 'small', setpoint: '250 degC', startTemperature: '40 degC' });
  });

  it('makes whole blocks where the plan leaves them to the built-in evening', () => {
    const bare: PlanFile = { format: 'hearthclock/evening', version: 1 };
    const changed = { ...bare, ...blocksWith(bare, version) };
    expect(changed.oven?.setpoint).toBe(saturday.oven.setpoint);
    expect(changed.pizzas).toEqual({ ...saturday.pizzas, browningRate: 1.25 });
    expect(versionOf(bare, version.learnedAt).oven.power).toEqual(saturday.oven.power);
  });

  it('leaves a dial that the plan does not set, and takes the built-in plate where nobody has one', () => {
    const plain: LearnedVersion = { learnedAt: version.learnedAt, oven: { preset: 'small' } };
    const bare: PlanFile = { format: 'hearthclock/evening', version: 1, oven: { fan: false } };
    const { oven: blocks, plate } = blocksWith(bare, plain);
    expect(blocks).toEqual({ preset: 'small' });
    expect(plate).toBe(saturday.plate);
  });

  it('shows its figures in SI', () => {
    const { power, thermostatOffset, plateThickness, browningRate } = figuresOf(version);
    expect(power.bottom).toBeCloseTo(910, 9);
    expect(power.top).toBeCloseTo(770, 9);
    expect(thermostatOffset).toBeCloseTo(-12, 9);
    expect(plateThickness).toBeCloseTo(0.0076, 9);
    expect(browningRate).toBe(1.25);
    expect(figuresOf(oven.versions[1]!)).toEqual({
      power: {},
      thermostatOffset: undefined,
      plateThickness: undefined,
      browningRate: undefined,
    });
  });
});
