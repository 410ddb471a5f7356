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
export const keptLongEnoughText = (days: number): string =>
  `Pictures are kept for ${days === 1 ? 'a day' : `${days} days`} on this server`;
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

/** The words of the pages that take and show photos. */
export const PHOTOS_TITLE = 'Photos';
export const TAKE_PHOTO = 'Take a photo';
export const CHOOSE_PHOTO = 'Choose a picture on this phone';
export const KEEP_PHOTO = 'Keep it for the record';
export const THROW_AWAY = 'Do not keep it';
export const NO_PICTURE_FILE = 'This file is no picture that this phone can open. Take or choose another.';
export const NO_PHOTOS = 'No photos yet.';
export const PHOTO_ADVICE =
  'Labels, mountings, what the beam passes. No people: faces do not belong in the record.';
export const NOT_SENT = 'Not sent yet. It goes when the link is back.';
export const NOT_SENT_UNSAFE =
  'Not sent yet, and this browser keeps nothing: leave this page open until it is sent.';
export const refusedPhoto = (why: string): string => `Not taken into the record: ${why}`;
export const FORGET_PHOTO = 'Throw it away';
export const REMOVE_PHOTO = 'Remove this photo';
export const WHY_REMOVE = 'Why is it removed?';
export const REMOVE_ADVICE =
  'The picture is deleted for good. The record keeps that there was one, and why it is gone.';
export const PHOTO_CHANGES_SIGNED =
  'This record is signed. A photo added now changes it: it must then be signed again.';
/** On the button of a menu. */
export const photosButton = (taken: number, waiting: number): string => {
  const count = taken === 0 ? PHOTOS_TITLE : `${PHOTOS_TITLE} (${taken})`;
  return waiting === 0 ? count : `${count}: ${waiting} not sent yet`;
};

/** "14 March 2026, 09:12, panel, #31": under a photo, after what it shows. */
export const takenText = (when: string, by: string, seq: number): string => `${when}, ${by}, #${seq}`;
export const removedText = (photo: string, why: string, seq: number): string =>
  `${photo}: removed (${why}), #${seq}`;
/** Where a report has more pictures than one file can hold. */
export const PICTURES_LEFT_OUT =
  'The pictures are left out of a report of so many photos. Make the report of this pair alone to have them.';
