/** A loopback stand-in for the server of Electron's downloads: an archive with a small script in the place of the binary. */
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { storedZip } from './storedZip.ts';

export interface Mirror {
  /** what `ELECTRON_MIRROR` has to say */
  readonly base: string;
  /** every request, as `METHOD path` */
  readonly asked: readonly string[];
  close(): Promise<void>;
}

export type MirrorManner = 'serves' | 'is silent' | 'stalls in the download' | 'has none';

export async function openMirror(
  version: string,
  script: string,
  manner: MirrorManner = 'serves',
): Promise<Mirror> {
  const name = `electron-v${version}-${process.platform}-${process.arch}.zip`;
  const binary = process.platform === 'darwin' ? 'Electron.app/Contents/MacOS/Electron' : 'electron';
  const archive = storedZip([
    { name: binary, text: script, mode: 0o755 },
    { name: 'version', text: version, mode: 0o644 },
  ]);
  const sums = `${createHash('sha256').update(archive).digest('hex')} *${name}\n`;
  const asked: string[] = [];
  const server = createServer((request, response) => {
    asked.push(`${request.method ?? ''} ${request.url ?? ''}`);
    if (manner === 'is silent' || (manner === 'stalls in the download' && request.method === 'GET')) return;
    const body =
      manner === 'has none'
        ? undefined
        : { [`/v${version}/${name}`]: archive, [`/v${version}/SHASUMS256.txt`]: Buffer.from(sums) }[
            request.url ?? ''
          ];
    response.writeHead(body === undefined ? 404 : 200, { 'Content-Length': body?.length ?? 0 });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    base: `http://127.0.0.1:${port}/`,
    asked,
    close: async () => {
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}
