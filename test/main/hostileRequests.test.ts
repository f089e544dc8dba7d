import { symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { places } from '../../main/files/places.ts';
import { browserPlatform } from '../../main/platform.ts';
import { openServices } from '../../main/services.ts';
import { openHttpHost, type HttpHost } from '../../main/window/httpHost.ts';
import { windowHeaders } from '../../main/window/policy.ts';
import { readWindowFiles } from '../../main/window/windowFiles.ts';
import { writeFixtureWindow } from '../support/fixtureWindow.ts';
import { enter, send } from '../support/httpClient.ts';
import { raw, rawRequest } from '../support/rawHttp.ts';
import { newTempFolder, removeFolder } from '../support/tempFolder.ts';

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
  const { bridge } = await openServices({
    platform,
    places: own,
    version: '0.0.0-test',
    push: () => undefined,
    warn,
  });
  host = await openHttpHost({
    files: await readWindowFiles(root),
    bridge,
    warn,
    body: { bytes: 1_200_000, milliseconds: 300 },
    headMilliseconds: 400,
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
  readonly type?: string | undefined;
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
    ...('type' in changes ? { 'Content-Type': changes.type } : {}),
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
    ['a foreign name with a dot', 421, { host: 'localhost.evil.example' }],
    ['no Host', 421, { host: undefined }],
    ['an empty Host', 421, { host: '' }],
    ['two Hosts, the first of them ours', 421, { more: ['Host: evil.example'] }],
    ['a foreign Origin', 403, { origin: 'https://evil.example' }],
    ['the Origin of another server on this machine', 403, { origin: 'http://127.0.0.1:1' }],
    ['our Origin by https', 403, { origin: 'https://127.0.0.1' }],
    ['two Origins', 403, { more: ['Origin: https://evil.example'] }],
    ['an empty Origin', 403, { origin: '' }],
    ['an Origin that only begins like ours', 403, { origin: 'http://127.0.0.1' }],
    ['the Origin "null" of a sandboxed page', 403, { origin: 'null' }],
    ['no Origin', 403, { origin: undefined }],
    ['no cookie', 403, { cookie: undefined }],
    ['a made-up cookie', 403, { cookie: 'hearthclock-1=x; other=y' }],
    ['an empty cookie', 403, { cookie: 'hearthclock=' }],
    ['a plain form of another page', 415, { type: 'application/x-www-form-urlencoded' }],
    ['text, which a foreign page may send unasked', 415, { type: 'text/plain' }],
    ['a form with files', 415, { type: 'multipart/form-data; boundary=x' }],
    ['JSON in another character set', 415, { type: 'application/json; charset=utf-16' }],
    ['something that only begins like JSON', 415, { type: 'application/json-patch+json' }],
    ['no content type', 415, { type: undefined }],
    ['no custom header', 403, { ours: undefined }],
    ['another custom header', 403, { ours: '2' }],
    ['a call by GET', 405, { first: 'GET /bridge/greet', body: '' }],
    ['PUT', 405, { first: 'PUT /bridge/greet' }],
    ['DELETE', 405, { first: 'DELETE /' }],
    ['OPTIONS, the question before a foreign page sends', 405, { first: 'OPTIONS /bridge/greet' }],
    ['TRACE', 405, { first: 'TRACE /' }],
    ['PATCH', 405, { first: 'PATCH /bridge/greet' }],
    ['OPTIONS of everything', 405, { first: 'OPTIONS *' }],
    ['a HEAD of a call', 405, { first: 'HEAD /bridge/greet', body: '' }],
    ['a HEAD of the event stream', 405, { first: 'HEAD /bridge/events', body: '' }],
    ['a method that is none', 400, { first: 'BREW /' }],
    ['an expectation that nobody knows', 417, { more: ['Expect: tea'] }],
    ['a POST to a file', 405, { first: 'POST /index.html' }],
    ['a path out of the window', 404, { first: 'GET /../secret.txt', body: '' }],
    ['the same, percent-encoded', 404, { first: 'GET /%2e%2e/secret.txt', body: '' }],
    ['the same, with backslashes', 404, { first: 'GET /..\\secret.txt', body: '' }],
    ['the same, twice encoded', 404, { first: 'GET /assets/%252e%252e/%252e%252e/secret.txt', body: '' }],
    ['the same, with encoded slashes', 404, { first: 'GET /assets/..%2f..%2fsecret.txt', body: '' }],
    ['the same, with encoded backslashes', 404, { first: 'GET /assets/..%5c..%5csecret.txt', body: '' }],
    ['the same, in overlong UTF-8', 404, { first: 'GET /%c0%ae%c0%ae/secret.txt', body: '' }],
    ['the same, in UTF-16 percent signs', 404, { first: 'GET /%u002e%u002e/secret.txt', body: '' }],
    ['the same, in full-width dots', 404, { first: 'GET /%ef%bc%8e%ef%bc%8e/secret.txt', body: '' }],
    ['the same, with dots and semicolons', 404, { first: 'GET /..;/secret.txt', body: '' }],
    ['the same, in the query', 404, { first: 'GET /nothing?/../secret.txt', body: '' }],
    ['a stray percent sign', 404, { first: 'GET /%', body: '' }],
    ['a drive letter', 404, { first: 'GET /C:/secret.txt', body: '' }],
    ['a share', 404, { first: 'GET //127.0.0.1/secret.txt', body: '' }],
    ['a file of the window in capitals', 404, { first: 'GET /INDEX.HTML', body: '' }],
    ['a folder of the window', 404, { first: 'GET /assets/', body: '' }],
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
    ['null for an envelope', 400, { body: 'null' }],
    ['a number for an envelope', 400, { body: '5' }],
    ['nesting without an end', 400, { body: `{"ask":${'['.repeat(500_000)}${']'.repeat(500_000)}}` }],
    ['an envelope by way of the prototype', 400, { body: '{"__proto__":{"ask":null}}' }],
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
    ['a length that is no number', 400, { more: ['Content-Length: x'] }],
    ['a length and chunks', 400, { more: ['Transfer-Encoding: chunked'] }],
    ['a header folded over lines', 400, { more: ['X-Long: a\r\n b'] }],
    ['a bare line feed in a header', 400, { more: ['X-Long: a\nX-Other: b'] }],
    ['a zero byte in a header', 400, { more: ['X-Long: \0'] }],
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
    const bySelf = answered.text.includes('content-type: application/json');
    expect(warnings.length - before).toBe(bySelf ? 1 : 0);
  });

  it('turns away a chunked body that grows over the limit', async () => {
    const chunk = `${(65_536).toString(16)}\r\n${'x'.repeat(65_536)}\r\n`;
    const head = request({ body: '' }).replace(/Content-Length: 0/, 'Transfer-Encoding: chunked');
    const { status } = await raw(host.port, head + chunk.repeat(20));
    expect(status).toBe(413);
  });

  it('turns away HTTP/1.0 without Host, and HTTP/0.9, which has none', async () => {
    const old = await raw(host.port, `GET / HTTP/1.0\r\nCookie: ${cookie}\r\n\r\n`);
    expect(old.status).toBe(421);
    expect((await raw(host.port, 'GET /\r\n\r\n')).status).toBe(421);
  });

  it.each([
    'evil.example',
    'localhost.',
    '127.0.0.1.nip.example',
    '127.1',
    '2130706433',
    '0.0.0.0',
    '[::1]',
    'user@127.0.0.1',
  ])('turns away the name %s with our own port, whatever it points to', async (name) => {
    for (const first of ['GET /', 'GET /?token=x', 'POST /bridge/greet', 'GET /bridge/events']) {
      const answered = await raw(host.port, request({ first, host: `${name}:${host.port}` }));
      expect([first, answered.status]).toEqual([first, 421]);
      expect(answered.text).not.toContain('Set-Cookie');
    }
  });

  it('gives up on a head that does not come, byte by byte or not at all', async () => {
    const slow = raw(host.port, `GET / HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\nX-Slow: `);
    const silent = raw(host.port, '');
    expect((await slow).status).toBe(408);
    expect((await silent).status).toBe(408);
  });

  it('answers our window again once a crowd of silent connections has run out of time', async () => {
    const crowd = Array.from({ length: 80 }, () => raw(host.port, 'G'));
    const answered = await Promise.all(crowd);
    expect(answered.every(({ status }) => status === 408 || status === 0)).toBe(true);
    expect((await raw(host.port, request({}))).status).toBe(200);
  });

  it('answers HEAD like GET, without the body', async () => {
    for (const path of ['/', '/assets/page.js', '/missing']) {
      const [got, headed] = await Promise.all(
        (['GET', 'HEAD'] as const).map((method) =>
          raw(host.port, request({ first: `${method} ${path}`, body: '' })),
        ),
      );
      const [head] = got!.text.split('\r\n\r\n');
      const lines = (text: string): string[] =>
        text.split('\r\n').filter((line) => !/^(Date|Content-Length|Transfer-Encoding):/.test(line));
      expect(headed!.text.split('\r\n\r\n')[1]).toBe('');
      expect(lines(headed!.text.split('\r\n\r\n')[0]!)).toEqual(lines(head!));
    }
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

  it('says so when a connection is dropped in the middle of a body, and answers the next', async () => {
    const socket = connect(host.port, '127.0.0.1', () => {
      socket.write(request({}).replace('{"ask":null}', '{"ask"'), () => socket.destroy());
    });
    await expect.poll(() => warnings.at(-1)).toContain('closed half way');
    expect((await raw(host.port, request({}))).status).toBe(200);
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

  it.each<[string, number, string]>([
    ['a file', 200, 'GET /'],
    ['a file that is not there', 404, 'GET /missing'],
    ['a call', 200, 'POST /bridge/greet'],
    ['a call that is none', 404, 'POST /bridge/format'],
    ['another method', 405, 'PUT /'],
    ['no HTTP', 400, 'hello'],
    ['a used token', 403, 'GET /?token=x'],
    ['a head too long', 431, `GET /${'x'.repeat(20_000)}`],
  ])('sends the same headers with everything: %s', async (_what, status, first) => {
    const answered = await raw(
      host.port,
      request({ first, ...(first.startsWith('GET') ? { body: '' } : {}) }),
    );
    expect(answered.status).toBe(status);
    const [head] = answered.text.split('\r\n\r\n');
    for (const [name, value] of Object.entries(windowHeaders())) {
      expect(head!.toLowerCase()).toContain(`\r\n${name}: ${value}`.toLowerCase());
    }
    expect(head).not.toMatch(/access-control-|server:|x-powered-by/i);
  });

  it('sends them with an upgrade, a slow head and a foreign Host, too', async () => {
    const upgrade = request({ first: 'GET /bridge/events', body: '', more: ['Upgrade: websocket'] });
    const answers = await Promise.all([
      raw(host.port, upgrade.replace('Connection: close', 'Connection: Upgrade')),
      raw(host.port, 'GET / HTTP/1.1\r\n'),
      raw(host.port, request({ host: 'evil.example' })),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([400, 408, 421]);
    for (const { text } of answers)
      expect(text).toMatch(/\r\ncontent-security-policy: default-src 'none'; script-src 'self'/i);
  });
});
