import type { MeterProfile } from '../model/profile.ts';
import type { LastLeft, Scope } from '../model/setup.ts';
import { valueText } from './readings.ts';

/** What a visit is for. */
export const VISIT_KINDS: Record<Scope, string> = {
  alignment: 'alignment',
  commissioning: 'commissioning',
  periodic: 'periodic visit',
};

/** What is done on a visit that is begun from a site. */
export const VISIT_HINTS: Record<Exclude<Scope, 'alignment'>, string> = {
  commissioning: 'The beam is aligned, then tested.',
  periodic:
    'Read, compare with what the last signed visit left, clean, test. If that is not known, or the signal is less now, the beam is aligned first.',
};

/** What a record is of, in a title. */
export const RECORD_OF: Record<Scope, string> = {
  alignment: 'an alignment',
  commissioning: 'a commissioning',
  periodic: 'a periodic visit',
};

export const PERIODIC_ROWS = {
  last: 'Last visit left',
  found: 'Found, before anything was touched',
  clean: 'Windows',
  cleaned: 'After cleaning',
  outcome: 'Alignment',
} as const;

export const NOTHING_TO_COMPARE = 'nothing to compare with: no earlier visit was signed with a signal';
export const NOTHING_TO_COMPARE_SAID =
  'There is no signed signal of an earlier visit to compare with. The beam is aligned.';
export const NOT_READ = 'not read';
export const lastLeftText = ({ value }: LastLeft, day: string, meter: MeterProfile): string =>
  `${valueText(value, meter)} ${meter.unit}, ${day}`;
export const KEPT_ROW = 'kept: nothing was turned, and the signal had not fallen';
export const ALIGNED_ROW = 'aligned anew on this visit';
export const NOT_ALIGNED_ROW = 'neither kept nor aligned yet';
