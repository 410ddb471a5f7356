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

/** What words mean in the language they were typed in; English where none is named. See `parse`. */
export function understand(
  text: string,
  language: TypedLanguage | undefined,
  context: Context = {},
): Understanding {
  return language ? parseIn(TONGUES[language], text, context) : parse(text, context);
}
