import { z } from 'zod';
import { Seq } from './ids.ts';

/** What stands in place of a name that was forgotten: on screens, in reports and in tables. Nobody can be called so. */
export const FORGOTTEN = '(name forgotten)';

/** 16 random bytes in hexadecimal: always as many, so that no byte can change sides with what is hashed behind it. */
export const SALT_BYTES = 16;
export const Salt = z.string().regex(new RegExp(`^[0-9a-f]{${2 * SALT_BYTES}}$`));
export type Salt = z.infer<typeof Salt>;

/** Facts about names that lie beside the log no more. */
export const forgottenFacts = [
  /**
   * The names that lay beside `entries` were deleted with their salts, and are nowhere on the server any more. `afterDays`: nobody
   * asked for it; the server keeps names for so many days.
   */
  z.object({
    type: z.literal('names-forgotten'),
    entries: z.array(Seq).min(1),
    why: z.string().trim().min(3).max(500),
    afterDays: z.number().int().min(1).optional(),
  }),
] as const;
