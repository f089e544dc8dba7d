/** The built window, served by the product's own server and services on a data folder of its own. */
import { fileURLToPath } from 'node:url';
import type { Push, PushName } from '../../main/bridge.ts';
import { places, type Places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { openHttpHost } from '../../main/window/httpHost.ts';
import { Presence } from '../../main/window/presence.ts';
import { readWindowFiles } from '../../main/window/windowFiles.ts';
import { newTempFolder, removeFolder } from './tempFolder.ts';

export const builtWindow = fileURLToPath(new URL('../../dist/renderer', import.meta.url));

export interface ServeOptions {
  /** the folder of the window; the built one when left out */
  readonly root?: string;
  /** a plan to open at start */
  readonly file?: string;
  /** a data folder to use and keep; one of its own, removed at the end, when left out */
  readonly data?: string;
}

export interface Served {
  /** opens the window once */
  readonly address: string;
  readonly origin: string;
  readonly places: Places;
  readonly presence: Presence;
  /** every refusal and failure that the terminal would show */
  readonly warnings: readonly string[];
  readonly push: <K extends PushName>(name: K, push: Push<K>) => void;
  close(): Promise<void>;
}

export async function serveWindow(options: ServeOptions = {}): Promise<Served> {
  const data = options.data ?? newTempFolder();
  const own = places(process.platform, { HEARTHCLOCK_DATA: data }, data);
  const warnings: string[] = [];
  const warn = (message: string): void => {
    warnings.push(message);
  };
  const platform = browserPlatform('serve');
  const { bridge } = await openServices({
    platform,
    places: own,
    version: '0.0.0-test',
    file: options.file,
    warn,
    push: (name, what) => {
      http.push(name, what);
    },
  });
  const presence = new Presence();
  const files = await readWindowFiles(options.root ?? builtWindow);
  const http = await openHttpHost({ files, bridge, warn, presence });
  return {
    address: http.address,
    origin: http.origin,
    places: own,
    presence,
    warnings,
    push: http.push,
    close: async () => {
      await http.close();
      if (options.data === undefined) removeFolder(data);
    },
  };
}
