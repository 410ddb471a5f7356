import type { ChainFault } from '../log/fault.ts';
import type { JobId, Seq } from '../model/ids.ts';
import { wrongText } from './verify.ts';

/** What to do, for a desk and for who runs the server. */
export const DAMAGE_TO_DO =
  'Sign nothing here, and do not rely on what this page says of it. Tell the person who runs the server: stop it, keep a copy of its data folder as it is, then restore the newest backup.';

export const damageTitle = (count: number): string =>
  count === 1 ? 'A record is damaged' : `${count} records are damaged`;

/** Of a visit's log. */
export const damagedVisitText = (pair: string, job: JobId, fault: ChainFault): string =>
  fault.fault === 'missing'
    ? `Pair ${pair}: the record of the visit ${job} is gone. The site names it, and nothing of it is there.`
    : `Pair ${pair}: the record of the visit ${job} was damaged or changed outside the program. ${wrongText({ kind: 'chain', ...fault })}`;

/** Of a visit whose log is whole. `photos`: their entries. */
export const lostPicturesText = (pair: string, job: JobId, photos: readonly Seq[]): string =>
  `Pair ${pair}: ${picturesOf(photos)} of the visit ${job} ${photos.length === 1 ? 'is' : 'are'} gone, or not as taken. The rest of the record is whole. Where no backup has ${photos.length === 1 ? 'it' : 'them'}, remove ${photos.length === 1 ? 'the photo' : 'these photos'} with the reason.`;

/** In the way of a signature. */
export const lostUnsignable = (photos: readonly Seq[]): string =>
  `Not signed: ${picturesOf(photos)} ${photos.length === 1 ? 'is' : 'are'} gone, or not as taken. Restore a backup, or remove ${photos.length === 1 ? 'the photo' : 'these photos'} with the reason. Then sign.`;

const picturesOf = (photos: readonly Seq[]): string =>
  photos.length === 1 ? `the picture of entry ${photos[0]}` : `the pictures of entries ${photos.join(', ')}`;

/** Of the site's own log. */
export const damagedSiteText = (fault: ChainFault): string =>
  fault.fault === 'missing'
    ? 'The record of this site is gone: its pairs and visits cannot be shown.'
    : `The record of this site was damaged or changed outside the program: pairs and visits after the fault are not shown. ${wrongText({ kind: 'chain', ...fault })}`;

/** For a site whose name went with its record. */
export const NO_NAME_LEFT = 'Site without a record';

/** In the row of the pair. */
export const DAMAGED_NEXT = 'Its record is damaged: do not sign, restore a backup';

/** In place of a record that something names. */
export const LOST_LOG =
  'The record of this visit is gone from the server. Tell the person who runs it: a backup must be restored.';
