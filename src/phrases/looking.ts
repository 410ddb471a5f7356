import type { Missing } from '../engine/missing.ts';
import type { Advice } from '../model/advice.ts';
import type { AloneWay } from '../model/alone.ts';

/** Where nobody reads a number: the person on the ladder says what an indicator does, and nothing else. */

interface Said {
  say: string;
  show: string;
}

const FIRST: Said = { say: 'Look: steady, nothing or too strong?', show: 'Steady, nothing, too strong?' };
const AGAINST: Said = {
  say: 'Against your last look: rising, falling, steady?',
  show: 'Against your last look: rising, falling, steady?',
};
const STILL: Said = { say: 'Look again: still steady?', show: 'Still steady?' };
const BEHIND: Said = { say: 'Behind the card: nothing, or steady?', show: 'Behind the card: nothing?' };

/** Another phone looks or listens: the person only waits. */
const TOLD: Said = {
  say: 'Hands off: the phone at the panel tells what the light does.',
  show: 'Wait: the other phone tells',
};
const TOLD_BEHIND: Said = {
  say: 'Leave the card in the beam: the phone at the panel tells what is left.',
  show: 'Leave the card: the other phone tells',
};

/** An order to look. What is seen is held against the look before, so the order says so; the first has none before it. */
export function lookText(
  { rule, because }: Pick<Advice, 'rule' | 'because'>,
  alone: AloneWay | undefined,
): Said {
  if (alone === 'sensing') return rule === 'blocking-check' ? TOLD_BEHIND : TOLD;
  if (rule === 'blocking-check') return BEHIND;
  if (rule === 'hold-steady') return STILL;
  return because.length === 0 ? FIRST : AGAINST;
}

/** It would be held against a light that still changes by itself. */
export const TOO_SOON = 'Too soon: not counted. Wait until you are asked.';
export const NO_NUMBER_HERE = 'No number counts here. Say rising, falling, steady, nothing or too strong.';
export const UNDO_FIRST = 'Say undo. Then say what the light does.';

/** What acceptance still needs, where it differs from a job with numbers. */
export const LOOK_NEEDS: Partial<Record<Missing['id'], string>> = {
  'settled-reading': 'a look at the light here',
  'not-saturated': 'light that is not too strong: lower the gain',
  'bracket-horizontal': 'light seen to fall twice on each side of the horizontal peak',
  'bracket-vertical': 'light seen to fall twice on each side of the vertical peak',
  'at-peak': 'both adjusters turned across their peaks, and no rise beside them',
  'second-peak': 'a look where a stronger peak may be',
  'blocking-check': 'the blocking check: blocked, nothing may be seen, and then the same light as before',
  'steady-hold': 'light that stays the same',
  'fresh-reading': 'a fresh look',
};

/** Beside the choice of the gain, when the job is opened. */
export const OWN_GAIN_HIDES =
  'Not for a detector that sets its own gain: its indicator stays the same while the light changes.';

/** A first look, which is held against none. */
export const LIGHT_SEEN_ONLY = 'light seen';

/** Over the last look, in place of a reading. */
export const LAST_LOOK = 'Light';
export const ACCEPTED_ON_TRENDS = 'accepted on trends, no reading';
export const NO_NUMBERS_DRAWN =
  'Nobody read a number: there is nothing to draw. What the light did stands in the exchange.';
/** Beside it: what nobody knows. */
export const BAND_NOT_READ = 'nobody read a number: whether it lies in the band is not known';
