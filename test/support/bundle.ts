/** Builds Node entries as the product does, into a folder of the test: Node 20 runs no TypeScript. */
import { join } from 'node:path';
import { build } from 'vite';

/** @param inputs from the name of the built file to the source; @returns the folder it was built into */
export async function bundle(outDir: string, inputs: Readonly<Record<string, string>>): Promise<string> {
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: true,
      target: 'node20.19',
      outDir,
      emptyOutDir: true,
      minify: false,
      rolldownOptions: { input: { ...inputs }, output: { format: 'es', entryFileNames: '[name].mjs' } },
    },
    ssr: { target: 'node', noExternal: true, external: ['electron'] },
  });
  return outDir;
}

export function sourceOf(path: string): string {
  return join(import.meta.dirname, '..', '..', path);
}
