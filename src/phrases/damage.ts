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

/** "the picture of entry 31": how those that are lost are spoken of. */
const lostOnes = (photos: readonly Seq[]) =>
  photos.length === 1
    ? { are: `the picture of entry ${photos[0]} is`, them: 'it', these: 'the photo' }
    : { are: `the pictures of entries ${photos.join(', ')} are`, them: 'them', these: 'these photos' };

/** Of a visit whose log is whole. `photos`: their entries. */
export function lostPicturesText(pair: string, job: JobId, photos: readonly Seq[]): string {
  const { are, them, these } = lostOnes(photos);
  return `Pair ${pair}, visit ${job}: ${are} gone, or not as taken. The rest of the record is whole. Where no backup has ${them}, remove ${these} with the reason.`;
}

/** In the way of a signature. */
export function lostUnsignable(photos: readonly Seq[]): string {
  const { are, these } = lostOnes(photos);
  return `Not signed: ${are} gone, or not as taken. Restore a backup, or remove ${these} with the reason. Then sign.`;
}

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
