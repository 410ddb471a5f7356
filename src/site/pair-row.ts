import { plainCell } from '../formats/csv.ts';
import { AlarmThreshold, PairId, PairPlan } from '../model/pair-plan.ts';
import type { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import type { CsvFault } from '../model/table-fault.ts';
import { ALARM_UNITS, isNumberColumn, NUMBER_COLUMNS, type PairColumn, schemaOf } from './pair-columns.ts';

/** The id of the template's example. It is refused, so that nobody tries to align it. */
export const EXAMPLE_ID = 'EXAMPLE';

/** The profiles that a table may name. */
export interface Profiles {
  readonly meters: readonly MeterProfile[];
  readonly adjusters: readonly AdjusterProfile[];
}

/** A row, with the line where it begins. */
export interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** One row's plan, or everything that is wrong with it. `id`: as it is written, empty if there is none. */
export function readRow(
  { line, cells }: Row,
  columns: readonly string[],
  profiles: Profiles,
): { id: string; plan?: PairPlan; faults: CsvFault[] } {
  const faults: CsvFault[] = [];
  const wrong = (column: PairColumn, fault: CsvFault['fault'], choices?: readonly string[]): undefined => {
    faults.push({ line, column, value: at(column), fault, ...(choices && { choices }) });
  };
  const at = (column: PairColumn): string => plainCell(cells[columns.indexOf(column)] ?? '');
  if (cells.slice(columns.length).some((cell) => cell !== '')) faults.push({ line, fault: 'too-many-cells' });

  const id = at('id');
  if (id === EXAMPLE_ID) wrong('id', 'example-row');
  else if (id === '') wrong('id', 'required');
  else if (!PairId.safeParse(id).success) wrong('id', 'bad-id');
  const plan: Record<string, unknown> = { id, name: id };
  for (const column of ['name', 'zone'] as const) {
    const text = at(column);
    if (text === '') continue;
    if (!PairPlan.shape[column].safeParse(text).success) wrong(column, 'too-long');
    plan[column] = text;
  }
  for (const column of columns.filter(isNumberColumn)) {
    if (at(column) === '') continue;
    const value = numberIn(at(column));
    if (value === undefined) wrong(column, 'not-a-number');
    else if (!schemaOf(column).safeParse(value).success) wrong(column, 'out-of-range', limitsOf(column));
    else plan[NUMBER_COLUMNS[column]] = value;
  }
  const meter = named(profiles.meters, at('meter'));
  if (meter === 'unknown') wrong('meter', 'unknown-profile', namesOf(profiles.meters));
  else if (meter) plan.meter = meter;
  const adjusters = named(profiles.adjusters, at('adjusters'));
  if (adjusters === 'unknown') wrong('adjusters', 'unknown-profile', namesOf(profiles.adjusters));
  else if (adjusters) plan.adjusters = adjusters;
  const threshold = readThreshold(at('alarm_threshold'), at('alarm_unit'), wrong);
  if (threshold) plan.alarmThreshold = threshold;
  const filters = readFilters(at('filters_percent'), wrong);
  if (filters) plan.filters = filters;
  return faults.length > 0 ? { id, faults } : { id, plan: PairPlan.parse(plan), faults };
}

function readThreshold(
  text: string,
  unitText: string,
  wrong: (column: PairColumn, fault: CsvFault['fault'], choices?: readonly string[]) => undefined,
): AlarmThreshold | undefined {
  if (text === '') return undefined;
  const value = numberIn(text);
  if (value === undefined) return wrong('alarm_threshold', 'not-a-number');
  if (unitText === '') return wrong('alarm_unit', 'needs-its-unit', ALARM_UNITS);
  const unit = ALARM_UNITS.find((each) => each.toLowerCase() === unitText.toLowerCase());
  if (!unit) return wrong('alarm_unit', 'unknown-unit', ALARM_UNITS);
  const threshold = AlarmThreshold.safeParse({ unit, value });
  if (!threshold.success)
    return wrong('alarm_threshold', 'out-of-range', unit === 'dB' ? ['0', '40'] : ['0', '100']);
  return threshold.data;
}

/** The kit of filters, with semicolons or spaces between: "20;40;60". */
function readFilters(
  text: string,
  wrong: (column: PairColumn, fault: CsvFault['fault'], choices?: readonly string[]) => undefined,
): number[] | undefined {
  if (text === '') return undefined;
  const values = text.split(/[;\s]+/).map(numberIn);
  if (values.some((value) => value === undefined)) return wrong('filters_percent', 'not-a-number');
  const filters = PairPlan.shape.filters.safeParse(values);
  return filters.success ? filters.data : wrong('filters_percent', 'out-of-range', ['0', '100']);
}

/** A number as people write it. A comma before three figures could mean thousands and is not guessed at. */
function numberIn(text: string): number | undefined {
  if (!/^[+-]?(\d+([.]\d+|,\d{1,2})?|[.]\d+)$/.test(text)) return undefined;
  return Number(text.replace(',', '.'));
}

/** The limits of a number in the plan's schema, as text. */
function limitsOf(column: keyof typeof NUMBER_COLUMNS): string[] {
  const { minValue, maxValue } = PairPlan.shape[NUMBER_COLUMNS[column]].unwrap();
  return [minValue, maxValue].map(String);
}

function named<T extends { name: string }>(profiles: readonly T[], name: string): T | 'unknown' | undefined {
  if (name === '') return undefined;
  return profiles.find((profile) => profile.name.toLowerCase() === name.toLowerCase()) ?? 'unknown';
}

const namesOf = (profiles: readonly { name: string }[]): string[] => profiles.map(({ name }) => name);
