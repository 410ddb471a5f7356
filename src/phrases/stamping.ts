import type { Stamping } from '../log/time-stamp.ts';

/** On the board, where the server has the time of its records vouched for. `when`: a time as the reader's clock shows it. */
export function stampingText(
  { from, last, failingSince, isBehind }: Stamping,
  when: (ms: number) => string,
): string {
  if (failingSince !== undefined)
    return `No time stamp could be had from ${from} since ${when(failingSince)}. Jobs go on, and it is asked for again. Until then only this server's clock says when something was recorded. Tell who runs the server.`;
  if (last === undefined) return `Time stamps: none from ${from} yet.`;
  return `Time stamps: the last from ${from} at ${when(last)}.${isBehind ? ' What was recorded after it is stamped with the next.' : ''}`;
}
