import type { Actor } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { PHOTOS_BYTES_MOST, PHOTOS_MOST } from '../model/photo.ts';
import type { Placed } from '../model/placed.ts';

/** A photo of a visit; its entry names it. `removed`: its picture is gone, and why. */
export type Photo = Placed<'photo'> & { readonly by: Actor; readonly removed?: Placed<'photo-removed'> };

/** Those whose picture is there. */
export const kept = (photos: readonly Photo[]): readonly Photo[] => photos.filter(({ removed }) => !removed);

/** Whether the record of a visit can take one more picture of so many bytes. */
export function hasRoom(photos: readonly Photo[], bytes: number): boolean {
  const there = kept(photos);
  const used = there.reduce((sum, photo) => sum + photo.bytes, 0);
  return there.length < PHOTOS_MOST && used + bytes <= PHOTOS_BYTES_MOST;
}

export const photoAt = (photos: readonly Photo[], seq: Seq): Photo | undefined =>
  photos.find((photo) => photo.seq === seq);

/** The photos after one was removed; one that is not there, or gone already, changes nothing. */
export const afterRemoval = (photos: readonly Photo[], removed: Placed<'photo-removed'>): readonly Photo[] =>
  photos.map((photo) => (photo.seq === removed.photo && !photo.removed ? { ...photo, removed } : photo));
