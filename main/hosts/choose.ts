/** Which host shows the window, and why: a pure function of what was found. */

export type HostName = 'electron' | 'browser' | 'serve';
export const hostNames = ['electron', 'browser', 'serve'] as const satisfies readonly HostName[];

export interface Found {
  /** what `--host` asks for */
  readonly asked?: HostName | undefined;
  readonly display: boolean;
  readonly electron: 'there' | 'absent' | { readonly failed: string };
  readonly browser: 'there' | 'absent' | { readonly failed: string };
}

export interface Choice {
  /** `fetch`: try to have Electron's binary fetched, then choose again */
  readonly host: HostName | 'fetch';
  readonly why: string;
}

export function chooseHost({ asked, display, electron, browser }: Found): Choice {
  if (asked === 'serve') return { host: 'serve', why: '--host serve asks for it' };
  if (!display) return { host: 'serve', why: 'there is no display to open a window on' };
  const reasons: string[] = [];
  if (asked === 'browser') {
    reasons.push('--host browser asks for it');
  } else {
    if (electron === 'there') {
      return {
        host: 'electron',
        why: asked === 'electron' ? '--host electron asks for it' : 'its binary is here',
      };
    }
    if (electron === 'absent') return { host: 'fetch', why: "Electron's binary is not here" };
    reasons.push(`Electron is not to be had: ${electron.failed}`);
  }
  if (browser === 'there') return { host: 'browser', why: reasons.join('; ') };
  reasons.push(
    browser === 'absent'
      ? 'no Chromium-family browser was found (CHROME_PATH can name one)'
      : `the browser is not to be had: ${browser.failed}`,
  );
  return { host: 'serve', why: reasons.join('; ') };
}

/** Windows and macOS always have one; elsewhere X or Wayland say so. */
export function hasDisplay(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): boolean {
  if (platform === 'win32' || platform === 'darwin') return true;
  return [env['DISPLAY'], env['WAYLAND_DISPLAY']].some((name) => name !== undefined && name !== '');
}
