import type { Seat } from '../../src/model/facts.ts';
import { DO_NOT_TURN } from '../../src/phrases/do-not-turn.ts';
import { browserStorage } from '../browser/storage.ts';
import { cautionsKey, savedSeat } from '../saved/saved-seats.ts';
import type { Room } from './use-room.ts';

/** Whether this phone comes back to a seat in which its person has read the cautions. */
function comesBack(seat: Seat): boolean {
  const saved = savedSeat(browserStorage, seat);
  return saved !== undefined && browserStorage.read(cautionsKey(saved)) === true;
}

/**
 * While the code of a seat is on its way. Somebody who comes back may have a hand at a screw, and there is no link yet: what
 * holds then is said at once. `seat`: undefined where nobody can have begun.
 */
export const Returning = ({ seat }: { seat: Seat | undefined }) =>
  seat && comesBack(seat) ? (
    <main class="page">
      <h1 class="returning">{DO_NOT_TURN}</h1>
      <p class="hint">Loading</p>
    </main>
  ) : (
    <p class="loading">Loading</p>
  );

/** The same, once the room is open and the code of its screen is still on its way. */
export const ScreenToCome = ({ room }: { room: Room }) => <Returning seat={room.saved.seat} />;
