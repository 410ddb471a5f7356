import type { Placed } from '../model/placed.ts';
import type { JobSetup } from '../model/setup.ts';
import type { TestStep } from '../model/steps.ts';
import type { HandOver } from './hand-over.ts';

/** A step of the visit with its last answer, if it has one. */
export interface AnsweredStep extends TestStep {
  readonly answer: Placed<'step'> | undefined;
}

export const stepsOf = ({ steps = [] }: Pick<JobSetup, 'steps'>, handOver: HandOver): AnsweredStep[] =>
  steps.map((step) => ({
    ...step,
    answer: Object.hasOwn(handOver.steps, step.cause) ? handOver.steps[step.cause] : undefined,
  }));
