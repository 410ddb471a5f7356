import * as z from 'zod/mini';
import { SpeechState } from './socket.ts';

/** GET /api/health, when the server can serve. */
export const Health = z.object({
  ok: z.literal(true),
  /** Of the program, and of this protocol. */
  version: z.string(),
  protocol: z.int(),
  /** What the logs are kept in. */
  store: z.string(),
  speech: SpeechState,
  /** Jobs that somebody is connected to, or was a moment ago. */
  liveJobs: z.int(),
});
export type Health = z.infer<typeof Health>;

/** GET /api/live, as long as the server answers at all. */
export const Live = z.object({ ok: z.literal(true) });
export type Live = z.infer<typeof Live>;
