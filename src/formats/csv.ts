export type Cell = string | number | undefined;

/**
 * A table as RFC 4180 text: comma, CRLF, fields quoted where needed. Text that a spreadsheet could take for a
 * formula gets an apostrophe before it; `plainCell` removes it.
 */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((cells) => `${cells.map(field).join(',')}\r\n`).join('');

/**
 * Where a spreadsheet may see a cell begin: at the start, and inside the text after what separates cells where it
 * reads semicolons or tabs. There a formula begins with one of `= + - @` (OWASP, "CSV Injection"), their full-width and
 * small forms, or a call of another program with `|` or `%`; blanks, quotes, control characters and whatever Unicode says
 * may be shown as nothing (`Default_Ignorable_Code_Point`) before it do not help.
 * An apostrophe is put before a text's own apostrophe too, so that it can be taken off again.
 */
const FORMULA = String.raw`(?=[\s"\p{Cc}\p{Cf}\p{DI}]*[=+\-@%|＝＋－＠％｜﹦﹢﹣﹫﹪';\t\r\n])`;
const SEPARATOR = String.raw`([;|\t\r\n])`;
const UNSAFE = { start: new RegExp(`^${FORMULA}`, 'u'), inside: new RegExp(`${SEPARATOR}${FORMULA}`, 'gu') };
const MADE_SAFE = {
  start: new RegExp(`^'${FORMULA}`, 'u'),
  inside: new RegExp(`${SEPARATOR}'${FORMULA}`, 'gu'),
};

function field(cell: Cell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return decimal(cell);
  const inside = cell.replace(UNSAFE.inside, "$1'");
  const safe = UNSAFE.start.test(cell) ? `'${inside}` : inside;
  return /[",\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Every figure that tells a number from any other, and never an exponent: a `decimal` of XML Schema has none. */
function decimal(value: number): string {
  const text = String(value);
  const [, sign = '', first, rest = '', exponent] = /^(-?)(\d)(?:\.(\d+))?e([+-]\d+)$/.exec(text) ?? [];
  if (first === undefined) return text;
  const digits = first + rest;
  const point = 1 + Number(exponent);
  return point > 0 ? sign + digits.padEnd(point, '0') : `${sign}0.${'0'.repeat(-point)}${digits}`;
}

/** A cell's text as it was before it was made safe for spreadsheets. */
export const plainCell = (text: string): string =>
  text.replace(MADE_SAFE.start, '').replace(MADE_SAFE.inside, '$1');
