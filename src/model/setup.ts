import { z } from 'zod';
import { Name } from './name.ts';
import { PairPlan } from './pair-plan.ts';
import { AdjusterProfile, MeterProfile } from './profile.ts';

/** How much of the job is led: the alignment alone, or what stands before and after it as well. */
export const Scope = z.enum(['alignment', 'commissioning']);
export type Scope = z.infer<typeof Scope>;

/** What the job is about; fixed when it is opened. */
export const JobSetup = z.object({
  site: Name,
  pair: Name,
  meter: MeterProfile,
  adjusters: AdjusterProfile,
  /** Emitter to receiver, metres. */
  pathLength: z.number().min(1).max(300).optional(),
  /** Without it: the alignment alone. */
  scope: Scope.optional(),
  plan: PairPlan.optional(),
});
export type JobSetup = z.infer<typeof JobSetup>;
