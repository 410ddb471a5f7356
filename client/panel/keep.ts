import { createContext } from 'preact';
import type { SavedSeat } from '../saved/saved-seats.ts';

/** Keeps what has changed about this seat, and shows it: nobody is to be given a link that was exchanged. */
export const Keep = createContext<(changed: SavedSeat) => void>(() => undefined);
