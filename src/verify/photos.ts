import { type Archive, archivedName } from '../log/archive.ts';
import { type Enclosure, isEnclosed } from '../log/enclosure.ts';
import type { PhotoFault } from '../log/fault.ts';
import type { Photo } from '../visit/photos.ts';

/** Every picture of a log held to the hash that its entry names, and every file of the archive to an entry. */
export function checkPhotos(
  photos: readonly Photo[],
  { photos: beside, strange }: Archive,
): readonly PhotoFault[] {
  const named = new Set(photos.map(({ seq }) => seq));
  return [
    ...photos.flatMap((photo) => faultOf(photo, beside.get(photo.seq))),
    ...[...beside]
      .filter(([seq]) => !named.has(seq))
      .map(([seq, found]) => strangeFile(archivedName('photos', seq, found))),
    ...strange.map(strangeFile),
  ];
}

function faultOf({ seq, hash, removed }: Photo, found: Partial<Enclosure> = {}): PhotoFault[] {
  const { salt, content } = found;
  if (removed) return (content ?? salt) !== undefined ? [{ kind: 'came-back', seq }] : [];
  if (salt === undefined || !content) return [{ kind: 'missing', seq }];
  return isEnclosed({ salt, content }, hash) ? [] : [{ kind: 'changed', seq }];
}

const strangeFile = (name: string): PhotoFault => ({ kind: 'strange', name });
