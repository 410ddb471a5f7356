import { hiddenIn } from '../model/hidden.ts';
import { type AlarmThreshold, invertedIn, MOST_DB, PairId, PairPlan } from '../model/pair-plan.ts';
import type { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import { rangeOf } from '../model/range.ts';
import type { CsvFault } from '../model/table-fault.ts';
import type { LengthUnit } from '../model/units.ts';
import { setupFaultText } from '../phrases/form-faults.ts';
import { limitFigures } from '../phrases/units.ts';
import { readLength } from '../plan/lengths.ts';
import { lossIn, needsPath, readLoss, thresholdOf } from '../plan/losses.ts';
import { numberIn } from './number-in.ts';
import {
  ALARM_UNITS,
  cellOf,
  columnNamed,
  isLengthColumn,
  isNumberColumn,
  NUMBER_COLUMNS,
  type NumberColumn,
  type PairColumn,
  schemaOf,
} from './pair-columns.ts';
import { ADJUSTERS, METER, type ProfileShape, profileCell } from './profile-columns.ts';

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

/** What a row is read against. */
export interface RowContext {
  /** The header as it is written; `columns`: what each name means. */
  readonly names: readonly string[];
  readonly columns: readonly (PairColumn | undefined)[];
  readonly profiles: Profiles;
  /** The plan that a pair has on the site: what the table says nothing of stays. */
  readonly planOf: (id: string) => PairPlan | undefined;
  /** An empty cell takes away what the plan has. Otherwise it stays. */
  readonly emptyClears: boolean;
}

export interface ReadRow {
  /** As it is written, empty if there is none. */
  readonly id: string;
  /** Undefined: something is wrong with the row. */
  readonly plan?: PairPlan;
  readonly faults: readonly CsvFault[];
  /** The columns with an empty cell where the plan on the site has something. */
  readonly empty: readonly PairColumn[];
}

/** One row's plan, or everything that is wrong with it. */
export function readRow({ line, cells }: Row, context: RowContext): ReadRow {
  const { names, columns, profiles, planOf, emptyClears } = context;
  const faults: CsvFault[] = [];
  const wrong: Wrong = (column, fault, choices) => {
    const name = nameOf(column);
    faults.push({ line, column: name, value: at(column), fault, ...(choices && { choices }) });
  };
  const nameOf = (column: PairColumn): string => names[columns.indexOf(column)] ?? column;
  const unitOf = (column: PairColumn): LengthUnit => columnNamed(nameOf(column))?.unit ?? 'm';
  const at = (column: PairColumn): string => (cells[columns.indexOf(column)] ?? '').trim();
  if (cells.slice(columns.length).some((cell) => cell !== '')) faults.push({ line, fault: 'too-many-cells' });
  for (const [i, column] of names.entries()) {
    const hidden = hiddenIn((cells[i] ?? '').trim());
    if (hidden) faults.push({ line, column, fault: 'hidden-character', choices: [hidden] });
  }

  const id = at('id');
  if (id === EXAMPLE_ID) wrong('id', 'example-row');
  else if (id === '') wrong('id', 'required');
  else if (!PairId.safeParse(id).success) wrong('id', 'bad-id');
  const before = planOf(id);
  const plan: Record<string, unknown> = { id, name: id, ...before };
  const empty: PairColumn[] = [];
  /** The cell's text; undefined where there is none: then the field stays, or goes. */
  const textOf = (column: PairColumn, field: keyof PairPlan): string | undefined => {
    if (!columns.includes(column)) return undefined;
    const text = at(column);
    if (text !== '') return text;
    if (before && cellOf(before, column) !== undefined && !(field === 'name' && before.name === id)) {
      empty.push(column);
      if (emptyClears) plan[field] = field === 'name' ? id : undefined;
    }
    return undefined;
  };

  for (const column of ['name', 'zone'] as const) {
    const text = textOf(column, column);
    if (text === undefined) continue;
    if (!PairPlan.shape[column].safeParse(text).success) wrong(column, 'too-long');
    plan[column] = text;
  }
  for (const column of columns.filter((each) => each !== undefined && isNumberColumn(each))) {
    const text = textOf(column, NUMBER_COLUMNS[column]);
    if (text === undefined) continue;
    const unit = unitOf(column);
    const value = isLengthColumn(column) ? readLength(text, unit) : numberIn(text);
    if (value === undefined) wrong(column, 'not-a-number');
    else if (!schemaOf(column).safeParse(value).success)
      wrong(column, 'out-of-range', limitsOf(column, unit));
    else plan[NUMBER_COLUMNS[column]] = value;
  }
  const threshold = textOf('alarm_threshold', 'alarmThreshold');
  if (threshold !== undefined) {
    const { pathLength } = plan as Partial<PairPlan>;
    plan.alarmThreshold = readThreshold(threshold, at('alarm_unit'), pathLength, wrong);
  } else if (at('alarm_unit') !== '') wrong('alarm_unit', 'needs-its-threshold');
  const filters = textOf('filters_percent', 'filters');
  if (filters !== undefined) plan.filters = readFilters(filters, wrong);
  const ofProfile = <P extends MeterProfile | AdjusterProfile>(
    shape: ProfileShape<P>,
    named: readonly P[],
    known: P | undefined,
  ): void => {
    const figures = Object.entries(shape.figures) as [PairColumn, (typeof shape.figures)[string]][];
    const given = figures.map(([column]) => column).filter((column) => at(column) !== '');
    const name = at(shape.name);
    if (given.length === 0 && name === '' && columns.includes(shape.name)) {
      textOf(shape.name, shape.name);
      return;
    }
    // Only a figure that a profile may lack can be taken away alone.
    const open = figures.filter(
      ([column, { optional }]) =>
        optional &&
        columns.includes(column) &&
        at(column) === '' &&
        profileCell(known, shape, column) !== undefined &&
        (name === '' || isNamed(known, name)),
    );
    if (given.length === 0 && name === '' && open.length === 0) return;
    empty.push(...open.map(([column]) => column));
    const taken = emptyClears ? open.map(([, { field }]) => field) : [];
    // Figures beside an empty name are of the profile that the plan has.
    plan[shape.name] = readProfile({ shape, name, given, taken, at, named, known, wrong });
  };
  ofProfile(METER, profiles.meters, before?.meter);
  ofProfile(ADJUSTERS, profiles.adjusters, before?.adjusters);
  if (faults.length === 0) {
    for (const [low, high] of invertedIn(plan)) wrong(columnOf(high), 'inverted', [nameOf(columnOf(low))]);
  }
  if (faults.length > 0) return { id, faults, empty };
  return { id, plan: PairPlan.parse(withoutUndefined(plan)), faults, empty };
}

type Wrong = (column: PairColumn, fault: CsvFault['fault'], choices?: readonly string[]) => undefined;

const withoutUndefined = (fields: object): object =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));

const columnOf = (field: (typeof NUMBER_COLUMNS)[keyof typeof NUMBER_COLUMNS]): PairColumn =>
  Object.entries(NUMBER_COLUMNS).find(([, each]) => each === field)?.[0] as PairColumn;

interface ProfileCells<P> {
  readonly shape: ProfileShape<P & (MeterProfile | AdjusterProfile)>;
  readonly name: string;
  /** The columns of its figures that say something. */
  readonly given: readonly PairColumn[];
  /** The figures that are taken away. */
  readonly taken: readonly string[];
  readonly at: (column: PairColumn) => string;
  readonly named: readonly P[];
  /** The one that the pair has. */
  readonly known: P | undefined;
  readonly wrong: Wrong;
}

const isNamed = (profile: { name: string } | undefined, name: string): boolean =>
  profile?.name.toLowerCase() === name.toLowerCase();

/**
 * A profile by its name, by its figures, or both: the figures that a table leaves out are those of the profile with
 * that name. A table with every figure needs no other profile.
 */
function readProfile<P extends MeterProfile | AdjusterProfile>(cells: ProfileCells<P>): P | undefined {
  const { shape, given, taken, at, named, known, wrong } = cells;
  const name = cells.name || known?.name;
  if (name === undefined) return wrong(shape.name, 'needs-its-profile');
  const needed = Object.entries(shape.figures).filter(([, { optional }]) => !optional);
  const whole = needed.every(([column]) => given.includes(column as PairColumn));
  const other = whole ? undefined : named.find((profile) => isNamed(profile, name));
  const base = isNamed(known, name) ? known : other;
  if (!whole && !base) {
    return wrong(
      shape.name,
      'unknown-profile',
      named.map((profile) => profile.name),
    );
  }
  const draft: Record<string, unknown> = { name, ...base };
  for (const field of taken) delete draft[field];
  if (shape.name === 'meter') draft.unit ??= '';
  for (const column of given) {
    const figure = shape.figures[column];
    const value = figure?.read(at(column));
    if (!figure || value === undefined) {
      if (figure?.choices) wrong(column as PairColumn, 'not-a-choice', figure.choices);
      else wrong(column as PairColumn, 'not-a-number');
      continue;
    }
    draft[figure.field] = value;
  }
  const parsed = shape.schema.safeParse(draft);
  if (parsed.success) return parsed.data;
  for (const issue of parsed.error.issues) {
    const field = String(issue.path[0]);
    const [column = shape.name] =
      Object.entries(shape.figures).find(([, figure]) => figure.field === field) ?? [];
    if (draft[field] !== undefined || issue.code === 'custom') {
      wrong(column as PairColumn, 'bad-profile', [setupFaultText(`${shape.name}.${field}`, issue)]);
    }
  }
  return undefined;
}

function readThreshold(
  text: string,
  unitText: string,
  path: number | undefined,
  wrong: Wrong,
): AlarmThreshold | undefined {
  const value = numberIn(text);
  if (value === undefined) return wrong('alarm_threshold', 'not-a-number');
  if (unitText === '') return wrong('alarm_unit', 'needs-its-unit', ALARM_UNITS);
  const { unit } = readLoss(`0 ${unitText}`, 'dB') ?? {};
  if (!unit) return wrong('alarm_unit', 'unknown-unit', ALARM_UNITS);
  if (needsPath(unit) && path === undefined) return wrong('alarm_threshold', 'needs-path');
  const threshold = thresholdOf(value, unit, path);
  if (threshold) return threshold;
  const most = unit === 'percent' ? 100 : lossIn(MOST_DB, unit, path);
  return wrong('alarm_threshold', 'out-of-range', ['0', String(Number(most?.toPrecision(4)))]);
}

/** The kit of filters, with semicolons or spaces between: "20;40;60". */
function readFilters(text: string, wrong: Wrong): number[] | undefined {
  const values = text.split(/[;\s]+/).map(numberIn);
  if (values.some((value) => value === undefined)) return wrong('filters_percent', 'not-a-number');
  const filters = PairPlan.shape.filters.safeParse(values);
  return filters.success ? filters.data : wrong('filters_percent', 'out-of-range', ['0', '100']);
}

/** The limits of a number in the plan's schema, as text; of a length, in its unit. */
function limitsOf(column: NumberColumn, unit: LengthUnit): string[] {
  const [low, high] = rangeOf(PairPlan.shape[NUMBER_COLUMNS[column]]);
  const length = isLengthColumn(column) ? unit : 'm';
  return [limitFigures(low ?? 0, length, 'up'), limitFigures(high ?? 0, length, 'down')].map(String);
}
