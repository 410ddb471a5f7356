import { z } from 'zod';

/** A name that people give: of a site, a pair, a person. */
export const Name = z.string().trim().min(1).max(80);
