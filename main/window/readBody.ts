/** The body of a request, bounded in size and in time. */
import type { IncomingMessage } from 'node:http';

export interface BodyLimits {
  readonly bytes: number;
  readonly milliseconds: number;
}

/** A body that is refused, with the HTTP status that says why. */
export class BodyRefused extends Error {
  readonly status: 400 | 408 | 413;
  constructor(status: BodyRefused['status'], message: string) {
    super(message);
    this.name = 'BodyRefused';
    this.status = status;
  }
}

export async function readBody(request: IncomingMessage, limits: BodyLimits): Promise<string> {
  const tooLarge = `body: found more than ${limits.bytes} bytes; allowed ${limits.bytes}`;
  if (Number(request.headers['content-length'] ?? 0) > limits.bytes) throw new BodyRefused(413, tooLarge);
  const bytes = await new Promise<Buffer>((done, refuse) => {
    const parts: Buffer[] = [];
    let size = 0;
    const slow = setTimeout(() => {
      refuse(new BodyRefused(408, `body: found unfinished after ${limits.milliseconds} ms; allowed sooner`));
    }, limits.milliseconds);
    request.on('data', (part: Buffer) => {
      size += part.length;
      if (size > limits.bytes) refuse(new BodyRefused(413, tooLarge));
      else parts.push(part);
    });
    request.on('end', () => {
      done(Buffer.concat(parts));
    });
    request.on('error', () => {
      refuse(new BodyRefused(400, 'body: found a connection closed half way; allowed a whole body'));
    });
    request.on('close', () => {
      clearTimeout(slow);
    });
  });
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new BodyRefused(400, 'body: found bytes that are not UTF-8; allowed JSON in UTF-8');
  }
}
