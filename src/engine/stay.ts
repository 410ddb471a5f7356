import type { Seq } from '../model/ids.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { isLost, isSaturated, type Level, toLevel } from './level.ts';

export interface TimedReading {
  readonly seq: Seq;
  readonly at: number;
  readonly reading: Reading;
}

/** The time since the screws, the gain or the path were last touched, with its readings. */
export interface Stay {
  /** When the hands were taken off. Milliseconds. */
  readonly since: number;
  /** The latest readings that agree with each other, oldest first. */
  readonly run: readonly TimedReading[];
  /** How often a reading taken after the settle time disagreed with those before it. */
  readonly breaks: number;
}

/** A settled reading: what the meter shows here once it no longer changes. */
export interface Settled {
  readonly reading: Reading;
  readonly level: Level;
  /** The readings it rests on. */
  readonly seqs: readonly Seq[];
  /** First and last time it was read. */
  readonly from: number;
  readonly to: number;
}

/** Enough to prove any hold; older readings add nothing. */
const RUN_KEPT = 16;

/** A reading that breaks away this often is wandering. */
export const WANDERING_BREAKS = 3;

export const newStay = (since: number): Stay => ({ since, run: [], breaks: 0 });

type Kind = 'lost' | 'saturated' | 'seen' | 'value';
function kindOf(reading: Reading, meter: MeterProfile): Kind {
  if (reading.kind === 'seen') return 'seen';
  return isLost(reading, meter) ? 'lost' : isSaturated(reading, meter) ? 'saturated' : 'value';
}

const numberOf = (reading: Reading): number => (reading.kind === 'value' ? reading.value : Number.NaN);

const mean = (run: readonly TimedReading[]): number =>
  run.reduce((sum, r) => sum + numberOf(r.reading), 0) / run.length;

/** True if two readings are the same within the profile's tolerance. */
export function agree(a: Reading, b: Reading, meter: MeterProfile): boolean {
  const kind = kindOf(a, meter);
  if (kind !== kindOf(b, meter)) return false;
  return kind !== 'value' || Math.abs(numberOf(a) - numberOf(b)) <= meter.tolerance + 1e-9;
}

const isSettledAt = (stay: Stay, at: number, meter: MeterProfile): boolean =>
  at >= stay.since + meter.settleMs;

export function heard(stay: Stay, reading: TimedReading, meter: MeterProfile): Stay {
  const [first] = stay.run;
  if (!first) return { ...stay, run: [reading] };
  const typical =
    kindOf(first.reading, meter) === 'value'
      ? ({ kind: 'value', value: mean(stay.run) } as const)
      : first.reading;
  if (!agree(typical, reading.reading, meter)) {
    const last = stay.run[stay.run.length - 1];
    const broke = last !== undefined && isSettledAt(stay, last.at, meter);
    return { ...stay, run: [reading], breaks: stay.breaks + (broke ? 1 : 0) };
  }
  // The oldest stays: it shows since when the reading is steady.
  const kept = stay.run.length < RUN_KEPT ? stay.run : [first, ...stay.run.slice(2)];
  return { ...stay, run: [...kept, reading] };
}

/**
 * What the stay has settled on: readings after the settle time, or two earlier ones that agree and are a
 * quarter of that time apart.
 */
export function settled(stay: Stay, meter: MeterProfile): Settled | undefined {
  const first = stay.run[0];
  const last = stay.run[stay.run.length - 1];
  if (!first || !last) return undefined;
  const late = stay.run.filter((r) => isSettledAt(stay, r.at, meter));
  if (late.length === 0 && last.at - first.at < meter.settleMs / 4) return undefined;
  if (stay.run.length < 2 && late.length === 0) return undefined;
  const counted = late.length > 0 ? late : [last];
  const reading: Reading =
    kindOf(last.reading, meter) === 'value' ? { kind: 'value', value: mean(counted) } : last.reading;
  return {
    reading,
    level: toLevel(reading, meter, counted.length),
    seqs: stay.run.map((r) => r.seq),
    from: counted[0]?.at ?? last.at,
    to: last.at,
  };
}
