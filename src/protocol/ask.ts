import * as z from 'zod/mini';
import { Mark } from '../model/admission.ts';
import { Seat } from '../model/facts.ts';
import { JobId } from '../model/ids.ts';
import { Sitter, Token } from './access.ts';
import { JobWord } from './job-word.ts';

/** POST /api/ask: may this phone have the seat at the emitter? */
export const Ask = z.object({ word: JobWord, ...Sitter.shape });

/** `asker`: the key to the answer, and after a yes to the seat. `mark`: what both screens show until `expiresAt`. */
export const Asked = z.object({ asker: Token, mark: Mark, expiresAt: z.number() });
export type Asked = z.infer<typeof Asked>;

/** GET /api/ask, with the key `asker` */
export const AskAnswer = z.discriminatedUnion('state', [
  z.object({ state: z.literal('waiting'), mark: Mark, expiresAt: z.number() }),
  /** The panel said yes: the key is that of the seat from now on. */
  z.object({ state: z.literal('admitted'), job: JobId, seat: Seat }),
  z.object({ state: z.literal('turned-away') }),
  /** Nobody answered in time. */
  z.object({ state: z.literal('unanswered') }),
]);
export type AskAnswer = z.infer<typeof AskAnswer>;
