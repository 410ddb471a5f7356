import type { Language } from '../translate.ts';
import { SENTENCES } from './sentences.ts';
import { SPELLING } from './spelling.ts';

/** French sets a space before its double signs and inside its quotes; no line may begin with them. */
const typeset = (text: string): string =>
  text
    .replace(/(?<=[^\s\u00a0])(?=[?!;]|:(?:\s|$))/g, '\u00a0')
    .replace(/«(?!\u00a0)/g, '«\u00a0')
    .replace(/(?<!\u00a0)»/g, '\u00a0»');

export const LANGUAGE: Language = { sentences: SENTENCES, spoken: SPELLING, or: ' ou ', typeset };
