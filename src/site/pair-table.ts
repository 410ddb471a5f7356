import { CsvError, parse } from 'csv-parse/browser/esm/sync';
import { csvText } from '../formats/csv.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { CsvFault } from '../model/table-fault.ts';
import { EXAMPLE_NAME } from '../phrases/table-faults.ts';
import { cellOf, PAIR_COLUMNS } from './pair-columns.ts';
import { EXAMPLE_ID, type Profiles, type Row, readRow } from './pair-row.ts';

export type ReadPairs =
  | { readonly ok: true; readonly pairs: readonly PairPlan[] }
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

/** Pairs as a table that `readPairs` takes back. */
export const pairsToCsv = (pairs: readonly PairPlan[]): string =>
  csvText([PAIR_COLUMNS, ...pairs.map((plan) => PAIR_COLUMNS.map((column) => cellOf(plan, column)))]);

/** A table to fill in. */
export const csvTemplate = (): string => pairsToCsv([EXAMPLE]);

/**
 * Reads a table of pairs: comma, semicolon or tab between the cells, a header line first, columns in any
 * order. Either every row is right, or nothing is taken and every fault is named.
 */
export function readPairs(text: string, profiles: Profiles): ReadPairs {
  const rows = readRows(text);
  if (!Array.isArray(rows)) return { ok: false, faults: [rows] };
  const [header, ...body] = rows;
  if (!header || body.length === 0)
    return { ok: false, faults: [{ line: header?.line ?? 1, fault: 'empty' }] };
  const columns = header.cells.map((name) => name.trim().toLowerCase());
  const faults = headerFaults(columns, header.line);
  if (faults.length > 0) return { ok: false, faults };

  const pairs: PairPlan[] = [];
  const lines = new Map<string, number>();
  for (const row of body) {
    const { id, plan, faults: inRow } = readRow(row, columns, profiles);
    const earlier = lines.get(id);
    if (earlier !== undefined) {
      faults.push({ line: row.line, column: 'id', value: id, fault: 'id-twice', choices: [String(earlier)] });
    }
    faults.push(...inRow);
    // A row with another fault still has its id.
    if (id !== '' && id !== EXAMPLE_ID) lines.set(id, row.line);
    if (plan) pairs.push(plan);
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, pairs };
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
      .map(({ record, info }) => ({ line: info.lines, cells: record }))
      .filter(({ cells }) => cells.some((cell) => cell !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : 1;
    return { line, fault: 'not-csv' };
  }
}

/** The most frequent one in the header: no column's name contains any of them. */
function delimiterOf(text: string): string {
  const header = text.slice(0, text.search(/[\r\n]|$/));
  const count = (delimiter: string): number => header.split(delimiter).length;
  return [',', ';', '\t'].reduce((best, each) => (count(each) > count(best) ? each : best));
}

function headerFaults(columns: readonly string[], line: number): CsvFault[] {
  const known: readonly string[] = PAIR_COLUMNS;
  const faults = columns.flatMap((column, i): CsvFault[] => {
    if (!known.includes(column)) return [{ line, column, fault: 'unknown-column', choices: known }];
    return columns.indexOf(column) < i ? [{ line, column, fault: 'column-twice' }] : [];
  });
  if (!columns.includes('id')) faults.push({ line, column: 'id', fault: 'column-missing' });
  return faults;
}
