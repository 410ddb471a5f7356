import type { Seat } from '../../src/model/facts.ts';
import type { JobId } from '../../src/model/ids.ts';
import { forgetAllBut } from '../browser/kept-log.ts';
import type { Storage } from '../browser/storage.ts';

/** A seat that this device has. It is kept, so that a reload or a flat battery does not lose it. */
export interface SavedSeat {
  seat: Seat;
  job: JobId;
  token: string;
  /** The supervisor's read-only key. Only the phone that opened the job has it. */
  watch?: string;
  /** Site and beam pair, once known. */
  title?: string;
  /** There is no server yet: the log is kept on the phone at the panel. */
  here?: true;
  /** The key of the visit's site, if the visit was begun from its board. */
  site?: string;
}

/** The only record of the job is on this phone. */
export const keepsRecord = ({ here, seat }: SavedSeat): boolean => here === true && seat === 'panel';

const SEATS: readonly Seat[] = ['panel', 'emitter'];
const keyOf = (seat: Seat): string => `seat.${seat}`;

/** Checked by hand: the first page shows this, and a schema library is larger than that page. */
export function savedSeat(storage: Storage, seat: Seat): SavedSeat | undefined {
  const kept = storage.read(keyOf(seat)) as Partial<SavedSeat> | null | undefined;
  if (typeof kept !== 'object' || kept === null || kept.seat !== seat) return undefined;
  const { job, token, watch, title, site, here } = kept;
  if (typeof job !== 'string' || typeof token !== 'string') return undefined;
  return {
    seat,
    job,
    token,
    ...(typeof watch === 'string' && { watch }),
    ...(typeof title === 'string' && { title }),
    ...(typeof site === 'string' && { site }),
    ...(here === true && { here }),
  };
}

export const savedSeats = (storage: Storage): SavedSeat[] =>
  SEATS.map((seat) => savedSeat(storage, seat)).filter((saved) => saved !== undefined);

export const saveSeat = (storage: Storage, saved: SavedSeat): boolean =>
  storage.write(keyOf(saved.seat), saved);

export const forgetSeat = (storage: Storage, seat: Seat): void => storage.remove(keyOf(seat));

/** Under which name the entries of this seat's job are kept. */
export const keptName = ({ job, seat }: Pick<SavedSeat, 'job' | 'seat'>): string => `${job}.${seat}`;

/** Whether the person of this seat has read the cautions. */
export const cautionsKey = (saved: Pick<SavedSeat, 'job' | 'seat'>): string => `cautions.${keptName(saved)}`;

/** Nothing stays on this phone of a job that it has left. */
export const forgetLeftJobs = (storage: Storage): Promise<void> =>
  forgetAllBut(savedSeats(storage).map(keptName));
