import { heard, newStay, type Stay, settled, type TimedReading } from '../engine/stay.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { Commission } from './commission.ts';

/** A settled reading with the path clear, under an acceptance. `accepted`: what was accepted then. */
export interface ClearReading extends TimedReading {
  readonly accept: Seq;
  readonly accepted: Reading;
}

/** Every settled reading with the path clear since the first acceptance, oldest first. */
export function clearReadings({ counted, setup }: Pick<Commission, 'counted' | 'setup'>): ClearReading[] {
  const readings: ClearReading[] = [];
  let accept: Placed<'accept'> | undefined;
  let isClear = true;
  let stay: Stay | undefined;
  for (const fact of counted) {
    switch (fact.type) {
      case 'accept':
        accept = fact;
        // The hands were off before it was accepted.
        stay = isClear ? newStay(0) : undefined;
        break;
      case 'move':
      case 'gain':
      case 're-aimed':
      case 'disturbed':
        accept = undefined;
        stay = undefined;
        break;
      case 'path':
        isClear = fact.state === 'clear';
        stay = isClear && accept ? newStay(fact.at) : undefined;
        break;
      case 'checked':
        if (stay) stay = newStay(fact.at);
        break;
      case 'trend':
        if (stay) stay = fact.trend === 'steady' ? { ...stay, since: 0 } : newStay(fact.at);
        break;
      case 'reading': {
        if (!stay || !accept) break;
        stay = heard(stay, fact, setup.meter);
        const here = settled(stay, setup.meter);
        const { seq, at } = fact;
        if (here)
          readings.push({ seq, at, reading: here.reading, accept: accept.seq, accepted: accept.reading });
        break;
      }
    }
  }
  return readings;
}
