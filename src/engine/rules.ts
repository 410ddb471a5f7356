/**
 * The rules of the procedure, by the id that every advice carries, in the order the engine checks them: the
 * first that applies gives the advice. Their sentences are in `src/phrases/rules.ts`.
 */
export const RULES = [
  'finished',
  'free-path',
  'settle',
  'read',
  'wandering',
  'aim-first',
  'doubt-reading',
  'doubt-turn',
  'read-twice',
  'not-by-reflection',
  'full-gain-to-find',
  're-aim',
  'widening-square',
  'nothing-there',
  'recover-signal',
  'lower-gain',
  'own-gain',
  'begin-again',
  'plain-search',
  'light-around',
  'no-single-peak',
  'look',
  'middle-of-equals',
  'find-slope',
  'climb',
  'pass-the-peak',
  'reverse-on-fall',
  'peak-adjuster',
  'second-peak',
  'beyond-aim',
  'mid-band',
  'gain-too-coarse',
  'prove-peak',
  'brighter-before',
  'return-to-peak',
  'too-weak',
  'too-strong',
  'stuck-adjuster',
  'end-of-travel',
  'blocking-check',
  'hold-steady',
  'offer-accept',
] as const;

export type RuleId = (typeof RULES)[number];

/** What to check when something cannot be right, most likely first; the words are in `src/phrases/`. */
export const CAUSES = {
  nothing: [
    'power-off',
    'path-obstructed',
    'receiver-facing-away',
    'wrong-pair',
    'beyond-range',
    'faulty-unit',
  ],
  wandering: ['loose-mount', 'moving-building', 'sun-on-receiver', 'traffic-in-beam', 'steam-or-dust'],
  weak: ['receiver-facing-away', 'dirty-optics', 'beyond-range', 'path-partly-obstructed', 'reflected-light'],
  noPeak: [
    'loose-mount',
    'moving-building',
    'traffic-in-beam',
    'steam-or-dust',
    'path-partly-obstructed',
    'reflected-light',
  ],
  strong: ['below-range', 'attenuator-missing', 'stray-light'],
  stuck: ['horizontal-stuck', 'vertical-stuck'],
  coarse: ['gain-step'],
} as const;
export type Cause = (typeof CAUSES)[keyof typeof CAUSES][number];
