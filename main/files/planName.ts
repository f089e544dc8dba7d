/** From the name of an evening to a file name that every system takes. */
import { wording } from '../../physics/evening/problem.ts';

export const planEnding = '.hearthclock';

/** Names that Windows keeps for devices, whatever their ending (its "Naming Files, Paths, and Namespaces" page). */
const devices = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])$/i;

/**
 * What a file name cannot hold becomes a dash (`Friday 24/12` is a fair title); the caller shows the name used.
 * @throws Error when nothing usable is left, or the name would be too long for a file system (255 bytes)
 */
export function fileNameFor(name: string): string {
  const usable = name
    .normalize('NFC')
    .replace(/[\p{Cc}\p{Cs}/\\:*?"<>|]+/gu, '-')
    .replace(/^[.\s]+|[.\s]+$/g, '');
  const stem = usable.replace(/\..*$/su, '');
  if (usable === '' || devices.test(stem) || Buffer.byteLength(usable) > 200) {
    throw new Error(
      wording({
        path: 'name',
        found: JSON.stringify(name),
        allowed:
          'a name of at most 200 bytes with something besides dots and spaces, and no device name such as CON or NUL',
      }),
    );
  }
  return usable;
}
