import * as z from 'zod/mini';
import { PairPlan } from './pair-plan.ts';
import { AdjusterProfile } from './profile.ts';
import { JobSetup } from './setup.ts';

/**
 * The words of older logs. A log is never rewritten: its facts are kept, sent and hashed as they were
 * written. They are put into today's words when they are folded.
 *
 * Version 1 said `lash` for the `backlash` of the adjusters. Up to version 2 names of people stand in the hashed bodies; from 3
 * on beside them (`src/log/names.ts`).
 */
export const LogVersion = z.union([z.literal(1), z.literal(2), z.literal(3)]);
export type LogVersion = z.infer<typeof LogVersion>;

/** The version of new logs. */
export const LOG_VERSION = 3 satisfies LogVersion;

const FormerAdjusters = z.extend(z.omit(AdjusterProfile, { backlash: true }), {
  lash: AdjusterProfile.shape.backlash,
});

/** From which version on names lie beside the entries. */
const NAMES_BESIDE: LogVersion = 3;

/** Of a log of this version. One without a version, of a site, names nobody. */
export const namesBeside = (version: LogVersion | undefined): boolean =>
  version !== undefined && version >= NAMES_BESIDE;

export const WrittenAdjusters = z.union([AdjusterProfile, FormerAdjusters]);
export type WrittenAdjusters = z.infer<typeof WrittenAdjusters>;

export const WrittenPlan = z.extend(PairPlan, { adjusters: z.optional(WrittenAdjusters) });
export type WrittenPlan = z.infer<typeof WrittenPlan>;

export const WrittenSetup = z.extend(JobSetup, {
  adjusters: WrittenAdjusters,
  plan: z.optional(WrittenPlan),
});
export type WrittenSetup = z.infer<typeof WrittenSetup>;

export function currentAdjusters(written: WrittenAdjusters): AdjusterProfile {
  if (!('lash' in written)) return written;
  const { lash, ...rest } = written;
  return { ...rest, backlash: lash };
}

export function currentPlan({ adjusters, ...plan }: WrittenPlan): PairPlan {
  return adjusters ? { ...plan, adjusters: currentAdjusters(adjusters) } : plan;
}

export function currentSetup({ adjusters, plan, ...setup }: WrittenSetup): JobSetup {
  return {
    ...setup,
    adjusters: currentAdjusters(adjusters),
    ...(plan && { plan: currentPlan(plan) }),
  };
}
