export type Cell = string | number | undefined;

/**
 * A table as RFC 4180 text: comma, CRLF, fields quoted where needed. Text that a spreadsheet could take for a
 * formula, or that starts with an apostrophe, gets an apostrophe in front; `plainCell` removes it.
 */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((cells) => `${cells.map(field).join(',')}\r\n`).join('');

/** A cell that starts with one of these is a formula to a spreadsheet (OWASP, "CSV Injection"). */
const FORMULA_START = /^[=+\-@\t\r\n＝＋－＠']/;

function field(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = FORMULA_START.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** A cell's text as it was before it was made safe for spreadsheets. */
export const plainCell = (text: string): string => (text.startsWith("'") ? text.slice(1) : text);
