/** A request byte by byte, as a hostile program would send it. */
import { connect } from 'node:net';

export interface RawAnswer {
  /** 0 when the connection was closed without an answer */
  readonly status: number;
  readonly text: string;
}

/** Writes `bytes` and waits for the whole answer. */
export function raw(port: number, bytes: string): Promise<RawAnswer> {
  return new Promise((done) => {
    const parts: Buffer[] = [];
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes, 'latin1'));
    socket.on('data', (part) => parts.push(part));
    // A server that refuses half way may reset the connection after its answer.
    socket.on('error', () => undefined);
    socket.on('close', () => {
      const text = Buffer.concat(parts).toString('utf8');
      done({ status: Number(/^HTTP\/1\.1 (\d{3})/.exec(text)?.[1] ?? 0), text });
    });
  });
}

/** A whole request with the given head lines; `Connection: close` ends it. */
export function rawRequest(first: string, lines: readonly string[], body = ''): string {
  return [`${first} HTTP/1.1`, ...lines, 'Connection: close', '', body].join('\r\n');
}
