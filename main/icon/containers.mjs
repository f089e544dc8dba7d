/** Pictures of several sizes in the one file that a system wants. Plain JavaScript, for the command that draws them. */

/**
 * Windows: an ICO file whose images are PNG (allowed since Windows Vista). Header of 6 octets, 16 for each image; a width
 * or height of 256 is written as 0.
 *
 * @param {readonly { size: number, png: Buffer }[]} images
 * @returns {Buffer}
 */
export function ico(images) {
  const header = Buffer.alloc(6 + 16 * images.length);
  header.writeUInt16LE(1, 2);
  header.writeUInt16LE(images.length, 4);
  let offset = header.length;
  for (const [index, { size, png }] of images.entries()) {
    const at = 6 + 16 * index;
    header.writeUInt8(size % 256, at);
    header.writeUInt8(size % 256, at + 1);
    header.writeUInt16LE(1, at + 4);
    header.writeUInt16LE(32, at + 6);
    header.writeUInt32LE(png.length, at + 8);
    header.writeUInt32LE(offset, at + 12);
    offset += png.length;
  }
  return Buffer.concat([header, ...images.map(({ png }) => png)]);
}

/** Types of ICNS that hold PNG, by the size in pixels; those for twice the density have their own. From memory. */
export const icnsTypes = {
  16: ['icp4'],
  32: ['icp5', 'ic11'],
  64: ['ic12'],
  128: ['ic07'],
  256: ['ic08', 'ic13'],
  512: ['ic09', 'ic14'],
  1024: ['ic10'],
};

/**
 * macOS: `icns`, the length of the file, then for each image its type and length with 8 octets of header; big-endian.
 *
 * @param {readonly { size: number, png: Buffer }[]} images
 * @returns {Buffer}
 */
export function icns(images) {
  const parts = images.flatMap(({ size, png }) =>
    (icnsTypes[size] ?? []).map((type) => {
      const head = Buffer.alloc(8);
      head.write(type, 'latin1');
      head.writeUInt32BE(png.length + 8, 4);
      return Buffer.concat([head, png]);
    }),
  );
  const head = Buffer.alloc(8);
  head.write('icns', 'latin1');
  head.writeUInt32BE(8 + parts.reduce((sum, part) => sum + part.length, 0), 4);
  return Buffer.concat([head, ...parts]);
}
