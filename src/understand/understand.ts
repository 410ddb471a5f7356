import type { Grammar } from '../grammar/grammar.ts';
import type { Understanding } from '../grammar/intent.ts';
import type { Spelling } from '../grammar/normalise.ts';
import { parse, parseIn, type Tongue } from '../grammar/parse.ts';
import type { Context, Rules } from '../grammar/rule.ts';
import * as de from '../languages/de/grammar.ts';
import { SPELLING as DE } from '../languages/de/spelling.ts';
import * as es from '../languages/es/grammar.ts';
import { SPELLING as ES } from '../languages/es/spelling.ts';
import { folded } from '../languages/fold.ts';
import * as fr from '../languages/fr/grammar.ts';
import { SPELLING as FR } from '../languages/fr/spelling.ts';
import { FRAME } from '../languages/frame.ts';
import type { TypedLanguage } from '../model/language.ts';

interface Words {
  readonly RULES: Rules;
  readonly FILLERS: readonly string[];
  readonly REMARK: RegExp;
  readonly TOLD: RegExp;
}

const tongue = ({ RULES, FILLERS, REMARK, TOLD }: Words, spelling: Spelling): Tongue => ({
  grammar: folded({ ...FRAME, ...RULES }, FILLERS, spelling.fold ?? ((text) => text)),
  spelling,
  remark: REMARK,
  told: TOLD,
});

const TONGUES: Record<TypedLanguage, Tongue> = {
  es: tongue(es, ES),
  de: tongue(de, DE),
  fr: tongue(fr, FR),
};

/** The sentences of a language beside English, and its words without meaning, as they are heard: without marks. */
export const grammarOf = (language: TypedLanguage): Grammar => TONGUES[language].grammar;

/** What begins a note for the record in it; the first group is the note. */
export const remarkIn = (language: TypedLanguage): RegExp => TONGUES[language].remark;

/** So many texts are remembered with what they mean: a crew says the same words again and again. */
const REMEMBERED = 2_000;
/** Nobody says longer ones twice. */
const LONGEST = 100;
const remembered = new Map<string, Understanding>();

/** What words mean in the language they were typed in; English where none is named. See `parse`. */
export function understand(
  text: string,
  language: TypedLanguage | undefined,
  context: Context = {},
): Understanding {
  if (text.length > LONGEST) return understood(text, language, context);
  const { min, max, unit } = context.meter ?? {};
  const key = JSON.stringify([text, language, min, max, unit]);
  const known = remembered.get(key);
  if (known) return known;
  const meaning = understood(text, language, context);
  if (remembered.size >= REMEMBERED) remembered.clear();
  remembered.set(key, meaning);
  return meaning;
}

const understood = (text: string, language: TypedLanguage | undefined, context: Context): Understanding =>
  language ? parseIn(TONGUES[language], text, context) : parse(text, context);
