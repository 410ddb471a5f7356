import type { Understanding } from '../grammar/intent.ts';
import type { Spelling } from '../grammar/normalise.ts';
import { parse, parseIn, type Tongue } from '../grammar/parse.ts';
import type { Context, Rules } from '../grammar/rule.ts';
import * as es from '../languages/es/grammar.ts';
import { SPELLING as ES } from '../languages/es/spelling.ts';
import { folded } from '../languages/fold.ts';
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
};

/** What words mean in the language they were typed in; English where none is named. See `parse`. */
export function understand(
  text: string,
  language: TypedLanguage | undefined,
  context: Context = {},
): Understanding {
  return language ? parseIn(TONGUES[language], text, context) : parse(text, context);
}
