import { commandingRules } from './commanding.ts';
import { measureRules } from './measures.ts';
import { mishapRules } from './mishaps.ts';
import { numberRules } from './numbers.ts';
import { reportingRules } from './reporting.ts';
import type { RuleName, Rules, Wording } from './rule.ts';
import { sentenceRules } from './sentences.ts';
import { turningRules } from './turning.ts';

/**
 * The crew's sentences: the one source for the parser, for the speech decoder and for practice. The root is
 * `sentence`. No rule refers to itself.
 */
export const GRAMMAR: Rules = {
  ...numberRules,
  ...measureRules,
  ...turningRules,
  ...reportingRules,
  ...commandingRules,
  ...mishapRules,
  ...sentenceRules,
};

/** Words without meaning. They may come anywhere but inside a number. */
export const FILLERS: ReadonlySet<string> = new Set(
  'er erm um uh uhm ah hmm mm please now just well so okay then'.split(' '),
);

/** Rules whose words belong together: a "now" between two figures starts another number. */
export const UNBROKEN: ReadonlySet<RuleName> = new Set<RuleName>(['figure', 'number']);

/** Rules that only typed text can match; nobody says them. */
export const TYPED: ReadonlySet<RuleName> = new Set<RuleName>(['numeral', 'fraction']);

/** The sentences of one language, and its words without meaning. Rules have the same names in all of them. */
export interface Grammar {
  readonly rules: Rules;
  readonly fillers: ReadonlySet<string>;
}

export const ENGLISH: Grammar = { rules: GRAMMAR, fillers: FILLERS };

export const wordingsOf = (rule: string, { rules }: Grammar): readonly Wording<unknown>[] =>
  (rules as Record<string, readonly Wording<unknown>[] | undefined>)[rule] ?? [];
