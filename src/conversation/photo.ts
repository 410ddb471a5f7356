import {
  NO_PHOTO,
  NOT_YET_A_JOB,
  NOT_YOURS,
  PHOTO_GONE,
  RECORD_FULL,
  SIGNED_STAYS,
} from '../phrases/photos.ts';
import { hasRoom, photoAt } from '../visit/photos.ts';
import type { Composer } from './composer.ts';
import type { Input, Refused } from './input.ts';

/** Names a photo in the log; its picture is stored with this entry, which is the first of the response. */
export function photo(job: Composer, { by, fact }: Extract<Input, { kind: 'photo' }>): Refused {
  if (!job.state.setup) return { reason: 'bad-target', text: NOT_YET_A_JOB };
  if (!hasRoom(job.state.photos, fact.bytes)) return { reason: 'too-long', text: RECORD_FULL };
  job.put(by, fact);
  return;
}

/** Says why a picture is removed; it is removed with this entry, which is the first of the response. */
export function removePhoto(job: Composer, { by, fact }: Extract<Input, { kind: 'remove-photo' }>): Refused {
  const taken = photoAt(job.state.photos, fact.photo);
  if (!taken) return { reason: 'bad-target', text: NO_PHOTO };
  if (taken.removed) return { reason: 'bad-target', text: PHOTO_GONE };
  const mayAlways = by === 'supervisor' || by === 'server';
  if (!mayAlways && by !== taken.by) return { reason: 'read-only', text: NOT_YOURS };
  // What was signed was signed with it: who takes it away now answers for that at the desk.
  if (!mayAlways && job.state.signed) return { reason: 'read-only', text: SIGNED_STAYS };
  job.put(by, fact);
  return;
}
