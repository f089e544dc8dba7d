import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The benchmark, bundled so that plain Node runs it; packages stay outside. */
export default defineConfig({
  build: {
    ssr: true,
    target: 'node20.19',
    outDir: here('dist/bench'),
    emptyOutDir: true,
    minify: false,
    rolldownOptions: {
      input: { bench: here('test/bench/bench.ts') },
      output: { format: 'es', entryFileNames: '[name].js' },
    },
  },
});
