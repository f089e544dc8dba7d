/** The real disk, except that any call may be made to fail. */
import { basename } from 'node:path';
import { realDisk, type Disk, type OpenFile } from '../../main/files/disk.ts';

export type DiskCall = keyof Disk | keyof OpenFile;

/** What happens before a call: a code to fail with, or nothing. */
export type Before = (call: DiskCall, path: string) => string | undefined;

function failure(code: string, call: string): Error {
  return Object.assign(new Error(`${code}: made to fail, ${call}`), { code });
}

/** @param calls every call is noted here, with the random part of a temporary name as a star */
export function faultyDisk(before: Before, calls: string[] = []): Disk {
  const guard = async <T>(call: DiskCall, path: string, work: () => Promise<T>): Promise<T> => {
    calls.push(`${call} ${basename(path).replace(/[0-9a-f]{12}/, '*')}`);
    const code = before(call, path);
    if (code !== undefined) throw failure(code, call);
    return work();
  };
  return {
    open: (path, flags, mode) =>
      guard('open', path, async () => {
        const file = await realDisk.open(path, flags, mode);
        return {
          writeFile: (text) => guard('writeFile', path, () => file.writeFile(text)),
          chmod: (mode) => guard('chmod', path, () => file.chmod(mode)),
          sync: () => guard('sync', path, () => file.sync()),
          // However it ends, the test must not keep the file open.
          close: () => guard('close', path, () => Promise.resolve()).finally(() => file.close()),
        };
      }),
    stat: (path) => guard('stat', path, () => realDisk.stat(path)),
    realpath: (path) => guard('realpath', path, () => realDisk.realpath(path)),
    readlink: (path) => guard('readlink', path, () => realDisk.readlink(path)),
    link: (from, to) => guard('link', to, () => realDisk.link(from, to)),
    copyFile: (from, to) => guard('copyFile', to, () => realDisk.copyFile(from, to)),
    rename: (from, to) => guard('rename', to, () => realDisk.rename(from, to)),
    rm: (path) => guard('rm', path, () => realDisk.rm(path)),
  };
}
