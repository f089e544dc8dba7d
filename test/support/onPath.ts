import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** The program of that name, as a shell would find it. */
export function onPath(name: string): string | undefined {
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
}
