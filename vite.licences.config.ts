/**
 * Collects, while the bundler runs, the licence of every package of which something is in what it built: the text as
 * the package brings it, with name, version and the licence it names.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

export interface PackageLicence {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

const fileName = 'licences.txt';
const inModules = /^(?:\0|\/@fs)?(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/u;
const licenceFile = /^(?:licen[cs]e|copying|ofl|notice)(?:[.-].*)?$/iu;

/** The folder of the package that a module belongs to; undefined for our own. */
function packageFolder(module: string): string | undefined {
  return inModules.exec(module)?.[1];
}

/** @throws Error for a package that says nothing of its licence: it must not be shipped unread */
function licenceOf(folder: string): PackageLicence {
  const about = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<string, unknown>;
  const { name, version, license, author } = about;
  const files = readdirSync(folder)
    .filter((file) => licenceFile.test(file))
    .sort();
  if (typeof license !== 'string' && files.length === 0)
    throw new Error(
      `${folder}: found no licence; allowed a package that names its licence or brings its text`,
    );
  const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').trim());
  const by =
    typeof author === 'string' ? author : ((author as { name?: string } | undefined)?.name ?? 'its authors');
  return {
    name: String(name),
    version: String(version),
    licence: typeof license === 'string' ? license : 'see below',
    text:
      texts.length > 0
        ? texts.join('\n\n')
        : `By ${by}. The package brings no text; its licence is named above.`,
  };
}

export function licenceText(packages: readonly PackageLicence[]): string {
  const line = '-'.repeat(80);
  const entries = packages.map(
    ({ name, version, licence, text }) => `${line}\n${name} ${version} (${licence})\n${line}\n\n${text}\n`,
  );
  return `What others wrote of this program, and under which licences.\n\n${entries.join('\n')}`;
}

/**
 * @param folders shared between the build of the window and those of its workers, which the bundler builds apart
 * @param writes whether this build writes the file: that of a worker only collects
 */
export function licences(folders: Set<string>, writes: boolean): Plugin {
  return {
    name: 'licences',
    generateBundle(_options, bundle) {
      for (const output of Object.values(bundle)) {
        if (output.type !== 'chunk') continue;
        for (const module of output.moduleIds) {
          const folder = packageFolder(module);
          if (folder !== undefined) folders.add(folder);
        }
      }
      if (!writes) return;
      // Styles and what they name (fonts) are in no chunk.
      for (const module of this.getModuleIds()) {
        const folder = /\.css(?:\?.*)?$/u.test(module) ? packageFolder(module) : undefined;
        if (folder !== undefined) folders.add(folder);
      }
      const packages = [...folders].map(licenceOf).sort((a, b) => a.name.localeCompare(b.name, 'en'));
      this.emitFile({ type: 'asset', fileName, source: licenceText(packages) });
    },
  };
}
