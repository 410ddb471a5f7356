import { useEffect, useState } from 'preact/hooks';
import { browserStorage } from '../browser/storage.ts';
import { forgetLeftJobs, forgetSeat, type SavedSeat, savedSeats } from '../saved/saved-seats.ts';
import { type SavedSite, savedSites } from '../saved/saved-sites.ts';

export interface Saved {
  seats: readonly SavedSeat[];
  sites: readonly SavedSite[];
  leave(seat: SavedSeat): void;
}

/** What this device keeps: the seats it is in, and the sites it knows. */
export function useSaved(): Saved {
  const [seats, setSeats] = useState(() => savedSeats(browserStorage));
  const [sites] = useState(() => savedSites(browserStorage));
  useEffect(() => void forgetLeftJobs(browserStorage), [seats]);
  return {
    seats,
    sites,
    leave(saved) {
      forgetSeat(browserStorage, saved.seat);
      setSeats(savedSeats(browserStorage));
    },
  };
}
