import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeHandouts } from '../../main/files/writeHandouts.ts';
import { readText } from '../../main/files/readText.ts';
import { runHandout, type HandoutIo } from '../../main/terminal/handout.ts';
import { demos } from '../../physics/evening/demos.ts';
import { planFromFile, type Planned } from '../../physics/evening/planEvening.ts';
import { writePlan } from '../../physics/evening/planText.ts';
import { handoutIds, handouts } from '../../physics/handout/files.ts';
import { tempFolder } from '../support/tempFolder.ts';
import { morning } from './planCommand.ts';

/** Each plan simulated once, with its range. */
const kept = new Map<string, Planned>();
const planOnce: HandoutIo['planFromFile'] = (file, context) => {
  const key = JSON.stringify(file);
  const planned = kept.get(key) ?? planFromFile(file, context);
  kept.set(key, planned);
  return planned;
};

async function handout(argv: readonly string[], other: Partial<HandoutIo> = {}) {
  let out = '';
  let err = '';
  const status = await runHandout(argv, {
    readFile: async (path) => (await readText(path)).text,
    stdout: (text) => (out += text),
    stderr: (text) => (err += text),
    now: morning,
    offsetMinutes: 60,
    readersClock: () => 60,
    planFromFile: planOnce,
    write: writeHandouts,
    ...other,
  });
  return { status, out, err };
}

const names = handoutIds.map((id) => handouts[id].name);

describe('the handouts on disk', () => {
  it('are all there, named on standard output, in a folder made for them', async () => {
    const folder = join(tempFolder(), 'new', 'handouts');
    const { status, out, err } = await handout(['--out', folder]);
    expect([status, err]).toEqual([0, '']);
    expect(out).toBe(names.map((name) => `${join(folder, name)}\n`).join(''));
    expect(readdirSync(folder).sort()).toEqual([...names].sort());
    for (const name of names) expect(readFileSync(join(folder, name), 'utf8').length).toBeGreaterThan(200);
    expect(readFileSync(join(folder, 'evening.hearthclock'), 'utf8')).toBe(writePlan(demos.saturday));
    expect(readFileSync(join(folder, 'page.html'), 'utf8')).toContain('size: A4;');
  });

  it('follow the options: file, fields set, units, paper', async () => {
    const folder = tempFolder();
    const file = join(folder, 'plan.hearthclock');
    writeFileSync(file, writePlan({ ...demos.saturday, title: 'Mine' }));
    const out = join(folder, 'out');
    const words = [file, '--set', 'pizzas.count=1', '--units', 'us', '--out', out];
    expect((await handout(words)).status).toBe(0);
    const page = readFileSync(join(out, 'page.html'), 'utf8');
    expect(page).toContain('<h1>Mine</h1>');
    expect(page).toContain('482&nbsp;°F');
    expect(page).toContain('size: Letter;');
    expect(JSON.parse(readFileSync(join(out, 'evening.hearthclock'), 'utf8'))).toMatchObject({
      title: 'Mine',
      pizzas: { count: 1 },
    });
    expect((await handout([...words, '--paper', 'a4'])).status).toBe(0);
    expect(readFileSync(join(out, 'page.html'), 'utf8')).toContain('size: A4;');
    // Replaced whole; nothing else is left beside.
    expect(readdirSync(out).sort()).toEqual([...names].sort());
  });

  it('are not made of a plan that cannot be', async () => {
    const folder = join(tempFolder(), 'out');
    const { status, out, err } = await handout(['--out', folder, '--set', 'plate.width=90 cm']);
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^plate\.width: found .*; allowed .*\n$/u);
    expect(existsSync(folder)).toBe(false);
  });

  it('are told in the help, within 80 columns, and nothing is planned', async () => {
    const { status, out, err } = await handout(['--help'], {
      planFromFile: () => {
        throw new Error('planned');
      },
    });
    expect([status, err]).toEqual([0, '']);
    for (const word of ['--out', '--paper', '--units', '--set', '--example', 'page.html', 'recipe.jsonld'])
      expect(out).toContain(word);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});

describe('what is refused, with status 2 and one line', () => {
  const folder = '/nowhere';
  it.each<[what: string, argv: string[], line: string]>([
    ['no folder', [], '--out: found none; allowed a folder to write into'],
    ['nothing after --out', ['--out'], '--out: found nothing after it; allowed a value'],
    ['an empty folder name', ['--out='], '--out: found nothing; allowed a folder'],
    ['another paper', ['--out', folder, '--paper', 'a5'], '--paper: found "a5"; allowed a4, letter'],
    ['other units', ['--out', folder, '--units', 'si'], '--units: found "si"; allowed metric, us'],
    ['an option of plan', ['--out', folder, '--json'], '"--json": found an unknown option'],
    ['an option of compare', ['--out', folder, '--vary', 'a=1'], '"--vary": found an unknown option'],
    ['an unknown field', ['--out', folder, '--set', 'pan.depth=1 cm'], '"pan.depth'],
    ['a plan out of range', ['--out', folder, '--set', 'pizzas.count=21'], 'pizzas.count: found 21'],
    ['a missing file', ['/nowhere/at all.json', '--out', folder], '/nowhere/at all.json: found no such file'],
  ])('%s', async (what, argv, line) => {
    const { status, out, err } = await handout(argv, {
      write: () => Promise.reject(new Error('written')),
    });
    expect([status, out]).toEqual([2, '']);
    expect(err.slice(0, line.length), what).toBe(line);
  });

  it('a folder that is a file, and a file where a folder would be', async () => {
    const folder = tempFolder();
    const file = join(folder, 'taken');
    writeFileSync(file, 'mine');
    for (const out of [file, join(file, 'below')]) {
      const { status, out: said, err } = await handout(['--out', out]);
      expect([status, said]).toEqual([2, '']);
      expect(err).toMatch(/^--out: found .*; allowed a folder, or a place where one can be made\n$/u);
    }
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('a folder in which a name is taken by a folder', async () => {
    const folder = tempFolder();
    mkdirSync(join(folder, 'page.html'));
    const { status, err } = await handout(['--out', folder]);
    expect(status).toBe(2);
    expect(err).toMatch(/^--out: found .*page\.html.*; allowed a folder in which files can be written\n$/u);
  });
});

it('our own fault is one line with status 1', async () => {
  const { status, out, err } = await handout(['--out', '/nowhere'], {
    planFromFile: () => {
      throw new Error('the solver\n  did not converge');
    },
  });
  expect([status, out]).toEqual([1, '']);
  expect(err).toBe('This is our fault, not yours: the solver did not converge\n');
});
