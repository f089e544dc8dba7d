/** The programs a start runs when they do not do what is wanted of them: scripts in the place of Electron. */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { described, exitOf } from '../../main/hosts/child.ts';
import { electronBinary, fetchElectron } from '../../main/hosts/electronBinary.ts';
import { electronArguments, runElectron } from '../../main/hosts/electronHost.ts';
import { ancestors } from '../../main/hosts/stopSignal.ts';
import { electronReady } from '../../main/ipc.ts';
import { Presence } from '../../main/window/presence.ts';
import { openMirror, type Mirror } from '../support/mirror.ts';
import { tempFolder } from '../support/tempFolder.ts';

const never = new AbortController().signal;
const ready = `echo '${electronReady}'`;

function script(lines: string): string {
  const path = join(tempFolder(), 'program');
  writeFileSync(path, `#!/bin/sh\n${lines}\n`, { mode: 0o755 });
  return path;
}

describe('a child', () => {
  it('that does not end when asked is made to', async () => {
    const child = spawn('/bin/sh', ['-c', "trap '' TERM; echo up; while :; do sleep 0.05; done"]);
    await new Promise((up) => child.stdout.once('data', up));
    const exit = await exitOf(child, AbortSignal.abort(), 50);
    expect(described(exit)).toBe('was ended by SIGKILL');
  });

  it('that was stopped before it was looked after is ended all the same', async () => {
    const exit = await exitOf(spawn('/bin/sh', ['-c', 'exec sleep 60']), AbortSignal.abort());
    expect(described(exit)).toBe('was ended by SIGTERM');
  });
});

describe('Electron', () => {
  it('is given the program and the file, and gives up its sandbox only as root', () => {
    expect(electronArguments('/app', undefined, false)).toEqual(['/app']);
    expect(electronArguments('/app', '/plan', true)).toEqual(['--no-sandbox', '/app', '/plan']);
  });

  it.each([
    ['shows its window and ends badly', `${ready}; exit 3`, 'closed'],
    ['hands its file to one that runs and ends well', 'exit 0', 'closed'],
    ['ends badly at once', 'exit 3', { failed: 'it ended with status 3 before its window came up' }],
    ['is killed', 'kill -9 $$', { failed: 'it was ended by SIGKILL before its window came up' }],
  ])('that %s', async (_what, lines, ended) => {
    expect(await runElectron(script(lines), '/app', undefined, process.env, never)).toEqual(ended);
  });

  it('that is not there is told', async () => {
    expect(await runElectron('/nowhere/electron', '/app', undefined, {}, never)).toEqual({
      failed: 'it spawn /nowhere/electron ENOENT before its window came up',
    });
  });

  it('that lives and shows no window is given up; one that shows it late is not', async () => {
    const ended = await runElectron(script('exec sleep 60'), '/app', undefined, process.env, never, 200);
    expect(ended).toEqual({ failed: 'its window did not come up within 0.2 s' });
    const shown = script(`${ready}; sleep 0.5`);
    expect(await runElectron(shown, '/app', undefined, process.env, never, 300)).toBe('closed');
  });

  it('that is stopped before its window came up has not failed', async () => {
    const stop = AbortSignal.timeout(100);
    expect(await runElectron(script('exec sleep 60'), '/app', undefined, process.env, stop)).toBe('closed');
  });
});

describe("Electron's binary", () => {
  /** A package electron whose installer is ours. */
  function packageWith(installer: string): { from: string; root: string } {
    const folder = tempFolder();
    const root = join(folder, 'node_modules', 'electron');
    mkdirSync(join(root, 'dist'), { recursive: true });
    writeFileSync(join(root, 'package.json'), '{"name":"electron","version":"1.2.3"}');
    writeFileSync(join(root, 'install.js'), installer);
    return { from: join(folder, 'index.js'), root };
  }
  async function fetched(
    installer: string,
    stop: (serving: Mirror) => AbortSignal = () => never,
  ): Promise<string | undefined> {
    const { from } = packageWith(installer);
    const serving = await openMirror('1.2.3', '');
    try {
      const env = { ...process.env, ELECTRON_MIRROR: serving.base };
      return await fetchElectron(from, env, () => undefined, stop(serving));
    } finally {
      await serving.close();
    }
  }

  it('that its package names and that is not there is not taken', () => {
    const { from, root } = packageWith('');
    writeFileSync(join(root, 'dist', 'version'), '1.2.3');
    writeFileSync(join(root, 'path.txt'), 'electron');
    expect(electronBinary(from, {})).toBeUndefined();
  });

  it('is not fetched where the package is not installed', async () => {
    const from = join(tempFolder(), 'index.js');
    expect(await fetchElectron(from, {}, () => undefined, never)).toBe(
      'the package electron is not installed',
    );
  });

  it('is fetched by the installer; one that fails is quoted by its first line', async () => {
    expect(await fetched('')).toBeUndefined();
    expect(await fetched("process.stderr.write('no room\\nat line 3\\n'); process.exitCode = 1")).toBe(
      'the download failed: no room',
    );
  });

  it('is not fetched any more once the start is stopped', async () => {
    expect(await fetched('', () => AbortSignal.abort())).toMatch(
      /^127\.0\.0\.1:\d+ cannot be reached \(.*abort/u,
    );
    const begun = join(tempFolder(), 'begun');
    const stop = new AbortController();
    const waiting = fetched(
      `require('node:fs').writeFileSync(${JSON.stringify(begun)}, ''); setInterval(() => {}, 1000)`,
      () => stop.signal,
    );
    await vi.waitFor(
      () => {
        expect(existsSync(begun)).toBe(true);
      },
      { timeout: 15_000 },
    );
    stop.abort();
    expect(await waiting).toMatch(/^the download could not be run: /u);
  });
});

it('who started us is known by number, and who started that where there is a /proc', () => {
  const proc = tempFolder();
  mkdirSync(join(proc, String(process.ppid)));
  writeFileSync(join(proc, String(process.ppid), 'stat'), `${process.ppid} (a) b) S 71 5 5 0\n`);
  expect(ancestors(proc)).toBe(`${process.ppid} 71`);
  expect(ancestors(join(proc, 'none'))).toBe(`${process.ppid} `);
});

it('nobody waits for a window once the start is stopped', async () => {
  expect(await new Presence().until(() => false, AbortSignal.abort())).toBe(false);
});
