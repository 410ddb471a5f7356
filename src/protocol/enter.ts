import * as z from 'zod/mini';

const MOST_LETTERS = 200;

/** POST /api/enter: shows that the caller may open sites and jobs. The answer sets a cookie. */
export const Enter = z.object({ passphrase: z.string().check(z.minLength(1), z.maxLength(MOST_LETTERS)) });

export const Entered = z.object({ ok: z.literal(true) });
