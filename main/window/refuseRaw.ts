/** Answers past Node's own: what it refuses before there is a request carries the same headers as everything else. */
import type { Duplex } from 'node:stream';
import { windowHeaders } from './policy.ts';

const statusOf: Readonly<Record<string, string>> = {
  HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
  ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
};

export function refuseRaw(socket: Duplex, status: string): void {
  const headers = Object.entries({ ...windowHeaders(), 'Content-Length': '0', Connection: 'close' });
  const lines = [`HTTP/1.1 ${status}`, ...headers.map(([name, value]) => `${name}: ${value}`)];
  socket.end(`${lines.join('\r\n')}\r\n\r\n`);
}

/** For a request that cannot be read, or whose head does not come. */
export function refuseParsing(error: NodeJS.ErrnoException, socket: Duplex): void {
  // Somebody may have gone meanwhile; into an answer that has begun nothing may be mixed.
  const begun = 'bytesWritten' in socket && socket.bytesWritten !== 0;
  if (begun || !socket.writable) socket.destroy();
  else refuseRaw(socket, statusOf[String(error.code)] ?? '400 Bad Request');
}
