/** The few file calls that saving needs, so that a test can make any one of them fail. */
import { promises as fs } from 'node:fs';

export interface OpenFile {
  writeFile(content: string | Uint8Array): Promise<void>;
  chmod(mode: number): Promise<void>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

export interface Disk {
  open(path: string, flags: 'wx' | 'r', mode?: number): Promise<OpenFile>;
  stat(path: string): Promise<{ readonly mode: number; readonly mtimeMs: number; readonly size: number }>;
  realpath(path: string): Promise<string>;
  readlink(path: string): Promise<string>;
  link(from: string, to: string): Promise<void>;
  copyFile(from: string, to: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  rm(path: string): Promise<void>;
}

export const realDisk: Disk = {
  open: (path, flags, mode) => fs.open(path, flags, mode),
  stat: (path) => fs.stat(path),
  realpath: (path) => fs.realpath(path),
  readlink: (path) => fs.readlink(path),
  link: (from, to) => fs.link(from, to),
  copyFile: (from, to) => fs.copyFile(from, to),
  rename: (from, to) => fs.rename(from, to),
  rm: (path) => fs.rm(path, { force: true }),
};

/** The system's code of a failed file call (`ENOSPC`), or the message of anything else. */
export function causeOf(error: unknown): string {
  if (error instanceof Error) {
    const { code } = error as NodeJS.ErrnoException;
    return typeof code === 'string' ? `${code} (${error.message})` : error.message;
  }
  return String(error);
}

export function hasCode(error: unknown, ...codes: string[]): boolean {
  return error instanceof Error && codes.includes((error as NodeJS.ErrnoException).code ?? '');
}
