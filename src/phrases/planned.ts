import type { PairPlan } from '../model/pair-plan.ts';

export const PLAN_ROWS = { place: 'Place', settings: 'Settings' } as const;
const NOT_STATED = 'not stated';

export const pathText = (metres: number): string => `${metres} m`;

/** Where a pair is mounted, as far as planned. */
export const placeText = (plan: PairPlan): string =>
  list([
    plan.zone !== undefined && `zone ${plan.zone}`,
    plan.pathLength !== undefined && `path ${pathText(plan.pathLength)}`,
    plan.emitterHeight !== undefined && `emitter at ${plan.emitterHeight} m`,
    plan.receiverHeight !== undefined && `receiver at ${plan.receiverHeight} m`,
    plan.ceilingHeight !== undefined && `ceiling at ${plan.ceilingHeight} m`,
  ]);

/** How a pair is set, as far as planned. */
export const settingsText = ({
  alarmThreshold,
  alarmDelay,
  faultDelay,
  filterPercent,
  filters,
}: PairPlan): string =>
  list([
    alarmThreshold && `alarm at ${alarmThreshold.value} ${alarmThreshold.unit === 'dB' ? 'dB' : '%'} lost`,
    alarmDelay !== undefined && `alarm delay ${alarmDelay} s`,
    faultDelay !== undefined && `fault delay ${faultDelay} s`,
    filters
      ? `test filters ${filters.join(', ')} %`
      : filterPercent !== undefined && `test filter ${filterPercent} %`,
  ]);

const list = (parts: readonly (string | false | undefined)[]): string =>
  parts.filter((part) => part).join(', ') || NOT_STATED;
