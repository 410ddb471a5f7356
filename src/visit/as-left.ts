import type { AsLeft, AsLeftField } from '../model/hand-over.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import { thresholdDb } from '../plan/covers.ts';

/** Figures that a plan states, too. */
export const PLANNED_TOO = {
  threshold: 'alarmThreshold',
  alarmDelay: 'alarmDelay',
  faultDelay: 'faultDelay',
  emitterHeight: 'emitterHeight',
  receiverHeight: 'receiverHeight',
} as const satisfies Partial<Record<AsLeftField, keyof PairPlan>>;
export type PlannedToo = keyof typeof PLANNED_TOO;
const FIELDS = Object.keys(PLANNED_TOO) as readonly PlannedToo[];

/** Two statements of one threshold agree within this: both are rounded. dB. Common practice, no source. */
const SAME_DB = 0.05;
/** Two measurements of one height agree within this. Metres. Common practice, no source. */
const SAME_HEIGHT = 0.1;
/** Steps of decimal fractions: 0.1 + 0.2 is not above 0.3. */
const FRACTION = 1e-9;

/** The figures that were left otherwise than planned, where both are known. */
export function leftOtherwise(left: AsLeft, plan: PairPlan | undefined): PlannedToo[] {
  if (!plan) return [];
  // What nobody knows is no number, and no number is above any limit.
  const apart = (one: number | undefined, other: number | undefined, by: number): boolean =>
    Math.abs((one ?? Number.NaN) - (other ?? Number.NaN)) > by + FRACTION;
  return FIELDS.filter((field) => {
    if (field === 'threshold') {
      const { threshold } = left;
      return apart(thresholdDb(threshold && { alarmThreshold: threshold }), thresholdDb(plan), SAME_DB);
    }
    const isHeight = field === 'emitterHeight' || field === 'receiverHeight';
    return apart(left[field], plan[PLANNED_TOO[field]], isHeight ? SAME_HEIGHT : 0);
  });
}
