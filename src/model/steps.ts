import * as z from 'zod/mini';

/** The most steps that a site defines, and that a visit takes: with those that every visit has. */
export const MAX_SITE_STEPS = 40;
const MAX_STEPS = 50;

const text = z.string().check(z.trim(), z.minLength(3), z.maxLength(160));

/** A test step: what is done, and what must then happen. Steps of one list differ in their cause. */
export const TestStep = z.object({ cause: text, effect: text });
export type TestStep = z.infer<typeof TestStep>;

const differ = (steps: readonly TestStep[]): boolean =>
  new Set(steps.map(({ cause }) => cause.toLowerCase())).size === steps.length;

export const SiteSteps = z.array(TestStep).check(z.maxLength(MAX_SITE_STEPS), z.refine(differ));
export const VisitSteps = z.array(TestStep).check(z.maxLength(MAX_STEPS));

export const StepResult = z.enum(['passed', 'failed', 'not-done']);
export type StepResult = z.infer<typeof StepResult>;
