/** Said to both seats; asks for no action. */
export const QUIET = 'No word for a while. Say a reading, or "go on".';
export const ORDER_WAITS = 'The emitter phone is away. The next order waits for it.';
/** After an order that nobody can carry out, and that nothing can stand for. */
export const NEEDED = 'This cannot go on without it. Say "go on" to try again, or "stop", and note why.';
export const EMITTER_BACK = 'Emitter: say ready for the next order.';
export const NOTHING_ASKED = 'Noted, but there is nothing to do now.';
export const READING_WANTED = 'The ladder asks: what does the meter show?';
export const OVERRIDDEN = 'Accepted by override. The reason stays in the record.';

/** After a turn was taken back. `turn`: such as "horizontal, a quarter clockwise". */
export const stillTurned = (turn: string): string =>
  `Was the screw really turned (${turn})? Then turn it back, or say what was turned.`;
