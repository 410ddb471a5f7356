import type { Intent } from '../grammar/intent.ts';
import type { TypedLanguage } from '../model/language.ts';
import type { Steps } from '../model/shown.ts';
import type { Voice } from '../model/voice.ts';

export interface Heard {
  /** The likeliest text; empty for silence and noise. */
  text: string;
  /** Probability that this text was said, 0 to 1. */
  confidence: number;
  /**
   * All that may have been said, `text` among them, likeliest first. The confidences of texts with the same
   * meaning add up to the probability of that meaning; all together they add up to at most 1.
   */
  alternatives: { text: string; confidence: number }[];
  /** What was heard without the grammar. */
  freeText: string;
  /** Of the words; English without it. */
  language?: TypedLanguage;
}

export interface HearOptions {
  /** What would not surprise now: readings, in the meter's units and on its steps, and what was asked for. */
  expect?: { low: number; high: number; steps?: Steps; asked?: readonly Intent['kind'][] };
  /** Whoever speaks has read ten digits before. */
  voice?: Voice | undefined;
}
