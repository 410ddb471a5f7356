import type { AlarmThreshold, PairPlan } from '../model/pair-plan.ts';
import { METRES, type Units } from '../model/units.ts';
import { changedFields, type PlanField, type PlanPair, planSince } from '../plan/changes.ts';
import { kitOf } from '../plan/covers.ts';
import { exactLengthIn } from '../plan/lengths.ts';
import type { JobState } from '../visit/state.ts';
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

type Told = (name: string, from: string, to: string) => string;

const changesText = (plans: PlanPair, units: Units, told: Told): string =>
  changedFields(plans)
    .map((field) => {
      const [from, to] = [valueText(plans.from, field, units), valueText(plans.to, field, units)];
      return from === to ? `other figures of ${NAMES[field]}: ${from}` : told(NAMES[field], from, to);
    })
    .join('; ');

/** "alarm delay: 10 s → 30 s; zone: 3 → 4" */
export const planChangesText = (plans: PlanPair, units: Units): string =>
  changesText(plans, units, (name, from, to) => `${name}: ${from} → ${to}`);

/** The same as it is said: no voice reads an arrow. */
const changesAloud = (plans: PlanPair, units: Units): string =>
  changesText(plans, units, (name, from, to) => `${name} from ${from} to ${to}`);

/** To the crew of an open visit, on both phones. */
export const planChangedText = (plans: PlanPair, units: Units): string =>
  `The desk has changed the plan of this pair: ${changesAloud(plans, units)}. This visit goes by the old plan. Ask the desk before you go on: the new plan needs a new visit.`;
export const planBackText = (plans: PlanPair, units: Units): string =>
  `The desk has changed the plan of this pair back to what it was when this visit began: ${changesAloud(plans, units)}. Go on.`;

/** In the exchange. */
export const planChangedLine = (plans: PlanPair): string =>
  `The desk changed the plan: ${planChangesText(plans, METRES)}`;

/** On the screens of the crew, as long as it is so; undefined while the plan is as the visit was opened with. */
export function planNowText({ setup, planNow }: Pick<JobState, 'setup' | 'planNow'>): string | undefined {
  const plans = setup && planNow && planSince(setup, planNow);
  return plans && `Plan changed since this visit began: ${planChangesText(plans, setup.units ?? METRES)}`;
}
