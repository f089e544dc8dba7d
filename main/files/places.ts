/** Where the program keeps what is its own: one folder, the same for every host. */
import { posix, win32 } from 'node:path';

export interface Places {
  readonly root: string;
  /** plans saved under a name where the host has no file dialog */
  readonly plans: string;
  /** unsaved work, kept for the next start */
  readonly unsaved: string;
  readonly settings: string;
  readonly recents: string;
  /** what readings told of the cook's ovens */
  readonly ovens: string;
  /** profile of the browser that shows the window, and of Electron */
  readonly browserProfile: string;
  readonly electronProfile: string;
}

export const dataVariable = 'HEARTHCLOCK_DATA';

/** The platform's place for the data of a user's programs; `HEARTHCLOCK_DATA` names another folder. */
export function places(platform: NodeJS.Platform, env: NodeJS.ProcessEnv, home: string): Places {
  const paths = platform === 'win32' ? win32 : posix;
  const join = (...parts: string[]): string => paths.join(...parts);
  const chosen = env[dataVariable];
  const root = chosen !== undefined && chosen !== '' ? paths.resolve(chosen) : join(usual(), 'Hearthclock');
  return {
    root,
    plans: join(root, 'plans'),
    unsaved: join(root, 'unsaved'),
    settings: join(root, 'settings.json'),
    recents: join(root, 'recent.json'),
    ovens: join(root, 'ovens.json'),
    browserProfile: join(root, 'browser'),
    electronProfile: join(root, 'electron'),
  };

  function usual(): string {
    if (platform === 'win32') return env['APPDATA'] ?? join(home, 'AppData', 'Roaming');
    if (platform === 'darwin') return join(home, 'Library', 'Application Support');
    // The XDG base directory specification: a relative path in the variable is to be ignored.
    const data = env['XDG_DATA_HOME'];
    return data?.startsWith('/') === true ? data : join(home, '.local', 'share');
  }
}
