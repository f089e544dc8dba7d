/** The only thing the window sees of Electron: two functions, no channel, no event, no path. */
import { contextBridge, ipcRenderer } from 'electron';
import type { Answer, Ask, CallName, Push, PushName, WindowBridge } from './bridge.ts';
import { callChannel, pushChannel, type CallOutcome } from './ipc.ts';

const bridge: WindowBridge = {
  call: async <K extends CallName>(name: K, ask: Ask<K>): Promise<Answer<K>> => {
    const outcome = (await ipcRenderer.invoke(callChannel, name, ask)) as CallOutcome;
    if ('error' in outcome) throw new Error(outcome.error);
    // Checked against the contract in the main process, by the door every call goes through.
    return outcome.answer as Answer<K>;
  },
  on: <K extends PushName>(name: K, listener: (push: Push<K>) => void): (() => void) => {
    const hear = (_event: unknown, pushed: PushName, push: Push<K>): void => {
      if (pushed === name) listener(push);
    };
    ipcRenderer.on(pushChannel, hear);
    return () => {
      ipcRenderer.off(pushChannel, hear);
    };
  },
};

contextBridge.exposeInMainWorld('hearthclock', bridge);
