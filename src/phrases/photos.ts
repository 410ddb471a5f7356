import type { FactOf } from '../model/facts.ts';
import {
  PHOTO_BYTES_MOST,
  PHOTO_SIDE_LEAST,
  PHOTO_SIDE_MOST,
  PHOTOS_BYTES_MOST,
  PHOTOS_MOST,
  type PhotoShows,
} from '../model/photo.ts';

/** What a photo is of, as a choice and before its caption. */
export const SHOWS_WORDS: Record<PhotoShows, string> = {
  emitter: 'Emitter',
  receiver: 'Receiver',
  panel: 'Panel',
  label: 'Label',
  path: 'Path of the beam',
  other: 'Something else',
};

/** "Label: serial number of the emitter" */
export const photoText = ({ shows, caption }: Pick<FactOf<'photo'>, 'shows' | 'caption'>): string =>
  caption === undefined ? SHOWS_WORDS[shows] : `${SHOWS_WORDS[shows]}: ${caption}`;

export const photoLine = (photo: FactOf<'photo'>): string => `Photo, ${photoText(photo)}`;
export const removedLine = ({ photo, why }: FactOf<'photo-removed'>): string =>
  `Photo of entry ${photo} removed: ${why}`;

const megabytes = (bytes: number): string => `${bytes / 1e6} MB`;

/** Why a photo was not taken. */
export const RECORD_FULL = `The record of a visit holds at most ${PHOTOS_MOST} photos, ${megabytes(PHOTOS_BYTES_MOST)} together. Remove one that is not needed.`;
export const PICTURE_TOO_LARGE = `A picture may hold at most ${PHOTO_BYTES_MOST / 1000} kB. Take the photo with the button of the page, which makes it small.`;
export const NOT_YET_A_JOB = 'This job has not begun. Nothing was kept.';
export const NO_PHOTO = 'There is no such photo in this record. Nothing was changed.';
export const PHOTO_GONE = 'The picture was removed. Its entry stays in the record.';
export const NOT_YOURS = 'Only who took this photo, or the desk, can remove it.';
export const SIGNED_STAYS = 'This record is signed. Its photos can be removed at the desk only.';
export const PICTURE_LOST = 'The picture is not on the server, or is not the one that was taken.';

/** In the place of a picture that is lost. */
export const NO_PICTURE = 'PICTURE LOST: it is not on the server, or is not the one that was taken.';

/** Why a file is no photo that can be kept. */
export const FILE_FAULTS = {
  'not-jpeg': 'This is not a JPEG picture. Take the photo with the button of the page.',
  cut: 'The picture is not whole. Send it again.',
  metadata:
    'The picture has notes of the camera in it, such as the place. Take the photo with the button of the page, which leaves them out.',
  colours: 'The picture is in the colours of a printing press. Take the photo with the button of the page.',
  size: `A picture must be ${PHOTO_SIDE_LEAST} to ${PHOTO_SIDE_MOST} pixels wide and high.`,
} as const;
export type FileFault = keyof typeof FILE_FAULTS;
