import type { PairPlan } from '../model/pair-plan.ts';
import { lengthText, type Shown, thresholdText } from './units.ts';

export const PLAN_ROWS = { place: 'Place', settings: 'Settings' } as const;
const NOT_STATED = 'not stated';

/** Where a pair is mounted, as far as planned. */
export const placeText = (plan: PairPlan, shown: Shown): string =>
  list([
    plan.zone !== undefined && `zone ${plan.zone}`,
    plan.pathLength !== undefined && `path ${lengthText(plan.pathLength, shown)}`,
    plan.emitterHeight !== undefined && `emitter at ${lengthText(plan.emitterHeight, shown)}`,
    plan.receiverHeight !== undefined && `receiver at ${lengthText(plan.receiverHeight, shown)}`,
    plan.ceilingHeight !== undefined && `ceiling at ${lengthText(plan.ceilingHeight, shown)}`,
  ]);

/** How a pair is set, as far as planned. */
export const settingsText = (
  { alarmThreshold, alarmDelay, faultDelay, filterPercent, filters }: PairPlan,
  shown: Shown,
): string =>
  list([
    alarmThreshold && `alarm at ${thresholdText(alarmThreshold, shown)} lost`,
    alarmDelay !== undefined && `alarm delay ${alarmDelay} s`,
    faultDelay !== undefined && `fault delay ${faultDelay} s`,
    filters
      ? `test filters ${filters.join(', ')} %`
      : filterPercent !== undefined && `test filter ${filterPercent} %`,
  ]);

const list = (parts: readonly (string | false | undefined)[]): string =>
  parts.filter((part) => part).join(', ') || NOT_STATED;
