/** A program run by a test, with what it says; ended with the test. */
import { spawn, type ChildProcess } from 'node:child_process';
import { onTestFinished } from 'vitest';

export interface Program {
  readonly child: ChildProcess;
  readonly out: () => string;
  readonly err: () => string;
  /** its exit status; null when a signal ended it */
  readonly ended: Promise<number | null>;
}

export function runProgram(file: string, words: readonly string[], env: NodeJS.ProcessEnv): Program {
  const child = spawn(file, words, { env, stdio: ['ignore', 'pipe', 'pipe'] });
  const said = { out: '', err: '' };
  child.stdout.on('data', (part: Buffer) => {
    said.out += part.toString('utf8');
  });
  child.stderr.on('data', (part: Buffer) => {
    said.err += part.toString('utf8');
  });
  const ended = new Promise<number | null>((done, fail) => {
    child.on('close', done);
    child.on('error', fail);
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  return { child, out: () => said.out, err: () => said.err, ended };
}
