import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { licences } from './vite.licences.config.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Packages of which something is in the window or its workers. */
const shipped = new Set<string>();

/** The window: static files for the protocol handler of Electron and for the loopback server alike. */
export default defineConfig({
  root: here('renderer'),
  base: './',
  plugins: [react(), licences(shipped, true)],
  // plotly.js expects Node's global; the map styles it drags in are not for charts without maps.
  define: { global: 'globalThis' },
  resolve: { alias: { 'maplibre-gl/dist/maplibre-gl.css': here('renderer/empty.css') } },
  worker: { format: 'es', plugins: () => [licences(shipped, false)] },
  build: {
    outDir: here('dist/renderer'),
    emptyOutDir: true,
    target: 'chrome140',
    // Fonts and workers stay files: the Content-Security-Policy allows no inline ones.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
    // Two workers are built within this build: that their plugins take most of its time is as it should be.
    rolldownOptions: {
      checks: { bundlerTimings: false },
      // Charts are two thirds of the window's code: a file of their own stays in the browser's cache.
      output: { codeSplitting: { groups: [{ name: 'charts', test: /node_modules[\\/]plotly\.js/u }] } },
    },
  },
});
