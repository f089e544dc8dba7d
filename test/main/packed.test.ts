/** What would ship: the built program, packed by electron-builder around a stand-in for Electron's binary. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sourceOf } from '../support/bundle.ts';
import { builder, library } from '../support/packager.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

/** What marks the fuses in Electron's binary: then a version, their number, and one character each. */
const sentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const about = JSON.parse(readFileSync(sourceOf('package.json'), 'utf8')) as {
  readonly main: string;
  readonly dependencies: Readonly<Record<string, string>>;
};
const archive = library('@electron/asar') as {
  listPackage: (file: string) => string[];
  extractFile: (file: string, name: string) => Buffer;
};

let folder: string;
let packed: string;

function put(name: string, text: string, mode = 0o644): void {
  mkdirSync(dirname(join(folder, name)), { recursive: true });
  writeFileSync(join(folder, name), text, { mode });
}

beforeAll(async () => {
  folder = newTempFolder();
  for (const name of [
    'electron-builder.yml',
    'package.json',
    'LICENSE',
    'main',
    'physics',
    'renderer',
    'dist',
  ])
    cpSync(sourceOf(name), join(folder, name), { recursive: true });
  // Real packages: they are looked through, and none may go in.
  symlinkSync(realpathSync(sourceOf('node_modules')), join(folder, 'node_modules'));
  put('test/left-out.ts', '');
  const { version: electron } = library('electron/package.json') as { version: string };
  put('stand-in/electron', `#!/bin/sh\n# ${sentinel}\u0001\u0009${'1'.repeat(9)}\n`, 0o755);
  put('stand-in/version', electron);
  for (const file of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'resources/x'])
    put(`stand-in/${file}`, '');
  for (const language of ['en-US', 'de', 'fr']) put(`stand-in/locales/${language}.pak`, '');
  const words = ['--linux', '--x64', '--dir', `-c.electronDist=${join(folder, 'stand-in')}`];
  const cli = builder.resolve('electron-builder/cli.js');
  const pack = spawn(process.execPath, [cli, ...words, `-c.electronVersion=${electron}`], {
    cwd: folder,
    env: { ...process.env, INIT_CWD: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [pack.stdout, pack.stderr])
    stream.on('data', (part: Buffer) => (said += part.toString('utf8')));
  const [status] = (await once(pack, 'exit')) as [number];
  if (status !== 0) throw new Error(said);
  packed = join(folder, 'release', 'linux-unpacked');
}, 120_000);
afterAll(() => {
  removeFolder(folder);
});

const asar = (): string => join(packed, 'resources', 'app.asar');

/** Files in the archive, with slashes, folders left out. */
function inside(): readonly string[] {
  return archive
    .listPackage(asar())
    .map((file) => file.replaceAll('\\', '/').slice(1))
    .filter((file) => /\.\w+$/u.test(file))
    .sort();
}

/** Every file below a folder, with slashes. */
function below(name: string): readonly string[] {
  const root = join(folder, name);
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
}

/** What a built module of Node imports of its own kind. */
function imported(name: string): readonly string[] {
  const text = readFileSync(join(folder, name), 'utf8');
  const paths = [...text.matchAll(/(?:from|import\(|require\()\s*["'](\.\.?\/[^"']+)["']/gu)];
  return paths.map(([, path]) => join(dirname(name), path!).replaceAll('\\', '/'));
}

describe('the packed program', () => {
  it('is the shell, the window, and nothing else', () => {
    const window = below('dist/renderer').filter((file) => file !== 'dist/renderer/licences.txt');
    const shell = [about.main, 'dist/main/preload.cjs'];
    for (const file of shell)
      for (const other of imported(file)) if (!shell.includes(other)) shell.push(other);
    expect(inside()).toEqual([...shell, ...window, 'package.json'].sort());
    // No source, no test, no map, no plan: what runs, what it looks like, and the font with its licence.
    const endings = new Set(inside().map((file) => file.slice(file.lastIndexOf('.'))));
    expect([...endings].sort()).toEqual(['.cjs', '.css', '.html', '.js', '.json', '.txt', '.woff2']);
  });

  it('needs nothing that is not there', () => {
    const files = inside();
    for (const file of files.filter((name) => name.startsWith('dist/main/')))
      for (const other of imported(file)) expect(files, file).toContain(other);
    const page = archive.extractFile(asar(), 'dist/renderer/index.html').toString('utf8');
    const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+)"/gu)].map(
      ([, path]) => `dist/renderer/${path!}`,
    );
    expect(named.length).toBeGreaterThan(1);
    for (const file of named) expect(files).toContain(file);
  });

  it('is small', () => {
    // 2.7 MB when this was written; Plotly and React are half of it. Electron adds a hundred of its own.
    expect(statSync(asar()).size).toBeLessThan(4e6);
    expect(readdirSync(join(packed, 'locales'))).toEqual(['en-US.pak']);
  });

  it('says of itself only what a user may read', () => {
    const manifest = JSON.parse(archive.extractFile(asar(), 'package.json').toString('utf8')) as object;
    expect(manifest).not.toHaveProperty('devDependencies');
    expect(manifest).not.toHaveProperty('scripts');
  });

  it('has its fuses set', () => {
    // '0' off, '1' on, in the order of the fuse wire: run as node, cookies (left as they are), NODE_OPTIONS, inspect,
    // integrity of the archive, only from the archive, snapshot (left), file protocol, and one more (left).
    const binary = readFileSync(join(packed, 'hearthclock'), 'latin1');
    expect(binary.slice(binary.indexOf(sentinel) + sentinel.length + 2).slice(0, 9)).toBe('010011101');
  });

  it('brings the licences of what is in it, beside the program', () => {
    const licence = (name: string): string => readFileSync(join(packed, 'licences', `${name}.txt`), 'utf8');
    expect(readdirSync(join(packed, 'licences')).sort()).toEqual([
      'hearthclock.txt',
      'shell.txt',
      'window.txt',
    ]);
    expect(licence('hearthclock')).toBe(readFileSync(sourceOf('LICENSE'), 'utf8'));
    const texts = licence('window') + licence('shell');
    // Every package that the program depends on is bundled, so each has to be there with its version.
    for (const [name, version] of Object.entries(about.dependencies))
      expect(texts).toMatch(new RegExp(`^${name} ${version.replaceAll('.', '\\.')} \\(.+\\)$`, 'mu'));
    // And what those bring along: the function that draws, the numbers, the font.
    for (const phrase of ['scheduler 0', 'decimal.js 1', 'SIL OPEN FONT LICENSE', 'Apache License'])
      expect(texts).toContain(phrase);
  });
});
