import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { openHttpHost, type HttpHost } from '../../main/window/httpHost.ts';
import { readWindowFiles } from '../../main/window/windowFiles.ts';
import { writeFixtureWindow } from '../support/fixtureWindow.ts';
import { enter, send } from '../support/httpClient.ts';
import { raw, rawRequest } from '../support/rawHttp.ts';
import { newTempFolder, removeFolder, tempFolder } from '../support/tempFolder.ts';

let folder: string;
let host: HttpHost;
let cookie: string;
const warnings: string[] = [];

beforeAll(async () => {
  folder = newTempFolder();
  const root = writeFixtureWindow(join(folder, 'window'));
  writeFileSync(join(folder, 'secret.txt'), 'not part of the window');
  symlinkSync(join(folder, 'secret.txt'), join(root, 'link.txt'));
  const own = places('linux', { HEARTHCLOCK_DATA: join(folder, 'data') }, folder);
  const platform = browserPlatform('serve');
  const warn = (message: string): void => {
    warnings.push(message);
  };
  const { bridge } = await openServices({ platform, places: own, version: '0.0.0-test', warn });
  host = await openHttpHost({
    files: await readWindowFiles(root),
    bridge,
    warn,
    body: { bytes: 1_200_000, milliseconds: 300 },
  });
  cookie = await enter(host.address);
});

afterAll(async () => {
  await host.close();
  removeFolder(folder);
});

/** A request as our own window sends it, with some of its lines changed or (undefined) left out. */
interface Changes {
  readonly first?: string;
  readonly host?: string | undefined;
  readonly origin?: string | undefined;
  readonly cookie?: string | undefined;
  readonly ours?: string | undefined;
  readonly body?: string;
  readonly more?: readonly string[];
}

function request(changes: Changes): string {
  const body = changes.body ?? '{"ask":null}';
  const lines = {
    Host: `127.0.0.1:${host.port}`,
    Origin: `http://127.0.0.1:${host.port}`,
    Cookie: cookie,
    'X-Hearthclock': '1',
    'Content-Type': 'application/json',
    // The request goes out in Latin-1, one byte a character.
    'Content-Length': String(body.length),
    ...('host' in changes ? { Host: changes.host } : {}),
    ...('origin' in changes ? { Origin: changes.origin } : {}),
    ...('cookie' in changes ? { Cookie: changes.cookie } : {}),
    ...('ours' in changes ? { 'X-Hearthclock': changes.ours } : {}),
  };
  const head = Object.entries(lines).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}: ${value}`],
  );
  return rawRequest(changes.first ?? 'POST /bridge/greet', [...head, ...(changes.more ?? [])], body);
}

describe('the loopback server', () => {
  it('answers our own window', async () => {
    const { status, text } = await raw(host.port, request({}));
    expect(status).toBe(200);
    expect(text).toContain('{"answer":{"host":"serve"');
  });

  it.each<[string, number, Changes]>([
    ['a foreign name that points here', 421, { host: 'evil.example' }],
    ['a foreign name with our port', 421, { host: 'evil.example:80' }],
    ['a Host without the port', 421, { host: '127.0.0.1' }],
    ['a Host with a dot behind', 421, { host: 'localhost.' }],
    ['another way to write the address', 421, { host: '0x7f000001' }],
    ['no Host', 400, { host: undefined }],
    ['a foreign Origin', 403, { origin: 'https://evil.example' }],
    ['an Origin that only begins like ours', 403, { origin: 'http://127.0.0.1' }],
    ['the Origin "null" of a sandboxed page', 403, { origin: 'null' }],
    ['no Origin', 403, { origin: undefined }],
    ['no cookie', 403, { cookie: undefined }],
    ['a made-up cookie', 403, { cookie: 'hearthclock-1=x; other=y' }],
    ['no custom header', 403, { ours: undefined }],
    ['another custom header', 403, { ours: '2' }],
    ['a call by GET', 405, { first: 'GET /bridge/greet', body: '' }],
    ['PUT', 405, { first: 'PUT /bridge/greet' }],
    ['DELETE', 405, { first: 'DELETE /' }],
    ['OPTIONS, the question before a foreign page sends', 405, { first: 'OPTIONS /bridge/greet' }],
    ['TRACE', 405, { first: 'TRACE /' }],
    ['a POST to a file', 405, { first: 'POST /index.html' }],
    ['a path out of the window', 404, { first: 'GET /../secret.txt', body: '' }],
    ['the same, percent-encoded', 404, { first: 'GET /%2e%2e/secret.txt', body: '' }],
    ['the same, with backslashes', 404, { first: 'GET /..\\secret.txt', body: '' }],
    ['the same, twice encoded', 404, { first: 'GET /assets/%252e%252e/%252e%252e/secret.txt', body: '' }],
    ['an absolute path', 404, { first: 'GET //etc/passwd', body: '' }],
    ['a whole address in place of the path', 404, { first: 'GET http://evil.example/', body: '' }],
    ['a link that leads out of the window', 404, { first: 'GET /link.txt', body: '' }],
    ['a zero byte', 404, { first: 'GET /index.html%00.txt', body: '' }],
    ['a name that every object has', 404, { first: 'GET /constructor', body: '' }],
    ['an unknown call', 404, { first: 'POST /bridge/format' }],
    ['a call named like what every object has', 404, { first: 'POST /bridge/__proto__' }],
    ['a call below a call', 405, { first: 'POST /bridge/greet/x' }],
    ['a body over the limit', 413, { body: JSON.stringify({ ask: 'x'.repeat(1_200_000) }) }],
    ['no JSON', 400, { body: 'ask=null' }],
    ['no body', 400, { body: '' }],
    ['another envelope', 400, { body: '{"ask":null,"more":1}' }],
    ['a list for an envelope', 400, { body: '[null]' }],
    ['a misshapen ask', 400, { body: '{"ask":{"__proto__":{"x":1}}}' }],
    ['text that is not UTF-8', 400, { body: '{"ask":"\u00ff"}', more: [] }],
    ['an event stream by POST', 405, { first: 'POST /bridge/events' }],
    [
      'an event stream for a foreign page',
      403,
      { first: 'GET /bridge/events', origin: 'https://evil.example', body: '' },
    ],
    [
      'an event stream without a word on where from',
      403,
      { first: 'GET /bridge/events', origin: undefined, body: '' },
    ],
    [
      'an event stream across sites',
      403,
      { first: 'GET /bridge/events', origin: undefined, body: '', more: ['Sec-Fetch-Site: cross-site'] },
    ],
    ['a used token', 403, { first: 'GET /?token=used', body: '' }],
    ['a head of 20 kB', 431, { more: [`X-Long: ${'x'.repeat(20_000)}`] }],
    ['two lengths', 400, { more: ['Content-Length: 3'] }],
    ['no HTTP', 400, { first: 'hello' }],
  ])('turns away %s with %i', async (_what, status, changes) => {
    const before = warnings.length;
    const answered = await raw(host.port, request(changes));
    expect(answered.status).toBe(status);
    expect(answered.text).not.toContain('not part of the window');
    expect(answered.text.toLowerCase()).not.toContain('access-control-');
    // What our code turned away (and not Node's own reading of HTTP, or a file that is not there) is said aloud.
    const bySelf = answered.text.includes('"error"');
    expect(warnings.length - before).toBe(bySelf ? 1 : 0);
  });

  it('turns away a chunked body that grows over the limit', async () => {
    const chunk = `${(65_536).toString(16)}\r\n${'x'.repeat(65_536)}\r\n`;
    const head = request({ body: '' }).replace(/Content-Length: 0/, 'Transfer-Encoding: chunked');
    const { status } = await raw(host.port, head + chunk.repeat(20));
    expect(status).toBe(413);
  });

  it('turns away an upgrade to another protocol', async () => {
    const asked = request({ first: 'GET /bridge/events', body: '', more: ['Upgrade: websocket'] });
    const { status } = await raw(host.port, asked.replace('Connection: close', 'Connection: Upgrade'));
    expect(status).toBe(400);
  });

  it('gives up on a body that does not come', async () => {
    const { status, text } = await raw(host.port, request({ more: [] }).replace('{"ask":null}', '{"ask"'));
    expect(status).toBe(408);
    expect(text).toContain('unfinished after 300 ms');
  });

  it('gives the cookie once, where no script can read it, and leaves no token in the address', async () => {
    const own = await openHttpHost({
      files: await readWindowFiles(writeFixtureWindow(tempFolder())),
      bridge: (
        await openServices({
          platform: browserPlatform('serve'),
          places: places('linux', { HEARTHCLOCK_DATA: tempFolder() }, '/'),
          version: '0.0.0-test',
          warn: () => undefined,
        })
      ).bridge,
      warn: () => undefined,
    });
    try {
      expect(own.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{43}$/);
      // Looking does not use it up.
      expect((await send(own.address, { method: 'HEAD' })).status).toBe(403);
      const first = await send(own.address);
      expect([first.status, first.headers.location]).toEqual([303, '/']);
      expect(first.headers['set-cookie']?.[0]).toMatch(
        /^hearthclock-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/,
      );
      expect((await send(own.address)).status).toBe(403);
      // Each server has its own secret.
      expect((await send(`${own.origin}/`, { headers: { cookie } })).status).toBe(403);
    } finally {
      await own.close();
    }
  });

  it('listens on the loopback only', async () => {
    const { networkInterfaces } = await import('node:os');
    const outside = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .filter(({ family, internal }) => family === 'IPv4' && !internal);
    for (const { address } of outside) {
      await expect(send(`http://${address}:${host.port}/`)).rejects.toThrow('ECONNREFUSED');
    }
    expect(host.origin).toBe(`http://127.0.0.1:${host.port}`);
  });

  it('sends the same headers with everything', async () => {
    const wanted = {
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
      'cross-origin-resource-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
    };
    for (const path of ['/', '/assets/page.js', '/missing', '/bridge/format']) {
      const { headers } = await send(`${host.origin}${path}`, { headers: { cookie } });
      expect(headers).toMatchObject(wanted);
      expect(headers['content-security-policy']).toContain("default-src 'none'; script-src 'self'");
    }
  });
});
