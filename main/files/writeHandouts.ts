/** Writes the handouts of an evening into a folder, each whole or not at all. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { writeAtomically } from './atomicWrite.ts';
import { causeOf } from './disk.ts';
import { FileProblem } from './readText.ts';

export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/**
 * @returns the paths written, in the order of the files
 * @throws FileProblem naming the folder that cannot be made, or the file that cannot be written and why
 */
export async function writeHandouts(folder: string, files: readonly NamedText[]): Promise<readonly string[]> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    throw new FileProblem(
      '--out',
      `${folder} (${causeOf(error)})`,
      'a folder, or a place where one can be made',
    );
  }
  const written: string[] = [];
  for (const { name, text } of files) {
    const path = join(folder, name);
    try {
      await writeAtomically(path, text, { keepPrevious: false });
    } catch (error) {
      throw new FileProblem('--out', causeOf(error), 'a folder in which files can be written');
    }
    written.push(path);
  }
  return written;
}
