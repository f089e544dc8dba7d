/** The program built into a folder of the test, with a fixture for the window and, if wanted, the package electron. */
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { bundle, sourceOf } from './bundle.ts';
import { writeFixtureWindow } from './fixtureWindow.ts';

export interface BuiltApp {
  readonly root: string;
  readonly start: string;
}

export async function buildApp(root: string): Promise<BuiltApp> {
  await bundle(join(root, 'dist', 'main'), { start: sourceOf('main/start.ts') });
  writeFixtureWindow(join(root, 'dist', 'renderer'));
  writeFileSync(
    join(root, 'package.json'),
    '{ "name": "fixture", "version": "0.0.0-test", "type": "module" }\n',
  );
  return { root, start: join(root, 'dist', 'main', 'start.mjs') };
}

/** The real package with its installer, without a binary. @returns its version */
export function addElectronPackage(root: string): string {
  const real = dirname(createRequire(import.meta.url).resolve('electron/package.json'));
  const copy = join(root, 'node_modules', 'electron');
  mkdirSync(copy, { recursive: true });
  for (const name of ['package.json', 'install.js', 'index.js', 'checksums.json']) {
    cpSync(join(real, name), join(copy, name));
  }
  // What the installer needs lies beside the real package.
  for (const scope of ['@electron', '@electron-internal']) {
    symlinkSync(join(dirname(real), scope), join(root, 'node_modules', scope));
  }
  const about = JSON.parse(readFileSync(join(copy, 'package.json'), 'utf8')) as { version: string };
  return about.version;
}
