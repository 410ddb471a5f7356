import { strFromU8, unzipSync, zipSync } from 'fflate';
import { readSheet } from 'read-excel-file/universal';
import writeSheet from 'write-excel-file/universal';
import type { Cell } from './csv.ts';

/** A cell that is no text and no number: a spreadsheet made a date of what was typed, or its formula failed. */
export interface CellTrouble {
  /** Row and column, from 0. */
  readonly row: number;
  readonly cell: number;
  readonly what: 'date' | 'error';
}

export type ReadXlsx =
  | {
      readonly ok: true;
      readonly rows: readonly (readonly string[])[];
      readonly troubles: readonly CellTrouble[];
    }
  | { readonly ok: false; readonly why: 'not-xlsx' | 'too-big' };

/** Unpacked, all parts together. A site's 2,000 pairs with every figure take about 6 MB. */
const MOST_UNPACKED_BYTES = 32 * 1024 * 1024;
/** Rows times columns, counted with the gaps between cells: a reader makes room for each. */
const MOST_CELLS = 1_000_000;

/** The first sheet of a workbook (ECMA-376), row by row from the top, as text. */
export async function readXlsx(bytes: Uint8Array): Promise<ReadXlsx> {
  const parts = unpacked(bytes);
  if (!parts || (parts !== 'too-big' && Object.values(parts).some(isTorn)))
    return { ok: false, why: 'not-xlsx' };
  const first = parts === 'too-big' ? [] : firstSheet(parts);
  if (parts === 'too-big' || first.some(isTooWide)) return { ok: false, why: 'too-big' };
  try {
    // Packed again without compression: the library can no longer be surprised by its size.
    const sheet = await readSheet(new Blob([zipSync(parts, { level: 0 }) as Uint8Array<ArrayBuffer>]), {
      trim: false,
    });
    const troubles: CellTrouble[] = failed(first);
    const rows = sheet.map((cells, row) =>
      cells.map((value: unknown, cell) => {
        if (value instanceof Date) troubles.push({ row, cell, what: 'date' });
        return value === null ? '' : String(value);
      }),
    );
    return { ok: true, rows, troubles };
  } catch {
    return { ok: false, why: 'not-xlsx' };
  }
}

/** The cells whose formula failed: the library reads them as empty. No tag holds a `<`: where one is never closed, the search goes on there. */
const failed = (sheets: readonly string[]): CellTrouble[] =>
  sheets.flatMap((xml) =>
    Array.from(xml.matchAll(/<(?:\w+:)?c\b[^<>]*\bt="e"[^<>]*>/g), ([tag]) => {
      const [, letters = 'A', row = '1'] = /\br="([A-Z]{1,9})(\d+)"/.exec(tag) ?? [];
      return { row: Number(row) - 1, cell: columnOf(letters) - 1, what: 'error' as const };
    }),
  );

/**
 * The sheet that is read: the first that the workbook names, by its relationship (ECMA-376, part 1, 18.2.19, from
 * memory). All of them where that cannot be told.
 */
function firstSheet(parts: Record<string, Uint8Array>): string[] {
  const text = (name: string): string => strFromU8(parts[name] ?? new Uint8Array());
  const [sheet = ''] = /<(?:\w+:)?sheet\b[^<>]*>/.exec(text('xl/workbook.xml')) ?? [];
  const [, id] = /\br:id="([^"]+)"/.exec(sheet) ?? [];
  const links = text('xl/_rels/workbook.xml.rels').match(/<(?:\w+:)?Relationship\b[^<>]*>/g) ?? [];
  const link = links.find((each) => id !== undefined && each.includes(`Id="${id}"`));
  const [, target = ''] = /\bTarget="([^"]+)"/.exec(link ?? '') ?? [];
  const named = text(target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  if (named !== '') return [named];
  return Object.entries(parts)
    .filter(([name]) => /worksheets\/[^/]+\.xml$/.test(name))
    .map(([, part]) => strFromU8(part));
}

/** "A" is 1, "AA" is 27. */
const columnOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

/** The parts of the archive with words and numbers; no part can be larger than the archive says. */
function unpacked(bytes: Uint8Array): Record<string, Uint8Array> | 'too-big' | undefined {
  let sum = 0;
  try {
    const parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!/\.(xml|rels)$/.test(name)) return false;
        sum += originalSize;
        return sum <= MOST_UNPACKED_BYTES;
      },
    });
    return sum > MOST_UNPACKED_BYTES ? 'too-big' : parts;
  } catch {
    return undefined;
  }
}

/**
 * A tag that never ends. The library looks for the end of each from where it begins: a million of them would keep it busy for
 * minutes. No text and no attribute of XML holds a `<`.
 */
const isTorn = (part: Uint8Array): boolean => /<[^<>]*(?:<|$)/.test(strFromU8(part));

/** A sheet with a cell far to the right, in many rows, takes more memory than its file is large. */
function isTooWide(xml: string): boolean {
  const rows = xml.match(/<(\w+:)?row\b/g)?.length ?? 0;
  let columns = 0;
  for (const [, letters = ''] of xml.matchAll(/\br="([A-Z]{1,9})\d+"/g)) {
    columns = Math.max(columns, columnOf(letters));
  }
  return rows * columns > MOST_CELLS;
}

/** A workbook of one sheet. Text stays text: nothing is run as a formula, and nothing becomes a date. */
export const xlsxOf = (rows: readonly (readonly Cell[])[], sheet: string): Promise<Blob> =>
  writeSheet(
    rows.map((cells) =>
      cells.map((cell) => {
        if (cell === undefined) return null;
        if (typeof cell === 'number') return { value: cell, type: Number };
        return { value: writable(cell), type: String, format: '@' };
      }),
    ),
    { sheet, stickyRowsCount: 1 },
  ).toBlob();

/**
 * XML cannot hold control characters. In a workbook they are escaped as `_x0007_` (ECMA-376, part 1, 22.4.2.4, from
 * memory), and so is the first sign of a text that only looks like such an escape. A text that every object of
 * JavaScript has as a property ("toString") would be lost in the library's list of texts: its first sign is escaped, too.
 */
const writable = (text: string): string =>
  text in {} ? escaped(text) + text.slice(1) : text.replace(NOT_WRITABLE, escaped);

const NOT_WRITABLE = /_(?=x[0-9A-Fa-f]{4}_)|(?![\t\n\r])[\p{Cc}\p{Cs}\uFFFD]/gu;

/** The first sign of a text, as an escape. */
const escaped = (text: string): string =>
  `_x${text.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`;
