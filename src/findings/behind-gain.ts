import type { MeterProfile } from '../model/profile.ts';
import { valueReading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import type { VisitOutcome } from './outcome.ts';

/** The gain that a reading was accepted at: its setting, full, or not known. */
export type GainAt = number | 'full' | undefined;

/** An accepted reading with the gain behind it. */
export interface BehindGain {
  readonly value: number;
  readonly gain: GainAt;
  readonly meter: MeterProfile;
}

/** A change of the gain, as a visit reports it. */
export type GainChange = VisitOutcome['commission']['counted'][number];

/** The setting that a change left, where somebody named it. */
export const gainSet = ({ to, change }: Pick<GainChange, 'to' | 'change'>): GainAt =>
  to ?? (change === 'full' ? 'full' : undefined);

/** Undefined for a visit without a valid acceptance of a number. */
export function behindGain({ accepted, commission }: VisitOutcome): BehindGain | undefined {
  if (accepted?.reading.kind !== 'value') return undefined;
  const { meter } = commission.setup;
  const last = commission.counted.findLast(({ type, seq }) => type === 'gain' && seq < accepted.seq);
  return { value: accepted.reading.value, gain: last && gainSet(last), meter };
}

/** How much weaker one signal is than another, dB. */
export interface Weaker {
  readonly weaker: number;
  /** How much more gain it needs, dB; undefined if that is not known. */
  readonly moreGain?: number;
}

/**
 * Signal and gain together: the same reading behind 5 dB more gain is a signal 5 dB weaker. Where the settings differ,
 * and the profile does not say how many decibels a step is, nothing can be compared: undefined. A setting that nobody
 * named is not known: then only the readings are compared.
 */
export function weakerBy(other: BehindGain, one: BehindGain): Weaker | undefined {
  const loss = lossBetween(valueReading(other.value), valueReading(one.value), one.meter);
  if (loss === undefined) return undefined;
  if (one.gain !== undefined && one.gain === other.gain) return { weaker: loss, moreGain: 0 };
  if (typeof one.gain !== 'number' || typeof other.gain !== 'number') return { weaker: loss };
  const { gainDbPerStep } = one.meter;
  if (gainDbPerStep === undefined || gainDbPerStep !== other.meter.gainDbPerStep) return undefined;
  const moreGain = (one.gain - other.gain) * gainDbPerStep;
  return { weaker: loss + moreGain, moreGain };
}
