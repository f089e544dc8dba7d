/** What a map is drawn over, and how its colours keep figures readable. */
import { describe, expect, it } from 'vitest';
import { heatColour } from '../../renderer/compare/heat.ts';
import { cellsOf, shareOf, valuesOf } from '../../renderer/compare/mapModel.ts';
import { nameOf, startersFor, withDifferences } from '../../renderer/compare/differences.ts';
import { saturday } from '../../physics/evening/demos.ts';
import { readPlanObject } from '../../physics/evening/readPlan.ts';
import { contrast } from '../support/windowContrast.ts';

describe('values of a side', () => {
  it('are read with commas between them, a comma inside a number being a decimal one', () => {
    const read = valuesOf({ path: 'plate.thickness', typed: '6 mm, 9,5 mm,1/2 in; 16' }, 'metric');
    expect(read).toEqual({
      ok: true,
      values: ['6 mm', '9,5 mm', '1/2 in', '16 mm'].map((value) => ({ path: 'plate.thickness', value })),
    });
  });

  it('are refused by name where one cannot be read, or where there are too few or too many', () => {
    expect(valuesOf({ path: 'plate.thickness', typed: '6 mm, 9.5 s' }, 'metric')).toMatchObject({
      ok: false,
    });
    expect(valuesOf({ path: 'plate.thickness', typed: '6 mm' }, 'metric')).toEqual({
      ok: false,
      reason: 'Found 1 value; allowed 2 to 8, with commas between them.',
    });
  });

  it('of every field can be read, in either habit of units, and make plans that can be read', () => {
    const across = valuesOf({ path: 'plate.rackHeight', typed: undefined }, 'metric');
    for (const units of ['metric', 'us'] as const) {
      for (const path of [
        'plate.thickness',
        'oven.setpoint',
        'pizzas.diameter',
        'pizzas.ballMass',
        'toppings.sauce',
        'pizzas.shade',
        'plate.material',
        'oven.preset',
        'pizzas.bench',
      ]) {
        const down = valuesOf({ path, typed: undefined }, units);
        if (!across.ok || !down.ok) throw new Error(path);
        // A plate that goes into every oven on offer.
        const small = { ...saturday, plate: { ...saturday.plate, width: '32 cm', depth: '32 cm' } };
        for (const { job } of cellsOf(
          path === 'oven.preset' ? small : saturday,
          across.values,
          down.values,
        ).flat())
          expect(readPlanObject(job.file, { now: 0 }), `${path} ${units}`).toMatchObject({ ok: true });
      }
    }
  });
});

describe('an evening beside the plan', () => {
  it('of each starter can be read and is named by what sets it apart', () => {
    const read = readPlanObject(saturday, { now: 0 });
    if (!read.ok) throw new Error('demo');
    const starters = startersFor(read.evening, 'metric');
    expect(starters.map(({ differences }) => nameOf(differences, 'metric'))).toEqual([
      'Cordierite, 15 mm',
      '12 mm thick',
      'Third from the bottom of five',
      'Strong oven',
    ]);
    for (const { differences } of starters)
      expect(readPlanObject(withDifferences(saturday, differences), { now: 0 })).toMatchObject({ ok: true });
  });

  it('with another oven takes that oven whole, its setting too', () => {
    const other = readPlanObject(withDifferences(saturday, [{ path: 'oven.preset', value: 'strong' }]), {
      now: 0,
    });
    // The strong preset reaches 300 degC.
    expect(other.ok && other.evening.oven.setpoint).toBeCloseTo(573.15, 6);
  });
});

describe('the colours of a map', () => {
  it('leave a dark figure readable from end to end (WCAG 2.2, 1.4.3)', () => {
    for (let share = 0; share <= 1; share += 0.05)
      expect(contrast(heatColour(share), '#14110e')).toBeGreaterThanOrEqual(4.5);
    expect(shareOf(3, [2, 3, 4])).toBe(0.5);
    expect(shareOf(3, [3, 3])).toBe(0.5);
  });
});
