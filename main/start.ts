/** `npm start`: opens the window in the best host there is, says which and why, and ends with it. */
import { addAbortListener } from 'node:events';
import { readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { causeOf } from './files/disk.ts';
import { places } from './files/places.ts';
import { FileProblem, readText } from './files/readText.ts';
import { runBrowser } from './hosts/browserHost.ts';
import { findBrowser, isRoot } from './hosts/browsers.ts';
import { chooseHost, hasDisplay, type Found } from './hosts/choose.ts';
import { electronBinary, fetchElectron } from './hosts/electronBinary.ts';
import { runElectron } from './hosts/electronHost.ts';
import { help, readStartOptions } from './hosts/startOptions.ts';
import { stopSignal } from './hosts/stopSignal.ts';
import { browserPlatform } from './platform.ts';
import { openServices } from './services.ts';
import { openHttpHost, type HttpHost } from './window/httpHost.ts';
import { Presence } from './window/presence.ts';
import { readWindowFiles } from './window/windowFiles.ts';

/** The folder of package.json, two above the built file. */
const appRoot = fileURLToPath(new URL('../..', import.meta.url));
const own = places(process.platform, process.env, homedir());

function say(line: string): void {
  process.stderr.write(`hearthclock: ${line}\n`);
}

interface Opened {
  readonly http: HttpHost;
  readonly presence: Presence;
}

async function openServer(host: 'browser' | 'serve', file: string | undefined): Promise<Opened> {
  const { version } = JSON.parse(readFileSync(join(appRoot, 'package.json'), 'utf8')) as { version: string };
  const presence = new Presence();
  const files = await readWindowFiles(join(appRoot, 'dist', 'renderer'));
  const { bridge } = await openServices({
    platform: browserPlatform(host),
    places: own,
    version,
    file,
    warn: say,
    // Nothing can be due before the window has set an alarm, and that comes over this host.
    push: (name, what) => {
      http.push(name, what);
    },
  });
  const http = await openHttpHost({ files, bridge, warn: say, presence });
  return { presence, http };
}

async function serve(file: string | undefined, stop: AbortSignal): Promise<void> {
  const { http } = await openServer('serve', file);
  say('open this address in a browser on this machine (it works once); Ctrl-C ends it');
  process.stdout.write(`${http.address}\n`);
  // Also where it was stopped while the server was opened.
  await new Promise((done) => addAbortListener(stop, done));
  await http.close();
}

/** Tries one host after the other until one has shown the window. */
async function run(asked: Found['asked'], file: string | undefined, stop: AbortSignal): Promise<void> {
  const { platform, env } = process;
  let binary = asked === 'serve' ? undefined : electronBinary(import.meta.url, env);
  const browser = asked === 'serve' ? undefined : findBrowser(platform, env);
  let found: Found = {
    asked,
    display: hasDisplay(platform, env),
    electron: binary === undefined ? 'absent' : 'there',
    browser: browser === undefined ? 'absent' : 'there',
  };
  while (!stop.aborted) {
    const { host, why } = chooseHost(found);
    if (host === 'fetch') {
      const failed = await fetchElectron(import.meta.url, env, say, stop);
      binary = electronBinary(import.meta.url, env);
      const reason = failed ?? 'the download brought no binary for this machine';
      found = { ...found, electron: binary === undefined ? { failed: reason } : 'there' };
      continue;
    }
    say(
      `host ${host}, because ${why}${isRoot() && host !== 'serve' ? ' (as root, so without its sandbox)' : ''}`,
    );
    if (host === 'electron' && binary !== undefined) {
      const ended = await runElectron(binary, appRoot, file, env, stop);
      if (ended === 'closed') return;
      found = { ...found, electron: ended };
    } else if (host === 'browser' && browser !== undefined) {
      const { http, presence } = await openServer('browser', file);
      const { address } = http;
      const ended = await runBrowser({ browser, profile: own.browserProfile, address, presence, stop });
      await http.close();
      if (ended === 'closed') return;
      found = { ...found, browser: ended };
    } else {
      await serve(file, stop);
      return;
    }
  }
}

async function main(): Promise<number> {
  const options = readStartOptions(process.argv.slice(2));
  if ('problems' in options) {
    for (const problem of options.problems) process.stderr.write(`${problem}\n`);
    process.stderr.write('npm start -- --help lists what is allowed\n');
    return 2;
  }
  if (options.help) {
    process.stdout.write(help);
    return 0;
  }
  // npm moves to the package's folder; a file is named from where the cook stands.
  const { env } = process;
  const here = env['npm_lifecycle_event'] === 'start' ? (env['INIT_CWD'] ?? process.cwd()) : process.cwd();
  const file = options.file === undefined ? undefined : resolve(here, options.file);
  try {
    if (file !== undefined) await readText(file);
    await run(options.host, file, stopSignal());
    return 0;
  } catch (error) {
    process.stderr.write(`${causeOf(error)}\n`);
    return error instanceof FileProblem ? 2 : 1;
  }
}

process.exit(await main());
