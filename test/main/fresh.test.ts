import { cpSync, mkdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourceOf } from '../support/bundle.ts';
import { runProgram } from '../support/program.ts';
import { tempFolder } from '../support/tempFolder.ts';

const sources = [
  'main/a.ts',
  'renderer/b/c.tsx',
  'physics/d.ts',
  'vite.config.ts',
  'vite.main.config.ts',
  'vite.licences.config.ts',
];
const built = [
  'dist/renderer/index.html',
  'dist/main/start.js',
  'dist/main/electron.js',
  'dist/main/preload.cjs',
];

/** A package whose build writes what ours does, and notes that it ran. */
function fixture(): string {
  const root = tempFolder();
  const write = (name: string, text: string): void => {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  };
  for (const name of sources) write(name, '');
  write('package.json', JSON.stringify({ type: 'module', scripts: { build: 'node build.cjs' } }));
  write(
    'build.cjs',
    `const fs = require('fs');
fs.appendFileSync('builds', 'x');
console.log('noise of the build');
for (const name of ${JSON.stringify(built)}) {
  fs.mkdirSync(require('path').dirname(name), { recursive: true });
  fs.writeFileSync(name, name.endsWith('start.js') ? 'console.log("started " + process.argv.slice(2).join(" "))' : '');
}
`,
  );
  write('builds', '');
  cpSync(sourceOf('main/fresh.mjs'), join(root, 'main', 'fresh.mjs'));
  return root;
}

async function start(root: string): Promise<number> {
  const program = runProgram(
    process.execPath,
    [join(root, 'main', 'fresh.mjs'), 'x', '--host=serve'],
    process.env,
  );
  expect(await program.ended).toBe(0);
  expect(program.out()).toBe('started x --host=serve\n');
  return readFileSync(join(root, 'builds'), 'utf8').length;
}

describe('what npm start runs first', () => {
  it('builds only when something was changed, is missing or was deleted', { timeout: 60_000 }, async () => {
    const root = fixture();
    expect(await start(root)).toBe(1);
    expect(await start(root)).toBe(1);
    // Further off than the slowest machine takes for what lies between.
    const later = new Date(Date.now() + 3_600_000);
    utimesSync(join(root, 'renderer/b/c.tsx'), later, later);
    expect(await start(root)).toBe(2);
    const earlier = new Date(Date.now() - 3_600_000);
    utimesSync(join(root, 'renderer/b/c.tsx'), earlier, earlier);
    expect(await start(root)).toBe(2);
    rmSync(join(root, 'dist/main/preload.cjs'));
    expect(await start(root)).toBe(3);
    // As if it were deleted well after the build, whatever the resolution of the clock.
    rmSync(join(root, 'physics/d.ts'));
    utimesSync(join(root, 'physics'), later, later);
    expect(await start(root)).toBe(4);
  });

  it('starts nothing when the build fails', async () => {
    const root = fixture();
    writeFileSync(join(root, 'build.cjs'), 'process.exit(3)');
    const program = runProgram(process.execPath, [join(root, 'main', 'fresh.mjs')], process.env);
    expect(await program.ended).toBe(1);
    expect(program.out()).toBe('');
  });
});
