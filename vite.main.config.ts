import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Node side: bundled entries, so that the terminal starts fast. `--mode preload` builds the sandboxed preload. */
export default defineConfig(({ mode }) => {
  const preload = mode === 'preload';
  return {
    build: {
      ssr: true,
      target: 'node20.19',
      outDir: here('dist/main'),
      emptyOutDir: !preload,
      minify: false,
      rolldownOptions: preload
        ? { input: here('main/preload.ts'), output: { format: 'cjs', entryFileNames: 'preload.cjs' } }
        : {
            input: {
              electron: here('main/electron.ts'),
              start: here('main/start.ts'),
              plan: here('main/plan.ts'),
              compare: here('main/compare.ts'),
              handout: here('main/handout.ts'),
              validate: here('main/validate.ts'),
            },
            output: { format: 'es', entryFileNames: '[name].js' },
          },
    },
    ssr: { target: 'node', noExternal: true, external: ['electron'] },
  };
});
