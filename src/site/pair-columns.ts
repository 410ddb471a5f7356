import type * as z from 'zod/mini';
import type { Cell } from '../formats/csv.ts';
import { PairPlan } from '../model/pair-plan.ts';
import { LengthUnit, LossUnit } from '../model/units.ts';
import { exactLengthIn } from '../plan/lengths.ts';
import {
  ADJUSTER_FIGURES,
  ADJUSTERS,
  METER,
  METER_FIGURES,
  type ProfileColumn,
  profileCell,
} from './profile-columns.ts';

/** A figure of the plan that is one number in one column. */
type NumberField = {
  [K in keyof PairPlan]-?: NonNullable<PairPlan[K]> extends number ? K : never;
}[keyof PairPlan];

/** The columns with plain numbers; the unit is in the name. */
export const NUMBER_COLUMNS = {
  path_m: 'pathLength',
  emitter_height_m: 'emitterHeight',
  receiver_height_m: 'receiverHeight',
  ceiling_height_m: 'ceilingHeight',
  spacing_m: 'spacing',
  wall_distance_m: 'wallDistance',
  alarm_delay_s: 'alarmDelay',
  fault_delay_s: 'faultDelay',
  filter_percent: 'filterPercent',
  range_min_m: 'rangeMin',
  range_max_m: 'rangeMax',
  beam_angle_deg: 'beamAngle',
  least_signal: 'leastSignal',
  most_loss_db: 'mostLoss',
} as const satisfies Record<string, NumberField>;

/** The columns with a length. In a table in feet they end in `_ft`. */
export const LENGTH_COLUMNS = [
  'path_m',
  'emitter_height_m',
  'receiver_height_m',
  'ceiling_height_m',
  'spacing_m',
  'wall_distance_m',
  'range_min_m',
  'range_max_m',
] as const satisfies readonly (keyof typeof NUMBER_COLUMNS)[];
export type LengthColumn = (typeof LENGTH_COLUMNS)[number];
export const isLengthColumn = (name: string): name is LengthColumn =>
  (LENGTH_COLUMNS as readonly string[]).includes(name);

/** A column's name in a table whose lengths are in that unit. */
export const headerIn = (column: PairColumn, unit: LengthUnit): string =>
  isLengthColumn(column) && unit === 'ft' ? column.replace(/_m$/, '_ft') : column;

/** The column that a name means, and the unit of its lengths. Undefined for a name that is none. */
export function columnNamed(name: string): { column: PairColumn; unit: LengthUnit } | undefined {
  for (const unit of LengthUnit.options) {
    const column = PAIR_COLUMNS.find((each) => headerIn(each, unit) === name);
    if (column) return { column, unit };
  }
  return undefined;
}

export type NumberColumn = keyof typeof NUMBER_COLUMNS;
export const isNumberColumn = (name: string): name is NumberColumn => name in NUMBER_COLUMNS;

/** Every column of a table of pairs, in the order the template has them. Only `id` must be there. */
export const PAIR_COLUMNS = [
  'id',
  'name',
  'zone',
  'path_m',
  'emitter_height_m',
  'receiver_height_m',
  'ceiling_height_m',
  'spacing_m',
  'wall_distance_m',
  'alarm_threshold',
  'alarm_unit',
  'alarm_delay_s',
  'fault_delay_s',
  'filter_percent',
  'filters_percent',
  'range_min_m',
  'range_max_m',
  'beam_angle_deg',
  'least_signal',
  'most_loss_db',
  'meter',
  ...(Object.keys(METER_FIGURES) as (keyof typeof METER_FIGURES)[]),
  'adjusters',
  ...(Object.keys(ADJUSTER_FIGURES) as (keyof typeof ADJUSTER_FIGURES)[]),
] as const;
export type PairColumn = (typeof PAIR_COLUMNS)[number];
/** The columns whose cells are words; the others hold numbers. */
export const TEXT_COLUMNS: ReadonlySet<PairColumn> = new Set<PairColumn>([
  'id',
  'name',
  'zone',
  'alarm_unit',
  'filters_percent',
  'meter',
  'meter_unit',
  'meter_law',
  'meter_gain',
  'adjusters',
]);

const isOf = <P extends object>(figures: P, column: string): boolean => Object.hasOwn(figures, column);
const isMeterColumn = (column: PairColumn): column is ProfileColumn =>
  column === 'meter' || isOf(METER_FIGURES, column);
const isAdjusterColumn = (column: PairColumn): column is ProfileColumn =>
  column === 'adjusters' || isOf(ADJUSTER_FIGURES, column);

/** The same in a table whose lengths are in that unit: a length with as few figures as bring it back exactly. */
export function cellIn(plan: PairPlan, column: PairColumn, unit: LengthUnit): Cell {
  const cell = cellOf(plan, column);
  return isLengthColumn(column) && typeof cell === 'number' ? exactLengthIn(cell, unit) : cell;
}

/** The value of a plan in a column; lengths in metres. */
export function cellOf(plan: PairPlan, column: PairColumn): Cell {
  if (isNumberColumn(column)) return plan[NUMBER_COLUMNS[column]];
  if (isMeterColumn(column)) return profileCell(plan.meter, METER, column);
  if (isAdjusterColumn(column)) return profileCell(plan.adjusters, ADJUSTERS, column);
  switch (column) {
    case 'id':
    case 'name':
    case 'zone':
      return plan[column];
    case 'alarm_threshold':
      return plan.alarmThreshold?.value;
    case 'filters_percent':
      return plan.filters?.join(';');
    case 'alarm_unit':
      return plan.alarmThreshold?.unit;
  }
}

/** The schema that a number must fit, so that its limits are in one place. */
export const schemaOf = (column: NumberColumn): z.ZodMiniType => PairPlan.shape[NUMBER_COLUMNS[column]];
export const ALARM_UNITS: readonly string[] = LossUnit.options;
