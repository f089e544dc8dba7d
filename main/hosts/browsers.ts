/** An installed Chromium-family browser: only these open a page as an app window of its own. */
import { existsSync } from 'node:fs';
import { posix, win32 } from 'node:path';

const onPath = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
  'brave-browser',
  'vivaldi-stable',
];
const onMac = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser', 'Vivaldi'];
const onWindows = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
  'BraveSoftware\\Brave-Browser\\Application\\brave.exe',
  'Chromium\\Application\\chrome.exe',
];

/** Every place where one may be, in the order of preference; `CHROME_PATH` goes before all. */
function candidates(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): string[] {
  const chosen = env['CHROME_PATH'];
  const first = chosen === undefined || chosen === '' ? [] : [chosen];
  if (platform === 'darwin') {
    const folders = ['/Applications', posix.join(env['HOME'] ?? '/', 'Applications')];
    return [
      ...first,
      ...onMac.flatMap((name) => folders.map((folder) => `${folder}/${name}.app/Contents/MacOS/${name}`)),
    ];
  }
  if (platform === 'win32') {
    const folders = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => env[name] ?? []);
    return [...first, ...onWindows.flatMap((name) => folders.map((folder) => win32.join(folder, name)))];
  }
  const folders = (env['PATH'] ?? '').split(':').filter((folder) => folder.startsWith('/'));
  return [...first, ...onPath.flatMap((name) => folders.map((folder) => posix.join(folder, name)))];
}

export function findBrowser(
  platform: NodeJS.Platform,
  env: NodeJS.ProcessEnv,
  exists: (path: string) => boolean = existsSync,
): string | undefined {
  return candidates(platform, env).find(exists);
}

/** No first-run pages and nothing sent anywhere. */
const quiet = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/** Chromium cannot build its sandbox as root; the second flag keeps the bar that warns of it from covering the window. */
const asRoot = ['--no-sandbox', '--test-type'];

export function isRoot(): boolean {
  return process.getuid?.() === 0;
}

/**
 * The window alone, without tabs and address bar, in a profile of its own: then the browser's process lives exactly
 * as long as the window, and the cook's own tabs, extensions and passwords stay out of it.
 */
export function appWindowArguments(
  address: string,
  profile: string,
  firstTime: boolean,
  root = isRoot(),
): string[] {
  return [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    ...(firstTime ? ['--window-size=1360,860'] : []),
    ...quiet,
    ...(root ? asRoot : []),
  ];
}
