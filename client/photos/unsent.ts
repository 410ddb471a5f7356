import type { Seat } from '../../src/model/facts.ts';
import type { JobId } from '../../src/model/ids.ts';
import { browserStorage } from '../browser/storage.ts';

/**
 * How many photos of a seat wait to be sent: known without opening the store they lie in, so that a phone with none loads
 * nothing of it.
 */
const keyOf = (job: JobId, seat: Seat): string => `photos.${job}.${seat}`;

export function unsentPhotos(job: JobId, seat: Seat): number {
  const count = browserStorage.read(keyOf(job, seat));
  return typeof count === 'number' ? count : 0;
}

export function setUnsentPhotos(job: JobId, seat: Seat, count: number): void {
  if (count > 0) browserStorage.write(keyOf(job, seat), count);
  else browserStorage.remove(keyOf(job, seat));
}
