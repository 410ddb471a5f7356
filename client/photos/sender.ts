import { ApiError } from '../browser/requests.ts';
import type { SavedSeat } from '../saved/saved-seats.ts';
import { sendPhoto } from './requests.ts';
import { forgetPhoto, keepPhoto, waitingPhotos } from './waiting.ts';

/** One at a time, so that none is sent twice at once. */
let sending: Promise<void> | undefined;

/**
 * Sends what waits for this seat, oldest first. What the server refuses for good is kept with its reason, for the person to
 * see; where there is no link, all stays as it is. Never rejects.
 */
export function sendWaiting(seat: SavedSeat): Promise<void> {
  sending ??= sendAll(seat).finally(() => {
    sending = undefined;
  });
  return sending;
}

async function sendAll({ job, seat, token }: SavedSeat): Promise<void> {
  for (const photo of await waitingPhotos(job, seat)) {
    if (photo.refused !== undefined) continue;
    try {
      await sendPhoto({ token }, photo, photo.picture);
    } catch (error) {
      if (!(error instanceof ApiError) || !error.isFinal) return;
      await keepPhoto({ ...photo, refused: error.message });
      continue;
    }
    await forgetPhoto(photo);
  }
}
