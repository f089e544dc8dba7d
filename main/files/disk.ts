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

/** What went wrong in words: a library may throw anything. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The system's code of a failed file call (`ENOSPC`) with its message, or the message of anything else. */
export function causeOf(error: unknown): string {
  const code = codeOf(error);
  return code === undefined ? messageOf(error) : `${code} (${messageOf(error)})`;
}

export function hasCode(error: unknown, ...codes: string[]): boolean {
  return codes.some((code) => code === codeOf(error));
}

function codeOf(error: unknown): string | undefined {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return typeof code === 'string' ? code : undefined;
}
