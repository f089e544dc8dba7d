/** A client over `node:http`, because `fetch` sets Host, Origin and Cookie by its own rules. */
import { request, type IncomingHttpHeaders, type IncomingMessage } from 'node:http';

export interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

export interface Sent {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

export async function send(
  url: string,
  { method = 'GET', headers = {}, body }: Sent = {},
): Promise<Answered> {
  const message = await begin(url, { method, headers, ...(body === undefined ? {} : { body }) });
  const parts: Buffer[] = [];
  for await (const part of message) parts.push(part as Buffer);
  const text = Buffer.concat(parts).toString('utf8');
  return { status: message.statusCode ?? 0, headers: message.headers, text };
}

/** Until the head of the answer is there; its body is still to come. */
export function begin(
  url: string,
  { method = 'GET', headers = {}, body }: Sent = {},
): Promise<IncomingMessage> {
  return new Promise((done, fail) => {
    const sent = request(url, { method, headers, agent: false }, done);
    sent.on('error', fail);
    sent.end(body);
  });
}

/** Visits the one-time address and answers the cookie it gives. */
export async function enter(address: string): Promise<string> {
  const { headers } = await send(address);
  const cookie = headers['set-cookie']?.[0]?.split(';')[0];
  if (cookie === undefined) throw new Error('the one-time address gave no cookie');
  return cookie;
}

/** What the window's own client sends with a call. */
export function callHeaders(origin: string, cookie: string): Record<string, string> {
  return { 'x-hearthclock': '1', 'content-type': 'application/json', origin, cookie };
}
