import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readJpeg, withoutNotes } from '../../src/formats/jpeg.ts';
import { ofBytes, picture, variant, withSegment } from './pictures.ts';

const file = await picture();
const fault = (name: string) => ({ kind: 'fault', fault: name });
const text = (words: string) => new TextEncoder().encode(words);

describe('a JPEG is read as libvips writes it', () => {
  it.each([
    [1, 1],
    [64, 48],
    [16, 4096],
    [4097, 20],
  ])('%i by %i pixels', async (width, height) => {
    expect(readJpeg(await picture(width, height))).toEqual({ kind: 'picture', width, height });
  });

  it.each(['progressive', 'grey', 'profiled'] as const)('%s', async (name) => {
    expect(readJpeg(await variant[name]())).toEqual({ kind: 'picture', width: 64, height: 48 });
  });

  it('also where it lies within a larger piece of memory', () => {
    const inside = new Uint8Array([...text('before'), ...file, ...text('after')]).subarray(
      6,
      6 + file.length,
    );
    expect(readJpeg(inside)).toEqual({ kind: 'picture', width: 64, height: 48 });
  });

  it('with fill bytes before a marker', () => {
    expect(readJpeg(ofBytes(file, file.length + 500))).toEqual({ kind: 'picture', width: 64, height: 48 });
  });
});

describe('what is no picture to keep is refused', () => {
  it.each(['png', 'webp'] as const)('a %s', async (name) => {
    expect(readJpeg(await variant[name]())).toEqual(fault('not-jpeg'));
  });

  it.each<[string, Uint8Array]>([
    ['nothing', new Uint8Array()],
    ['a page', text('<html><script>alert(1)</script>')],
    ['its beginning alone', file.subarray(0, 2)],
  ])('%s', (_, bytes) => {
    expect(readJpeg(bytes)).toMatchObject({ kind: 'fault' });
  });

  it.each(['placed', 'edited'] as const)('%s: who took it and where is not kept', async (name) => {
    expect(readJpeg(await variant[name]())).toEqual(fault('metadata'));
  });

  it('four colours', async () => {
    expect(readJpeg(await variant.cmyk())).toEqual(fault('colours'));
  });

  /** The three application segments that say only how to show a picture, by the names that they begin with. */
  it.each([
    [0xe0, 'JFIF\0', true],
    [0xe0, 'JFXX\0', false],
    [0xe2, 'ICC_PROFILE\0', true],
    [0xe2, 'MPF\0', false],
    [0xe2, 'ICC_', false],
    [0xee, 'Adobe', true],
    [0xee, 'Notes', false],
    [0xe1, 'JFIF\0', false],
  ])('a segment %i more that begins with %j: %s', (marker, name, kept) => {
    const read = readJpeg(withSegment(file, marker, text(name)));
    expect(read).toEqual(kept ? { kind: 'picture', width: 64, height: 48 } : fault('metadata'));
  });

  it.each([0xe1, 0xe3, 0xe4, 0xe5, 0xe6, 0xe7, 0xe8, 0xe9, 0xea, 0xeb, 0xec, 0xed, 0xef, 0xfe])(
    'any segment %i more: others carry notes',
    (marker) => {
      const noted = withSegment(file, marker, text('Exif\0\0 51.4779 N'));
      expect(readJpeg(noted)).toEqual(fault('metadata'));
      expect(withoutNotes(noted)).toEqual(file);
    },
  );

  it('words behind its end', () => {
    expect(readJpeg(new Uint8Array([...file, 0]))).toEqual(fault('metadata'));
    expect(readJpeg(new Uint8Array([...file, ...file]))).toEqual(fault('metadata'));
  });

  it('one that was cut, wherever that was', () => {
    for (let end = 0; end < file.length; end++) {
      expect(readJpeg(file.subarray(0, end))).toMatchObject({ kind: 'fault' });
    }
  });

  it('never throws, and never takes long, whatever byte is another', () => {
    for (let at = 0; at < file.length; at++) {
      for (const other of [0, 0xff, 0xd8, 0xd9, 0xda]) {
        const changed = file.slice();
        changed[at] = other;
        expect(readJpeg(changed).kind).toMatch(/picture|fault/);
      }
    }
  });
});

describe('a JPEG without its notes', () => {
  it.each(['placed', 'edited'] as const)('%s: shows the same picture, and can be kept', async (name) => {
    const noted = await variant[name]();
    const cleaned = withoutNotes(noted);
    expect(readJpeg(cleaned)).toEqual({ kind: 'picture', width: 64, height: 48 });
    const pixels = (bytes: Uint8Array) => sharp(bytes).raw().toBuffer();
    expect(await pixels(cleaned)).toEqual(await pixels(noted));
    const { exif, xmp } = await sharp(cleaned).metadata();
    expect([exif, xmp]).toEqual([undefined, undefined]);
  });

  it('is the file itself where it has none, or is no JPEG', async () => {
    expect(withoutNotes(file)).toEqual(file);
    expect(withoutNotes(text('no picture'))).toEqual(text('no picture'));
  });
});
