import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { licences } from './vite.licences.config.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** What a mode builds. Only the shell goes into a package: what the terminal alone needs lies apart from it. */
const parts = {
  shell: {
    input: { electron: here('main/electron.ts') },
    output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'shell/[name]-[hash].js' },
  },
  preload: {
    input: { preload: here('main/preload.ts') },
    output: { format: 'cjs', entryFileNames: '[name].cjs' },
  },
  terminal: {
    input: {
      start: here('main/start.ts'),
      plan: here('main/plan.ts'),
      compare: here('main/compare.ts'),
      handout: here('main/handout.ts'),
      calibrate: here('main/calibrate.ts'),
      validate: here('main/validate.ts'),
    },
    output: { format: 'es', entryFileNames: '[name].js', chunkFileNames: 'terminal/[name]-[hash].js' },
  },
} as const;

/** Node side: bundled entries, so that the terminal starts fast. `--mode` says which part, `shell` first. */
export default defineConfig(({ mode }) => {
  if (!(mode in parts)) throw new Error(`--mode: found ${mode}; allowed ${Object.keys(parts).join(', ')}`);
  return {
    plugins: mode === 'shell' ? [licences(new Set(), true)] : [],
    build: {
      ssr: true,
      target: 'node20.19',
      outDir: here('dist/main'),
      emptyOutDir: mode === 'shell',
      minify: false,
      rolldownOptions: parts[mode as keyof typeof parts],
    },
    ssr: { target: 'node', noExternal: true, external: ['electron'] },
  };
});
