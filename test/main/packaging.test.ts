import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { planEnding } from '../../main/files/planName.ts';
import { sourceOf } from '../support/bundle.ts';
import { builder, library } from '../support/packager.ts';

const yaml = library('js-yaml') as { load(text: string): unknown };

interface Packaging {
  appId: string;
  directories: { buildResources: string };
  fileAssociations: { ext: string; icon: string }[];
  electronFuses: Record<string, boolean>;
  linux: { target: string[]; icon: string };
  mac: { target: string[]; icon: string };
  win: { target: string[]; icon: string };
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

  it('is about the program that is built', () => {
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
    expect(readFileSync(sourceOf('main/electron.ts'), 'utf8')).toContain(
      `setAppUserModelId('${packaging.appId}')`,
    );
  });
});

/** Images in a file of several sizes, each a PNG of the size that the file names (ISO/IEC 15948, 5.2 and 11.2.2). */
function sizeOfPng(png: Buffer): number {
  expect(png.subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  expect(width).toBe(height);
  return width;
}

describe('the icons', () => {
  const icon = (name: string): string => sourceOf(join(packaging.directories.buildResources, name));

  it('are there for each system and for the plans', () => {
    for (const { icon: name } of [packaging.linux, packaging.mac, packaging.win])
      expect(existsSync(icon(name)), name).toBe(true);
    for (const { icon: name } of packaging.fileAssociations)
      for (const ending of ['ico', 'icns']) expect(existsSync(icon(`${name}.${ending}`))).toBe(true);
    expect(sizeOfPng(readFileSync(icon('icon.png')))).toBe(512);
  });

  it('for Windows hold the sizes that it asks for, 16 to 256', () => {
    const { Data } = library('resedit') as {
      Data: {
        IconFile: {
          from: (bytes: Buffer) => {
            icons: { width?: number; data: { isIcon: () => boolean; bin?: ArrayBuffer } }[];
          };
        };
      };
    };
    const { icons } = Data.IconFile.from(readFileSync(icon('icon.ico')));
    const sizes = icons.map(({ data }) => {
      expect(data.isIcon()).toBe(false);
      return sizeOfPng(Buffer.from(data.bin!));
    });
    expect(sizes).toEqual([16, 24, 32, 48, 64, 128, 256]);
    // A width of 256 is written as 0.
    expect(icons.map(({ width }) => width)).toEqual([16, 24, 32, 48, 64, 128, 0]);
  });

  it('for macOS hold each size under its type, up to 1024', () => {
    const file = readFileSync(icon('icon.icns'));
    expect(file.toString('latin1', 0, 4)).toBe('icns');
    expect(file.readUInt32BE(4)).toBe(file.length);
    // The types of the format and their pixels, from memory of Apple's list.
    const pixels: Readonly<Record<string, number>> = {
      ...{ icp4: 16, icp5: 32, ic07: 128, ic08: 256, ic09: 512, ic10: 1024 },
      ...{ ic11: 32, ic12: 64, ic13: 256, ic14: 512 },
    };
    const found: string[] = [];
    for (let at = 8; at < file.length; at += file.readUInt32BE(at + 4)) {
      const type = file.toString('latin1', at, at + 4);
      expect(sizeOfPng(file.subarray(at + 8, at + file.readUInt32BE(at + 4)))).toBe(pixels[type]);
      found.push(type);
    }
    expect(found.sort()).toEqual(Object.keys(pixels).sort());
  });
});
