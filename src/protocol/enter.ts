import { z } from 'zod';

const MOST_LETTERS = 200;

/** POST /api/enter: shows that the caller may open sites and jobs. The answer sets a cookie. */
export const Enter = z.object({ passphrase: z.string().min(1).max(MOST_LETTERS) });

export const Entered = z.object({ ok: z.literal(true) });
