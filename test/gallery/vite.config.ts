/** The gallery: `npm run gallery` shows every component of the window in its states, in both themes. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  cacheDir: here('../../dist/gallery-cache'),
  plugins: [react()],
  define: { global: 'globalThis' },
  resolve: { alias: { 'maplibre-gl/dist/maplibre-gl.css': here('../../renderer/empty.css') } },
  worker: { format: 'es' },
  server: { host: '127.0.0.1', open: false, fs: { allow: [here('../..')] } },
});
