/** What the window may not do, by the points of Electron's own security checklist. Everything not listed is refused. */
import type { Session, WebContents } from 'electron';

export const windowScheme = 'app';
export const windowOrigin = `${windowScheme}://hearthclock`;

/** A permission the window has, and why. */
const permissions: Readonly<Record<string, string>> = {
  'clipboard-sanitized-write': 'copying a table, a message or the handout by a click',
};

export function isOurs(address: string): boolean {
  // Not by the start of the text: app://hearthclock.example would pass.
  try {
    const { protocol, host } = new URL(address);
    return `${protocol}//${host}` === windowOrigin;
  } catch {
    return false;
  }
}

/** What the session may load: the window, what it made itself, and the inspector. */
function mayLoad(address: string): boolean {
  return isOurs(address) || /^(blob:app:\/\/hearthclock\/|data:|devtools:)/.test(address);
}

export function lockSession(session: Session, warn: (message: string) => void): void {
  session.setPermissionRequestHandler((contents, permission, decide) => {
    const granted = Object.hasOwn(permissions, permission) && isOurs(contents.getURL());
    if (!granted) warn(`permission ${permission} refused`);
    decide(granted);
  });
  session.setPermissionCheckHandler(
    (_contents, permission, origin) => Object.hasOwn(permissions, permission) && isOurs(origin),
  );
  session.setDevicePermissionHandler(() => false);
  // Planning a pizza needs no network: nothing leaves, whatever a library might try.
  session.webRequest.onBeforeRequest(({ url }, decide) => {
    const cancel = !mayLoad(url);
    if (cancel) warn(`request to ${url} refused`);
    decide({ cancel });
  });
}

export function lockContents(contents: WebContents, warn: (message: string) => void): void {
  const stay = (event: Electron.Event, address: string): void => {
    if (isOurs(address)) return;
    warn(`navigation to ${address} refused`);
    event.preventDefault();
  };
  contents.on('will-navigate', (event) => {
    stay(event, event.url);
  });
  contents.on('will-frame-navigate', (event) => {
    // The policy lets no frame load; one that is there all the same stays where it is. The page itself: above.
    if (!event.isMainFrame) stay(event, event.url);
  });
  contents.on('will-redirect', (event) => {
    stay(event, event.url);
  });
  contents.on('will-attach-webview', (event) => {
    warn('a webview was refused');
    event.preventDefault();
  });
  contents.setWindowOpenHandler(({ url }) => {
    warn(`new window for ${url} refused`);
    return { action: 'deny' };
  });
}
