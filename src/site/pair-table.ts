import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { type Cell, csvText, plainCell } from '../formats/csv.ts';
import { idKey, MAX_PAIRS, type PairPlan } from '../model/pair-plan.ts';
import type { CsvFault } from '../model/table-fault.ts';
import type { LengthUnit } from '../model/units.ts';
import { EXAMPLE_NAME } from '../phrases/table-faults.ts';
import { cellIn, columnNamed, headerIn, PAIR_COLUMNS, type PairColumn } from './pair-columns.ts';
import { EXAMPLE_ID, type Profiles, type Row, readRow } from './pair-row.ts';

export interface EmptyCells {
  readonly id: string;
  readonly columns: readonly PairColumn[];
}

export type ReadPairs =
  | {
      readonly ok: true;
      readonly pairs: readonly PairPlan[];
      /** Where the table has an empty cell and the plan on the site has something. */
      readonly empty: readonly EmptyCells[];
    }
  /** Nothing is taken from a table with a fault. */
  | { readonly ok: false; readonly faults: readonly CsvFault[] };

const EXAMPLE: PairPlan = {
  id: EXAMPLE_ID,
  name: EXAMPLE_NAME,
  zone: '7',
  pathLength: 62,
  emitterHeight: 9.4,
  receiverHeight: 9.4,
  ceilingHeight: 9.9,
  spacing: 14,
  wallDistance: 7,
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 10,
  rangeMin: 5,
  rangeMax: 100,
};

/** Pairs as rows of a table, the header first. */
export const pairRows = (
  pairs: readonly PairPlan[],
  unit: LengthUnit = 'm',
): readonly (readonly Cell[])[] => [
  PAIR_COLUMNS.map((column) => headerIn(column, unit)),
  ...pairs.map((plan) => PAIR_COLUMNS.map((column) => cellIn(plan, column, unit))),
];

/** Pairs as a table that `readPairs` takes back. */
export const pairsToCsv = (pairs: readonly PairPlan[], unit?: LengthUnit): string =>
  csvText(pairRows(pairs, unit));

/** What stands in a table to fill in. */
export const TEMPLATE: readonly PairPlan[] = [EXAMPLE];

/** How a table is read. */
export interface TableContext {
  readonly profiles: Profiles;
  /** The plans on the site, those of dropped pairs too: what a table says nothing of stays as it is there. */
  readonly onSite?: readonly PairPlan[];
  /** An empty cell takes away what the plan on the site has. Otherwise it stays. */
  readonly emptyClears?: boolean;
}

/**
 * Reads a table of pairs as CSV: comma, semicolon or tab between the cells, a header line first, columns in any
 * order. Either every row is right, or nothing is taken and every fault is named.
 */
export function readPairs(text: string, context: TableContext): ReadPairs {
  const rows = readRows(text);
  return Array.isArray(rows) ? pairsOf(rows, context) : { ok: false, faults: [rows] };
}

/** The same for rows that were read already; the first is the header. */
export function pairsOf(rows: readonly Row[], table: TableContext): ReadPairs {
  const { profiles, onSite = [], emptyClears = false } = table;
  const [header, ...body] = rows;
  if (!header || body.length === 0)
    return { ok: false, faults: [{ line: header?.line ?? 1, fault: 'empty' }] };
  const names = header.cells.map((name) => name.trim().toLowerCase());
  const columns = names.map((name) => columnNamed(name)?.column);
  const faults = headerFaults(names, header.line);
  const over = body[MAX_PAIRS];
  if (over) faults.push({ line: over.line, fault: 'too-many-rows', choices: [String(MAX_PAIRS)] });
  if (faults.length > 0) return { ok: false, faults };

  const plans = new Map(onSite.map((plan) => [plan.id, plan]));
  const context = { names, columns, profiles, planOf: (id: string) => plans.get(id), emptyClears };
  const spelled = new Map(onSite.map(({ id }) => [idKey(id), id]));
  const pairs: PairPlan[] = [];
  const empty: EmptyCells[] = [];
  const lines = new Map<string, { id: string; line: number }>();
  for (const row of body) {
    const read = readRow(row, context);
    const { id } = read;
    const about = { line: row.line, column: 'id', value: id } as const;
    const earlier = lines.get(idKey(id));
    const onTheSite = spelled.get(idKey(id));
    if (earlier?.id === id) faults.push({ ...about, fault: 'id-twice', choices: [String(earlier.line)] });
    else if (earlier) {
      faults.push({ ...about, fault: 'id-case', choices: [earlier.id, String(earlier.line)] });
    } else if (onTheSite !== undefined && !plans.has(id)) {
      faults.push({ ...about, fault: 'id-case-on-site', choices: [onTheSite] });
    }
    faults.push(...read.faults);
    // A row with another fault still has its id.
    if (id !== '' && id !== EXAMPLE_ID) lines.set(idKey(id), { id, line: row.line });
    if (read.plan) pairs.push(read.plan);
    if (read.empty.length > 0) empty.push({ id, columns: read.empty });
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, pairs, empty };
}

function readRows(text: string): Row[] | CsvFault {
  try {
    const records = parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
      // With `info` each record has its place in the file, which the types do not know.
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return records
      .map(({ record, info }) => ({ line: info.lines - breaksIn(record), cells: record.map(plainCell) }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : 1;
    return { line, fault: 'not-csv' };
  }
}

/** The parser counts the line where a row ends. */
const breaksIn = (record: readonly string[]): number =>
  record.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);

/** The most frequent one in the header: no column's name contains any of them. */
function delimiterOf(text: string): string {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  const count = (delimiter: string): number => header.split(delimiter).length;
  return [',', ';', '\t'].reduce((best, each) => (count(each) > count(best) ? each : best));
}

function headerFaults(names: readonly string[], line: number): CsvFault[] {
  const columns = names.map((name) => columnNamed(name)?.column);
  const faults = columns.flatMap((column, i): CsvFault[] => {
    const name = names[i] ?? '';
    if (!column) return [{ line, column: name, fault: 'unknown-column', choices: PAIR_COLUMNS }];
    return columns.indexOf(column) < i ? [{ line, column: name, fault: 'column-twice' }] : [];
  });
  if (!columns.includes('id')) faults.push({ line, column: 'id', fault: 'column-missing' });
  return faults;
}
