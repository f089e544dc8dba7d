/** Reading a text that somebody else may have written: the size first, then strict UTF-8. */
import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { wording } from '../../physics/evening/problem.ts';
import { causeOf, hasCode } from './disk.ts';

export const largestPlan = 1_000_000;

/** A file that cannot be used: names the file, what was found and what is allowed. */
export class FileProblem extends Error {
  constructor(path: string, found: string, allowed: string) {
    super(wording({ path, found, allowed }));
    this.name = 'FileProblem';
  }
}

export interface ReadText {
  readonly text: string;
  readonly fingerprint: string;
}

/** Without the second, opening a named pipe would wait for whoever writes into it. Windows has none: 0 in this sum. */
const flags = constants.O_RDONLY | constants.O_NONBLOCK;

/** @throws FileProblem when there is no such file, it is no plain file, is too large or is not UTF-8 */
export async function readText(path: string, largest = largestPlan): Promise<ReadText> {
  const allowed = `a readable text file of at most ${largest} bytes`;
  try {
    const file = await open(path, flags);
    try {
      const about = await file.stat();
      if (!about.isFile())
        throw new FileProblem(path, about.isDirectory() ? 'a folder' : 'no plain file', allowed);
      if (about.size > largest) throw new FileProblem(path, `${about.size} bytes`, allowed);
      const bytes = await file.readFile();
      // It may have grown since it was looked at.
      if (bytes.length > largest) throw new FileProblem(path, `${bytes.length} bytes`, allowed);
      return { text: decoded(path, bytes), fingerprint: fingerprintOf(bytes) };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof FileProblem) throw error;
    const found = hasCode(error, 'ENOENT') ? 'no such file' : causeOf(error);
    throw new FileProblem(path, found, allowed);
  }
}

/** By its content a file is known again whatever its date says: copies and drives keep or round it. */
export function fingerprintOf(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('base64');
}

function decoded(path: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new FileProblem(
      path,
      'bytes that are not UTF-8',
      'text in UTF-8, with or without a byte-order mark',
    );
  }
}
