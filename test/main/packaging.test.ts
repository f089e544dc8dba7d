import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planEnding } from '../../main/files/planName.ts';
import { sourceOf } from '../support/bundle.ts';
import { tempFolder } from '../support/tempFolder.ts';

// Each from the package that depends on it, not from wherever npm happened to put it.
const builder = createRequire(createRequire(import.meta.url).resolve('electron-builder/package.json'));
const library = createRequire(builder.resolve('app-builder-lib/package.json'));
const yaml = library('js-yaml') as { load(text: string): unknown };

interface Packaging {
  appId: string;
  files: string[];
  fileAssociations: { ext: string }[];
  electronFuses: Record<string, boolean>;
  linux: { target: string[] };
  mac: { target: string[] };
  win: { target: string[] };
}
const packaging = yaml.load(readFileSync(sourceOf('electron-builder.yml'), 'utf8')) as Packaging;
const about = JSON.parse(readFileSync(sourceOf('package.json'), 'utf8')) as Record<string, unknown>;
/** What marks the fuses in Electron's binary: then a version, their number, and one character each. */
const sentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

describe('the packaging file', () => {
  it("passes electron-builder's own schema, which refuses unknown keys", async () => {
    // An inner path of the pinned version; it exports no other way to check without packing.
    const inner = builder.resolve('app-builder-lib/out/util/config/config.js');
    const { validateConfiguration } = (await import(pathToFileURL(inner).href)) as {
      validateConfiguration: (config: unknown, debug: unknown) => Promise<void>;
    };
    const debug = { isEnabled: false, add: () => undefined };
    await expect(validateConfiguration(structuredClone(packaging), debug)).resolves.toBeUndefined();
    const wrong = { ...packaging, fileAssociation: [] };
    await expect(validateConfiguration(wrong, debug)).rejects.toThrow('fileAssociation');
  });

  it('packs the built files only: everything is bundled', () => {
    expect(packaging.files).toEqual(['dist/main/**', 'dist/renderer/**', 'package.json', '!node_modules/**']);
    expect(about['main']).toBe('dist/main/electron.js');
    expect(typeof about['author']).toBe('string');
    expect(typeof about['description']).toBe('string');
  });

  it('builds for the three systems and opens our plans', () => {
    expect([packaging.linux.target, packaging.mac.target, packaging.win.target]).toEqual([
      ['AppImage', 'deb'],
      ['dmg'],
      ['nsis'],
    ]);
    expect(packaging.fileAssociations.map(({ ext }) => `.${ext}`)).toEqual([planEnding]);
  });

  it('sets the fuses of the security checklist', () => {
    expect(packaging.electronFuses).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  it('packs with a stand-in for the binary: the built files and nothing else, the fuses set', async () => {
    const folder = tempFolder();
    const put = (name: string, text: string, mode = 0o644): void => {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text, { mode });
    };
    copyFileSync(sourceOf('electron-builder.yml'), join(folder, 'electron-builder.yml'));
    const { name, version, description, author, main, type } = about;
    put('package.json', JSON.stringify({ name, version, description, author, main, type }));
    const built = ['dist/main/electron.js', 'dist/main/preload.cjs', 'dist/renderer/index.html'];
    for (const file of built) put(file, file);
    put('node_modules/left/out.js', '');
    put('physics/left-out.ts', '');
    const { version: electron } = library('electron/package.json') as { version: string };
    put('stand-in/electron', `#!/bin/sh\n# ${sentinel}\u0001\u0009${'1'.repeat(9)}\n`, 0o755);
    put('stand-in/version', electron);
    for (const file of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'resources/x', 'locales/x']) {
      put(`stand-in/${file}`, '');
    }
    const words = ['--linux', '--x64', '--dir', `-c.electronDist=${join(folder, 'stand-in')}`];
    const cli = builder.resolve('electron-builder/cli.js');
    const env = { ...process.env, INIT_CWD: folder };
    const pack = spawn(process.execPath, [cli, ...words, `-c.electronVersion=${electron}`], {
      cwd: folder,
      env,
      stdio: 'ignore',
    });
    expect((await once(pack, 'exit'))[0]).toBe(0);

    const packed = join(folder, 'release', 'linux-unpacked');
    const asar = library('@electron/asar') as { listPackage: (file: string) => string[] };
    const listed = asar
      .listPackage(join(packed, 'resources', 'app.asar'))
      .map((file) => file.replaceAll('\\', '/').slice(1));
    expect(listed.filter((file) => /\.\w+$/.test(file)).sort()).toEqual([...built, 'package.json'].sort());
    // '0' off, '1' on, in the order of the fuse wire: run as node, cookies (left as they are), NODE_OPTIONS, inspect,
    // integrity of the archive, only from the archive, snapshot (left), file protocol, and one more (left).
    const binary = readFileSync(join(packed, 'hearthclock'), 'latin1');
    expect(binary.slice(binary.indexOf(sentinel) + sentinel.length + 2).slice(0, 9)).toBe('010011101');
  }, 60_000);

  it('uses the same name for the system as the program does', () => {
    expect(readFileSync(sourceOf('main/electron.ts'), 'utf8')).toContain(
      `setAppUserModelId('${packaging.appId}')`,
    );
  });
});
