import { describe, expect, it } from 'vitest';
import { runValidate } from '../../main/terminal/validate.ts';
import { validation, type ValidationGroup } from '../../physics/validate/table.ts';
import { compared } from '../../physics/validate/case.ts';

const published = {
  id: 'one',
  source: 'a book',
  quantity: 'a figure',
  published: 10,
  unit: 'kWh',
  tolerance: 1,
  note: 'why',
};
const groups: readonly ValidationGroup[] = [
  {
    heading: 'Ovens',
    words: 'Some words.',
    cases: [compared(published, 10.5), compared({ ...published, id: 'two', adjusted: 'the tolerance' }, 12)],
  },
];

function run(argv: readonly string[], source: () => readonly ValidationGroup[] = () => groups) {
  const out: string[] = [];
  const err: string[] = [];
  const status = runValidate(argv, {
    stdout: (text) => out.push(text),
    stderr: (text) => err.push(text),
    validation: source,
  });
  return { status, out: out.join(''), err: err.join('') };
}

describe('validate', () => {
  it('prints one JSON object with the keys that scripts read', () => {
    const { status, out, err } = run(['--json']);
    expect(status).toBe(0);
    expect(err).toBe('');
    expect(JSON.parse(out)).toEqual({
      cases: [
        { ...published, model: 10.5, within: true, adjusted: null },
        { ...published, id: 'two', model: 12, within: false, adjusted: 'the tolerance' },
      ],
    });
  });
  it('prints a table for people, and one for the notes, misses included', () => {
    expect(run([]).out).toMatch(/a figure {2}10 kWh {5}10\.5 kWh {2}\+5 % {22}± 1 kWh/u);
    expect(run([]).out).toContain('+20 % (outside)');
    const notes = run(['--markdown']).out;
    expect(notes).toContain('## How the model was validated');
    expect(notes).toContain(
      '| a figure | 10 kWh | 12 kWh | +20 % (outside) adjusted | ± 1 kWh | a book: why. *Adjusted*: the tolerance |',
    );
    expect(notes).toContain('The model meets 1 of 2 published figures');
    expect(notes).toContain(
      'Of those it meets 0 of 1; of the rows that stand as they were first computed 1 of 1 (ovens: 1 of 1).',
    );
  });
  it('tells how it is used', () => {
    const { status, out } = run(['--help']);
    expect(status).toBe(0);
    expect(out).toContain('--markdown');
  });
  it('refuses what it does not know, one line each, without computing', () => {
    const never = (): never => {
      throw new Error('must not run');
    };
    const { status, out, err } = run(['--jsn', 'x'], never);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toBe(
      '"--jsn": found an unknown option; allowed --json, --markdown, --help\n"x": found an unknown option; allowed --json, --markdown, --help\n',
    );
    expect(run(['--json', '--markdown'], never).status).toBe(2);
  });
  it('says so when the fault is ours, without a stack', () => {
    const { status, err } = run([], () => {
      throw new Error('a\nb');
    });
    expect(status).toBe(1);
    expect(err).toBe('This is our fault, not yours: a b\n');
  });
  it('has a case of every kind', () => {
    expect(validation().map(({ heading }) => heading)).toEqual([
      'Standards, handbooks and textbooks',
      'Ovens',
      'Plates',
      'Bakes',
      'Dough',
    ]);
  });
});
