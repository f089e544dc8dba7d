/**
 * The window over HTTP on 127.0.0.1. Every request is checked for its Host (a page that points its own name at
 * 127.0.0.1 is turned away), for our cookie, and where data moves for its Origin and a header that only a script of
 * our own page can set. There are no CORS headers: no other page may read an answer.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answer, Refusal } from '../answer.ts';
import type { Bridge, Push, PushName } from '../bridge.ts';
import { causeOf, messageOf } from '../files/disk.ts';
import { Entry } from './entry.ts';
import { EventStreams } from './eventStreams.ts';
import { windowHeaders } from './policy.ts';
import { Presence } from './presence.ts';
import { BodyRefused, readBody, type BodyLimits } from './readBody.ts';
import { refuseParsing, refuseRaw } from './refuseRaw.ts';
import { windowResponse, type WindowFiles } from './windowFiles.ts';

export interface HttpHostOptions {
  readonly files: WindowFiles;
  readonly bridge: Bridge;
  /** What was refused and what failed, for the terminal. */
  readonly warn: (message: string) => void;
  readonly body?: BodyLimits;
  /** ms for the head of a request to come, from the connection on */
  readonly headMilliseconds?: number;
  /** Kept up to date with the windows that are there. */
  readonly presence?: Presence;
}

export interface HttpHost {
  readonly port: number;
  readonly origin: string;
  /** The one address that opens the window, good for one visit. */
  readonly address: string;
  readonly push: <K extends PushName>(name: K, push: Push<K>) => void;
  close(): Promise<void>;
}

export const bodyLimits: BodyLimits = { bytes: 1_200_000, milliseconds: 10_000 };
const callPath = /^\/bridge\/([^/]{0,80})$/;
const statusOf = { foreign: 403, unknown: 404, misshapen: 400 } as const;

/** A request turned away, with the status that says why. */
class TurnedAway extends Error {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  constructor(status: number, message: string, headers: Readonly<Record<string, string>> = {}) {
    super(message);
    this.status = status;
    this.headers = headers;
  }
}

export async function openHttpHost(options: HttpHostOptions): Promise<HttpHost> {
  const { files, bridge, warn, body = bodyLimits, headMilliseconds = 5000 } = options;
  const presence = options.presence ?? new Presence();
  const streams = new EventStreams((open) => {
    presence.open = open;
  });
  const server = createServer({
    connectionsCheckingInterval: Math.min(1000, headMilliseconds),
    // A missing Host is for `handle` to refuse, like any other that is not ours.
    requireHostHeader: false,
  });
  server.headersTimeout = headMilliseconds;
  server.requestTimeout = Math.max(body.milliseconds, 10_000);
  server.keepAliveTimeout = 5000;
  server.maxConnections = 64;
  await new Promise<void>((done, fail) => {
    server.once('error', fail);
    server.listen(0, '127.0.0.1', done);
  });
  const { port } = server.address() as AddressInfo;
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const origins = hosts.map((host) => `http://${host}`);
  const entry = new Entry(port);
  const address = `http://127.0.0.1:${port}${entry.firstPath()}`;

  server.on('request', (request, response) => {
    handle(request, response).catch((error: unknown) => {
      report(request, response, error);
    });
  });
  server.on('upgrade', (_request, socket) => {
    refuseRaw(socket, '400 Bad Request');
  });
  server.on('checkExpectation', (request, response) => {
    report(request, response, new TurnedAway(417, 'Expect: found something else; allowed 100-continue'));
  });
  server.on('clientError', refuseParsing);

  return {
    port,
    origin: `http://127.0.0.1:${port}`,
    address,
    push: (name, push) => {
      streams.push(name, push);
    },
    close: async () => {
      streams.close();
      await new Promise<void>((done) => {
        server.close(() => {
          done();
        });
        server.closeAllConnections();
      });
    },
  };

  async function handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const { method, path, query } = targetOf(request);
    // Two of them may be read one way here and the other way on the path.
    const asked = request.headersDistinct['host'] ?? [];
    if (asked.length !== 1 || !hosts.some((host) => host === asked[0])) {
      throw new TurnedAway(421, 'Host: found another name than ours; allowed the address printed at start');
    }
    if (method !== 'GET' && method !== 'HEAD' && method !== 'POST') {
      throw new TurnedAway(405, `method: found ${method}; allowed GET, HEAD, POST`, {
        Allow: 'GET, HEAD, POST',
      });
    }
    const token = new URLSearchParams(query).get('token');
    if (method === 'GET' && path === '/' && token !== null) {
      enter(response, token);
      return;
    }
    if (!entry.admits(request.headers.cookie)) {
      throw new TurnedAway(403, 'This window was not opened from the address printed at start.');
    }
    const call = callPath.exec(path)?.[1];
    if (path === '/bridge/events') openStream(request, response, method);
    else if (call !== undefined) await answerCall(request, response, method, call);
    else await send(response, windowResponse(files, method, path));
  }

  function enter(response: ServerResponse, token: string): void {
    const cookie = entry.exchange(token);
    if (cookie === undefined) {
      throw new TurnedAway(
        403,
        'This address opens the window once. Start the program again to get another.',
      );
    }
    presence.entered = true;
    // The address that stays in the history has no token in it.
    response.writeHead(303, { ...windowHeaders(), 'Set-Cookie': cookie, Location: '/' });
    response.end();
  }

  function openStream(request: IncomingMessage, response: ServerResponse, method: string): void {
    if (method !== 'GET') {
      throw new TurnedAway(405, `method: found ${method}; allowed GET`, { Allow: 'GET' });
    }
    // A browser sends no Origin with an event stream of the page's own server; it says so by this header instead.
    const { origin } = request.headers;
    const ours = origin === undefined ? request.headers['sec-fetch-site'] === 'same-origin' : isOurs(origin);
    if (!ours) throw new TurnedAway(403, 'event stream: found a foreign page; allowed only our own window');
    streams.add(response);
  }

  async function answerCall(
    request: IncomingMessage,
    response: ServerResponse,
    method: string,
    name: string,
  ): Promise<void> {
    if (method !== 'POST') {
      throw new TurnedAway(405, `method: found ${method}; allowed POST`, { Allow: 'POST' });
    }
    if (request.headers['x-hearthclock'] !== '1') {
      throw new TurnedAway(403, 'X-Hearthclock: found no such header; allowed 1');
    }
    const type = request.headers['content-type'] ?? 'nothing';
    if (!/^application\/json(;\s*charset=utf-8)?$/i.test(type)) {
      throw new TurnedAway(
        415,
        `Content-Type: found ${JSON.stringify(type.slice(0, 80))}; allowed application/json`,
      );
    }
    const asked = askIn(await readBody(request, body));
    const answered = await answer(bridge, isOurs(request.headers.origin), name, asked);
    await send(response, json(200, { answer: answered }));
  }

  function isOurs(origin: string | undefined): boolean {
    return origin !== undefined && origins.includes(origin);
  }

  function report(request: IncomingMessage, response: ServerResponse, error: unknown): void {
    const refused =
      error instanceof TurnedAway || error instanceof BodyRefused
        ? error.status
        : error instanceof Refusal
          ? statusOf[error.kind]
          : // A service said no: a file that cannot be read, a disk that is full.
            422;
    const { method, path } = targetOf(request);
    warn(`${method} ${path.slice(0, 100)} refused with ${refused}: ${causeOf(error)}`);
    // What is left of a refused body is not read: Node closes the connection behind this answer.
    const extra = { ...(error instanceof TurnedAway ? error.headers : {}), Connection: 'close' };
    void send(response, json(refused, { error: messageOf(error) }, extra));
  }
}

function askIn(text: string): unknown {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    throw new BodyRefused(400, 'body: found text that is not JSON; allowed {"ask": …}');
  }
  const keys = typeof parsed === 'object' && parsed !== null ? Object.keys(parsed) : [];
  if (keys.length !== 1 || keys[0] !== 'ask') {
    throw new BodyRefused(400, 'body: found other keys than "ask"; allowed {"ask": …}');
  }
  return (parsed as { ask: unknown }).ask;
}

/** Node gives both with every request to a server. */
function targetOf(request: IncomingMessage): { method: string; path: string; query: string } {
  const url = request.url!;
  const path = url.replace(/\?.*$/su, '');
  return { method: request.method!, path, query: url.slice(path.length + 1) };
}

function json(status: number, value: unknown, extra: Readonly<Record<string, string>> = {}): Response {
  return new Response(JSON.stringify(value), {
    status,
    headers: { ...windowHeaders(), 'Content-Type': 'application/json; charset=utf-8', ...extra },
  });
}

async function send(response: ServerResponse, answered: Response): Promise<void> {
  const bytes = new Uint8Array(await answered.arrayBuffer());
  response.writeHead(answered.status, Object.fromEntries(answered.headers));
  response.end(bytes);
}
