import * as z from 'zod/mini';
import { JobId, MessageId } from '../model/ids.ts';
import { Person } from '../model/person.ts';
import { Role, Token } from './access.ts';

/** The beginning of a token's SHA-256: names it, and opens nothing. */
export const KeyId = z.string().check(z.regex(/^[0-9a-f]{12}$/));
export type KeyId = z.infer<typeof KeyId>;

export const KeyRole = z.enum([...Role.options, 'desk']);
export type KeyRole = z.infer<typeof KeyRole>;

/** A token that opens something now. */
export const Key = z.object({
  key: KeyId,
  role: KeyRole,
  /** When it was given out, ms: of a seat, when this phone took it; of a link, when the log was opened, or it was exchanged. */
  since: z.number(),
  /** When it was last used, ms, since this server started, or as the log of the job says it. */
  seen: z.optional(z.number()),
  /** How many are connected with it now. */
  online: z.int(),
  /** Of a seat: the kind of phone. */
  device: z.optional(z.string()),
  /** Of a seat: who is at it, as they gave their name. Of a link to watch: who gave a name, and is connected. */
  people: z.array(Person),
  /** It is the one that was asked with. */
  own: z.boolean(),
});
export type Key = z.infer<typeof Key>;

/** GET /api/keys, GET /api/site/keys?job= */
export const Keys = z.object({ keys: z.array(Key) });

/**
 * POST /api/keys/withdraw: this key opens nothing from now on. `next`: of a link, the token that takes its place, made up by
 * who asks (128 random bits), so that no answer can be lost on the way.
 */
export const WithdrawKey = z.object({ id: MessageId, key: KeyId, next: z.optional(Token) });

/** POST /api/site/keys/withdraw */
export const WithdrawVisitKey = z.extend(WithdrawKey, { job: JobId });
