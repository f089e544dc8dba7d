import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planEnding } from '../../main/files/planName.ts';
import { sourceOf } from '../support/bundle.ts';

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

  it('uses the same name for the system as the program does', () => {
    expect(existsSync(sourceOf('main/electron.ts'))).toBe(true);
    expect(readFileSync(sourceOf('main/electron.ts'), 'utf8')).toContain(
      `setAppUserModelId('${packaging.appId}')`,
    );
  });
});
