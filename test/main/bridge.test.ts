import { join } from 'node:path';
import { vi } from 'vitest';
import { answer } from '../../main/answer.ts';
import type { Push, PushName, WindowBridge } from '../../main/bridge.ts';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { writeFixtureWindow } from '../support/fixtureWindow.ts';
import { begin, callHeaders, enter, send } from '../support/httpClient.ts';
import { closeElectron, openElectron } from '../support/openElectron.ts';
import { serveWindow } from '../support/serve.ts';
import { bridgeContract } from './bridgeContract.ts';

bridgeContract('called directly', async (folder) => {
  const own = places('linux', { HEARTHCLOCK_DATA: join(folder, 'data') }, folder);
  const { bridge } = await openServices({
    platform: browserPlatform('serve'),
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    warn: () => undefined,
  });
  const call = (name: string, ask: unknown): Promise<unknown> => answer(bridge, true, name, ask);
  const window = { call, on: () => () => undefined } as unknown as WindowBridge;
  return { window, places: own, close: () => Promise.resolve() };
});

bridgeContract('over HTTP on the loopback', async (folder) => {
  const data = join(folder, 'data');
  const served = await serveWindow({ root: writeFixtureWindow(join(folder, 'window')), data });
  const cookie = await enter(served.address);
  const headers = callHeaders(served.origin, cookie);
  const stream = await begin(`${served.origin}/bridge/events`, {
    headers: { cookie, 'sec-fetch-site': 'same-origin' },
  });
  const listeners = new Set<(name: string, push: unknown) => void>();
  stream.setEncoding('utf8');
  stream.on('data', (part: string) => {
    for (const line of part.split('\n').filter((one) => one.startsWith('data: '))) {
      const { name, push } = JSON.parse(line.slice('data: '.length)) as { name: string; push: unknown };
      for (const listener of listeners) listener(name, push);
    }
  });
  stream.on('error', () => undefined);
  return {
    places: served.places,
    window: {
      call: async (name: string, ask: unknown) => {
        const body = JSON.stringify({ ask });
        const { status, text } = await send(`${served.origin}/bridge/${name}`, {
          method: 'POST',
          headers,
          body,
        });
        const outcome = JSON.parse(text) as { answer: never } | { error: string };
        if ('error' in outcome) throw new Error(outcome.error);
        if (status !== 200) throw new Error(`status ${status} with an answer`);
        return outcome.answer;
      },
      on: <K extends PushName>(name: K, listener: (push: Push<K>) => void) => {
        const hear = (pushed: string, push: unknown): void => {
          if (pushed === name) listener(push as Push<K>);
        };
        listeners.add(hear);
        return () => void listeners.delete(hear);
      },
    } as unknown as WindowBridge,
    openFromOutside: (path) => {
      served.push('opened', {
        document: crypto.randomUUID(),
        name: path.replace(/.*\/|\.json/g, ''),
        text: '',
      });
      return Promise.resolve();
    },
    close: async () => {
      stream.destroy();
      await served.close();
    },
  };
});

bridgeContract("through Electron's preload and main process", async (folder) => {
  const { recorder, places: own, bridge } = await openElectron(folder);
  return {
    window: bridge,
    places: own,
    dialogs: recorder.dialogs,
    openFromOutside: async (path) => {
      const before = (await bridge.call('listPlans', null)).length;
      recorder.app.emit('second-instance', {}, [], '/', { file: path });
      await vi.waitFor(async () => {
        if ((await bridge.call('listPlans', null)).length === before) throw new Error('not opened yet');
      });
    },
    close: () => {
      closeElectron();
      return Promise.resolve();
    },
  };
});
