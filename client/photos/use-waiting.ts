import { nanoid } from 'nanoid';
import { useCallback, useEffect, useState } from 'preact/hooks';
import type { SavedSeat } from '../saved/saved-seats.ts';
import type { Wanted } from './new-photo.tsx';
import { forgetPhoto, keepPhoto, type WaitingPhoto, waitingPhotos } from './waiting.ts';

interface Waiting {
  photos: readonly WaitingPhoto[];
  /** Whether they outlast this page. */
  safe: boolean;
  add: (photo: Wanted) => Promise<boolean>;
  forget: (photo: WaitingPhoto) => Promise<void>;
}

const LOOK_MS = 2_000;

/** The photos of a seat that are not sent yet. `taken`: how many the record has; those are no longer here. */
export function useWaiting({ job, seat }: SavedSeat, taken: number): Waiting {
  const [photos, setPhotos] = useState<readonly WaitingPhoto[]>([]);
  const [safe, setSafe] = useState(true);
  const look = useCallback(async () => setPhotos(await waitingPhotos(job, seat)), [job, seat]);
  useEffect(() => void look(), [look, taken]);
  useEffect(() => {
    if (photos.length === 0) return;
    const timer = setInterval(look, LOOK_MS);
    return () => clearInterval(timer);
  }, [photos.length, look]);
  return {
    photos,
    safe,
    async add({ blob, width, height, shows, caption }) {
      const photo = { id: nanoid(), job, seat, shows, picture: blob, width, height, since: Date.now() };
      setSafe(await keepPhoto({ ...photo, ...(caption && { caption }) }));
      await look();
      return true;
    },
    async forget(photo) {
      await forgetPhoto(photo);
      await look();
    },
  };
}
