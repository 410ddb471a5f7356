import type { Failure } from './verdict.ts';

/** The rules before and after the alignment, by the id that every advice carries. */
export const COMMISSION_RULES = [
  'before',
  'as-found',
  'clean',
  'after-cleaning',
  'signal-fell',
  'keep-steady',
  'keep',
  'panel-normal-first',
  'clear-before',
  'clear-after',
  'beam-moved',
  'prove-quiet',
  'prove-alarm',
  'prove-fault',
  'like-lost-beam',
  'read-behind',
  'not-read',
  'not-decisive',
  'stronger-filter',
  'restore',
  'indication',
  'wiring',
  'come-back',
  'failed-test',
  'after',
  'offer-sign',
  'signed',
] as const;

export type CommissionRuleId = (typeof COMMISSION_RULES)[number];

/** What to check when a test failed, most likely first; the words are in `src/phrases/`. */
export const PROVING_CAUSES = {
  'nothing-shown': ['cover-too-small', 'panel-zone-disabled', 'set-threshold', 'signal-wiring'],
  'wrong-indication': ['cover-speed', 'set-threshold', 'signal-wiring'],
  'too-sensitive': ['set-threshold', 'filter-grade', 'dirty-optics'],
  'both-shown': ['signal-wiring', 'cover-speed', 'panel-labels'],
  'both-when-quiet': ['signal-wiring', 'set-threshold', 'panel-labels'],
  'too-early': ['set-delay', 'covered-said-late'],
  'too-late': ['set-delay', 'panel-delay', 'covered-said-early'],
  'reading-off': ['cover-too-small', 'filter-grade', 'reflected-light', 'traffic-in-beam'],
  'beam-moved': ['path-obstructed', 'loose-mount', 'traffic-in-beam', 'moving-building', 'dirty-optics'],
  'not-restored': ['panel-latched', 'path-partly-obstructed', 'set-threshold'],
  'stronger-filter': ['stronger-filter'],
  'like-lost-beam': ['weaker-filter'],
  'signal-fell': ['path-obstructed', 'loose-mount', 'dirty-optics', 'moving-building'],
  indication: ['panel-labels', 'wrong-pair'],
  wiring: ['end-of-line', 'signal-wiring'],
} as const satisfies Record<
  Failure | 'signal-fell' | 'indication' | 'wiring' | 'stronger-filter' | 'like-lost-beam',
  readonly string[]
>;
export type ProvingCause = (typeof PROVING_CAUSES)[keyof typeof PROVING_CAUSES][number];
