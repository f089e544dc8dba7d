/** The address that opens the window once, and the cookie it gives. */
import * as crypto from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { Entry } from '../../main/window/entry.ts';
import { send } from '../support/httpClient.ts';
import { raw, rawRequest } from '../support/rawHttp.ts';
import { serveWindow, type Served } from '../support/serve.ts';
import { writeFixtureWindow } from '../support/fixtureWindow.ts';
import { tempFolder } from '../support/tempFolder.ts';

vi.mock('node:crypto', async (original) => {
  const real = await original<typeof crypto>();
  return { ...real, timingSafeEqual: vi.fn(real.timingSafeEqual) };
});

async function serve(): Promise<Served & { port: number; token: string }> {
  const served = await serveWindow({ root: writeFixtureWindow(join(tempFolder(), 'window')) });
  onTestFinished(() => served.close());
  const { port, searchParams } = new URL(served.address);
  return { ...served, port: Number(port), token: searchParams.get('token') ?? '' };
}

describe('the one-time address', () => {
  it('has 256 bits of chance, and gives the cookie once, where no script can read it', async () => {
    const { address, token, origin } = await serve();
    expect(address).toBe(`${origin}/?token=${token}`);
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    const first = await send(address);
    expect([first.status, first.headers.location, first.text]).toEqual([303, '/', '']);
    expect(first.headers['set-cookie']).toHaveLength(1);
    expect(first.headers['set-cookie']?.[0]).toMatch(
      /^hearthclock-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
    );
    expect(first.headers['set-cookie']?.[0]).not.toContain(token);
    const again = await send(address);
    expect([again.status, again.headers['set-cookie']]).toEqual([403, undefined]);
  });

  it('opens for one of many visits at once', async () => {
    const { address } = await serve();
    const visits = await Promise.all(Array.from({ length: 8 }, () => send(address)));
    expect(visits.map(({ status }) => status).sort()).toEqual([303, ...Array<number>(7).fill(403)]);
  });

  it.each<[string, (token: string) => readonly [first: string, ...lines: string[]]]>([
    ['in the path', (token) => [`GET /${token}`]],
    ['as a file', (token) => [`GET /index.html?token=${token}`]],
    ['under another name', (token) => [`GET /?Token=${token}`]],
    ['behind another token', (token) => [`GET /?token=x&token=${token}`]],
    ['in a header', (token) => ['GET /', `Authorization: Bearer ${token}`]],
    ['as our header', (token) => ['GET /', `X-Hearthclock: ${token}`]],
    ['as a cookie', (token) => ['GET /', `Cookie: token=${token}; hearthclock=${token}`]],
    ['with a space', (token) => [`GET /?token=${token}%20`]],
    ['by half', (token) => [`GET /?token=${token.slice(0, 20)}`]],
    ['empty', () => ['GET /?token=']],
    ['by HEAD', (token) => [`HEAD /?token=${token}`]],
    ['by POST', (token) => [`POST /?token=${token}`, 'Content-Length: 0']],
    ['in front of a call', (token) => [`POST /bridge/greet?token=${token}`, 'Content-Length: 0']],
  ])('does not open for the token %s, and is not used up by it', async (_where, ask) => {
    const { address, port, token } = await serve();
    const [first, ...lines] = ask(token);
    const answered = await raw(port, rawRequest(first, [`Host: 127.0.0.1:${port}`, ...lines]));
    expect(answered.status).toBe(403);
    expect(answered.text).not.toContain('Set-Cookie');
    expect((await send(address)).status).toBe(303);
  });

  it('gives a cookie that opens this server only', async () => {
    const [one, other] = [await serve(), await serve()];
    const cookie = (await send(one.address)).headers['set-cookie']?.[0]?.split(';')[0] ?? '';
    expect((await send(`${one.origin}/`, { headers: { cookie } })).status).toBe(200);
    expect((await send(`${other.origin}/`, { headers: { cookie } })).status).toBe(403);
    const renamed = cookie.replace(/^hearthclock-\d+/, `hearthclock-${other.port}`);
    expect((await send(`${other.origin}/`, { headers: { cookie: renamed } })).status).toBe(403);
  });

  it('compares token and cookie in constant time, whatever their length', () => {
    const compare = vi.mocked(crypto.timingSafeEqual);
    const entry = new Entry(1);
    const token = entry.firstPath().slice('/?token='.length);
    const wrong = ['', 'x', token.slice(1), `${token}x`, 'é'.repeat(10_000)];
    compare.mockClear();
    for (const one of wrong) expect(entry.exchange(one)).toBeUndefined();
    const cookie = entry.exchange(token)?.split(';')[0] ?? '';
    expect(compare).toHaveBeenCalledTimes(wrong.length + 1);
    for (const one of wrong) expect(entry.admits(`hearthclock-1=${one}`)).toBe(false);
    expect(entry.admits(`a=b; ${cookie}`)).toBe(true);
    expect(compare).toHaveBeenCalledTimes(2 * wrong.length + 2);
    for (const [a, b] of compare.mock.calls) expect([a.byteLength, b.byteLength]).toEqual([32, 32]);
    expect(() => entry.firstPath()).toThrow('used already');
  });
});
