import { hiddenIn } from '../../src/model/hidden.ts';
import { idKey, invertedIn, PairId, PairPlan } from '../../src/model/pair-plan.ts';
import type { AdjusterProfile, MeterProfile } from '../../src/model/profile.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import {
  alarmLossText,
  BAD_PAIR_ID,
  FILTERS,
  HIDDEN_CHARACTER,
  INVERTED,
  numberLike,
  rangeText,
  takenIdText,
} from '../../src/phrases/form-faults.ts';
import { NUMBER_COLUMNS } from '../../src/site/pair-columns.ts';
import {
  type AdjusterDraft,
  adjusterDraft,
  type Errors,
  type MeterDraft,
  meterDraft,
  newDraft,
  parseDraft,
} from '../profiles/profile-draft.ts';

/** A figure of the plan that is a single number. */
export type NumberField = (typeof NUMBER_COLUMNS)[keyof typeof NUMBER_COLUMNS];
const NUMBER_FIELDS: readonly NumberField[] = Object.values(NUMBER_COLUMNS);

/** The plan of a pair as it is typed. An empty text: not known. */
export type PlanDraft = Record<
  NumberField | 'id' | 'name' | 'zone' | 'alarmThreshold' | 'filters',
  string
> & {
  alarmUnit: 'percent' | 'dB';
  /** Undefined: chosen when the visit begins. */
  meter: MeterDraft | undefined;
  adjusters: AdjusterDraft | undefined;
};

export function planDraft(plan?: PairPlan): PlanDraft {
  const numbers = Object.fromEntries(
    NUMBER_FIELDS.map((field) => [field, plan?.[field] === undefined ? '' : String(plan[field])]),
  ) as Record<NumberField, string>;
  return {
    ...numbers,
    id: plan?.id ?? '',
    name: plan?.name ?? '',
    zone: plan?.zone ?? '',
    alarmThreshold: plan?.alarmThreshold ? String(plan.alarmThreshold.value) : '',
    alarmUnit: plan?.alarmThreshold?.unit ?? 'percent',
    filters: plan?.filters?.join('; ') ?? '',
    meter: plan ? plan.meter && meterDraft(plan.meter) : meterDraft(NEUTRAL_METERS[0] as MeterProfile),
    adjusters: plan ? plan.adjusters && adjusterDraft(plan.adjusters) : adjusterDraft(NEUTRAL_ADJUSTERS),
  };
}

export interface ParsedPlan {
  /** The plan, if nothing is wrong. */
  plan?: PairPlan;
  /** What is right so far: enough for some figures of the plan check. */
  known: PairPlan;
  errors: Errors;
}

/** What a filled form means, and what is wrong with it, field by field. `taken`: ids of other pairs. */
export function parsePlan(draft: PlanDraft, taken: readonly string[] = []): ParsedPlan {
  const errors: Record<string, string> = {};
  const id = draft.id.trim();
  if (!PairId.safeParse(id).success) {
    errors.id = BAD_PAIR_ID;
  } else {
    const same = taken.find((other) => idKey(other) === idKey(id));
    if (same !== undefined) errors.id = takenIdText(same);
  }
  for (const field of ['name', 'zone'] as const) {
    if (hiddenIn(draft[field].trim())) errors[field] = HIDDEN_CHARACTER;
  }
  const figures = Object.fromEntries(
    NUMBER_FIELDS.flatMap((field) => {
      const value = numberField(field, draft[field], errors);
      return value === undefined ? [] : [[field, value]];
    }),
  );
  const threshold = alarmThreshold(draft, errors);
  const filters = filterKit(draft.filters, errors);
  const known: PairPlan = {
    id: errors.id ? 'pair' : id,
    name: draft.name.trim() || id || 'pair',
    ...(draft.zone.trim() && { zone: draft.zone.trim() }),
    ...figures,
    ...(threshold && { alarmThreshold: threshold }),
    ...(filters && { filters }),
    ...profiles(draft, errors),
  };
  for (const [low, high] of invertedIn(known)) errors[high] = INVERTED[low];
  const parsed = PairPlan.safeParse(known);
  return Object.keys(errors).length === 0 && parsed.success
    ? { plan: parsed.data, known, errors }
    : { known, errors };
}

/** A number as people type it, with a point or a comma. */
function numberIn(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.').replace('−', '-'));
  return text.trim() !== '' && Number.isFinite(value) ? value : undefined;
}

function numberField(field: NumberField, text: string, errors: Record<string, string>): number | undefined {
  if (text.trim() === '') return undefined;
  const value = numberIn(text);
  const schema = PairPlan.shape[field];
  if (value !== undefined && schema.safeParse(value).success) return value;
  const { minValue, maxValue } = schema.unwrap();
  errors[field] = value === undefined ? numberLike('62.5') : rangeText(minValue, maxValue);
  return undefined;
}

function alarmThreshold(
  { alarmThreshold: text, alarmUnit: unit }: PlanDraft,
  errors: Record<string, string>,
) {
  if (text.trim() === '') return undefined;
  const value = numberIn(text);
  const parsed = PairPlan.shape.alarmThreshold.safeParse({ unit, value });
  if (parsed.success) return parsed.data;
  errors.alarmThreshold = value === undefined ? numberLike('35') : alarmLossText(unit);
  return undefined;
}

/** "20; 40; 60" */
function filterKit(text: string, errors: Record<string, string>): number[] | undefined {
  if (text.trim() === '') return undefined;
  const parsed = PairPlan.shape.filters.safeParse(
    text
      .trim()
      .split(/[;\s]+/)
      .map(numberIn),
  );
  if (parsed.success) return parsed.data;
  errors.filters = FILTERS;
  return undefined;
}

/** The profiles are read, with their errors, as the start form reads them. */
function profiles(
  { meter, adjusters }: PlanDraft,
  errors: Record<string, string>,
): { meter?: MeterProfile; adjusters?: AdjusterProfile } {
  const whole = { ...newDraft(), site: 'site', pair: 'pair' };
  const parsed = parseDraft({
    ...whole,
    ...(meter && { meter }),
    ...(adjusters && { adjusters }),
  });
  if (parsed.kind === 'wrong') {
    Object.assign(errors, parsed.errors);
    return {};
  }
  return {
    ...(meter && { meter: parsed.setup.meter }),
    ...(adjusters && { adjusters: parsed.setup.adjusters }),
  };
}
