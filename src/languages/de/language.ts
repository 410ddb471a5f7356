import type { Language } from '../translate.ts';
import { SENTENCES } from './sentences.ts';
import { SPELLING } from './spelling.ts';

export const LANGUAGE: Language = { sentences: SENTENCES, spoken: SPELLING, or: ' oder ' };
