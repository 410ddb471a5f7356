import { z } from 'zod';
import { Guidance } from './guidance.ts';
import { Name } from './name.ts';
import { PairPlan } from './pair-plan.ts';
import { AdjusterProfile, MeterProfile } from './profile.ts';
import { VisitSteps } from './steps.ts';
import { Units } from './units.ts';

/** How much of the job is guided: the alignment alone, or also the work before and after it. */
export const Scope = z.enum(['alignment', 'commissioning']);
export type Scope = z.infer<typeof Scope>;

/** What the job is about. Fixed when the job is opened. */
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
  /** What the site's plans are checked against. */
  guidance: Guidance.optional(),
  /** What people read and write figures in. Without it: metres and dB. */
  units: Units.optional(),
  /** Cause and effect, to be tried and answered one by one. */
  steps: VisitSteps.optional(),
});
export type JobSetup = z.infer<typeof JobSetup>;
