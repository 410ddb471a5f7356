import type { CsvFault } from '../model/table-fault.ts';

/** The name in the template's example row. */
export const EXAMPLE_NAME = 'Delete this row';

const among = (choices: readonly string[] = []): string => choices.join(', ');

/** What is wrong and what to do about it. */
const WORDS: Record<CsvFault['fault'], (fault: CsvFault) => string> = {
  empty: () => 'there are no pairs in this file. Fill in the template, one pair a row.',
  'not-csv': () => 'a quotation mark is not closed or stands inside a cell. Save the table as CSV again.',
  'unknown-column': ({ choices }) =>
    `this column is not known. Rename or delete it. Known columns: ${among(choices)}.`,
  'column-twice': () => 'this column is there twice. Delete one.',
  'column-missing': () => 'this column is missing. Add it: every pair needs one.',
  'too-many-cells': () => 'there are more cells than columns. Quote cells that hold a comma.',
  required: () => 'this cell is empty. Give the pair a short id of its own, such as B2.',
  'bad-id': () => 'is not an id. Use up to 32 letters, digits, dots and dashes, no spaces, such as B2.',
  'id-twice': ({ choices }) => `is already the id of line ${among(choices)}. Give each pair its own.`,
  'id-case': ({ choices: [id, line] = [] }) =>
    `is ${id} of line ${line} but for capital letters. Give one of them another id.`,
  'id-case-on-site': ({ choices }) =>
    `is the pair ${among(choices)} of this site but for capital letters. Write it as it is there, or give this pair another id.`,
  'hidden-character': ({ choices }) =>
    `there is a character here that nobody sees (${among(choices)}), or a letter that cannot be read. Type the cell again.`,
  'not-text': () => 'this file is not a table. Save it as CSV or as XLSX.',
  'not-xlsx': () => 'this workbook cannot be read. Open it, save it as XLSX again, without a password.',
  'too-big': () => 'this file is too big for a table of pairs. Keep only the table in it.',
  'date-cell': () => 'the spreadsheet made a date of this cell. Format the column as text and type it again.',
  'failed-formula': () => 'the formula of this cell failed. Type its value instead.',
  'too-many-rows': ({ choices }) =>
    `a site has at most ${among(choices)} pairs. Put the rows from here on in a table for another site.`,
  inverted: ({ choices }) => `is below ${among(choices)}. Check both.`,
  'needs-its-threshold': () => 'give the alarm threshold beside its unit, in alarm_threshold.',
  'needs-path': () =>
    'percent per metre or foot is told for the whole path: give its length in path_m or path_ft.',
  'needs-its-profile': () => 'this cell is empty. Give the name beside the figures.',
  'bad-profile': ({ choices }) => `does not fit. ${among(choices)}`,
  'not-a-choice': ({ choices }) => `is not one of these: ${among(choices)}.`,
  'example-row': () => "this is the template's example. Delete the row.",
  'too-long': () => 'is too long. Shorten it.',
  'not-a-number': () => 'is not a number. Write digits only, with a point, such as 62.5.',
  'out-of-range': ({ choices }) => `is not from ${choices?.join(' to ')}. Check it.`,
  'needs-its-unit': ({ choices }) => `give the unit of the threshold: ${among(choices)}.`,
  'unknown-unit': ({ choices }) => `is not a unit for a threshold. Use ${among(choices)}.`,
  'unknown-profile': ({ choices }) =>
    `is not a known profile. Use one of: ${among(choices)}; or give all its figures in the columns beside it; or leave it empty.`,
};

/** 'Line 4, path_m: "6o" is not a number. Write digits only, with a point, such as 62.5.' */
export function csvFaultText(fault: CsvFault): string {
  const { line, column, value } = fault;
  const where = column === undefined ? `Line ${line}` : `Line ${line}, ${column}`;
  return `${where}: ${value ? `"${value}" ` : ''}${WORDS[fault.fault](fault)}`;
}
