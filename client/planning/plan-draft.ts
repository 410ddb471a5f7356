import { hiddenIn } from '../../src/model/hidden.ts';
import { idKey, invertedIn, PairId, PairPlan } from '../../src/model/pair-plan.ts';
import type { AdjusterProfile, MeterProfile } from '../../src/model/profile.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { rangeOf } from '../../src/model/range.ts';
import { type LossUnit, METRES, type Units } from '../../src/model/units.ts';
import {
  alarmLossText,
  BAD_PAIR_ID,
  FILTERS,
  HIDDEN_CHARACTER,
  INVERTED,
  lengthLike,
  lengthRangeText,
  NEEDS_PATH,
  numberLike,
  rangeText,
  takenIdText,
} from '../../src/phrases/form-faults.ts';
import { lengthFigures, lossFigures } from '../../src/phrases/units.ts';
import { readLength } from '../../src/plan/lengths.ts';
import { needsPath, readLoss, thresholdIn, thresholdOf } from '../../src/plan/losses.ts';
import { LENGTH_COLUMNS, NUMBER_COLUMNS } from '../../src/site/pair-columns.ts';
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
  alarmUnit: LossUnit;
  /** Undefined: chosen when the visit begins. */
  meter: MeterDraft | undefined;
  adjusters: AdjusterDraft | undefined;
  /** The plan that it began with: a field that nobody touched keeps its figure, whatever was rounded to show it. */
  from: PairPlan | undefined;
  /** What a number without a unit is in. */
  units: Units;
};

export function planDraft(plan?: PairPlan, units: Units = METRES): PlanDraft {
  return { ...shownDraft(plan, units), from: plan, units };
}

function shownDraft(plan: PairPlan | undefined, units: Units): Omit<PlanDraft, 'from' | 'units'> {
  const numbers = Object.fromEntries(
    NUMBER_FIELDS.map((field) => [field, shownFigure(field, plan?.[field], units)]),
  ) as Record<NumberField, string>;
  const threshold = shownThreshold(plan, units);
  return {
    ...numbers,
    id: plan?.id ?? '',
    name: plan?.name ?? '',
    zone: plan?.zone ?? '',
    alarmThreshold: threshold.text,
    alarmUnit: threshold.unit,
    filters: plan?.filters?.join('; ') ?? '',
    meter: plan ? plan.meter && meterDraft(plan.meter) : meterDraft(NEUTRAL_METERS[0] as MeterProfile),
    adjusters: plan ? plan.adjusters && adjusterDraft(plan.adjusters) : adjusterDraft(NEUTRAL_ADJUSTERS),
  };
}

function shownFigure(field: NumberField, value: number | undefined, { length }: Units): string {
  if (value === undefined) return '';
  return String(LENGTHS.has(field) ? lengthFigures(value, length) : value);
}

/** Without a path, what is told for each foot or metre cannot be shown so. */
function shownThreshold(plan: PairPlan | undefined, { loss }: Units): { text: string; unit: LossUnit } {
  const threshold = plan?.alarmThreshold;
  if (!threshold) return { text: '', unit: loss ?? 'percent' };
  const unit = loss ?? threshold.unit;
  const value = thresholdIn(threshold, unit, plan.pathLength);
  return value === undefined
    ? { text: String(threshold.value), unit: threshold.unit }
    : { text: String(lossFigures(value, unit)), unit };
}

const LENGTHS: ReadonlySet<NumberField> = new Set(LENGTH_COLUMNS.map((column) => NUMBER_COLUMNS[column]));

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
      const value = numberField(field, draft, errors);
      return value === undefined ? [] : [[field, value]];
    }),
  );
  const { pathLength } = figures as Partial<PairPlan>;
  const threshold = alarmThreshold(draft, pathLength, errors);
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

/** True where the field still says what the plan that it began with says. */
const isUntouched = (
  { from, units, ...draft }: PlanDraft,
  field: keyof PlanDraft & keyof PairPlan,
): boolean =>
  from !== undefined && draft[field as NumberField] === shownDraft(from, units)[field as NumberField];

function numberField(
  field: NumberField,
  draft: PlanDraft,
  errors: Record<string, string>,
): number | undefined {
  const text = draft[field];
  if (text.trim() === '') return undefined;
  if (isUntouched(draft, field)) return draft.from?.[field];
  const { length } = draft.units;
  const isLength = LENGTHS.has(field);
  const value = isLength ? readLength(text, length) : numberIn(text);
  const schema = PairPlan.shape[field];
  if (value !== undefined && schema.safeParse(value).success) return value;
  const [low, high] = rangeOf(schema);
  if (value === undefined) errors[field] = isLength ? lengthLike(length) : numberLike('62.5');
  else errors[field] = isLength ? lengthRangeText(low, high, length) : rangeText(low, high);
  return undefined;
}

/** What is told for each metre or foot is of the path that stands beside it. */
function alarmThreshold(draft: PlanDraft, path: number | undefined, errors: Record<string, string>) {
  const { alarmThreshold: text, alarmUnit, from, units } = draft;
  if (text.trim() === '') return undefined;
  const sameUnit = shownThreshold(from, units).unit === alarmUnit;
  const samePath = !needsPath(alarmUnit) || from?.pathLength === path;
  if (sameUnit && samePath && isUntouched(draft, 'alarmThreshold')) return from?.alarmThreshold;
  const read = readLoss(text, alarmUnit);
  const threshold = read && thresholdOf(read.value, read.unit, path);
  if (threshold) return threshold;
  if (!read) errors.alarmThreshold = numberLike('35');
  else if (needsPath(read.unit) && path === undefined) errors.alarmThreshold = NEEDS_PATH;
  else errors.alarmThreshold = alarmLossText(read.unit);
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
