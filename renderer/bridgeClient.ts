/**
 * The window's way to the shell. Electron's preload offers the bridge as `window.hearthclock`; in a browser the same
 * calls go over HTTP to the server that sent this page.
 */
import type { Answer, Ask, CallName, Push, PushName, WindowBridge } from '../main/bridge.ts';

declare global {
  interface Window {
    readonly hearthclock?: WindowBridge;
  }
}

/** A refusal by the shell, in its own words. */
export class BridgeRefusal extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'BridgeRefusal';
  }
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** The shell writes either `{ answer }` or `{ error }`; the error is a sentence for the cook. */
function unwrapped(reply: unknown, name: string): unknown {
  if (isRecord(reply) && 'answer' in reply) return reply['answer'];
  if (isRecord(reply) && typeof reply['error'] === 'string') throw new BridgeRefusal(reply['error']);
  throw new BridgeRefusal(`The program gave no readable answer to ${name}.`);
}

function httpBridge(): WindowBridge {
  const listeners = new Map<string, Set<(push: unknown) => void>>();
  let events: EventSource | undefined;

  const listen = (): void => {
    if (events !== undefined) return;
    events = new EventSource('/bridge/events');
    events.addEventListener('message', (message: MessageEvent<string>) => {
      const told: unknown = JSON.parse(message.data);
      if (!isRecord(told) || typeof told['name'] !== 'string') return;
      for (const listener of listeners.get(told['name']) ?? []) listener(told['push']);
    });
  };

  return {
    async call<K extends CallName>(name: K, ask: Ask<K>): Promise<Answer<K>> {
      const response = await fetch(`/bridge/${name}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-hearthclock': '1' },
        body: JSON.stringify({ ask }),
      });
      const reply: unknown = await response.json().catch(() => undefined);
      // The server checks what it sends against the same list of calls.
      return unwrapped(reply, name) as Answer<K>;
    },
    on<K extends PushName>(name: K, listener: (push: Push<K>) => void): () => void {
      listen();
      const hear = (push: unknown): void => {
        listener(push as Push<K>);
      };
      const known = listeners.get(name) ?? new Set();
      known.add(hear);
      listeners.set(name, known);
      return () => {
        known.delete(hear);
      };
    },
  };
}

export const bridge: WindowBridge = window.hearthclock ?? httpBridge();
