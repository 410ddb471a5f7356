import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, describe, expect, it } from 'vitest';
import { readArchive, toArchive, UNPACKED_BYTES_MOST } from '../../src/log/archive.ts';
import { type Enclosure, enclosureHash, isEnclosed } from '../../src/log/enclosure.ts';
import { PHOTO_BYTES_MOST } from '../../src/model/photo.ts';
import { enclosureOf } from '../../src/simulator/photos.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-archive-'));
afterAll(() => rmSync(folder, { recursive: true }));

const LOG = '{"hash":"…"}\n';
const one = enclosureOf('Panel');
const two = enclosureOf('Label');
const spoken = enclosureOf('Said');
const archived = toArchive(LOG, {
  photos: new Map([
    [7, one],
    [31, two],
  ]),
  sounds: new Map([[12, spoken]]),
});

/** One picture of the largest size, named so often: an archive of some kilobytes. APPNOTE 4.3.12 and 4.3.16, from memory. */
function bomb(times: number): Uint8Array {
  const zip = Buffer.from(
    zipSync({ 'photos/1000.jpg': new Uint8Array(PHOTO_BYTES_MOST), 'log.jsonl': strToU8(LOG) }),
  );
  const end = zip.lastIndexOf('PK\x05\x06');
  const directory = zip.indexOf('PK\x01\x02');
  const second = zip.indexOf('PK\x01\x02', directory + 4);
  const named = Array.from({ length: Math.floor(times) }, (_, i) => {
    const record = Buffer.from(zip.subarray(directory, second));
    record.write(`photos/${1000 + i}.jpg`, record.indexOf('photos/'));
    return record;
  });
  const records = Buffer.concat([...named, zip.subarray(second, end)]);
  const last = Buffer.from(zip.subarray(end));
  last.writeUInt16LE(named.length + 1, 8);
  last.writeUInt16LE(named.length + 1, 10);
  last.writeUInt32LE(records.length, 12);
  return Buffer.concat([zip.subarray(0, directory), records, last]);
}

describe('the hash of what lies beside a log', () => {
  it('is SHA-256 of the salt and the content, one behind the other, as any program computes it', () => {
    const other = createHash('sha256').update(Buffer.from(one.salt, 'hex')).update(one.content).digest('hex');
    expect(enclosureHash(one)).toBe(other);
    expect(isEnclosed(one, other)).toBe(true);
  });

  it.each<[string, Enclosure]>([
    ['other content', { ...one, content: two.content }],
    ['another salt', { ...one, salt: `ff${one.salt.slice(2)}` }],
    ['a byte moved from the content into the salt', moved(one)],
    ['no content', { ...one, content: new Uint8Array() }],
  ])('is another with %s', (_, enclosure) => {
    expect(isEnclosed(enclosure, enclosureHash(one))).toBe(false);
  });

  it.each([
    ['15 bytes', '0'.repeat(30), false],
    ['16 bytes', '0'.repeat(32), true],
    ['17 bytes', '0'.repeat(34), false],
    ['half a byte more', '0'.repeat(33), false],
    ['no hexadecimal', 'xy'.repeat(16), false],
    ['none', '', false],
  ])('with a salt of %s is never looked at, or right', (_, salt, right) => {
    const hash = createHash('sha256').update(Buffer.from(salt, 'hex')).update(one.content).digest('hex');
    expect(isEnclosed({ ...one, salt }, hash)).toBe(right);
  });
});

/** The same bytes one behind the other, parted at another place. */
function moved({ salt, content }: Enclosure): Enclosure {
  const first = (content[0] ?? 0).toString(16).padStart(2, '0');
  return { salt: salt + first, content: content.slice(1) };
}

describe('the archive of a log', () => {
  it('gives back the log and what lies beside it', () => {
    expect(readArchive(archived)).toEqual({
      log: LOG,
      photos: new Map([
        [7, one],
        [31, two],
      ]),
      sounds: new Map([[12, spoken]]),
      strange: [],
    });
  });

  it('is the same bytes whenever it is made', () => {
    const beside = { photos: new Map([[7, one]]), sounds: new Map([[12, spoken]]) };
    expect(toArchive(LOG, beside)).toEqual(toArchive(LOG, beside));
  });

  it('is read by other programs: each picture and its salt as plain files', () => {
    const file = join(folder, 'log.zip');
    writeFileSync(file, archived);
    // Python's own reader checks the sums of the ZIP, too.
    const test =
      'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; z.extractall(sys.argv[2])';
    execFileSync('python3', ['-c', test, file, folder]);
    const sum = execFileSync('sh', ['-c', 'cat photos/31.salt photos/31.jpg | sha256sum'], { cwd: folder });
    expect(String(sum).slice(0, 64)).toBe(enclosureHash(two));
    expect(readFileSync(join(folder, 'log.jsonl'), 'utf8')).toBe(LOG);
  });

  /** As somebody packs it again. */
  const packed = (change: (files: Record<string, Uint8Array>) => void) => {
    const files = unzipSync(archived);
    change(files);
    return readArchive(zipSync(files));
  };

  it('may be packed again by a program that names folders, too', () => {
    const again = packed((files) => {
      files['photos/'] = new Uint8Array();
    });
    expect(again).toEqual(readArchive(archived));
  });

  it.each(['photos/007.jpg', 'photos/7.JPG', 'photos/7.jpeg', '7.jpg', 'photos/../7.jpg', 'other.jsonl'])(
    'names a file that it should not hold: %s',
    (name) => {
      const again = packed((files) => {
        Object.defineProperty(files, name, { value: strToU8('x'), enumerable: true });
      });
      expect(again?.strange).toEqual([name]);
      expect(again?.photos).toEqual(readArchive(archived)?.photos);
    },
  );

  it.each([
    [PHOTO_BYTES_MOST, []],
    [PHOTO_BYTES_MOST + 1, ['photos/9.jpg']],
  ])('makes room for a picture of at most the largest size: %i bytes', (size, strange) => {
    const again = packed((files) => {
      files['photos/9.jpg'] = new Uint8Array(size);
    });
    expect(again?.strange).toEqual(strange);
    expect(again?.photos.has(9)).toBe(strange.length === 0);
  });

  it('names a file that is there twice, so that no two readers see another', () => {
    const name = strToU8('photos/7.jpg');
    const twice = zipSync({
      'log.jsonl': strToU8(LOG),
      'photos/7.jpg': one.content,
      'photos/8.jpg': two.content,
    });
    const text = Buffer.from(twice);
    for (let at = text.indexOf('photos/8.jpg'); at !== -1; at = text.indexOf('photos/8.jpg'))
      text.set(name, at);
    expect(readArchive(text)?.strange).toEqual(['photos/7.jpg']);
    expect(strFromU8(readArchive(text)?.photos.get(7)?.content ?? new Uint8Array())).toBe('Panel');
  });

  it.each([
    ['no ZIP', strToU8('PK is not enough')],
    ['a ZIP that was cut', archived.slice(0, -30)],
    ['a ZIP without a log', zipSync({ 'photos/7.jpg': one.content })],
    ['nothing', new Uint8Array()],
    ['so many pictures that nobody could hold them', bomb(UNPACKED_BYTES_MOST / PHOTO_BYTES_MOST + 1)],
  ])('is none for %s', (_, bytes) => {
    expect(readArchive(bytes)).toBeUndefined();
  });
});
