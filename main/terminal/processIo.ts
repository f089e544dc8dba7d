/** The terminal commands' hold on the real process. */
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { readText } from '../files/readText.ts';
import type { TerminalIo } from './plan.ts';

/** Whoever reads only the first lines (`| head`) closes the pipe: no fault of ours, and none of theirs. */
function bearClosedPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

const readersClock = (epochMilliseconds: number): number => -new Date(epochMilliseconds).getTimezoneOffset();

export function processIo(): TerminalIo & Required<Pick<TerminalIo, 'readersClock'>> {
  bearClosedPipe();
  const now = Date.now();
  return {
    readFile: async (path) => (await readText(path)).text,
    stdout: (text) => process.stdout.write(text),
    stderr: (text) => process.stderr.write(text),
    now,
    offsetMinutes: readersClock(now),
    readersClock,
    planFromFile,
  };
}
