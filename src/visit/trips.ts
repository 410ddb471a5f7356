import type { Counted } from '../model/placed.ts';

/** What is done at the beam, and takes a person away from the meter. */
const AWAY: ReadonlySet<Counted['type']> = new Set([
  'move',
  'gain',
  'path',
  're-aimed',
  'disturbed',
  'checked',
]);

/** How often a person who does both had to go to the meter: for the first reading, and for the first after each deed at the beam. */
export function tripsOf(counted: readonly Counted[]): number {
  let trips = 0;
  let isAway = true;
  for (const { type } of counted) {
    if (AWAY.has(type)) isAway = true;
    else if (type === 'reading' && isAway) {
      trips += 1;
      isAway = false;
    }
  }
  return trips;
}
