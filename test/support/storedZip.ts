/** A zip archive without compression (PKWARE APPNOTE 6.3.10, 4.3), for the stand-in of a download. */

export interface Entry {
  readonly name: string;
  readonly text: string;
  /** Unix permissions */
  readonly mode: number;
}

/** CRC-32 with the reversed polynomial EDB88320 (APPNOTE 4.4.7); Node has its own from 22.2 only. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** Numbers of 2 or 4 bytes, little-endian. */
function fields(...values: readonly (readonly [size: 2 | 4, value: number])[]): Buffer {
  return Buffer.concat(
    values.map(([size, value]) => {
      const bytes = Buffer.alloc(size);
      bytes.writeUIntLE(value, 0, size);
      return bytes;
    }),
  );
}

export function storedZip(entries: readonly Entry[]): Buffer {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, text, mode } of entries) {
    const data = Buffer.from(text);
    const path = Buffer.from(name);
    // version needed, flags, method, time, date, checksum, both sizes, lengths of name and extra field
    const shared = fields(
      [2, 20],
      [2, 0],
      [2, 0],
      [2, 0],
      [2, 0x21],
      [4, crc32(data)],
      [4, data.length],
      [4, data.length],
      [2, path.length],
      [2, 0],
    );
    const local = Buffer.concat([fields([4, 0x04034b50]), shared, path, data]);
    // comment, disk, internal and external attributes (the Unix mode in the upper half), offset
    const rest = fields([2, 0], [2, 0], [2, 0], [4, (0o100000 | mode) * 0x10000], [4, offset]);
    // made by Unix (3), version 2.0
    directory.push(Buffer.concat([fields([4, 0x02014b50], [2, 0x0314]), shared, rest, path]));
    parts.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(directory);
  const count = entries.length;
  const end = fields(
    [4, 0x06054b50],
    [2, 0],
    [2, 0],
    [2, count],
    [2, count],
    [4, central.length],
    [4, offset],
    [2, 0],
  );
  return Buffer.concat([...parts, central, end]);
}
