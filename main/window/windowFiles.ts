/** The built window as a fixed map made at start: no path from a request ever reaches the file system. */
import { lstat, readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { windowHeaders } from './policy.ts';

export interface WindowFile {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** From the path of a request (`/assets/index.js`) to what is sent. */
export type WindowFiles = ReadonlyMap<string, WindowFile>;

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
};

/** @throws Error when the folder holds no `index.html`, or a file whose type is not listed above */
export async function readWindowFiles(root: string): Promise<WindowFiles> {
  const files = new Map<string, WindowFile>();
  for (const file of await plainFilesUnder(root)) {
    const type = types[extname(file)];
    if (type === undefined)
      throw new Error(`${file}: found a type that is not served; allowed ${allowedTypes()}`);
    files.set(requestPath(root, file), { type, bytes: new Uint8Array(await readFile(file)) });
  }
  const index = files.get('/index.html');
  if (index === undefined)
    throw new Error(`${root}: found no index.html; allowed a built window (npm run build)`);
  files.set('/', index);
  return files;
}

/** Folder by folder: the archive of a packaged Electron program does not know the recursive call of every Node. */
async function plainFilesUnder(folder: string): Promise<string[]> {
  const found = [];
  for (const name of await readdir(folder)) {
    const path = join(folder, name);
    // A link could lead out of the folder: only plain files are served.
    const about = await lstat(path);
    if (about.isDirectory()) found.push(...(await plainFilesUnder(path)));
    else if (about.isFile()) found.push(path);
  }
  return found;
}

function requestPath(root: string, file: string): string {
  const parts = file.slice(root.length).split(/[/\\]/);
  return `/${parts
    .filter((part) => part !== '')
    .map(encodeURIComponent)
    .join('/')}`;
}

function allowedTypes(): string {
  return Object.keys(types).join(' ');
}

/** The one answer to a request for a file of the window. `path` as it stands in the request, never joined to a folder. */
export function windowResponse(files: WindowFiles, method: string, path: string): Response {
  const headers = windowHeaders();
  if (method !== 'GET' && method !== 'HEAD') {
    return new Response(`method: found ${method}; allowed GET, HEAD\n`, {
      status: 405,
      headers: { ...headers, Allow: 'GET, HEAD', 'Content-Type': 'text/plain; charset=utf-8' },
    });
  }
  const file = files.get(path);
  if (file === undefined) {
    return new Response(method === 'HEAD' ? null : 'There is no such file in the window.\n', {
      status: 404,
      headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' },
    });
  }
  return new Response(method === 'HEAD' ? null : file.bytes, {
    headers: { ...headers, 'Content-Type': file.type, 'Content-Length': String(file.bytes.length) },
  });
}
