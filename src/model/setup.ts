import * as z from 'zod/mini';
import { AloneWay } from './alone.ts';
import { Guidance } from './guidance.ts';
import { JobId } from './ids.ts';
import { Name } from './name.ts';
import { PairPlan } from './pair-plan.ts';
import { Practice } from './practice.ts';
import { AdjusterProfile, MeterProfile } from './profile.ts';
import { VisitSteps } from './steps.ts';
import { Units } from './units.ts';

/**
 * How much of the job is guided: the alignment alone; also the work before and after it; or a visit to a pair in
 * service, which keeps its alignment as long as the signal is what it was.
 */
export const Scope = z.enum(['alignment', 'commissioning', 'periodic']);
export type Scope = z.infer<typeof Scope>;

/** The signal that the last visit left the pair with, in the unit of its meter, and when, ms. */
export const LastLeft = z.object({ job: JobId, at: z.number(), value: z.number() });
export type LastLeft = z.infer<typeof LastLeft>;

/** What the job is about. Fixed when the job is opened. */
export const JobSetup = z.object({
  site: Name,
  pair: Name,
  meter: MeterProfile,
  adjusters: AdjusterProfile,
  /** Emitter to receiver, metres. */
  pathLength: z.optional(z.number().check(z.minimum(1), z.maximum(300))),
  /** Without it: the alignment alone. */
  scope: z.optional(Scope),
  plan: z.optional(PairPlan),
  /** What a periodic visit is compared with. Without it: with nothing. */
  lastLeft: z.optional(LastLeft),
  /** What the site's plans are checked against. */
  guidance: z.optional(Guidance),
  /** What people read and write figures in. Without it: metres and dB. */
  units: z.optional(Units),
  /** Cause and effect, to be tried and answered one by one. */
  steps: z.optional(VisitSteps),
  /** One person does it alone, in this way. Without it: a crew of two. */
  alone: z.optional(AloneWay),
  /** Only practice: nothing in the log is a record of a real pair. */
  practice: z.optional(Practice),
});
export type JobSetup = z.infer<typeof JobSetup>;
