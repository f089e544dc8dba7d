/** The terminal commands' hold on the real process. */
import { planFromFile } from '../../physics/evening/planEvening.ts';
import { readText } from '../files/readText.ts';
import { bearOutputErrors } from './output.ts';
import type { TerminalIo } from './plan.ts';

const readersClock = (epochMilliseconds: number): number => -new Date(epochMilliseconds).getTimezoneOffset();

export function processIo(): TerminalIo & Required<Pick<TerminalIo, 'readersClock'>> {
  bearOutputErrors();
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
