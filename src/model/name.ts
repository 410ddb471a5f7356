import * as z from 'zod/mini';

/** A name that people give: of a site, a pair, a person. */
export const Name = z.string().check(z.trim(), z.minLength(1), z.maxLength(80));
