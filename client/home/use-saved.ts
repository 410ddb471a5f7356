import { useEffect, useState } from 'preact/hooks';
import { browserStorage } from '../browser/storage.ts';
import { type JobHere, jobsHere } from '../saved/jobs-here.ts';
import { forgetJob, type KnownJob, knownJobs } from '../saved/known-jobs.ts';
import { forgetLeftJobs, forgetSeat, type SavedSeat, savedSeats } from '../saved/saved-seats.ts';
import { type SavedSite, savedSites } from '../saved/saved-sites.ts';

export interface Saved {
  seats: readonly SavedSeat[];
  sites: readonly SavedSite[];
  /** Jobs that this phone was in and has no seat in now. */
  past: readonly KnownJob[];
  /** Jobs whose record this phone keeps alone. */
  here: readonly JobHere[];
  leave(seat: SavedSeat): void;
  forget(known: KnownJob): void;
  /** Something has changed in what is kept. */
  look(): void;
}

/** What this device keeps: the seats it is in, the jobs it was in, and the sites it knows. */
export function useSaved(): Saved {
  const [seats, setSeats] = useState(() => savedSeats(browserStorage));
  const [sites] = useState(() => savedSites(browserStorage));
  const [known, setKnown] = useState(() => knownJobs(browserStorage));
  const [here, setHere] = useState(() => jobsHere(browserStorage));
  useEffect(() => void forgetLeftJobs(browserStorage), [seats]);
  return {
    seats,
    sites,
    past: known.filter(({ job }) => [...seats, ...here].every((other) => other.job !== job)),
    here,
    leave(saved) {
      forgetSeat(browserStorage, saved.seat);
      setSeats(savedSeats(browserStorage));
    },
    forget({ job }) {
      forgetJob(browserStorage, job);
      setKnown(knownJobs(browserStorage));
    },
    look() {
      setSeats(savedSeats(browserStorage));
      setKnown(knownJobs(browserStorage));
      setHere(jobsHere(browserStorage));
    },
  };
}
