import type { FactOf } from '../model/facts.ts';
import type { AsLeft } from '../model/hand-over.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { TestStep } from '../model/steps.ts';
import type { Plant } from './plants.ts';

export const LEFT_PLANTS = [
  'left-threshold',
  'left-delay',
  'left-height',
  'left-signal',
] as const satisfies readonly Plant[];

/** What is written down as left, with the planted fault: each is just clear of what was planned or read. */
export function leftWith(plant: (typeof LEFT_PLANTS)[number], plan: PairPlan | undefined): AsLeft {
  switch (plant) {
    case 'left-threshold':
      return { threshold: { unit: 'dB', value: 6 } };
    case 'left-delay':
      return { alarmDelay: (plan?.alarmDelay ?? 0) + 5, faultDelay: plan?.faultDelay };
    case 'left-height':
      return { receiverHeight: (plan?.receiverHeight ?? 0) + 1 };
    case 'left-signal':
      return { signal: 1 };
  }
}

export const STEP_PLANTS = [
  'step-failed',
  'step-left-out',
  'step-unanswered',
] as const satisfies readonly Plant[];
const HORN = { cause: 'Call point in the hall pressed', effect: 'The horns sound' };
const DOOR = { cause: 'Alarm from the beam', effect: 'The hall doors close' };
/** What such a site tries at every visit. */
export const STEPS_OF_SITE: readonly TestStep[] = [HORN, DOOR];

/** The answers to them, with the planted fault in the first. */
export function stepAnswers(plant: (typeof STEP_PLANTS)[number]): FactOf<'step'>[] {
  const second = { type: 'step', cause: DOOR.cause, result: 'passed' } as const;
  if (plant === 'step-unanswered') return [second];
  const result = plant === 'step-failed' ? 'failed' : 'not-done';
  return [{ type: 'step', cause: HORN.cause, result, note: 'Key not at hand' }, second];
}
