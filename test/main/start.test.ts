import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { downloadAddress, electronBinary, fetchElectron } from '../../main/hosts/electronBinary.ts';
import { addElectronPackage, buildApp, type BuiltApp } from '../support/builtApp.ts';
import { begin, callHeaders, enter, send } from '../support/httpClient.ts';
import { openMirror, type Mirror, type MirrorManner } from '../support/mirror.ts';
import { runProgram, type Program } from '../support/program.ts';
import { newTempFolder, removeFolder, tempFolder } from '../support/tempFolder.ts';

let folder: string;
let app: BuiltApp;
beforeAll(async () => {
  folder = newTempFolder();
  app = await buildApp(folder);
});
afterAll(() => {
  removeFolder(folder);
});

/** Nothing of the machine the test runs on: no display, no browser, a data folder of its own. */
function bareEnv(more: NodeJS.ProcessEnv = {}): NodeJS.ProcessEnv {
  return { PATH: '/nowhere', HOME: tempFolder(), HEARTHCLOCK_DATA: tempFolder(), TMPDIR: tmpdir(), ...more };
}

function start(words: readonly string[], env: NodeJS.ProcessEnv = bareEnv(), root = app.root): Program {
  return runProgram(process.execPath, [join(root, 'dist', 'main', 'start.mjs'), ...words], env);
}

async function addressOf(program: Program): Promise<string> {
  await vi.waitFor(
    () => {
      expect(program.out()).toContain('\n');
    },
    { timeout: 15_000 },
  );
  return program.out().trimEnd();
}

async function mirror(version: string, script: string, manner?: MirrorManner): Promise<Mirror> {
  const opened = await openMirror(version, script, manner);
  onTestFinished(() => opened.close());
  return opened;
}

describe('npm start --host serve', () => {
  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'prints the address alone on standard output, serves the window there, and ends on %s',
    async (signal) => {
      const program = start(['--host', 'serve']);
      const address = await addressOf(program);
      expect(program.out()).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43}\n$/);
      expect(program.err()).toContain('host serve, because --host serve asks for it\n');
      const cookie = await enter(address);
      const page = await send(new URL('/', address).href, { headers: { cookie } });
      expect(page.text).toContain('<title>Fixture</title>');
      program.child.kill(signal);
      expect(await program.ended).toBe(0);
      await expect(send(address)).rejects.toThrow('ECONNREFUSED');
    },
  );

  it('opens the file named', async () => {
    const file = join(tempFolder(), 'Sunday.hearthclock');
    writeFileSync(file, '{"title":"Sunday"}');
    const program = start(['--host', 'serve', file]);
    const address = await addressOf(program);
    const { origin } = new URL(address);
    const headers = callHeaders(origin, await enter(address));
    const { text } = await send(`${origin}/bridge/greet`, { method: 'POST', headers, body: '{"ask":null}' });
    expect(JSON.parse(text)).toMatchObject({
      answer: { opened: { name: 'Sunday', text: '{"title":"Sunday"}' } },
    });
  });

  it('keeps the alarms of the window and pushes each when it is due', async () => {
    const address = await addressOf(start(['--host', 'serve']));
    const { origin } = new URL(address);
    const cookie = await enter(address);
    const stream = await begin(`${origin}/bridge/events`, {
      headers: { cookie, 'sec-fetch-site': 'same-origin' },
    });
    stream.setEncoding('utf8');
    let heard = '';
    stream.on('data', (part: string) => (heard += part)).on('error', () => undefined);
    const ask = [{ step: 'bake-1', at: Date.now() + 100, title: 'Pizza 1 out', body: '' }];
    await send(`${origin}/bridge/setAlarms`, {
      method: 'POST',
      headers: callHeaders(origin, cookie),
      body: JSON.stringify({ ask }),
    });
    await expect
      .poll(() => heard, { timeout: 10_000 })
      .toContain('{"name":"alarmDue","push":{"step":"bake-1"}}');
    stream.destroy();
  });

  it('ends with status 1 and says why when the window was not built', async () => {
    const root = tempFolder();
    await buildApp(root);
    rmSync(join(root, 'dist', 'renderer', 'index.html'));
    const program = start(['--host', 'serve'], bareEnv(), root);
    expect(await program.ended).toBe(1);
    expect(program.err()).toContain('found no index.html; allowed a built window (npm run build)\n');
    expect(program.err()).not.toMatch(/\n\s+at /u);
  });

  it.each([
    ['npm', (command: string) => `${command} & wait`],
    // npm puts a shell between itself and the program; without /proc only that shell can be watched.
    [
      'npm behind its shell',
      (command: string) =>
        existsSync('/proc/self/stat') ? `/bin/sh -c '${command}; true' & wait` : `${command} & wait`,
    ],
  ])('ends when the %s that started it is killed', async (_what, line) => {
    const command = `"${process.execPath}" "${app.start}" --host serve`;
    const npm = runProgram('/bin/sh', ['-c', line(command)], bareEnv({ npm_lifecycle_event: 'start' }));
    const address = await addressOf(npm);
    npm.child.kill('SIGKILL');
    await vi.waitFor(() => expect(send(address, { method: 'HEAD' })).rejects.toThrow('ECONNREFUSED'), {
      timeout: 10_000,
      interval: 200,
    });
  });
});

describe('a wrong request', () => {
  it.each([
    [['--host', 'firefox'], '--host: found "firefox"; allowed electron, browser, serve\n'],
    [['--verbose'], 'option: found --verbose; allowed --host, --help\n'],
    [
      ['/nowhere/plan.hearthclock'],
      '/nowhere/plan.hearthclock: found no such file; allowed a readable text file',
    ],
    [['/'], '/: found a folder; allowed a readable text file of at most 1000000 bytes\n'],
  ])('%j ends with status 2 and names the problem', async (words, message) => {
    const program = start(words);
    expect(await program.ended).toBe(2);
    expect(program.err()).toContain(message);
    expect(program.out()).toBe('');
  });

  it('--help ends with status 0 and lists the options', async () => {
    const program = start(['--help']);
    expect(await program.ended).toBe(0);
    for (const word of ['FILE', '--host electron', '--host browser', '--host serve']) {
      expect(program.out()).toContain(word);
    }
  });
});

describe('where nothing else is to be had', () => {
  it('serves without a display, and asks nobody for Electron', async () => {
    const root = tempFolder();
    await buildApp(root);
    const { base, asked } = await mirror(addElectronPackage(root), '');
    const program = start([], bareEnv({ ELECTRON_MIRROR: base }), root);
    await addressOf(program);
    expect(program.err()).toContain('host serve, because there is no display to open a window on\n');
    expect(asked).toEqual([]);
  });

  it('serves when the browser ends before it shows the window, and says why', async () => {
    const browser = join(tempFolder(), 'browser');
    writeFileSync(browser, '#!/bin/sh\nexit 7\n', { mode: 0o755 });
    const program = start(['--host', 'browser'], bareEnv({ CHROME_PATH: browser, DISPLAY: ':nowhere' }));
    await addressOf(program);
    expect(program.err()).toContain('host browser, because --host browser asks for it');
    expect(program.err()).toContain(
      'host serve, because --host browser asks for it; the browser is not to be had: it ended with status 7 before it showed the window\n',
    );
  });

  it('ends with the window that a browser showed, while the npm that started it lives on', async () => {
    const browser = join(tempFolder(), 'browser');
    // Visits the address as a window would, and is closed a moment later.
    const visit = `const { argv } = process;
      const address = argv.find((word) => word.startsWith('--app=')).slice('--app='.length);
      fetch(address, { redirect: 'manual' }).then(() => setTimeout(() => undefined, 400));`;
    writeFileSync(browser, `#!${process.execPath}\n${visit}\n`, { mode: 0o755 });
    const program = start(
      ['--host=browser'],
      bareEnv({ CHROME_PATH: browser, DISPLAY: ':nowhere', npm_lifecycle_event: 'start' }),
    );
    expect(await program.ended).toBe(0);
    expect(program.err()).toMatch(/host browser, because --host browser asks for it.*\n$/u);
    expect(program.out()).toBe('');
  });

  it('serves when there is neither the package electron nor a browser', async () => {
    const program = start([], bareEnv({ DISPLAY: ':nowhere' }));
    await addressOf(program);
    expect(program.err()).toContain(
      'host serve, because Electron is not to be had: the package electron is not installed; no Chromium-family browser',
    );
  });
});

describe('Electron without its binary', () => {
  /** Notes how it was started, and says that its window is up. */
  const standIn = (notes: string, more = ''): string =>
    `#!/bin/sh\necho "$@" > '${notes}'\necho "run as node: $ELECTRON_RUN_AS_NODE" >> '${notes}'\n${more}\n`;
  const ready = "echo 'hearthclock: the window is open'";

  async function appWithElectron(): Promise<{
    root: string;
    version: string;
    env: NodeJS.ProcessEnv;
    notes: string;
  }> {
    const root = tempFolder();
    await buildApp(root);
    const env = bareEnv({
      DISPLAY: ':nowhere',
      electron_use_remote_checksums: '1',
      electron_config_cache: tempFolder(),
      ELECTRON_RUN_AS_NODE: '1',
    });
    return { root, version: addElectronPackage(root), env, notes: join(tempFolder(), 'notes') };
  }

  it('is fetched once, checked, unpacked and launched with the file', async () => {
    const { root, version, env, notes } = await appWithElectron();
    const file = join(tempFolder(), 'plan.hearthclock');
    writeFileSync(file, '{}');
    const { base, asked } = await mirror(version, standIn(notes, `${ready}\nexit 5`));
    expect(electronBinary(join(root, 'dist/main/start.mjs'), env)).toBeUndefined();
    const first = start([file], { ...env, ELECTRON_MIRROR: base }, root);
    expect(await first.ended).toBe(0);
    expect(first.err()).toContain("Electron's binary is not here yet: fetching it once from 127.0.0.1:");
    expect(first.err()).toContain('for at most 5 min');
    expect(first.err()).toContain('host electron, because its binary is here');
    expect(first.out()).toBe('');
    const [words = '', asNode] = readFileSync(notes, 'utf8').split('\n');
    expect(words.split(' ').slice(-2)).toEqual([`${root}/`, file]);
    expect(asNode).toBe('run as node: ');
    const path = `/v${version}/electron-v${version}-${process.platform}-${process.arch}.zip`;
    expect(asked.slice(0, 2)).toEqual([`HEAD ${path}`, `GET ${path}`]);
    const second = start(['--host', 'electron'], { ...env, ELECTRON_MIRROR: 'http://127.0.0.1:1/' }, root);
    expect(await second.ended).toBe(0);
    expect(second.err()).toContain('host electron, because --host electron asks for it');
  });

  it('is given up for another host when it ends before its window came up', async () => {
    const { root, version, env, notes } = await appWithElectron();
    const { base } = await mirror(version, standIn(notes, 'exit 127'));
    const program = start([], { ...env, ELECTRON_MIRROR: base }, root);
    await addressOf(program);
    expect(program.err()).toContain(
      'host serve, because Electron is not to be had: it ended with status 127 before its window came up; no Chromium',
    );
  });

  it('is ended with us', async () => {
    const { root, version, env, notes } = await appWithElectron();
    const { base } = await mirror(version, standIn(notes, `${ready}\necho $$ >> '${notes}'\nexec sleep 60`));
    const program = start(
      [],
      { ...env, PATH: process.env['PATH'], CHROME_PATH: '', ELECTRON_MIRROR: base },
      root,
    );
    await vi.waitFor(
      () => {
        expect(existsSync(notes) ? readFileSync(notes, 'utf8').trim().split('\n') : []).toHaveLength(3);
      },
      { timeout: 15_000 },
    );
    const pid = Number(readFileSync(notes, 'utf8').trim().split('\n')[2]);
    expect(() => process.kill(pid, 0)).not.toThrow();
    program.child.kill('SIGINT');
    expect(await program.ended).toBe(0);
    expect(() => process.kill(pid, 0)).toThrow('ESRCH');
  });

  it('does not hold up a cook who stops twice', async () => {
    const { root, version, env, notes } = await appWithElectron();
    // Deaf to the polite signal, as long as we are there.
    const deaf = `trap '' TERM\necho up >> '${notes}'\nwhile kill -0 $PPID; do sleep 0.1; done`;
    const { base } = await mirror(version, standIn(notes, deaf));
    const program = start(
      [],
      { ...env, PATH: process.env['PATH'], CHROME_PATH: '', ELECTRON_MIRROR: base },
      root,
    );
    await vi.waitFor(
      () => {
        expect(existsSync(notes) ? readFileSync(notes, 'utf8') : '').toContain('up\n');
      },
      { timeout: 15_000 },
    );
    program.child.kill('SIGINT');
    program.child.kill('SIGTERM');
    expect(await program.ended).toBe(130);
  });

  it.each<[MirrorManner, RegExp]>([
    ['is silent', /^127\.0\.0\.1:\d+ did not answer within 0\.2 s$/],
    ['has none', /^127\.0\.0\.1:\d+ answered 404 for it$/],
    ['stalls in the download', /^the download was not done within 1\.5 s$/],
  ])('is not waited for beyond the limit when the server %s', async (manner, reason) => {
    const { root, version, env } = await appWithElectron();
    const { base } = await mirror(version, '', manner);
    const said: string[] = [];
    const failed = await fetchElectron(
      join(root, 'dist/main/start.mjs'),
      { ...env, ELECTRON_MIRROR: base },
      (line) => said.push(line),
      new AbortController().signal,
      { probeMs: 200, downloadMs: 1500 },
    );
    expect(failed).toMatch(reason);
    expect(said).toHaveLength(manner === 'stalls in the download' ? 1 : 0);
  });

  it('is not waited for when the name is refused', async () => {
    const { root, env } = await appWithElectron();
    const failed = await fetchElectron(
      join(root, 'dist/main/start.mjs'),
      { ...env, ELECTRON_MIRROR: 'http://127.0.0.1:1/' },
      () => undefined,
      new AbortController().signal,
    );
    expect(failed).toMatch(/^127\.0\.0\.1:1 cannot be reached/);
  });

  it('is taken only whole and of the right version', () => {
    const root = tempFolder();
    const version = addElectronPackage(root);
    const from = join(root, 'index.js');
    const electron = join(root, 'node_modules', 'electron');
    mkdirSync(join(electron, 'dist'));
    const binary = join(electron, 'dist', 'electron');
    writeFileSync(binary, '');
    expect(electronBinary(from, {})).toBeUndefined();
    writeFileSync(join(electron, 'path.txt'), 'electron');
    writeFileSync(join(electron, 'dist', 'version'), '1.0.0');
    expect(electronBinary(from, {})).toBeUndefined();
    writeFileSync(join(electron, 'dist', 'version'), `v${version}`);
    expect(electronBinary(from, {})).toBe(binary);
    expect(electronBinary(from, { ELECTRON_OVERRIDE_DIST_PATH: root })).toBeUndefined();
    expect(electronBinary(join(tempFolder(), 'elsewhere.js'), {})).toBeUndefined();
  });

  it('would come from the published place', () => {
    expect(downloadAddress('1.2.3', 'linux', 'x64', {})).toBe(
      'https://github.com/electron/electron/releases/download/v1.2.3/electron-v1.2.3-linux-x64.zip',
    );
  });
});
