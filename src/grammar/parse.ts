import type { Reading } from '../model/reading.ts';
import { ENGLISH, type Grammar } from './grammar.ts';
import { soundAlike } from './homophones.ts';
import type { Intent, Understanding } from './intent.ts';
import { matches } from './match.ts';
import { ENGLISH_RESPELLINGS, normalise, type Spelling, type Token } from './normalise.ts';
import type { Context } from './rule.ts';
import { ENGLISH_FIGURES } from './speak.ts';
import { knows } from './vocabulary.ts';

/** No sentence of the grammar has more words than this. */
const MAX_TOKENS = 60;

/** One language, as the parser needs it. */
export interface Tongue {
  readonly grammar: Grammar;
  readonly spelling: Spelling;
  /** What begins a note for the record; its first group is the note. */
  readonly remark: RegExp;
  /** What begins the name of somebody who was told; its first group is the name. */
  readonly told: RegExp;
  /** Words that were heard for figures. */
  readonly soundAlike?: (tokens: readonly Token[]) => readonly Token[];
}

const REMARK =
  /^\W*(?:(?:make|take)\s+(?:a\s+)?note(?:\s+that)?|note(?:\s+that)?|remark|for\s+the\s+record)\b[\s:,.;-]*(.*)$/isu;

/** Anybody can be told, so any typed name is taken. */
const TOLD = /^\W*(?:yes\W+)?(?:(?:i|we)(?:['’]ve|\s+have)?\s+)?(?:told|informed|notified)\s+(\S.*)$/isu;

const ENGLISH_TONGUE: Tongue = {
  grammar: ENGLISH,
  spelling: {
    respellings: ENGLISH_RESPELLINGS,
    ...ENGLISH_FIGURES,
    percent: 'percent',
  },
  remark: REMARK,
  told: TOLD,
  soundAlike,
};

/**
 * What a crew member means by a text, typed or transcribed. Every text gives an `Understanding`; it never
 * throws and never guesses. Words that can mean two things come back as `ambiguous` with every meaning. One
 * unknown word makes the text `unclear`, unless it is one of `FILLERS`. "Note ..." takes whatever follows as
 * it is.
 *
 * `meter`: lets "nineteen forty two" be one number where the meter has four figures, drops meanings that it
 * cannot show if others are left, and takes its unit's name after a number. A single meaning is never
 * dropped: the caller judges whether a reading is possible.
 */
export const parse = (text: string, context: Context = {}): Understanding =>
  parseIn(ENGLISH_TONGUE, text, context);

/** The same in another language. */
export const parseIn = (tongue: Tongue, text: string, context: Context = {}): Understanding => {
  const { grammar, spelling } = tongue;
  const remark = tongue.remark.exec(text)?.[1]?.trim();
  if (remark) return { kind: 'understood', intents: [{ kind: 'remark', text: remark }] };

  const tokens = normalise(text, context.meter?.unit ?? '', spelling, (word) => knows(word, grammar));
  if (tokens.length > MAX_TOKENS) return unclear(tokens, grammar);
  const options = possible(meaningsOf(tokens, context, tongue), context);
  const [first] = options;
  const who = tongue.told.exec(text)?.[1]?.trim();
  if (!first && who && !saysMore(tokens, grammar))
    return { kind: 'understood', intents: [{ kind: 'told', who }] };
  if (!first) return unclear(tokens, grammar);
  return options.length === 1 ? { kind: 'understood', intents: first } : { kind: 'ambiguous', options };
};

const meaningsOf = (
  tokens: readonly Token[],
  context: Context,
  { grammar, soundAlike: heardFor }: Tongue,
): Intent[][] => {
  const found = matches('sentence', tokens, context, grammar);
  const exact =
    found.length > 0 || !heardFor ? found : matches('sentence', heardFor(tokens), context, grammar);
  const least = Math.min(...exact.map(({ cost }) => cost));
  return exact.filter(({ cost }) => cost === least).map(({ meaning }) => meaning);
};

/** A sentence of the grammar follows the first words: "told him one forty". */
const saysMore = (tokens: readonly Token[], grammar: Grammar): boolean =>
  tokens.some((_, i) => i > 1 && matches('sentence', tokens.slice(i), {}, grammar).length > 0);

/** The meanings whose readings the meter can show; all of them if it can show none. */
const possible = (options: Intent[][], { meter }: Context): Intent[][] => {
  if (!meter || options.length < 2) return options;
  const shows = (reading: Reading): boolean =>
    reading.kind !== 'value' || (reading.value >= meter.min && reading.value <= meter.max);
  const left = options.filter((intents) =>
    intents.every((intent) => !('reading' in intent) || shows(intent.reading)),
  );
  return left.length > 0 ? left : options;
};

const unclear = (tokens: readonly Token[], grammar: Grammar): Understanding => ({
  kind: 'unclear',
  unknown: [
    ...new Set(
      tokens.flatMap((token) => (token.kind === 'word' && !knows(token.word, grammar) ? [token.word] : [])),
    ),
  ],
});
