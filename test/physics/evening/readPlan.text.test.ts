import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoIds, demos } from '../../../physics/evening/demos.ts';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { allPlanPaths, fieldAt, setPath } from '../../../physics/evening/planPath.ts';
import { parsePlanText, writePlan } from '../../../physics/evening/planText.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { readQuantity, type QuantityKind } from '../../../physics/quantities/index.ts';
import { readPlanObject, readPlanText } from '../../../physics/evening/readPlan.ts';

const context = { now: 0 };
const bare: PlanFile = { format: 'hearthclock/evening', version: 1 };

function fault(text: string): string {
  const parsed = parsePlanText(text);
  return parsed.ok ? 'parsed' : parsed.problems.map(wording).join('\n');
}

describe('text that is not JSON', () => {
  it.each([
    ['', 'plan: found nothing; allowed a plan in JSON'],
    ['hello', 'plan: found "hello" at line 1, column 1; allowed JSON'],
    ['{"a": 1,}', 'plan: found "}" at line 1, column 9; allowed JSON'],
    ['{\n  "a": 1\n  "b": 2\n}', String.raw`plan: found "\"b\": 2" at line 3, column 3; allowed JSON`],
    ['{\n  "a": .5\n}', 'plan: found ".5" at line 2, column 8; allowed JSON'],
    ['{"a": 1', 'plan: found text that ends too early, at line 1, column 8; allowed JSON'],
    ['[1 2]', 'plan: found "2]" at line 1, column 4; allowed JSON'],
    ['{"a" 1}', 'plan: found "1}" at line 1, column 6; allowed JSON'],
    ['{a: 1}', 'plan: found "a: 1}" at line 1, column 2; allowed JSON'],
    ['{} {}', 'plan: found "{}" at line 1, column 4; allowed JSON'],
    ['{"a": NaN}', 'plan: found "NaN}" at line 1, column 7; allowed JSON'],
    ['{"a": "x\ty"}', String.raw`plan: found "\"x\ty\"}" at line 1, column 7; allowed JSON`],
    ["{'a': 1}", `plan: found "'a': 1}" at line 1, column 2; allowed JSON`],
    [']', 'plan: found "]" at line 1, column 1; allowed JSON'],
  ])('%j', (text, message) => {
    expect(fault(text)).toBe(message);
  });
  it('finds a place for every fault that the engine finds', () => {
    const broken = fc
      .tuple(fc.json({ maxDepth: 3 }), fc.nat(), fc.constantFrom('', '}', ',', '"', '1', ' x', ':', '\\'))
      .map(
        ([text, at, put]) =>
          text.slice(0, at % (text.length + 1)) + put + text.slice((at % (text.length + 1)) + 1),
      );
    fc.assert(
      fc.property(broken, (text) => {
        let good = true;
        try {
          JSON.parse(text);
        } catch {
          good = false;
        }
        const found = fault(text);
        return good ? found === 'parsed' : /line \d+, column \d+|found nothing/u.test(found);
      }),
      { seed: 20_260_131, numRuns: 1000 },
    );
  });
  it('takes a byte order mark and refuses more than 1 MB, in bytes', () => {
    expect(fault(`\ufeff${writePlan(bare)}`)).toBe('parsed');
    expect(fault(`{}${' '.repeat(999_998)}`)).toBe('parsed');
    expect(fault(`{}${' '.repeat(999_999)}`)).toBe('plan: found more than 1 MB; allowed at most 1 MB');
    expect(fault(`"${'é'.repeat(500_000)}"`)).toContain('more than 1 MB');
  });
});

describe('writing', () => {
  it.each(demoIds)('%s comes back unchanged, with LF, two spaces and a final newline', (id) => {
    const text = writePlan(demos[id]);
    const parsed = parsePlanText(text);
    expect(parsed.ok && parsed.file).toEqual(demos[id]);
    expect(text.endsWith('}\n')).toBe(true);
    expect(text).not.toContain('\r');
    expect(text.split('\n')[1]).toBe('  "format": "hearthclock/evening",');
    expect(readPlanText(text, context)).toEqual(readPlanObject(demos[id], context));
  });
  it('keeps what it does not know, behind what it knows', () => {
    const file = { later: { z: 1, a: [{ y: 2, b: 3 }] }, version: 1, format: 'hearthclock/evening' };
    const text = writePlan(file as unknown as PlanFile);
    expect(Object.keys(JSON.parse(text) as object)).toEqual(['format', 'version', 'later']);
    expect(JSON.parse(text)).toEqual(file);
  });
  it('writes the same text whatever the order of keys, and keeps any plan as it is', () => {
    const subset = fc.subarray(Object.keys(demos.saturday).filter((key) => !(key in bare)));
    fc.assert(
      fc.property(subset, fc.shuffledSubarray(Object.keys(demos.saturday.oven)), (blocks, fields) => {
        const picked = Object.fromEntries(
          Object.entries(demos.saturday).filter(([key]) => blocks.includes(key)),
        );
        const oven = Object.fromEntries(
          fields.map((key) => [key, Object.entries(demos.saturday.oven).find(([k]) => k === key)![1]]),
        );
        const file = { ...picked, oven, ...bare } as PlanFile;
        const shuffled = Object.fromEntries(Object.entries(file).reverse()) as unknown as PlanFile;
        const text = writePlan(file);
        expect(writePlan(shuffled)).toBe(text);
        expect(JSON.parse(text)).toEqual(file);
        expect(writePlan(JSON.parse(text) as PlanFile)).toBe(text);
      }),
      { seed: 20_260_131 },
    );
  });
});

describe('setting one field', () => {
  const set = (path: string, text: string, file: PlanFile = demos.saturday): unknown => {
    const done = setPath(file, path, text);
    if (!done.ok) return wording(done.problem);
    return path
      .split('.')
      .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], done.file);
  };
  it('sets text, numbers, choices, truth and entries of lists in a copy', () => {
    expect(set('plate.thickness', '12.7 mm')).toBe('12.7 mm');
    expect(set('plate.rackHeight', '0.5')).toBe(0.5);
    expect(set('oven.fan', 'true')).toBe(true);
    expect(set('oven.power.bottom', '2 kW')).toBe('2 kW');
    expect(set('pizzas.bench', 'parchment')).toBe('parchment');
    expect(set('dough.liquid.0.percent', '65')).toBe(65);
    expect(set('toppings.cheese.0.mass', '90 g')).toBe('90 g');
    expect(set('anchor.time', '2026-03-01T18:00:00Z')).toBe('2026-03-01T18:00:00Z');
    expect(demos.saturday.dough.liquid[0]?.percent).toBe(62);
    expect(demos.saturday.plate.thickness).toBe('8 mm');
  });
  it('makes the block that is not there, and takes the demo list before it changes an entry', () => {
    expect(set('plate.thickness', '12.7 mm', bare)).toBe('12.7 mm');
    expect(set('oven.power.top', '2 kW', bare)).toBe('2 kW');
    expect(set('oven.fan', 'true', bare)).toBe(true);
    expect(set('oven.fan', 'false', bare)).toBe(false);
    const done = setPath(bare, 'dough.liquid.0.percent', '65');
    expect(done.ok && done.file.dough).toEqual({ liquid: [{ kind: 'water', percent: 65 }] });
  });
  it('makes single pizzas as they are named: those before them are as all', () => {
    const done = setPath(demos.saturday, 'pizzas.each.2.diameter', '26 cm');
    expect(done.ok && done.file.pizzas?.each).toEqual([{}, {}, { diameter: '26 cm' }]);
    const more = done.ok && setPath(done.file, 'pizzas.each.0.bench', 'semolina');
    expect(more && more.ok && more.file.pizzas?.each).toEqual([
      { bench: 'semolina' },
      {},
      { diameter: '26 cm' },
    ]);
    expect(done.ok && done.file.pizzas?.each).toHaveLength(3);
  });
  it.each([
    ['plate.thicknes', '9 mm', '"plate.thicknes": found no such field; allowed plate.material, plate.width'],
    ['plat.thickness', '9 mm', '"plat.thickness": found no such field; allowed title, anchor, kitchen'],
    ['plate', '9 mm', '"plate": found no such field; allowed plate.material'],
    ['plate.thickness.mm', '9', '"plate.thickness.mm": found no such field; allowed plate.thickness'],
    ['dough.liquid', 'x', '"dough.liquid": found no such field; allowed dough.liquid.0'],
    ['dough.liquid.x.percent', '60', '"dough.liquid.x.percent": found no such field; allowed dough.liquid.0'],
    ['dough.liquid.3.percent', '60', 'dough.liquid.3.percent: found a list of 1; allowed entries 0 to 0'],
    [
      'dough.phases.0.where',
      'room',
      'dough.phases.0.where: found no such list; allowed one that is written in the file',
    ],
    ['plate.__proto__.x', '1', '"plate.__proto__.x": found no such field'],
    ['constructor', '1', '"constructor": found no such field'],
    ['format', 'x', '"format": found no such field; allowed title'],
    ['', '1', '"": found no such field; allowed title'],
    ['plate.thickness', '9.5 s', 'plate.thickness: found "9.5 s"; allowed a length'],
    ['plate.thickness', '9.5', 'plate.thickness: found "9.5" without a unit'],
    ['plate.rackHeight', 'NaN', 'plate.rackHeight: found "NaN"; allowed a number from 0.03 to 0.9'],
    ['plate.rackHeight', '0,5', 'plate.rackHeight: found "0,5"; allowed a number'],
    ['pizzas.count', '1e1', 'pizzas.count: found "1e1"; allowed a whole number'],
    ['oven.fan', 'yes', 'oven.fan: found "yes"; allowed true or false'],
    ['pizzas.bench', 'wood', 'pizzas.bench: found "wood"; allowed metal, flour, semolina, parchment'],
  ])('refuses %s=%s', (path, text, message) => {
    expect(set(path, text)).toContain(message);
  });
  it('knows every field, each with its kind and what it allows', () => {
    expect(allPlanPaths).toContain('plate.thickness');
    expect(allPlanPaths).toContain('dough.liquid.0.percent');
    expect(allPlanPaths).not.toContain('version');
    for (const path of allPlanPaths) expect(fieldAt(path)?.allowed).not.toBe('');
    expect(fieldAt('plate.thickness')).toMatchObject({ kind: 'length', units: { metric: 'mm', us: 'in' } });
    expect(fieldAt('plate')).toBeUndefined();
  });
  it('names units that a bare number can take in the window', () => {
    const quantities = allPlanPaths.flatMap((path) => {
      const { kind, units } = fieldAt(path)!;
      return units === undefined ? [] : [{ path, kind: kind as QuantityKind, units }];
    });
    expect(quantities.length).toBeGreaterThan(20);
    for (const { path, kind, units } of quantities)
      for (const bareUnit of [units.metric, units.us])
        expect(readQuantity('20', kind, { bareUnit }).ok, `${path} in ${bareUnit}`).toBe(true);
  });
  it('knows the choices of a field', () => {
    expect(fieldAt('pizzas.bench')?.choices).toEqual(['metal', 'flour', 'semolina', 'parchment']);
  });
});
