/** The built commands as processes: what the functions behind them cannot show. */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { demos } from '../../physics/evening/demos.ts';
import { writePlan } from '../../physics/evening/planText.ts';
import { sourceOf } from '../support/bundle.ts';
import { runProgram, type Program } from '../support/program.ts';
import { tempFolder } from '../support/tempFolder.ts';

type Name = 'plan' | 'compare' | 'handout' | 'calibrate' | 'validate';
const built = (name: Name): string => sourceOf(`dist/main/${name}.js`);
const run = (name: Name, words: readonly string[]): Program =>
  runProgram(process.execPath, [built(name), ...words], process.env);

describe('a command', () => {
  it.each<Name>(['plan', 'compare', 'handout', 'calibrate', 'validate'])(
    '%s tells its use, refuses what it does not know with status 2, and never shows a stack',
    async (name) => {
      const [help, wrong] = [run(name, ['--help']), run(name, ['--nonsense'])];
      expect(await help.ended).toBe(0);
      expect(help.out()).toContain(`npm run --silent ${name} --`);
      expect(await wrong.ended).toBe(2);
      expect([wrong.out(), wrong.err()]).toEqual([
        '',
        expect.stringMatching(/^"--nonsense": found an unknown option; allowed --.*\n/u),
      ]);
    },
  );

  it('names a file that is not there', async () => {
    const missing = run('plan', ['/nowhere/plan.hearthclock']);
    expect(await missing.ended).toBe(2);
    expect(missing.err()).toBe(
      '/nowhere/plan.hearthclock: found no such file; allowed a readable text file of at most 1000000 bytes\n',
    );
  });

  it.each<[Name, readonly string[]]>([
    ['plan', ['--help']],
    ['validate', ['--json']],
  ])('%s bears a reader that has seen enough', async (name, words) => {
    const program = run(name, words);
    program.child.stdout!.destroy();
    expect([await program.ended, program.err()]).toEqual([0, '']);
  });

  it.runIf(existsSync('/dev/full'))('says so when the disk is full under its output', async () => {
    const line = `"${process.execPath}" "${built('plan')}" --help > /dev/full`;
    const program = runProgram('/bin/sh', ['-c', line], process.env);
    expect(await program.ended).toBe(1);
    expect(program.err()).toMatch(/^standard output: found ENOSPC \(.*\); allowed .*\n$/u);
  });
});

it('compare stops between two rows at Ctrl-C, prints nothing and ends with status 1', async () => {
  const file = join(tempFolder(), 'plan.hearthclock');
  writeFileSync(file, writePlan({ ...demos.clay, pizzas: { ...demos.clay.pizzas, count: 1 } }));
  const counts = Array.from({ length: 60 }, (_, n) => `${6 + n / 100} mm`).join(',');
  const grid = run('compare', [file, '--vary', `plate.thickness=${counts}`]);
  await vi.waitFor(
    () => {
      expect(grid.err()).toContain('1 of 60\n');
    },
    { timeout: 15_000 },
  );
  grid.child.kill('SIGINT');
  expect(await grid.ended).toBe(1);
  expect(grid.out()).toBe('');
  expect(grid.err()).toMatch(/stopped after \d+ of 60 rows\n$/u);
});
