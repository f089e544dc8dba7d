/**
 * What `npm start` runs: builds if a source is newer than what was built, then starts in this same process, so that a
 * signal meant for the program reaches it. Plain JavaScript, because it runs before anything is built.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const sources = [
  'main',
  'renderer',
  'physics',
  'package.json',
  'vite.config.ts',
  'vite.main.config.ts',
  'vite.licences.config.ts',
];
const built = [
  'dist/renderer/index.html',
  'dist/main/start.js',
  'dist/main/electron.js',
  'dist/main/preload.cjs',
];

/** When the youngest file under `path` was changed; folders count, because a deleted file changes only its folder. */
function youngest(path) {
  const about = statSync(path);
  if (!about.isDirectory()) return about.mtimeMs;
  return Math.max(about.mtimeMs, ...readdirSync(path).map((name) => youngest(join(path, name))));
}

/** The built files have to be there, and the oldest of them younger than every source. */
function isFresh() {
  const files = built.map((name) => join(root, name));
  if (!files.every((file) => existsSync(file))) return false;
  const oldest = Math.min(...files.map((file) => statSync(file).mtimeMs));
  return sources.every((name) => youngest(join(root, name)) <= oldest);
}

if (!isFresh()) {
  process.stderr.write('hearthclock: building, because a source is newer than what was built\n');
  // Standard output is kept for the address of the window.
  const { status } = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(1);
}
await import(pathToFileURL(join(root, 'dist/main/start.js')).href);
