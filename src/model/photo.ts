import * as z from 'zod/mini';
import { Hash, Seq } from './ids.ts';

/** Largest picture of one photo, bytes: a label at arm's length can still be read. */
export const PHOTO_BYTES_MOST = 400_000;
/** Longest and shortest side of a picture, pixels. */
export const PHOTO_SIDE_MOST = 4096;
export const PHOTO_SIDE_LEAST = 16;
/** Photos that the record of one visit may hold, and the bytes of all of them together. */
export const PHOTOS_MOST = 40;
export const PHOTOS_BYTES_MOST = 12_000_000;

/** What a photo is of. */
export const PhotoShows = z.enum(['emitter', 'receiver', 'panel', 'label', 'path', 'other']);
export type PhotoShows = z.infer<typeof PhotoShows>;

/** In a person's words, on one line. */
export const Caption = z.string().check(z.trim(), z.minLength(1), z.maxLength(200));

/** What the file itself says of a picture. */
export const Picture = z.object({
  bytes: z.int().check(z.minimum(1), z.maximum(PHOTO_BYTES_MOST)),
  /** Pixels. */
  width: z.int().check(z.minimum(PHOTO_SIDE_LEAST), z.maximum(PHOTO_SIDE_MOST)),
  height: z.int().check(z.minimum(PHOTO_SIDE_LEAST), z.maximum(PHOTO_SIDE_MOST)),
});
export type Picture = z.infer<typeof Picture>;

/** Facts about photos. The picture itself lies beside the log, so that it can be removed and the chain still holds. */
export const photoFacts = [
  /** A JPEG. `hash`: SHA-256 of a random salt, which lies beside the picture, and the picture. */
  z.object({
    type: z.literal('photo'),
    hash: Hash,
    ...Picture.shape,
    shows: PhotoShows,
    caption: z.optional(Caption),
  }),
  /**
   * The picture of entry `photo` was removed, and is nowhere on the server any more. `afterDays`: nobody asked for it; the server
   * keeps pictures for so many days.
   */
  z.object({
    type: z.literal('photo-removed'),
    photo: Seq,
    why: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
    afterDays: z.optional(z.int().check(z.minimum(1))),
  }),
] as const;

export const PhotoFact = z.discriminatedUnion('type', photoFacts);
export type PhotoFact = z.infer<typeof PhotoFact>;
