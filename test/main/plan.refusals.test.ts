import { mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';
import { plan } from './planCommand.ts';

let folder: string;
beforeAll(() => {
  folder = newTempFolder();
});
afterAll(() => {
  removeFolder(folder);
});

const head = '"format": "hearthclock/evening", "version": 1';
const withBlocks = (blocks: string): string => `{ ${head}, ${blocks} }`;
const deep = (levels: number): string => withBlocks(`"a": ${'['.repeat(levels)}${']'.repeat(levels)}`);

/** Each: what is wrong, the bytes of the file, the field that the one line must name. */
const files: readonly (readonly [string, string | Uint8Array, string])[] = [
  ['text that is not JSON', '{ "format": ', 'plan'],
  ['an empty file', '', 'plan'],
  ['bytes that are not UTF-8', new Uint8Array([0x7b, 0xff, 0xfe, 0x7d]), 'FILE'],
  ['more than 1 MB', `${withBlocks('"title": "x"')}${' '.repeat(1_000_000)}`, 'FILE'],
  ['nesting deeper than 32', deep(33), 'plan'],
  ['another format', '{ "format": "other/evening", "version": 1 }', 'format'],
  ['no format', '{ "version": 1 }', 'format'],
  ['a newer version', '{ "format": "hearthclock/evening", "version": 2 }', 'version'],
  ['no version', '{ "format": "hearthclock/evening" }', 'version'],
  ['an unknown block', withBlocks('"pan": {}'), 'pan'],
  ['an unknown field', withBlocks('"plate": { "colour": "black" }'), 'plate.colour'],
  ['an unknown field deep down', withBlocks('"oven": { "power": { "side": "1 kW" } }'), 'oven.power.side'],
  [
    'an unknown field in a list',
    withBlocks('"toppings": { "cheese": [{ "kind": "hard", "mass": "9 g", "age": 2 }] }'),
    'toppings.cheese.0.age',
  ],
  ['__proto__', withBlocks('"__proto__": { "count": 3 }'), '__proto__'],
  ['__proto__ deep down', withBlocks('"dough": { "yeast": { "__proto__": {} } }'), 'dough.yeast.__proto__'],
  ['constructor', withBlocks('"plate": { "constructor": {} }'), 'plate.constructor'],
  ['prototype', withBlocks('"oven": { "prototype": {} }'), 'oven.prototype'],
  ['no pizza', withBlocks('"pizzas": { "count": 0 }'), 'pizzas.count'],
  ['21 pizzas', withBlocks('"pizzas": { "count": 21 }'), 'pizzas.count'],
  ['a setpoint of 59 degC', withBlocks('"oven": { "setpoint": "59 degC" }'), 'oven.setpoint'],
  ['a setpoint of 501 degC', withBlocks('"oven": { "setpoint": "501 degC" }'), 'oven.setpoint'],
  ['a rack at 0.02', withBlocks('"plate": { "rackHeight": 0.02 }'), 'plate.rackHeight'],
  ['a rack at 0.95', withBlocks('"plate": { "rackHeight": 0.95 }'), 'plate.rackHeight'],
  ['a thickness of 0.4 mm', withBlocks('"plate": { "thickness": "0.4 mm" }'), 'plate.thickness'],
  ['a thickness of 81 mm', withBlocks('"plate": { "thickness": "81 mm" }'), 'plate.thickness'],
  ['a plate too wide', withBlocks('"plate": { "width": "50 cm" }'), 'plate.width'],
  ['a plate too deep', withBlocks('"plate": { "depth": "45 cm" }'), 'plate.depth'],
  ['a wrong dimension', withBlocks('"plate": { "thickness": "9.5 s" }'), 'plate.thickness'],
  ['a bare number', withBlocks('"plate": { "thickness": 9.5 }'), 'plate.thickness'],
  ['a number without unit', withBlocks('"plate": { "thickness": "9.5" }'), 'plate.thickness'],
  ['a number past all bounds', withBlocks('"dough": { "salt": 1e999 }'), 'dough.salt'],
  ['a quantity past all bounds', withBlocks('"plate": { "thickness": "1e999 mm" }'), 'plate.thickness'],
  [
    'a surface not of this material',
    withBlocks('"plate": { "material": "cordierite", "surface": "rolled" }'),
    'plate.surface',
  ],
];

/** One line `path: found …; allowed …`, and nothing that looks like the inside of a program. */
function expectLines(err: string, path: string): void {
  expect(err).not.toMatch(/^\s+at |\.ts:\d|node:/mu);
  for (const line of err.trimEnd().split('\n')) expect(line).toMatch(/^.+: found .+; allowed .+$/u);
  expect(err.startsWith(`${path}: `)).toBe(true);
}

describe('a plan file that is refused: status 2, the field named, the file untouched', () => {
  it.each(files)('%s', async (_, content, field) => {
    const path = join(folder, 'dinner.json');
    await writeFile(path, content);
    const before = { bytes: await readFile(path), time: (await stat(path)).mtimeMs };
    for (const more of [[], ['--json'], ['--set', 'pizzas.bench=flour']]) {
      const { status, out, err } = await plan([path, ...more]);
      expect(status).toBe(2);
      expect(out).toBe('');
      expectLines(err, field === 'FILE' ? path : field);
    }
    // Compared as bytes: a megabyte of single expectations takes seconds.
    expect((await readFile(path)).equals(before.bytes)).toBe(true);
    expect((await stat(path)).mtimeMs).toBe(before.time);
  });
});

describe('a command that is refused: status 2, what was wrong named', () => {
  it.each<[string, string[], string]>([
    ['an unknown option', ['--jsn'], '"--jsn"'],
    ['an unknown short option', ['-x'], '"-x"'],
    ['an option with a value it cannot have', ['--json=1'], '"--json=1"'],
    ['two files', ['a.json', 'b.json'], 'FILE'],
    ['--set without a value', ['--set'], '--set'],
    ['--set without a sign of equality', ['--set', 'plate.thickness'], '--set'],
    ['--set with an unknown path', ['--set', 'plate.thicknes=9 mm'], '"plate.thicknes"'],
    ['--set with a prototype', ['--set', '__proto__.x=1'], '"__proto__.x"'],
    ['--set with a value out of range', ['--set', 'pizzas.count=21'], 'pizzas.count'],
    ['--set with a wrong dimension', ['--set', 'plate.thickness=9.5 s'], 'plate.thickness'],
    ['--set with a bare number', ['--set', 'plate.thickness=9.5'], 'plate.thickness'],
    ['--set that makes the plate too large', ['--set', 'plate.width=60 cm'], 'plate.width'],
    ['--set with what is not finite', ['--set', 'dough.salt=Infinity'], 'dough.salt'],
    ['an unknown example', ['--example', 'breakfast'], '--example'],
    ['unknown units', ['--units', 'furlongs'], '--units'],
    ['an unknown goal', ['--goal', 'richer'], '--goal'],
    ['an option of another command', ['--csv'], '"--csv"'],
    ['advice with a value', ['--advice=all'], '"--advice=all"'],
    ['an example beside a file', ['x.json', '--example', 'clay'], '--example'],
  ])('%s', async (_, argv, path) => {
    const { status, out, err } = await plan(argv);
    expect(status).toBe(2);
    expect(out).toBe('');
    expectLines(err, path);
  });
  it('a missing file and a folder', async () => {
    const missing = join(folder, 'nothing.json');
    await mkdir(join(folder, 'folder.json'));
    for (const path of [missing, join(folder, 'folder.json')]) {
      const { status, err } = await plan([path]);
      expect(status).toBe(2);
      expectLines(err, path);
    }
  });
  it('one line for each problem', async () => {
    const { status, err } = await plan(['--set', 'pizzas.count=0', '--set', 'plate.thickness=x']);
    expect(status).toBe(2);
    expect(err.split('\n').map((line) => line.split(':')[0])).toEqual([
      'pizzas.count',
      'plate.thickness',
      '',
    ]);
  });
});
