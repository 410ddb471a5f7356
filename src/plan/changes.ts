import { isSame } from '../formats/same.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import type { JobSetup } from '../model/setup.ts';
import { kitOf } from './covers.ts';

/**
 * Which fields of a plan matter to what was proven under it: where the pair is, what it is set to, and what it was
 * tested with. Another name alone proves nothing less. Common practice, no source.
 */
export const MATTERS = {
  name: false,
  zone: true,
  pathLength: true,
  emitterHeight: true,
  receiverHeight: true,
  ceilingHeight: true,
  spacing: true,
  wallDistance: true,
  meter: true,
  adjusters: true,
  alarmThreshold: true,
  alarmDelay: true,
  faultDelay: true,
  // One filter and a kit of filters are compared together, as `filters`.
  filterPercent: false,
  filters: true,
  rangeMin: true,
  rangeMax: true,
  beamAngle: true,
  // Limits for watching the pair over the years: no acceptance and no test rests on them.
  leastSignal: false,
  mostLoss: false,
} as const satisfies Record<Exclude<keyof PairPlan, 'id'>, boolean>;
export type PlanField = {
  [K in keyof typeof MATTERS]: (typeof MATTERS)[K] extends true ? K : never;
}[keyof typeof MATTERS];

const FIELDS = (Object.keys(MATTERS) as (keyof typeof MATTERS)[]).filter(
  (field): field is PlanField => MATTERS[field],
);

/** The plan of a visit, and the plan of its pair now. */
export interface PlanPair {
  readonly from: PairPlan;
  readonly to: PairPlan;
}

const fieldOf = (plan: PairPlan, field: PlanField): unknown =>
  field === 'filters' ? kitOf(plan) : plan[field];

/**
 * What a profile may say in addition about the same meter or adjusters: no acceptance and no test rests on it. Filled
 * in where it was empty, or left out, it proves nothing less. With another figure it is of another thing, or was wrong.
 */
const OPTIONAL: { readonly [field in PlanField]?: string } = {
  meter: 'gainDbPerStep' satisfies keyof MeterProfile,
  adjusters: 'degreesPerTurn' satisfies keyof AdjusterProfile,
};

function isSameField(from: unknown, to: unknown, optional: string | undefined): boolean {
  if (isSame(from, to)) return true;
  if (optional === undefined || !isRecord(from) || !isRecord(to)) return false;
  if (from[optional] !== undefined && to[optional] !== undefined) return false;
  return isSame({ ...from, [optional]: undefined }, { ...to, [optional]: undefined });
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The fields that matter and differ, in the order of `MATTERS`. */
export const changedFields = ({ from, to }: PlanPair): PlanField[] =>
  FIELDS.filter(
    (field) => !isSameField(fieldOf(from, field) ?? null, fieldOf(to, field) ?? null, OPTIONAL[field]),
  );

/**
 * The plan that a visit was made with beside the plan `now`. Where the plan named no meter or adjusters, those that
 * stood in for them count. Undefined where nothing that matters differs, or the visit was made without a plan.
 */
export function planSince(
  { plan, meter, adjusters }: Pick<JobSetup, 'plan' | 'meter' | 'adjusters'>,
  now: PairPlan,
): PlanPair | undefined {
  if (!plan) return undefined;
  const standIn = { ...(!plan.meter && { meter }), ...(!plan.adjusters && { adjusters }) };
  const both = { from: { ...plan, meter, adjusters }, to: { ...standIn, ...now } };
  return changedFields(both).length > 0 ? both : undefined;
}
