import type { Logger } from 'pino';
import type { Clock } from '../process/clock.ts';
import type { Store } from '../store/store.ts';
import { deleteOldSounds } from './sounds.ts';

const EVERY_MS = 3600 * 1000;

/** Deletes what is too old, now and every hour, until it is told to stop. */
export function keepDeleting(store: Store, clock: Clock, log: Logger): () => void {
  const deleteSafely = (): void => {
    deleteOldSounds(store, clock.now()).then(
      (deleted) => deleted > 0 && log.info({ deleted }, 'sounds were deleted: their days are over'),
      (error: unknown) => log.warn({ err: error }, 'old sounds could not be deleted; tried again in an hour'),
    );
  };
  deleteSafely();
  const timer = setInterval(deleteSafely, EVERY_MS).unref();
  return () => clearInterval(timer);
}
