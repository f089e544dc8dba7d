/** Runs `main/electron.ts` and `main/preload.ts` against the recorder. */
import { join } from 'node:path';
import { vi } from 'vitest';
import type { WindowBridge } from '../../main/bridge.ts';
import { places, type Places } from '../../main/files/places.ts';
import { electronRecorder, type Recorder } from './electronRecorder.ts';
import { writeFixtureWindow } from './fixtureWindow.ts';

export interface RecordedElectron {
  readonly recorder: Recorder;
  readonly places: Places;
  readonly window: Recorder['windows'][number];
  readonly bridge: WindowBridge;
  /** what the terminal would show */
  readonly said: readonly string[];
}

export interface OpenOptions {
  /** when our code has been loaded and Electron is not ready yet */
  readonly beforeReady?: (recorder: Recorder) => void;
  /** before our code is loaded */
  readonly beforeLoad?: (recorder: Recorder) => void;
  /** words after Electron's own */
  readonly words?: readonly string[];
  /** whether a window is to come up; it does unless said otherwise */
  readonly window?: boolean;
}

/** @param folder holds the fixture's program folder, its data and its documents; the caller removes it, and then calls `closeElectron` */
export async function openElectron(folder: string, options: OpenOptions = {}): Promise<RecordedElectron> {
  vi.resetModules();
  vi.stubEnv('HEARTHCLOCK_DATA', join(folder, 'data'));
  writeFixtureWindow(join(folder, 'app', 'dist', 'renderer'));
  let beReady = (): void => undefined;
  const ready = new Promise<void>((done) => {
    beReady = done;
  });
  const recorder = electronRecorder(join(folder, 'app'), folder, ready);
  options.beforeLoad?.(recorder);
  const said: string[] = [];
  for (const stream of [process.stdout, process.stderr]) {
    vi.spyOn(stream, 'write').mockImplementation((text) => said.push(String(text)) > 0);
  }
  vi.doMock('electron', () => recorder.module);
  // Electron's own words, then ours: the test runner's are not to be taken for a file.
  const words = process.argv;
  const own = recorder.app.isPackaged ? ['hearthclock'] : ['electron', 'app'];
  process.argv = [...own, ...(options.words ?? [])];
  try {
    await import('../../main/electron.ts');
    await import('../../main/preload.ts');
  } finally {
    process.argv = words;
  }
  options.beforeReady?.(recorder);
  beReady();
  if (options.window !== false) {
    await vi.waitFor(() => {
      if (recorder.windows[0]?.loaded.length !== 1) throw new Error('the window has not been loaded');
    });
  }
  return {
    recorder,
    places: places(process.platform, process.env, folder),
    window: recorder.windows[0]!,
    bridge: recorder.exposed.get('hearthclock') as WindowBridge,
    said,
  };
}

export function closeElectron(): void {
  vi.doUnmock('electron');
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
}
