import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanFile } from '../../../physics/evening/planFile.ts';
import { allPlanPaths, fieldAt, setPath } from '../../../physics/evening/planPath.ts';
import { wording } from '../../../physics/evening/problem.ts';
import { readPlanObject } from '../../../physics/evening/readPlan.ts';
import type { Evening } from '../../../physics/evening/evening.ts';

const bare: PlanFile = { format: 'hearthclock/evening', version: 1 };
const refused = (blocks: Partial<PlanFile>): readonly string[] => {
  const plan = readPlanObject({ ...bare, ...blocks }, { now: 0 });
  return plan.ok ? [] : plan.problems.map(wording);
};
const evening = (blocks: Partial<PlanFile>): Evening => {
  const plan = readPlanObject({ ...bare, ...blocks }, { now: 0 });
  if (!plan.ok) throw new Error(plan.problems.map(wording).join('; '));
  return plan.evening;
};

describe('what does not go together is refused by the field that the cook wrote', () => {
  it.each<[string, Partial<PlanFile>, string]>([
    [
      'a long word',
      { plate: { material: 'x'.repeat(100) as never } },
      `plate.material: found "${'x'.repeat(60)}…"; allowed carbon-steel, `,
    ],
    [
      'elements that a small share leaves cold',
      {
        oven: {
          preset: 'european',
          power: { bottom: '0.2 kW', top: '0.2 kW' },
          physics: { holdShareBottom: 0, holdShareTop: 0 },
        },
      },
      'oven.physics.holdShareBottom: found 0; allowed shares of bottom and top that leave at least 100 W',
    ],
    [
      'a kitchen as hot as the dial',
      { kitchen: { roomTemperature: '45 degC' }, oven: { setpoint: '60 degC', thermostatOffset: '-15 K' } },
      'oven.thermostatOffset: found "-15 K"; allowed setpoint and thermostat offset together at least 50 °C',
    ],
    [
      'a ball for all that is too heavy for a small one',
      { pizzas: { count: 2, each: [{ diameter: '14 cm' }] } },
      'pizzas.each.0.ballMass: found "250 g"; allowed 15 g to 231 g for its diameter',
    ],
    [
      'cheese of its own without its water',
      { pizzas: { count: 1, each: [{ cheese: [{ kind: 'custom', mass: '80 g' }] }] } },
      'pizzas.each.0.cheese.0.waterShare: found nothing; allowed a number from 0 to 1',
    ],
    [
      'cheese that is known with a water of its own',
      { pizzas: { count: 1, each: [{ cheese: [{ kind: 'hard', mass: '80 g', waterShare: 0.4 }] }] } },
      'pizzas.each.0.cheese.0.waterShare: found 0.4; allowed nothing: only kind custom takes it',
    ],
    [
      'a dough of more than two weeks',
      {
        dough: {
          phases: [
            { where: 'refrigerator', as: 'bulk', duration: '168 h' },
            { where: 'refrigerator', as: 'balls', duration: '168 h' },
            { where: 'room', as: 'balls', duration: '2 h' },
          ],
        },
      },
      'dough.phases: found 338 h in all; allowed at most 336 h in all',
    ],
  ])('%s', (_what, blocks, message) => {
    expect(refused(blocks).join('\n')).toContain(message);
  });
});

describe('what is left out fits what is given', () => {
  it('a round plate goes by the shorter side, and balls that stand for themselves by the usual rest', () => {
    const deep = { cavity: { width: '32 cm', depth: '44 cm' } };
    const round = evening({ oven: deep, plate: { shape: 'round' }, pizzas: { diameter: '25 cm' } });
    expect(round.plate.width).toBeCloseTo(0.3, 9);
    expect(round.plate.depth).toBeCloseTo(0.3, 9);
    const balls = evening({ dough: { phases: [{ where: 'room', as: 'balls', duration: '6 h' }] } });
    expect(balls.dough.phases).toMatchObject([{ as: 'balls', duration: 21_600, cover: 'covered' }]);
    expect(balls.dough.restBeforeShaping).toBeGreaterThan(0);
  });

  it('a block that the window has emptied counts as left out', () => {
    expect(refused({ plate: undefined, tonight: undefined } as never)).toEqual([]);
  });

  // Every end of every field, in pairs: what is filled in beside them is within the limits too.
  it('no refusal names a field that the file does not have', () => {
    const ends = allPlanPaths.flatMap((path) => {
      const { allowed, choices } = fieldAt(path)!;
      const range = /^(?:a (?:whole )?number from )?(\S.*) to (\S.*)$/u.exec(allowed);
      return [...(choices ?? range?.slice(1) ?? [])].map((text) => ({ path, text }));
    });
    expect(ends.length).toBeGreaterThan(150);
    fc.assert(
      fc.property(fc.constantFrom(...ends), fc.constantFrom(...ends), (one, other) => {
        let file = bare;
        for (const { path, text } of [one, other]) {
          const set = setPath(file, path, text);
          if (set.ok) file = set.file;
        }
        const read = readPlanObject(file, { now: 0 });
        const written = [one.path, other.path].map((path) => path.split('.')[0]);
        if (!read.ok)
          for (const { path } of read.problems)
            expect(written, `${path} of ${JSON.stringify(file)}`).toContain(path.split('.')[0]);
      }),
      { numRuns: 400, seed: 20_261_126 },
    );
  });
});
