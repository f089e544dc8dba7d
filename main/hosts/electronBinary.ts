/** Whether Electron's binary is there, and how to have it fetched within a stated limit. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { causeOf } from '../files/disk.ts';

/**
 * Found by reading files only: `require('electron')` from Node would start the download without a limit.
 * @param from a file (or its URL) from where the package `electron` is looked for
 */
export function electronBinary(from: string, env: NodeJS.ProcessEnv): string | undefined {
  try {
    const root = dirname(createRequire(from).resolve('electron/package.json'));
    const dist = env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(root, 'dist');
    if (readFileSync(join(dist, 'version'), 'utf8').trim().replace(/^v/, '') !== versionIn(root))
      return undefined;
    const file = join(dist, readFileSync(join(root, 'path.txt'), 'utf8').trim());
    return existsSync(file) ? file : undefined;
  } catch {
    // Any missing file means the same here: the binary is not there.
    return undefined;
  }
}

function versionIn(root: string): string {
  const about = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return about.version;
}

/** Where the package's own installer would fetch from, with the variables it reads. */
export function downloadAddress(
  version: string,
  platform: NodeJS.Platform,
  arch: string,
  env: NodeJS.ProcessEnv,
): string {
  const base =
    env['npm_config_electron_mirror'] ??
    env['NPM_CONFIG_ELECTRON_MIRROR'] ??
    env['ELECTRON_MIRROR'] ??
    'https://github.com/electron/electron/releases/download/';
  return `${base}v${version}/electron-v${version}-${platform}-${arch}.zip`;
}

export interface FetchLimits {
  readonly probeMs: number;
  readonly downloadMs: number;
}

export const fetchLimits: FetchLimits = { probeMs: 4000, downloadMs: 5 * 60_000 };

/**
 * Asks the server first, because a silent one would hold the installer for as long as it is let; then runs the
 * package's installer in a child with a limit.
 * @returns undefined when the binary was fetched, otherwise why not
 */
export async function fetchElectron(
  from: string,
  env: NodeJS.ProcessEnv,
  say: (line: string) => void,
  stop: AbortSignal,
  limits: FetchLimits = fetchLimits,
): Promise<string | undefined> {
  let root;
  let installer;
  try {
    root = dirname(createRequire(from).resolve('electron/package.json'));
    installer = createRequire(from).resolve('electron/install.js');
  } catch {
    return 'the package electron is not installed';
  }
  const address = downloadAddress(versionIn(root), process.platform, process.arch, env);
  const unreachable = await probe(address, limits.probeMs, stop);
  if (unreachable !== undefined) return unreachable;
  const minutes = Math.ceil(limits.downloadMs / 60_000);
  say(
    `Electron's binary is not here yet: fetching it once from ${new URL(address).host} (some 110 MB), for at most ` +
      `${minutes} min. Ctrl-C stops; --host browser does without it.`,
  );
  return runInstaller(installer, env, limits.downloadMs, stop);
}

async function probe(address: string, limitMs: number, stop: AbortSignal): Promise<string | undefined> {
  const { host } = new URL(address);
  try {
    const signal = AbortSignal.any([stop, AbortSignal.timeout(limitMs)]);
    const { ok, status } = await fetch(address, { method: 'HEAD', signal });
    return ok ? undefined : `${host} answered ${status} for it`;
  } catch (error) {
    // A TypeError whose cause says more, or what the signal says.
    const { name, cause } = error as Error;
    return name === 'TimeoutError'
      ? `${host} did not answer within ${limitMs / 1000} s`
      : `${host} cannot be reached (${causeOf(cause ?? error)})`;
  }
}

function runInstaller(
  installer: string,
  env: NodeJS.ProcessEnv,
  limitMs: number,
  stop: AbortSignal,
): Promise<string | undefined> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [installer], {
      env,
      // Standard output is kept for the address of the window.
      stdio: ['ignore', 'ignore', 'pipe'],
      timeout: limitMs,
      killSignal: 'SIGKILL',
      signal: stop,
    });
    let said = '';
    child.stderr.on('data', (part: Buffer) => {
      said = (said + part.toString('utf8')).slice(0, 4000);
    });
    child.on('error', (error) => {
      done(`the download could not be run: ${causeOf(error)}`);
    });
    child.on('close', (status, signal) => {
      if (status === 0) done(undefined);
      else if (signal === 'SIGKILL') done(`the download was not done within ${limitMs / 1000} s`);
      else done(`the download failed: ${said.replace(/\n.*$/su, '')}`);
    });
  });
}
