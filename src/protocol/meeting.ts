import * as z from 'zod/mini';
import { JobId } from '../model/ids.ts';
import { Refusal } from '../model/refusal.ts';
import { Token } from './access.ts';

/**
 * What two phones say that have met without a server, before the one at the emitter says hello: it sends a `Sitter`, and the phone
 * at the panel, which keeps the log, answers with one of these. `token`: with it the seat is kept on the phone.
 */
export const SeatAnswer = z.discriminatedUnion('t', [
  z.object({ t: z.literal('seated'), job: JobId, token: Token, title: z.string().check(z.maxLength(200)) }),
  z.object({ t: z.literal('refused'), reason: Refusal, text: z.string() }),
]);
export type SeatAnswer = z.infer<typeof SeatAnswer>;
