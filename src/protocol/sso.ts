import * as z from 'zod/mini';

/** The page that a provider leads back to, below the name of the server: what is registered there. */
export const SIGNED_IN_PATH = '/signed-in';

const LONGEST_ANSWER = 4_000;

/** POST /api/account/sso. `again`: who has not proven lately who they are does it again, for what opens ways for others. */
export const BeginSso = z.object({ again: z._default(z.boolean(), false) });

/** Where the browser signs in; it keeps a cookie until it comes back. */
export const SsoBegun = z.object({ url: z.string() });

/** POST /api/account/sso/finish. `query`: what stood behind the "?" when the browser came back. `again`: as it was begun. */
export const FinishSso = z.object({
  query: z.string().check(z.maxLength(LONGEST_ANSWER)),
  again: z._default(z.boolean(), false),
  device: z._default(z.string().check(z.maxLength(80)), ''),
});
