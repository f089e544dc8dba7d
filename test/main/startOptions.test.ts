import { describe, expect, it } from 'vitest';
import { chooseHost, hasDisplay, hostNames, type Found } from '../../main/hosts/choose.ts';
import { appWindowArguments, findBrowser } from '../../main/hosts/browsers.ts';
import { readStartOptions } from '../../main/hosts/startOptions.ts';

describe('the options of npm start', () => {
  it.each([
    [[], { help: false }],
    [['plan.hearthclock'], { help: false, file: 'plan.hearthclock' }],
    [['--host', 'serve', 'a'], { help: false, host: 'serve', file: 'a' }],
    [['--host=browser'], { help: false, host: 'browser' }],
    [['-h'], { help: true }],
    [['--', '--help'], { help: false, file: '--help' }],
  ])('reads %j', (words, options) => {
    expect(readStartOptions(words)).toEqual(options);
  });

  it.each([
    [['--host', 'firefox'], ['--host: found "firefox"; allowed electron, browser, serve']],
    [['--host'], ['--host: found nothing; allowed electron, browser, serve']],
    [['--port', '80'], ['option: found --port; allowed --host, --help']],
    [['a', 'b'], ['FILE: found 2 files; allowed one']],
    [
      ['-x', '--host=', 'a'],
      ['option: found -x; allowed --host, --help', '--host: found ""; allowed electron, browser, serve'],
    ],
  ])('refuses %j', (words, problems) => {
    expect(readStartOptions(words)).toEqual({ problems });
  });
});

describe('the choice of the host', () => {
  const failed = { failed: 'no answer' };
  const rest = { display: true, electron: 'there', browser: 'there' } as const;
  it.each<[Found, string, string]>([
    [{ ...rest }, 'electron', 'its binary is here'],
    [{ ...rest, electron: 'absent' }, 'fetch', "Electron's binary is not here"],
    [{ ...rest, electron: failed }, 'browser', 'Electron is not to be had: no answer'],
    [
      { ...rest, electron: failed, browser: 'absent' },
      'serve',
      'Electron is not to be had: no answer; no Chromium-family browser was found (CHROME_PATH can name one)',
    ],
    [
      { ...rest, electron: failed, browser: failed },
      'serve',
      'Electron is not to be had: no answer; the browser is not to be had: no answer',
    ],
    [{ ...rest, display: false }, 'serve', 'there is no display to open a window on'],
    [{ ...rest, display: false, electron: 'absent' }, 'serve', 'there is no display to open a window on'],
    [{ ...rest, asked: 'serve' }, 'serve', '--host serve asks for it'],
    [{ ...rest, asked: 'serve', electron: 'absent' }, 'serve', '--host serve asks for it'],
    [{ ...rest, asked: 'electron' }, 'electron', '--host electron asks for it'],
    [{ ...rest, asked: 'electron', electron: 'absent' }, 'fetch', "Electron's binary is not here"],
    [{ ...rest, asked: 'electron', electron: failed }, 'browser', 'Electron is not to be had: no answer'],
    [{ ...rest, asked: 'browser' }, 'browser', '--host browser asks for it'],
    [{ ...rest, asked: 'browser', electron: 'absent' }, 'browser', '--host browser asks for it'],
    [
      { ...rest, asked: 'browser', browser: 'absent' },
      'serve',
      '--host browser asks for it; no Chromium-family browser was found (CHROME_PATH can name one)',
    ],
  ])('%j gives %s', (found, host, why) => {
    expect(chooseHost(found)).toEqual({ host, why });
  });

  it('always ends: what failed is not tried again', () => {
    for (const asked of [undefined, ...hostNames]) {
      let found: Found = { asked, display: true, electron: 'absent', browser: 'there' };
      const tried: string[] = [];
      for (let host = ''; host !== 'serve' && tried.length < 10;) {
        ({ host } = chooseHost(found));
        tried.push(host);
        found = host === 'browser' ? { ...found, browser: failed } : { ...found, electron: failed };
      }
      expect(tried.at(-1)).toBe('serve');
      expect(new Set(tried).size).toBe(tried.length);
    }
  });

  it.each([
    ['linux', {}, false],
    ['linux', { DISPLAY: '' }, false],
    ['linux', { DISPLAY: ':0' }, true],
    ['linux', { WAYLAND_DISPLAY: 'wayland-0' }, true],
    ['freebsd', { DISPLAY: ':0' }, true],
    ['darwin', {}, true],
    ['win32', {}, true],
  ] as const)('on %s with %j a display: %s', (platform, env, there) => {
    expect(hasDisplay(platform, env)).toBe(there);
  });
});

describe('the search for a browser', () => {
  const found = (platform: NodeJS.Platform, env: NodeJS.ProcessEnv, there: string[]): string | undefined =>
    findBrowser(platform, env, (path) => there.includes(path));

  it('takes the one named first, then the known ones in order', () => {
    const env = { PATH: '/usr/bin:relative:/opt/bin', CHROME_PATH: '/my/chrome' };
    expect(found('linux', env, ['/my/chrome', '/usr/bin/chromium'])).toBe('/my/chrome');
    expect(found('linux', env, ['/usr/bin/google-chrome', '/opt/bin/chromium'])).toBe('/opt/bin/chromium');
    expect(found('linux', env, ['relative/chromium'])).toBeUndefined();
    expect(found('linux', {}, [])).toBeUndefined();
  });

  it('knows where macOS and Windows keep them', () => {
    const mac = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
    expect(found('darwin', { HOME: '/Users/a' }, [mac])).toBe(mac);
    expect(found('darwin', {}, [mac])).toBe(mac);
    expect(found('darwin', { HOME: '/Users/a' }, [`/Users/a${mac}`])).toBe(`/Users/a${mac}`);
    const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
    expect(found('win32', { 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' }, [edge])).toBe(edge);
  });

  it('leaves size and place to the browser once it has kept them', () => {
    const size = (firstTime: boolean): string[] =>
      appWindowArguments('http://127.0.0.1:1/', '/p', firstTime, false).filter((word) =>
        word.includes('size'),
      );
    expect([size(true), size(false)]).toEqual([['--window-size=1360,860'], []]);
  });

  it('gives up the sandbox only as root, and never the web security', () => {
    const words = appWindowArguments('http://127.0.0.1:1/', '/p', true, false);
    expect(words.slice(0, 2)).toEqual(['--app=http://127.0.0.1:1/', '--user-data-dir=/p']);
    expect(words.filter((word) => /sandbox|security|gpu|remote-debugging/.test(word))).toEqual([]);
    expect(appWindowArguments('http://127.0.0.1:1/', '/p', true, true)).toEqual([
      ...words,
      '--no-sandbox',
      '--test-type',
    ]);
  });
});
