/** The list of ovens that a cook keeps. The ovens of these tests are invented. */
import { describe, expect, it } from 'vitest';
import type { LearnedVersion } from '../../../physics/calibrate/learnedOven.ts';
import {
  addOven,
  forgetOven,
  goBackTo,
  keepOven,
  readOvens,
  renameOven,
  writeOvens,
  type Ovens,
  type OvensChanged,
} from '../../../physics/calibrate/learnedOvens.ts';
import { wording } from '../../../physics/evening/problem.ts';

const learned = (day: number): LearnedVersion => ({
  learnedAt: new Date(Date.UTC(2026, 0, day)).toISOString(),
  oven: { preset: 'european', thermostatOffset: `${day} K` },
});

function done(changed: OvensChanged): Ovens {
  if (!changed.ok) throw new Error(wording(changed.problem));
  return changed.ovens;
}
const refusal = (changed: OvensChanged): string => (changed.ok ? 'done' : wording(changed.problem));

const home = done(keepOven([], ' Home ', learned(1)));
const two = done(keepOven(home, 'Cabin', learned(2)));

describe('the list of learned ovens', () => {
  it('comes back as it was written; nothing is an empty list', () => {
    expect(readOvens(writeOvens(two))).toEqual({ ok: true, value: two });
    expect(readOvens('')).toEqual({ ok: true, value: [] });
  });

  it('is refused as a whole where an oven in it cannot be read, or two have one name', () => {
    const problems = (ovens: unknown): readonly string[] => {
      const read = readOvens(JSON.stringify({ format: 'hearthclock/ovens', version: 1, ovens }));
      return read.ok ? [] : read.problems.map(wording);
    };
    expect(problems([{ ...two[0]!, version: 2 }])).toEqual(['ovens.0.version: found 2; allowed 1']);
    expect(problems([two[0], two[0]])).toEqual(['ovens: found a list; allowed names that differ']);
    expect(problems(['an oven'])[0]).toMatch(/^ovens\.0: found "an oven"; allowed an object with/u);
    const newer = readOvens('{"format":"hearthclock/ovens","version":9}');
    expect(newer.ok ? [] : newer.problems.map(wording)).toEqual([
      'version: found 9, written by a newer program; allowed 1',
    ]);
  });

  it('keeps under the same name what was before as history, twenty versions at most', () => {
    let ovens = two;
    for (let day = 3; day <= 24; day += 1) ovens = done(keepOven(ovens, 'Home', learned(day)));
    expect(ovens.map(({ name }) => name)).toEqual(['Home', 'Cabin']);
    expect(ovens[0]!.versions).toHaveLength(20);
    expect(ovens[0]!.versions[0]).toEqual(learned(24));
    expect(ovens[0]!.versions.at(-1)).toEqual(learned(5));
  });

  it('goes back to an earlier version and keeps the others', () => {
    const later = done(keepOven(done(keepOven(two, 'Home', learned(3))), 'Home', learned(4)));
    const back = done(goBackTo(later, 'Home', learned(3).learnedAt));
    expect(back[0]!.versions).toEqual([learned(3), learned(4), learned(1)]);
    expect(back[1]).toBe(later[1]);
  });

  it('renames to a name that is free', () => {
    expect(done(renameOven(two, 'Home', ' Kitchen ')).map(({ name }) => name)).toEqual(['Kitchen', 'Cabin']);
    expect(done(renameOven(two, 'Home', 'Home'))).toEqual(two);
    expect(refusal(renameOven(two, 'Home', 'Cabin'))).toBe(
      'name: found "Cabin"; allowed a name that no other oven has',
    );
    expect(refusal(renameOven(two, 'Home', ' '))).toBe(
      'name: found ""; allowed one line of 1 to 60 characters',
    );
  });

  it('forgets one, and takes it back from its file', () => {
    const forgotten = done(forgetOven(two, 'Home'));
    expect(forgotten.map(({ name }) => name)).toEqual(['Cabin']);
    expect(done(addOven(forgotten, two[0]!))).toEqual([two[1], two[0]]);
  });

  it('numbers an oven whose name is taken, whatever its length', () => {
    const again = done(addOven(done(addOven(two, two[0]!)), two[0]!));
    expect(again.map(({ name }) => name)).toEqual(['Home', 'Cabin', 'Home 2', 'Home 3']);
    const long = done(keepOven([], 'x'.repeat(60), learned(1)));
    const added = done(addOven(long, long[0]!));
    expect(readOvens(writeOvens(added))).toEqual({ ok: true, value: added });
  });

  it('holds thirty', () => {
    let ovens: Ovens = [];
    for (let n = 1; n <= 30; n += 1) ovens = done(keepOven(ovens, `Oven ${n}`, learned(1)));
    expect(refusal(keepOven(ovens, 'Another', learned(1)))).toBe('ovens: found 31; allowed at most 30 ovens');
    expect(refusal(addOven(ovens, two[0]!))).toBe('ovens: found 31; allowed at most 30 ovens');
    expect(refusal(keepOven([], '\n', learned(1)))).toBe(
      'name: found ""; allowed one line of 1 to 60 characters',
    );
  });
});
