/** Start-up of the terminal and of the served window, as whole processes, and the size of what is built. */
import { spawn, spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';
import { quantileOf } from './timed.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

export interface Start {
  readonly planMilliseconds: number;
  readonly serveMilliseconds: number;
}

function planTime(): number {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['dist/main/plan.js', '--json'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (status !== 0) throw new Error(stderr);
  return performance.now() - start;
}

async function serveTime(): Promise<number> {
  const data = newTempFolder();
  const start = performance.now();
  const server = spawn(process.execPath, ['dist/main/start.js', '--host', 'serve'], {
    cwd: root,
    env: { ...process.env, HEARTHCLOCK_DATA: data },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const ended = new Promise((done) => server.once('exit', done));
  await new Promise<void>((done) => {
    let text = '';
    server.stdout.on('data', (part) => {
      text += String(part);
      if (/^http:\S+$/mu.test(text)) done();
    });
  });
  const time = performance.now() - start;
  server.kill('SIGINT');
  await ended;
  removeFolder(data);
  return time;
}

export async function benchStart(): Promise<Start> {
  const plans = Array.from({ length: 5 }, planTime);
  const serves: number[] = [];
  for (let i = 0; i < 3; i++) serves.push(await serveTime());
  return { planMilliseconds: quantileOf(plans, 0.5), serveMilliseconds: quantileOf(serves, 0.5) };
}

/** kB */
export type Size = Readonly<Record<'window' | 'windowLargestScript' | 'main', number>>;

function files(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

export function benchSize(): Size {
  const kB = (path: string): number => statSync(path).size / 1000;
  const sum = (paths: readonly string[]): number => paths.reduce((total, path) => total + kB(path), 0);
  const renderer = files(join(root, 'dist/renderer'));
  return {
    window: sum(renderer),
    windowLargestScript: Math.max(...renderer.filter((path) => path.endsWith('.js')).map(kB)),
    main: sum(files(join(root, 'dist/main'))),
  };
}
