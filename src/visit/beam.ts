import { agree, heard, newStay, type Stay, settled, type TimedReading } from '../engine/stay.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import type { Commission } from './commission.ts';

/** A settled reading with the path clear, under an acceptance. `accepted`: what was accepted then. */
export interface ClearReading extends TimedReading {
  readonly accept: Seq;
  readonly accepted: Reading;
}

/** A clear reading that fell by more than this was not made by noise, dB. Common practice, no source. */
export const BEAM_FALL_DB = 0.5;

/** Figures are entered as decimals: a tiny binary rounding error must not count. */
const ROUNDING_DB = 1e-9;

/**
 * With the path clear the meter no longer shows what it did: less light by more than `BEAM_FALL_DB`, or too much
 * to tell. On a meter of unknown law: less by more than its tolerance. More light than before is no loss.
 */
export function isBeamMoved(before: Reading, now: Reading, meter: MeterProfile): boolean {
  if (agree(before, now, meter)) return false;
  if (now.kind === 'saturated') return true;
  const fall = lossBetween(before, now, meter);
  if (fall !== undefined) return fall > BEAM_FALL_DB + ROUNDING_DB;
  if (before.kind !== 'value') return false;
  return now.kind === 'none' || now.value < before.value;
}

/** How much light was lost between two clear readings, dB, as a figure; none where it is not known or endless. */
export function fallFigure(before: Reading, now: Reading, meter: MeterProfile): { fall?: number } {
  const fall = lossBetween(before, now, meter);
  return fall !== undefined && Number.isFinite(fall) ? { fall } : {};
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
