import sharp from 'sharp';

/** A picture as a camera or a program makes it: with libvips, which is none of ours. */
const plain = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: { r: 190, g: 60, b: 40 } } });

/** A JPEG without notes. */
export const picture = async (width = 64, height = 48): Promise<Uint8Array> =>
  new Uint8Array(await plain(width, height).jpeg().toBuffer());

export const variant = {
  progressive: () => plain(64, 48).jpeg({ progressive: true }).toBuffer(),
  grey: () => plain(64, 48).toColourspace('b-w').jpeg().toBuffer(),
  /** With the colour profile of the screen. */
  profiled: () => plain(64, 48).withIccProfile('srgb').jpeg().toBuffer(),
  /** Of a printing press: four colours. */
  cmyk: () => plain(64, 48).toColourspace('cmyk').jpeg().toBuffer(),
  /** With the place, as a phone writes it. */
  placed: () =>
    plain(64, 48)
      .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 28/1 0/1' } })
      .jpeg()
      .toBuffer(),
  /** With notes of an editor. */
  edited: () => plain(64, 48).withXmp('<x:xmpmeta xmlns:x="adobe:ns:meta/"/>').jpeg().toBuffer(),
  png: () => plain(64, 48).png().toBuffer(),
  webp: () => plain(64, 48).webp().toBuffer(),
} satisfies Record<string, () => Promise<Buffer>>;

/** The same picture with a segment of `bytes` behind its beginning. */
export function withSegment(file: Uint8Array, marker: number, bytes: Uint8Array): Uint8Array {
  const length = bytes.length + 2;
  return Uint8Array.from([
    ...file.subarray(0, 2),
    ...[0xff, marker, length >> 8, length & 0xff, ...bytes],
    ...file.subarray(2),
  ]);
}

/** The same picture, made longer to exactly so many bytes: fill bytes may stand before any marker (ITU-T T.81, B.1.1.2). */
export function ofBytes(file: Uint8Array, bytes: number): Uint8Array {
  const fill = new Uint8Array(bytes - file.length).fill(0xff);
  return new Uint8Array(Buffer.concat([file.subarray(0, 2), fill, file.subarray(2)]));
}
