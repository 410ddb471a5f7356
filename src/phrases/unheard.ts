import type { FactOf } from '../model/facts.ts';

type Why = FactOf<'unheard'>['why'];

/** Said to somebody whose speech gave no words. */
export const UNHEARD_REPLY: Record<Why, string> = {
  silence: 'I heard nothing. Hold the button while you speak.',
  unavailable: 'Speech is not available. Please type.',
  timeout: 'Speech took too long. Say it again, or type.',
  failed: 'Speech failed. Say it again, or type.',
  'cut-short': 'That was cut off. Please say it again.',
};

/** The same as a line of the exchange. */
export const UNHEARD_LINE: Record<Why, string> = {
  silence: 'Nothing was heard',
  unavailable: 'Speech not available',
  timeout: 'Speech took too long',
  failed: 'Speech failed',
  'cut-short': 'Speech was cut off',
};
