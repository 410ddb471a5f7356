import { createStore, del, set, type UseStore, values } from 'idb-keyval';
import type { Seat } from '../../src/model/facts.ts';
import type { JobId, MessageId } from '../../src/model/ids.ts';
import type { PhotoShows } from '../../src/model/photo.ts';
import { setUnsentPhotos } from './unsent.ts';

/** A photo that this phone has taken and the server has not acknowledged. */
export interface WaitingPhoto {
  readonly id: MessageId;
  readonly job: JobId;
  readonly seat: Seat;
  readonly shows: PhotoShows;
  readonly caption?: string;
  readonly picture: Blob;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** This phone's clock, ms. */
  readonly since: number;
  /** Why the server will not take it, in words. */
  readonly refused?: string;
}

let opened: UseStore | undefined;
const store = (): UseStore => {
  opened ??= createStore('ladderline-photos', 'waiting');
  return opened;
};

/** For browsers that keep nothing: these last as long as the page. */
const forThisPage = new Map<MessageId, WaitingPhoto>();

/** False: it lasts only as long as the page. */
export async function keepPhoto(photo: WaitingPhoto): Promise<boolean> {
  try {
    await set(photo.id, photo, store());
    forThisPage.delete(photo.id);
    return true;
  } catch {
    forThisPage.set(photo.id, photo);
    return false;
  } finally {
    await count(photo);
  }
}

export async function forgetPhoto(photo: WaitingPhoto): Promise<void> {
  forThisPage.delete(photo.id);
  await del(photo.id, store()).catch(() => {});
  await count(photo);
}

async function count({ job, seat }: WaitingPhoto): Promise<void> {
  setUnsentPhotos(job, seat, (await waitingPhotos(job, seat)).filter((each) => !each.refused).length);
}

/** Oldest first. */
export async function waitingPhotos(job: JobId, seat: Seat): Promise<WaitingPhoto[]> {
  const kept = await values<WaitingPhoto>(store()).catch(() => []);
  return [...kept, ...forThisPage.values()]
    .filter((photo) => photo.job === job && photo.seat === seat)
    .toSorted((a, b) => a.since - b.since);
}
