/** A display for tests that open a real window. */
import { spawn } from 'node:child_process';
import type { Readable } from 'node:stream';
import { onPath } from './onPath.ts';

export interface Display {
  readonly name: string;
  close(): void;
}

/** A virtual display of our own; undefined on a machine without Xvfb. It picks a free number itself. */
export async function openDisplay(): Promise<Display | undefined> {
  const xvfb = onPath('Xvfb');
  if (xvfb === undefined) return undefined;
  const child = spawn(xvfb, ['-displayfd', '3', '-screen', '0', '1400x900x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const number = await new Promise<string>((done, fail) => {
    (child.stdio[3] as Readable).once('data', (part: Buffer) => {
      done(part.toString('utf8').trim());
    });
    child.once('error', fail);
    child.once('exit', () => {
      fail(new Error('Xvfb ended before it named its display'));
    });
  });
  return { name: `:${number}`, close: () => child.kill() };
}
