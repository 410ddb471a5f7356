import { type Times, timesIn } from '../phrases/times.ts';

/** Moments in the words of a report. */
export interface Moments extends Times {
  /** "3 March 2026, 09:31:07 UTC+01:00" */
  full(at: number): string;
}

/** `zone`: IANA name. @throws {RangeError} on another name */
export function momentsIn(zone: string): Moments {
  const times = timesIn(zone);
  return { ...times, full: (at) => `${times.day(at)}, ${times.clock(at, true)} ${times.zone(at)}` };
}
