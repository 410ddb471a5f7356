import { describe, expect, it } from 'vitest';
import { readArchive, toArchive } from '../../src/log/archive.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import { enclosureOf, photoOf } from '../../src/simulator/photos.ts';
import { checkPhotos } from '../../src/verify/photos.ts';
import type { Photo } from '../../src/visit/photos.ts';

const photo = (seq: number, name: string): Photo => ({ ...photoOf(name), seq, at: 0, by: 'panel' });
const removed = (of: Photo): Photo => ({
  ...of,
  removed: { type: 'photo-removed', photo: of.seq, why: 'A face is in it', seq: 40, at: 1 },
});
const panel = photo(7, 'Panel');
const label = photo(31, 'Label');

/** What is wrong with an archive of a log with these photos that holds these pictures. */
const faults = (photos: Photo[], held: [number, Enclosure][]) => {
  const archive = readArchive(toArchive('', { photos: new Map(held), sounds: new Map() }));
  return archive && checkPhotos(photos, archive);
};

const pair: [number, Enclosure] = [7, enclosureOf('Panel')];

describe('the pictures of an archive, held to the hashes of the log', () => {
  it.each<[string, Photo[], [number, Enclosure][], object[]]>([
    ['all there', [panel, label], [pair, [31, enclosureOf('Label')]], []],
    ['no photos at all', [], [], []],
    ['one missing', [panel, label], [pair], [{ kind: 'missing', seq: 31 }]],
    [
      'all missing',
      [panel, label],
      [],
      [
        { kind: 'missing', seq: 7 },
        { kind: 'missing', seq: 31 },
      ],
    ],
    ['one changed', [panel], [[7, enclosureOf('panel')]], [{ kind: 'changed', seq: 7 }]],
    [
      'two swapped',
      [panel, label],
      [
        [7, enclosureOf('Label')],
        [31, enclosureOf('Panel')],
      ],
      [
        { kind: 'changed', seq: 7 },
        { kind: 'changed', seq: 31 },
      ],
    ],
    [
      'a salt edited',
      [panel],
      [[7, { ...enclosureOf('Panel'), salt: 'ff'.repeat(16) }]],
      [{ kind: 'changed', seq: 7 }],
    ],
    [
      'one of no entry',
      [panel],
      [pair, [8, enclosureOf('Label')]],
      [{ kind: 'strange', name: 'photos/8.jpg' }],
    ],
    ['one removed on purpose', [removed(panel)], [], []],
    ['one removed, and there again', [removed(panel)], [pair], [{ kind: 'came-back', seq: 7 }]],
  ])('%s', (_, photos, held, expected) => {
    expect(faults(photos, held)).toEqual(expected);
  });

  it('miss one whose salt is not there, and know a salt that outlived its picture', () => {
    const { salt } = enclosureOf('Panel');
    const { content } = enclosureOf('Panel');
    const check = (photos: Photo[], beside: Partial<Enclosure>) =>
      checkPhotos(photos, { log: '', strange: [], photos: new Map([[7, beside]]), sounds: new Map() });
    expect(check([panel], { content })).toEqual([{ kind: 'missing', seq: 7 }]);
    expect(check([panel], { salt })).toEqual([{ kind: 'missing', seq: 7 }]);
    expect(check([removed(panel)], { salt })).toEqual([{ kind: 'came-back', seq: 7 }]);
    expect(check([], { salt })).toEqual([{ kind: 'strange', name: 'photos/7.salt' }]);
  });
});
