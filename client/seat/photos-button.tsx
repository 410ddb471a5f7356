import { useEffect } from 'preact/hooks';
import { photosButton } from '../../src/phrases/photos.ts';
import { kept } from '../../src/visit/photos.ts';
import { unsentPhotos } from '../photos/unsent.ts';
import { lazy } from '../ui/lazy.tsx';
import type { Room } from './use-room.ts';

const PhotoSheet = lazy(() => import('../photos/photo-sheet.tsx').then((m) => m.PhotoSheet));

const SEND_MS = 5_000;

/** Until a record is brought there, no server can take its pictures. */
const hasServer = ({ saved, link }: Pick<Room, 'saved' | 'link'>): boolean =>
  link.phase === 'live' && !saved.here;

/** Sends the photos that wait on this phone, whenever there is a link. */
export function useSendPhotos({ saved, link }: Room): void {
  const linked = hasServer({ saved, link });
  useEffect(() => {
    if (!linked) return;
    const send = async () => {
      if (unsentPhotos(saved.job, saved.seat) === 0) return;
      // Without a link the code may not come; then it is tried again.
      await import('../photos/sender.ts').then((m) => m.sendWaiting(saved)).catch(() => {});
    };
    void send();
    const timer = setInterval(send, SEND_MS);
    return () => clearInterval(timer);
  }, [linked, saved]);
}

/** In the menu of a seat; in practice nothing is kept. */
export function PhotosButton({ room, onOpen }: { room: Room; onOpen: () => void }) {
  const { job, saved } = room;
  if (job.setup?.practice) return null;
  return (
    <button type="button" class="button" onClick={onOpen}>
      {photosButton(kept(job.photos).length, unsentPhotos(saved.job, saved.seat))}
    </button>
  );
}

export function Photos({ room, onClose }: { room: Room; onClose: () => void }) {
  const { job, saved } = room;
  const signed = job.signed !== undefined && job.changedBy === undefined;
  return (
    <PhotoSheet seat={saved} photos={job.photos} linked={hasServer(room)} signed={signed} onClose={onClose} />
  );
}
