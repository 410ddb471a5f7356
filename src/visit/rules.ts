import type { Failure } from './verdict.ts';

/** The rules of what stands before and after the alignment, by the id every advice carries. */
export const COMMISSION_RULES = {
  before: 'Nobody climbs, and nothing is tested, before the list is answered.',
  'panel-normal-first': 'A test starts from a panel at normal: only then what it shows is the answer.',
  'prove-quiet': 'A loss clearly below the alarm threshold must not bring an alarm.',
  'prove-alarm':
    'Part of the light held back, slowly, must bring an alarm after the set delay and no sooner.',
  'prove-fault': 'All of the light held back at once must bring a fault after the set delay.',
  'not-decisive':
    'The last cover was too near the alarm threshold, or nobody knows which it was: that test counts for nothing.',
  'stronger-filter': 'Only a cover clearly above the alarm threshold proves the alarm.',
  restore: 'Uncovered and reset, the panel must come back to normal.',
  indication: 'The panel must show this pair, in its zone, and no other.',
  wiring: 'A broken wire between detector and panel must show as a fault.',
  'come-back': 'After the tests the reading must be what it was when the alignment was accepted.',
  'failed-test': 'A test that failed is put right and made again, or somebody answers for it in writing.',
  after: 'Nobody leaves before the protection is back.',
  'offer-sign': 'With everything proven and back in service, the record can be signed.',
  signed: 'Once the record is signed, nothing more is touched.',
} as const;

export type CommissionRuleId = keyof typeof COMMISSION_RULES;

/** What to look at when a test failed, most likely first; phrased in `src/phrases/`. */
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
