import { readXlsx, xlsxOf } from '../formats/xlsx.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { LengthUnit } from '../model/units.ts';
import { pairRows, pairsOf, type ReadPairs, type TableContext } from './pair-table.ts';

/** Pairs as a workbook that `readPairsXlsx` takes back. A file of its own, because the libraries it needs are large. */
export const pairsToXlsx = (pairs: readonly PairPlan[], unit?: LengthUnit): Promise<Blob> =>
  xlsxOf(pairRows(pairs, unit), SHEET);

const SHEET = 'Pairs';

/** Reads a table of pairs from the first sheet of a workbook, as `readPairs` does from CSV. */
export async function readPairsXlsx(bytes: Uint8Array, table: TableContext): Promise<ReadPairs> {
  const read = await readXlsx(bytes);
  if (!read.ok) return { ok: false, faults: [{ line: 1, fault: read.why }] };
  const columns = read.rows.find(isFilled) ?? [];
  const rows = read.rows.map((cells, row) => ({ line: row + 1, cells: cells.map((cell) => cell.trim()) }));
  const faults = read.troubles.map(({ row, cell, what }) => ({
    line: row + 1,
    ...(columns[cell] && { column: columns[cell] }),
    fault: what === 'date' ? ('date-cell' as const) : ('failed-formula' as const),
  }));
  if (faults.length > 0) return { ok: false, faults };
  return pairsOf(
    rows.filter(({ cells }) => isFilled(cells)),
    table,
  );
}

const isFilled = (cells: readonly string[]): boolean => cells.some((cell) => cell !== '');
