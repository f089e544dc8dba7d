/** The pushes of the shell to windows in a browser, as Server-Sent Events (HTML standard, 9.2). */
import type { ServerResponse } from 'node:http';
import type { Push, PushName } from '../bridge.ts';
import { windowHeaders } from './policy.ts';

/** A silent connection may be cut on the way; a comment line keeps it open. */
const keepAliveMs = 20_000;

export class EventStreams {
  readonly #open = new Set<ServerResponse>();
  readonly #changed: (open: number) => void;

  constructor(changed: (open: number) => void) {
    this.#changed = changed;
  }

  add(response: ServerResponse): void {
    response.writeHead(200, { ...windowHeaders(), 'Content-Type': 'text/event-stream; charset=utf-8' });
    response.write(': open\n\n');
    const beat = setInterval(() => response.write(': still here\n\n'), keepAliveMs);
    beat.unref();
    this.#open.add(response);
    this.#changed(this.#open.size);
    response.on('close', () => {
      clearInterval(beat);
      this.#open.delete(response);
      this.#changed(this.#open.size);
    });
  }

  push<K extends PushName>(name: K, push: Push<K>): void {
    // JSON has no bare line break, so one data line always holds it.
    for (const response of this.#open) response.write(`data: ${JSON.stringify({ name, push })}\n\n`);
  }

  close(): void {
    for (const response of this.#open) response.end();
  }
}
