import type { Failure } from './verdict.ts';

/** The rules before and after the alignment, by the id that every advice carries. */
export const COMMISSION_RULES = [
  'before',
  'panel-normal-first',
  'prove-quiet',
  'prove-alarm',
  'prove-fault',
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
  'too-early': ['set-delay', 'covered-said-late'],
  'too-late': ['set-delay', 'panel-delay', 'covered-said-early'],
  'reading-off': ['cover-too-small', 'reflected-light', 'filter-grade'],
  'not-restored': ['panel-latched', 'path-partly-obstructed', 'set-threshold'],
  'stronger-filter': ['stronger-filter'],
  indication: ['panel-labels', 'wrong-pair'],
  wiring: ['end-of-line', 'signal-wiring'],
} as const satisfies Record<Failure | 'indication' | 'wiring' | 'stronger-filter', readonly string[]>;
export type ProvingCause = (typeof PROVING_CAUSES)[keyof typeof PROVING_CAUSES][number];
