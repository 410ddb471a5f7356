import type { AsLeft, AsLeftField } from '../model/hand-over.ts';
import type { AlarmThreshold, PairPlan } from '../model/pair-plan.ts';
import { dbOfPercent } from '../plan/attenuation.ts';

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

const inDb = ({ unit, value }: AlarmThreshold): number => (unit === 'dB' ? value : dbOfPercent(value));

/** The figures that were left otherwise than planned, where both are known. */
export function leftOtherwise(left: AsLeft, plan: PairPlan | undefined): PlannedToo[] {
  if (!plan) return [];
  const apart = (one: number | undefined, other: number | undefined, by: number): boolean =>
    one !== undefined && other !== undefined && Math.abs(one - other) > by + FRACTION;
  return FIELDS.filter((field) => {
    if (field === 'threshold') {
      const { threshold } = left;
      const { alarmThreshold } = plan;
      return apart(threshold && inDb(threshold), alarmThreshold && inDb(alarmThreshold), SAME_DB);
    }
    const isHeight = field === 'emitterHeight' || field === 'receiverHeight';
    return apart(left[field], plan[PLANNED_TOO[field]], isHeight ? SAME_HEIGHT : 0);
  });
}
