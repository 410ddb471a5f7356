import * as z from 'zod/mini';
import { Seq } from './ids.ts';

/** What stands in place of a name that was forgotten: on screens, in reports and in tables. Nobody can be called so. */
export const FORGOTTEN = '(name forgotten)';

/** 16 random bytes in hexadecimal: always as many, so that no byte can change sides with what is hashed behind it. */
export const SALT_BYTES = 16;
export const Salt = z.string().check(z.regex(new RegExp(`^[0-9a-f]{${2 * SALT_BYTES}}$`)));
export type Salt = z.infer<typeof Salt>;

/** Facts about names that lie beside the log no more. */
export const forgottenFacts = [
  /**
   * The names that lay beside `entries` were deleted with their salts, and are nowhere on the server any more. `afterDays`: nobody
   * asked for it; the server keeps names for so many days.
   */
  z.object({
    type: z.literal('names-forgotten'),
    entries: z.array(Seq).check(z.minLength(1)),
    why: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
    afterDays: z.optional(z.int().check(z.minimum(1))),
  }),
] as const;
