import type { AlarmThreshold, PairPlan } from '../model/pair-plan.ts';
import type { Units } from '../model/units.ts';
import { changedFields, type PlanField, type PlanPair } from '../plan/changes.ts';
import { kitOf } from '../plan/covers.ts';
import { exactLengthIn } from '../plan/lengths.ts';
import { LOSS_SIGNS } from './units.ts';

const NAMES: Record<PlanField, string> = {
  zone: 'zone',
  pathLength: 'path',
  emitterHeight: 'emitter height',
  receiverHeight: 'receiver height',
  ceilingHeight: 'ceiling height',
  spacing: 'spacing',
  wallDistance: 'wall distance',
  meter: 'meter',
  adjusters: 'adjusters',
  alarmThreshold: 'alarm threshold',
  alarmDelay: 'alarm delay',
  faultDelay: 'fault delay',
  filters: 'test filters',
  rangeMin: 'shortest path allowed',
  rangeMax: 'longest path allowed',
  beamAngle: 'beam angle',
};

const NOTHING = 'not stated';

/** As it is stated, not rounded: two that differ must not look the same. */
function valueText(plan: PairPlan, field: PlanField, { length }: Units): string {
  switch (field) {
    case 'meter':
    case 'adjusters':
      return plan[field]?.name ?? NOTHING;
    case 'filters':
      return kitOf(plan).length > 0 ? `${kitOf(plan).join(', ')} %` : 'none';
    case 'alarmThreshold':
      return plan.alarmThreshold ? stated(plan.alarmThreshold) : NOTHING;
    case 'zone':
      return plan.zone ?? NOTHING;
    case 'alarmDelay':
    case 'faultDelay':
      return withUnit(plan[field], 's');
    case 'beamAngle':
      return withUnit(plan.beamAngle, 'degrees');
    default: {
      const metres = plan[field];
      return withUnit(metres === undefined ? undefined : exactLengthIn(metres, length), length);
    }
  }
}

const stated = ({ value, unit }: AlarmThreshold): string => `${value} ${LOSS_SIGNS[unit]}`;
const withUnit = (value: number | undefined, unit: string): string =>
  value === undefined ? NOTHING : `${value} ${unit}`;

/** "alarm delay 10 s → 30 s; zone 3 → 4" */
export const planChangesText = (plans: PlanPair, units: Units): string =>
  changedFields(plans)
    .map((field) => {
      const [from, to] = [valueText(plans.from, field, units), valueText(plans.to, field, units)];
      return from === to ? `other figures of ${NAMES[field]} ${from}` : `${NAMES[field]} ${from} → ${to}`;
    })
    .join('; ');
