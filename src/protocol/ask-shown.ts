import * as z from 'zod/mini';
import { Mark } from '../model/admission.ts';
import { Person } from '../model/person.ts';

/** What the panel is asked. `replaces`: there is a phone at the emitter that is away, and would lose its seat. */
export const AskShown = z.object({
  ask: z.string().check(z.regex(/^[A-Za-z0-9_-]{12}$/)),
  mark: Mark,
  device: z.string(),
  person: z.optional(Person),
  replaces: z.boolean(),
  expiresAt: z.number(),
});
export type AskShown = z.infer<typeof AskShown>;
