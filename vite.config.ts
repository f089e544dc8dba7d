import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** The window: static files for the protocol handler of Electron and for the loopback server alike. */
export default defineConfig({
  root: here('renderer'),
  base: './',
  plugins: [react()],
  // plotly.js expects Node's global; the map styles it drags in are not for charts without maps.
  define: { global: 'globalThis' },
  resolve: { alias: { 'maplibre-gl/dist/maplibre-gl.css': here('renderer/empty.css') } },
  worker: { format: 'es' },
  build: {
    outDir: here('dist/renderer'),
    emptyOutDir: true,
    target: 'chrome140',
    // Fonts and workers stay files: the Content-Security-Policy allows no inline ones.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
  },
});
