import * as z from 'zod/mini';
import { HeadProof } from '../log/signed-head.ts';
import { hasNoNumbers } from '../model/alone.ts';
import { Entry } from '../model/entry.ts';
import { Seat } from '../model/facts.ts';
import { Head, JobId } from '../model/ids.ts';
import { invertedIn } from '../model/pair-plan.ts';
import { Refusal } from '../model/refusal.ts';
import { currentSetup, WrittenSetup } from '../model/written.ts';
import { LOOKING_NEEDS_ALIGNMENT, LOOKING_NEEDS_GAIN } from '../phrases/bad-requests.ts';
import { Invite, JoinCode, Sitter, Token } from './access.ts';
import { noneInverted } from './incoming.ts';

/** Opening, joining and reading a job over HTTP. The token is sent as `Authorization: Bearer`. */

/** Where no number is read, what needs one is not opened. */
function fitsItsWay(setup: WrittenSetup, ctx: z.core.$RefinementCtx<WrittenSetup>): void {
  if (!hasNoNumbers(setup.alone)) return;
  const refuse = (path: string[], message: string) =>
    ctx.issues.push({ code: 'custom', input: setup, path, message });
  if (setup.meter.gain === 'automatic') refuse(['meter', 'gain'], LOOKING_NEEDS_GAIN);
  if ((setup.scope ?? 'alignment') !== 'alignment') refuse(['scope'], LOOKING_NEEDS_ALIGNMENT);
}

/** POST /api/jobs */
export const OpenJob = z.object({
  setup: z.pipe(
    WrittenSetup.check(
      z.superRefine(noneInverted(({ plan = {} }) => invertedIn(plan), ['plan'])),
      z.superRefine(fitsItsWay),
    ),
    z.transform(currentSetup),
  ),
  ...Sitter.shape,
});
export const JobOpened = z.object({
  job: JobId,
  seat: z.literal('panel'),
  token: Token,
  watch: Token,
  invite: Invite,
});
export type JobOpened = z.infer<typeof JobOpened>;

/** Entries that a phone brings at once. */
export const HOW_MANY_BROUGHT = [z.minLength(1), z.maxLength(20_000)] as const;

/**
 * POST /api/jobs/brought: a log that one phone has kept alone. `token`: made by the phone when it began; it is that of the seat
 * from here on, and lets the phone ask again where the answer was lost.
 */
export const BringJob = z.object({ token: Token, entries: z.array(Entry).check(...HOW_MANY_BROUGHT) });
export const JobBrought = z.object({ job: JobId, seat: z.literal('panel'), watch: Token });
export type JobBrought = z.infer<typeof JobBrought>;

/** POST /api/join */
/** `proof`: what stands beside the code in the link that was scanned; without it, the code counts as typed. */
export const Join = z.object({ code: JoinCode, proof: z.optional(Token), ...Sitter.shape });
export const Joined = z.object({ job: JobId, seat: Seat, token: Token });
export type Joined = z.infer<typeof Joined>;

/** GET /api/record */
export const JobRecord = z.object({
  head: Head,
  entries: z.array(Entry),
  /** Heads that the server signed; the last may lie some entries back. */
  proof: z.optional(HeadProof),
});

/** Any refusal over HTTP. */
export const HttpRefusal = z.object({ reason: Refusal, text: z.string() });
